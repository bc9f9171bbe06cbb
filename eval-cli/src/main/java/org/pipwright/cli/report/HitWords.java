package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.engine.explain.Blot;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Exposure;
import org.pipwright.engine.explain.Swings;

/** How the opponent's hits after a weaker play ("it") differ from those after the best, as a clause. */
final class HitWords {
    /** Pips that a roll takes tell two plays apart if they differ by at least so much of the more. */
    private static final double CLEAR = 0.2;

    /** Points per game by which measured costs of hits differ at least, to be told. */
    private static final double TELLING = 0.005;

    private final Exposure mine;
    private final Exposure other;
    private final Swings swings;
    private final Swings otherSwings;
    private final boolean against;

    /** What speaks against the weaker play, or for it. */
    HitWords(ExplainedPlay best, ExplainedPlay it, boolean against) {
        this.mine = it.facts().exposure();
        this.other = best.facts().exposure();
        this.swings = it.swings();
        this.otherSwings = best.swings();
        this.against = against;
    }

    /**
     * How many rolls hit or how many pips they take, if one speaks as it should and the other not against it; else what the
     * hits were measured to cost; empty if nothing of it speaks as it should.
     */
    Optional<String> clause() {
        boolean known = swings.known() && otherSwings.known();
        if (worse(mine.costly(), other.costly()) && !(known && worse(other.risk(), mine.risk()))) {
            return Optional.of(rolls());
        }
        if (mine.costly() == 0 && other.costly() == 0 && worse(mine.shots(), other.shots())) {
            return Optional.of("the opponent hits with " + ofIts(mine.shots()) + in(blots(0)) + " instead of "
                    + Phrases.ofAll(other.shots()));
        }
        if (clearlyDearer() && !(known && worse(other.costly(), mine.costly()))) {
            return Optional.of("the opponent's hits" + in(blots(Exposure.DEAR)) + " take " + pips(mine, true)
                    + " instead of " + pips(other, false));
        }
        return known ? measured() : Optional.empty();
    }

    /** Whether a number of which less is better speaks as it should. */
    private boolean worse(double number, double than) {
        return number != than && number > than == against;
    }

    private boolean clearlyDearer() {
        return worse(mine.risk(), other.risk())
                && Math.abs(mine.risk() - other.risk()) >= CLEAR * Math.max(mine.risk(), other.risk())
                && !pips(mine, false).equals(pips(other, false));
    }

    private String rolls() {
        return mine.costly() == 0
                ? "none of the opponent's 36 rolls hits" + counted() + " instead of " + other.costly()
                : "the opponent hits with " + ofIts(mine.costly()) + counted() + " instead of "
                        + Phrases.ofAll(other.costly()) + taken();
    }

    /** Pips that a roll takes, beside the number of rolls that hit; empty if they are the same or nothing is hit. */
    private String taken() {
        if (other.costly() == 0 || pips(mine, false).equals(pips(other, false))) {
            return "";
        }
        return (worse(mine.risk(), other.risk()) ? " and takes " : " but takes ") + pips(mine, true) + " instead of "
                + pips(other, false);
    }

    /** What the hits cost, if that differs by something. */
    private Optional<String> measured() {
        String cost = Numbers.thousandths(swings.costOfHits());
        String others = Numbers.thousandths(otherSwings.costOfHits());
        return Math.abs(swings.costOfHits() - otherSwings.costOfHits()) < TELLING
                        || !worse(swings.costOfHits(), otherSwings.costOfHits())
                ? Optional.empty()
                : Optional.of("the opponent's hits" + in(blots(Exposure.DEAR)) + " cost " + cost
                        + " points a game instead of " + others);
    }

    private static String ofIts(int rolls) {
        return (rolls == 36 ? "all 36" : rolls + " of its 36") + " rolls";
    }

    /** What a roll takes, in words where it is nothing when printed. */
    private static String pips(Exposure exposure, boolean unit) {
        String risk = Numbers.tenths(exposure.risk());
        return risk.equals("0.0")
                ? exposure.shots() == 0 ? "nothing" : "hardly anything"
                : risk + (unit ? " pips a roll on average" : "");
    }

    /** The blots that rolls hit for at least so many pips. */
    private List<String> blots(int least) {
        List<Blot> hit = Phrases.fromTheHighest(mine.blots().stream()
                .filter(blot -> blot.shots() > 0 && blot.pips() >= least)
                .collect(Collectors.toList()));
        return hit.isEmpty()
                ? List.of()
                : List.of(Phrases.numbered(hit.size(), "blot") + " on " + Phrases.points(Phrases.where(hit)));
    }

    /** The blots whose loss counts, and that rolls that hit others are not counted, if either play has such. */
    private String counted() {
        List<String> said = new ArrayList<>(blots(Exposure.DEAR));
        if (mine.costly() != mine.shots() || other.costly() != other.shots()) {
            said.add("cheap hits on its 1 to 3 points left out");
        }
        return in(said);
    }

    private static String in(List<String> brackets) {
        return brackets.isEmpty() ? "" : " (" + String.join("; ", brackets) + ")";
    }
}
