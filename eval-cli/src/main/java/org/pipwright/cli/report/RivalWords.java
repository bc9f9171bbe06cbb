package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.explain.Cause;
import org.pipwright.engine.explain.Causes;
import org.pipwright.engine.explain.ChancesApart;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.explain.Swing;

/**
 * Why a weaker play is weaker, in short sentences about it: first the kind of fact, or the two, that cost it most; then what
 * else does; what that means in games and gammons; which rolls of the opponent make the difference, if few do; and what
 * speaks for it, if it is worth saying.
 */
final class RivalWords {
    private static final int OTHERS = 2;

    private static final int ROLLS = 3;

    /** Rolls are named if the worst few of them make up so much of the difference. */
    private static final double FEW_MAKE_IT = 0.6;

    /** If nothing else that is notable speaks against a play, the largest of the rest does from this part of the difference on. */
    private static final double BESIDES = 0.1;

    private static final Set<Motive> WAY_HOME = EnumSet.of(Motive.OFF, Motive.SAVE);

    private static final double THROWS = 36;

    private final ExplainedPlay best;
    private final ExplainedPlay rival;
    private final ChancesApart chances;
    private final GammonValues gammons;
    private final Map<Cause, String> told = new LinkedHashMap<>();
    private final List<String> said = new ArrayList<>();

    private RivalWords(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons) {
        this.best = best;
        this.rival = rival;
        this.gammons = gammons;
        this.chances = ChancesApart.of(best.ranked().outcomes(), rival.ranked().outcomes(), gammons);
    }

    static List<String> sentences(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons) {
        RivalWords words = new RivalWords(best, rival, gammons);
        List<Cause> main = words.main();
        List<Cause> others = words.others(main);
        words.lead(main, others);
        words.chances();
        words.rolls();
        words.merits();
        return words.said;
    }

    /** The kinds of fact that the first sentence names. */
    static List<Motive> leads(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons) {
        return new RivalWords(best, rival, gammons)
                .main().stream().map(Cause::motive).collect(Collectors.toList());
    }

    /** What there is to say about a cause; empty if the numbers that are printed show no difference. */
    static Optional<String> clause(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons, Cause cause) {
        return cause.motive() == Motive.GAMMONS
                ? new GammonWords(best, rival, gammons).clause()
                : new MotiveWords(best, rival).clause(cause.motive(), cause.points() > 0);
    }

    private List<Cause> main() {
        Causes.of(best, rival, gammons).all().forEach(cause -> clause(best, rival, gammons, cause)
                .ifPresent(clause -> told.put(cause, clause)));
        return new Causes(List.copyOf(told.keySet())).leading(chances.sum());
    }

    private void lead(List<Cause> main, List<Cause> others) {
        List<Cause> spoken = new ArrayList<>(main);
        spoken.addAll(others);
        if (main.isEmpty()) {
            said.add(
                    chances.sum() > 0
                            ? "Nothing that is counted here speaks against it: that shows in the chances alone."
                            : "The two are as good as equal.");
        } else {
            said.add("Mainly because " + String.join(", and ", clauses(main, spoken)) + ".");
        }
        clauses(others, spoken).forEach(clause -> said.add(Phrases.sentence(clause)));
    }

    /** The clauses of some of the causes that are spoken of: causes that are one idea have one, where the first of them stands. */
    private List<String> clauses(List<Cause> some, List<Cause> spoken) {
        Map<Motive, Cause> one = oneIdea(spoken);
        Optional<Cause> first = spoken.stream().filter(one::containsValue).findFirst();
        return some.stream()
                .filter(cause -> !sameWayHome(cause, spoken))
                .filter(cause -> !one.containsValue(cause) || first.get() == cause)
                .map(cause -> !one.containsValue(cause)
                        ? told.get(cause)
                        : told.get(one.get(Motive.POINT))
                                + (one.containsKey(Motive.PRIME) ? ", so that " + told.get(one.get(Motive.PRIME)) : ""))
                .collect(Collectors.toList());
    }

