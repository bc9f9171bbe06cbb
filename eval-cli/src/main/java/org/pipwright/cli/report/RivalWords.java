package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.explain.Blot;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Exposure;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Prime;
import org.pipwright.engine.explain.Swing;

/**
 * How a rival differs from the best play, in short sentences about the rival: first what the best play has that it lacks,
 * then what speaks for it.
 */
final class RivalWords {
    /** Smaller differences between numbers of rolls, of 36, are not worth a sentence. */
    private static final int NOTABLE_ROLLS = 3;

    /** Likewise of pips that a roll can take on average. */
    private static final double NOTABLE_PIPS = 0.5;

    private static final int ROLLS = 3;

    private final PlayFacts best;
    private final PlayFacts rival;
    private final List<String> against = new ArrayList<>();
    private final List<String> inFavour = new ArrayList<>();

    private RivalWords(PlayFacts best, PlayFacts rival) {
        this.best = best;
        this.rival = rival;
    }

    static List<String> sentences(ExplainedPlay best, ExplainedPlay rival) {
        RivalWords words = new RivalWords(best.facts(), rival.facts());
        words.points();
        words.checkers();
        words.blots();
        words.newPoints();
        words.primes();
        words.race();
        words.chances(best, rival);
        words.rolls(rival.swings().worseThan(best.swings(), ROLLS));
        return words.all();
    }

    private List<String> all() {
        List<String> all = new ArrayList<>();
        if (against.isEmpty()) {
            all.add("What it lacks is none of what is counted here: it shows later in the game.");
        }
        against.forEach(fact -> all.add(Phrases.sentence(fact)));
        inFavour.forEach(fact -> all.add("For it: " + fact + "."));
        return all;
    }

    private void say(boolean isAgainst, String fact) {
        (isAgainst ? against : inFavour).add(fact);
    }

    private void points() {
        List<Integer> gained = without(rival, best);
        List<Integer> missing = without(best, rival);
        if (!missing.isEmpty()) {
            against.add("it does not have " + Phrases.pointsAndAnchors(missing));
        }
        if (!gained.isEmpty()) {
            inFavour.add("it has " + Phrases.pointsAndAnchors(gained));
        }
    }

    private static List<Integer> without(PlayFacts one, PlayFacts other) {
        return one.after().mine().made().stream()
                .filter(point -> !other.after().mine().made().contains(point))
                .collect(Collectors.toList());
    }

    private void checkers() {
        if (rival.hits() != best.hits()) {
            say(
                    rival.hits() < best.hits(),
                    rival.hits() == 0
                            ? "it does not hit"
                            : "it hits " + Phrases.some(rival.hits(), "checker")
                                    + (best.hits() == 0 ? "" : " instead of " + best.hits()));
        }
        if (rival.borneOff() != best.borneOff()) {
            say(
                    rival.borneOff() < best.borneOff(),
                    "it bears off " + Phrases.count(rival.borneOff(), "checker") + " instead of " + best.borneOff());
        }
        int back = rival.after().mine().checkersBack();
        int bestBack = best.after().mine().checkersBack();
        if (back != bestBack && rival.after().contact()) {
            say(back > bestBack, "it has " + Phrases.count(back, "checker") + " back instead of " + bestBack);
        }
    }

    private void blots() {
        Exposure mine = rival.exposure();
        double more = mine.risk() - best.exposure().risk();
        if (Math.abs(more) >= NOTABLE_PIPS) {
            say(
                    more > 0,
                    "the opponent's next roll can take " + Numbers.tenths(mine.risk()) + " pips on average instead of "
                            + Numbers.tenths(best.exposure().risk()) + hitBy(mine));
        }
        int idle = mine.idle() - best.exposure().idle();
        if (idle != 0) {
            say(
                    idle < 0,
                    "the opponent cannot move with " + mine.idle() + " of 36 rolls instead of "
                            + best.exposure().idle());
        }
    }

    /** Which blots are hit, and how often. */
    private static String hitBy(Exposure exposure) {
        List<Blot> hit = Phrases.fromTheHighest(
                exposure.blots().stream().filter(blot -> blot.shots() > 0).collect(Collectors.toList()));
        return hit.isEmpty()
                ? ""
                : ", from " + Phrases.numbered(hit.size(), "blot") + " on " + Phrases.points(Phrases.where(hit)) + " ("
                        + Phrases.each(hit, Blot::shots) + " of 36 rolls)";
    }

    private void newPoints() {
        int more = rival.newPoints() - best.newPoints();
        // A point already made is worth more than one to come.
        boolean made = without(more > 0 ? best : rival, more > 0 ? rival : best).stream()
                .anyMatch(PlayFacts::good);
        if (Math.abs(more) >= NOTABLE_ROLLS && !made) {
            say(
                    more < 0,
                    "left alone, it makes " + PlayWords.NEW_POINT + " with " + rival.newPoints()
                            + " of 36 rolls instead of " + best.newPoints());
        }
    }

    private void primes() {
        row(
                "its longest row of points with a checker behind it",
                rival.after().prime(),
                best.after().prime(),
                true);
        row(
                "the opponent's longest row against it",
                rival.after().theirPrime(),
                best.after().theirPrime(),
                false);
    }

    private void row(String what, Prime row, Prime other, boolean wanted) {
        if (!row.equals(other) && Math.max(row.length(), other.length()) >= PlayWords.PRIME) {
            boolean less =
                    row.length() < other.length() || row.length() == other.length() && row.trapped() < other.trapped();
            say(less == wanted, what + " has " + row(row) + " instead of " + row(other));
        }
    }

    private static String row(Prime prime) {
        return prime.length() + " (" + prime.trapped() + " behind)";
    }

    private void race() {
        int lead = rival.after().lead();
        int other = best.after().lead();
        if (lead != other) {
            say(lead < other, "in the race it has " + Phrases.lead(lead) + ", the best play " + Phrases.lead(other));
        }
    }

    private void chances(ExplainedPlay bestPlay, ExplainedPlay rivalPlay) {
        List<String> worse = new ArrayList<>();
        List<String> better = new ArrayList<>();
        part("wins", "", rivalPlay.moreWins(bestPlay), true, worse, better);
        part("wins", " gammons", rivalPlay.moreGammons(bestPlay), true, worse, better);
        part("loses", " gammons", rivalPlay.moreGammonsLost(bestPlay), false, worse, better);
        if (!worse.isEmpty()) {
            against.add("of 100 games it " + Phrases.list(worse));
        }
        if (!better.isEmpty()) {
            inFavour.add("of 100 games it " + Phrases.list(better));
        }
    }

    private static void part(
            String does, String what, double more, boolean wanted, List<String> worse, List<String> better) {
        String size = Numbers.percent(Math.abs(more));
        if (!size.equals("0.0")) {
            (more > 0 == wanted ? better : worse).add(does + " " + size + (more > 0 ? " more" : " fewer") + what);
        }
    }

    private void rolls(List<Swing> worse) {
        if (worse.isEmpty()) {
            return;
        }
        Swing first = worse.get(0);
        String others = worse.stream()
                .skip(1)
                .map(swing -> ", " + PlayWords.size(swing) + " against " + swing.roll())
                .collect(Collectors.joining());
        against.add("against the opponent's " + first.roll() + " (" + first.reply() + ") it is " + PlayWords.size(first)
                + " points worse than the best play" + others);
    }
}