    /** Whether a cause is the way home once more: crossovers and pips to save a gammon are, and the first of them is told. */
    private boolean sameWayHome(Cause cause, List<Cause> spoken) {
        return best.facts().borneOff() == rival.facts().borneOff()
                && WAY_HOME.contains(cause.motive())
                && spoken.stream()
                        .filter(each -> WAY_HOME.contains(each.motive()))
                        .findFirst()
                        .filter(first -> first != cause)
                        .isPresent();
    }

    /** A point, the hit that makes it and the row that it belongs to, if at least two of them are spoken of. */
    private Map<Motive, Cause> oneIdea(List<Cause> spoken) {
        Map<Motive, Cause> one = new EnumMap<>(Motive.class);
        spoken.forEach(cause -> one.put(cause.motive(), cause));
        MotiveWords words = new MotiveWords(best, rival);
        one.keySet().removeIf(motive -> switch (motive) {
            case POINT -> false;
            case HIT -> one.get(motive).points() < 0 || !words.pointsTellHits();
            case PRIME -> !words.pointsMakeRow(one.get(motive).points() > 0);
            default -> true;
        });
        return one.size() > 1 && one.containsKey(Motive.POINT) ? one : Map.of();
    }

    /** Causes besides the main ones, and merits, are worth a sentence from so many points on. */
    private double notable(double part) {
        return Math.max(Causes.NOTABLE_POINTS, part * chances.sum());
    }

    private List<Cause> others(List<Cause> main) {
        List<Cause> rest =
                told.keySet().stream().filter(cause -> !main.contains(cause)).collect(Collectors.toList());
        List<Cause> notable = rest.stream()
                .filter(cause -> cause.points() >= notable(Causes.NOTABLE_PART))
                .limit(OTHERS)
                .collect(Collectors.toList());
        return notable.isEmpty()
                ? rest.stream()
                        .limit(1)
                        .filter(cause -> cause.points() >= notable(BESIDES))
                        .collect(Collectors.toList())
                : notable;
    }

    /** What the difference is made of, what gains left out if it is lost elsewhere. */
    private void chances() {
        List<String> parts = new ArrayList<>();
        part(parts, "wins", "", rival.moreWins(best), chances.wins());
        part(parts, "wins", " gammons", rival.moreGammons(best), chances.gammonsWon());
        part(parts, "loses", " gammons", rival.moreGammonsLost(best), chances.gammonsLost());
        if (!parts.isEmpty()) {
            said.add("Of 100 games it " + Phrases.list(parts) + ".");
        }
    }

    private static void part(List<String> parts, String does, String what, double more, double points) {
        String size = Numbers.percent(Math.abs(more));
        // What counts nothing is not said: gammons at some scores, and what is 0.0 when printed.
        if (!size.equals("0.0") && Math.abs(points) >= 0.0005) {
            parts.add(does + " " + size + (more > 0 ? " more" : " fewer") + what + " (" + (points > 0 ? "-" : "+")
                    + Numbers.thousandths(Math.abs(points)) + (parts.isEmpty() ? " points)" : ")"));
        }
    }

    private void rolls() {
        List<Swing> worse = rival.swings().worseThan(best.swings(), ROLLS);
        double few = worse.stream()
                .mapToDouble(swing -> -swing.change() * swing.roll().ways() / THROWS)
                .sum();
        double all = best.swings().mean() - rival.swings().mean();
        boolean moves = worse.stream().noneMatch(swing -> swing.reply().steps().isEmpty());
        if (moves && worse.size() == ROLLS && all > Causes.NOTABLE_POINTS && few >= FEW_MAKE_IT * all) {
            said.add("Three rolls of the opponent make most of it: "
                    + Phrases.list(worse.stream()
                            .map(swing ->
                                    swing.roll() + " (" + swing.reply() + ", " + PlayWords.size(swing) + " worse)")
                            .collect(Collectors.toList()))
                    + ".");
        }
    }

    private void merits() {
        List<Cause> merits = told.keySet().stream()
                .filter(cause -> -cause.points() >= notable(Causes.NOTABLE_PART))
                .sorted(Comparator.comparingDouble(Cause::points))
                .limit(OTHERS)
                .collect(Collectors.toList());
        clauses(merits, merits).forEach(clause -> said.add("For it: " + clause + "."));
    }
}
