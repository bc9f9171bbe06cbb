package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Prime;
import org.pipwright.engine.explain.Stage;

/**
 * How a weaker play ("it") differs from the best in one kind of fact, as a clause. Only what differs in the numbers that are
 * printed is said; a kind that has nothing to show is empty.
 */
final class MotiveWords {
    /** Points from here on are the opponent's bar point and its home: anchors, as the word is used here. */
    private static final int ANCHORS = 18;

    private final ExplainedPlay bestPlay;
    private final ExplainedPlay itsPlay;
    private final PlayFacts best;
    private final PlayFacts it;
    private boolean against;

    MotiveWords(ExplainedPlay best, ExplainedPlay it) {
        this.bestPlay = best;
        this.itsPlay = it;
        this.best = best.facts();
        this.it = it.facts();
    }

    /** The clause about a kind of fact that speaks against the weaker play, or for it; what speaks the other way is left out. */
    Optional<String> clause(Motive motive, boolean speaksAgainst) {
        against = speaksAgainst;
        List<String> parts = new ArrayList<>();
        switch (motive) {
            case POINT -> points(parts);
            case ANCHOR -> anchors(parts);
            case HIT -> hits(parts);
            case SHOTS -> new HitWords(bestPlay, itsPlay, against).clause().ifPresent(parts::add);
            case ENTRY -> entry(parts);
            case PRIME -> prime(parts);
            case ESCAPE -> escape(parts);
            case BUILDERS -> builders(parts);
            case TIMING ->
                differs(
                        parts,
                        true,
                        "it has %s instead of %s to play before one of its points from 4 to 8 breaks",
                        it.plans().spread().spare(),
                        best.plans().spread().spare(),
                        "pip");
            case NEXT_SHOTS -> nextShots(parts);
            case WAITING ->
                rolls(
                        parts,
                        true,
                        "the opponent must leave a shot with",
                        it.plans().theirNextShots(),
                        best.plans().theirNextShots());
            case SPREAD -> spread(parts);
            case HOME_BLOTS ->
                differs(
                        parts,
                        false,
                        "it has %s instead of %s in its home",
                        it.plans().spread().homeBlots(),
                        best.plans().spread().homeBlots(),
                        "blot");
            case NUMBERS -> numbers(parts);
            case OFF -> off(parts);
            case RACE ->
                differs(
                        parts,
                        false,
                        "it has %s instead of %s left to bear off",
                        it.after().pips(),
                        best.after().pips(),
                        "pip");
            case SAVE ->
                differs(
                        parts,
                        false,
                        "it has %s instead of %s to go before it can bear off a checker and save the gammon",
                        it.toHome(),
                        best.toHome(),
                        "pip");
            default -> {}
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(Phrases.list(parts));
    }

    /** Points below the anchors that one of the plays holds alone. */
    private void points(List<String> parts) {
        List<Integer> missing = held(best, it, point -> point < ANCHORS);
        List<Integer> extra = held(it, best, point -> point < ANCHORS);
        List<String> extras = new ArrayList<>();
        does(extras, "makes", extra, it.made()::contains);
        does(extras, "keeps", extra, point -> !it.made().contains(point));
        if (against) {
            // Pointing on a blot is one idea: what is not hit is said with the point.
            does(parts, "does not hit and make", missing, this::pointsOnBlot);
            does(parts, "does not make", missing, point -> best.made().contains(point) && !pointsOnBlot(point));
            does(parts, "gives up", missing, point -> !best.made().contains(point));
        }
        one(parts, extras);
    }

    /** Whether the best play makes a point by a hit there, and this one hits nothing. */
    private boolean pointsOnBlot(int point) {
        return it.hits() == 0
                && best.made().contains(point)
                && best.play().steps().stream().anyMatch(step -> step.hit() && step.to() == point);
    }

    /** Whether the clause about points says as well that this play hits nothing. */
    boolean pointsTellHits() {
        return held(best, it, point -> point < ANCHORS).stream().anyMatch(this::pointsOnBlot);
    }

    /** Whether points that one of the plays holds alone make its row the longer one: two facts, but one cause. */
    boolean pointsMakeRow(boolean speaksAgainst) {
        PlayFacts longer = speaksAgainst ? best : it;
        PlayFacts shorter = speaksAgainst ? it : best;
        Prime row = longer.after().prime();
        return row.length() > shorter.after().prime().length()
                && held(longer, shorter, point -> point < ANCHORS).stream()
                        .anyMatch(point -> point >= row.from() && point < row.from() + row.length());
    }

    /** What a play lacks and what it has instead, or what it has, as one clause. */
    private void one(List<String> parts, List<String> extras) {
        if (against && !parts.isEmpty()) {
            String lacks = "it " + Phrases.list(parts);
            parts.clear();
            parts.add(extras.isEmpty() ? lacks : lacks + " (it " + Phrases.list(extras) + ")");
        } else if (!against && !extras.isEmpty()) {
            parts.add("it " + Phrases.list(extras));
        }
    }

    private static void does(List<String> parts, String verb, List<Integer> points, IntPredicate which) {
        List<Integer> chosen = points.stream().filter(which::test).collect(Collectors.toList());
        if (!chosen.isEmpty()) {
            parts.add(verb + " " + Phrases.points(chosen));
        }
    }

    private void anchors(List<String> parts) {
        List<String> extras = new ArrayList<>();
        anchor(extras, "makes", "keeps", held(it, best, point -> point >= ANCHORS), it);
        if (against) {
            anchor(parts, "does not make", "gives up", held(best, it, point -> point >= ANCHORS), best);
        }
        one(parts, extras);
    }

    private static void anchor(List<String> parts, String made, String kept, List<Integer> points, PlayFacts holder) {
        if (!points.isEmpty()) {
            boolean fresh = holder.made().containsAll(points);
            parts.add((fresh ? made : kept) + " the anchor" + (points.size() == 1 ? "" : "s") + " on "
                    + Phrases.points(points));
        }
    }

    private static List<Integer> held(PlayFacts one, PlayFacts other, IntPredicate which) {
        return one.after().mine().made().stream()
                .filter(point -> !other.after().mine().made().contains(point) && which.test(point))
                .collect(Collectors.toList());
    }

    private void hits(List<String> parts) {
        if (it.hits() == 0 && best.hits() > 0 && against) {
            parts.add("it does not hit");
        } else if (says(true, it.hits(), best.hits())) {
            parts.add("it hits " + Phrases.some(it.hits(), "checker")
                    + (best.hits() == 0 ? "" : " instead of " + best.hits()));
        } else if (it.hits() == best.hits() && says(true, it.pipsTaken(), best.pipsTaken())) {
            parts.add("its hit costs the opponent " + Phrases.count(it.pipsTaken(), "pip") + " instead of "
                    + best.pipsTaken());
        }
    }

    /** Rolls that make a point, and how many different numbers work: the fewer are the same, the better. */
    private void builders(List<String> parts) {
        if (says(true, it.newPoints(), best.newPoints())) {
            parts.add((it.newPoints() == 36 ? "all" : Phrases.orNone(it.newPoints())) + " of its own next 36 rolls"
                    + " instead of " + Phrases.ofAll(best.newPoints()) + (it.newPoints() == 1 ? " makes " : " make ")
                    + PlayWords.NEW_POINT + " if it is left alone");
        }
        int good = it.plans().numbers().good();
        int others = best.plans().numbers().good();
        // With both said, the same cause would be told twice.
        if (parts.isEmpty() && says(true, good, others)) {
            parts.add((good == 0 ? "no number" : Phrases.count(good, "number")) + " of a die "
                    + (good < 2 ? "hits or covers" : "hit or cover") + " something for it instead of "
                    + Phrases.orNone(others));
        }
    }

    private void entry(List<String> parts) {
        int onBar = it.after().theirs().onBar();
        int enters = it.plans().entry().enters();
        int others = best.plans().entry().enters();
        if (onBar > 0 && onBar == best.after().theirs().onBar()) {
            rolls(parts, false, "the opponent comes in from the bar with", enters, others);
        } else if (onBar == 0) {
            rolls(
                    parts,
                    true,
                    "the opponent cannot move with",
                    it.exposure().idle(),
                    best.exposure().idle());
        }
    }

    private void prime(List<String> parts) {
        Prime mine = it.after().prime();
        Prime other = best.after().prime();
        if (Math.max(mine.length(), other.length()) >= PlayWords.PRIME - 1) {
            if (says(true, mine.length(), other.length())) {
                parts.add(
                        "it has " + inARow(mine.length(), "no") + " points in a row in front of the opponent's checkers"
                                + " instead of " + inARow(other.length(), "none"));
            } else if (mine.length() == other.length() && says(true, mine.trapped(), other.trapped())) {
                parts.add("its row of " + mine.length() + " points holds " + Phrases.count(mine.trapped(), "checker")
                        + " instead of " + other.trapped());
            }
        }
        int escapes = it.plans().theirEscape().escapes();
        int others = best.plans().theirEscape().escapes();
        if (it.plans().theirEscape().behind() > 0 && best.plans().theirEscape().behind() > 0) {
            rolls(parts, false, "the opponent gets a checker out from behind the row with", escapes, others);
        }
    }

    /** A row is of two points at least. */
    private static String inARow(int length, String none) {
        return length < 2 ? none : String.valueOf(length);
    }

    private void escape(List<String> parts) {
        int back = it.after().mine().checkersBack();
        int bestBack = best.after().mine().checkersBack();
        if (says(false, back, bestBack)) {
            parts.add("it has " + Phrases.numberOf(back, "checker") + " back instead of " + Phrases.orNone(bestBack));
        }
        int row = it.after().theirPrime().length();
        if (it.plans().escape().behind() > 0) {
            rolls(
                    parts,
                    true,
                    "its next roll gets one past the opponent's row of " + row + " with",
                    it.plans().escape().escapes(),
                    best.plans().escape().escapes());
        }
    }

    private void nextShots(List<String> parts) {
        int shots = it.plans().nextShots();
        int others = best.plans().nextShots();
        if (says(false, shots, others)) {
            parts.add(Phrases.orNone(shots) + " of its own next 36 rolls "
                    + (shots == 1 ? "leaves" : "leave") + " a shot however they are played instead of "
                    + Phrases.orNone(others));
        }
    }

    private void spread(List<String> parts) {
        // Fewer there because more went off are told as that.
        if (!says(true, it.borneOff(), best.borneOff())) {
            differs(
                    parts,
                    false,
                    it.stage() == Stage.RACE
                            ? "it has %s instead of %s on its 1 and 2 points"
                            : "it has %s instead of %s buried on its 1 and 2 points",
                    it.plans().spread().buried(),
                    best.plans().spread().buried(),
                    "checker");
        }
        differs(
                parts,
                false,
                "%s instead of %s stacked beyond the third on a point",
                it.plans().spread().stacked(),
                best.plans().spread().stacked(),
                "checker");
        // Empty points count where it comes to bringing home and bearing off.
        if (it.stage() != Stage.CONTACT) {
            differs(
                    parts,
                    false,
                    "%s instead of %s empty in its home",
                    it.plans().spread().gaps(),
                    best.plans().spread().gaps(),
                    "point");
        }
        if (!parts.isEmpty() && !parts.get(0).startsWith("it ")) {
            parts.set(0, "it has " + parts.get(0));
        }
    }

    private void numbers(List<String> parts) {
        int good = it.plans().theirNumbers().good();
        int others = best.plans().theirNumbers().good();
        if (says(false, good, others)) {
            parts.add(Phrases.numberOf(good, "number") + " of a die " + (good < 2 ? "hits or covers" : "hit or cover")
                    + " something for the opponent instead of " + Phrases.orNone(others));
        }
    }

    private void off(List<String> parts) {
        if (says(true, it.borneOff(), best.borneOff())) {
            parts.add(
                    it.borneOff() == 0
                            ? "it bears no checker off" + (best.borneOff() == 1 ? "" : " instead of " + best.borneOff())
                            : "it bears off " + Phrases.count(it.borneOff(), "checker")
                                    + (best.borneOff() == 0 ? "" : " instead of " + best.borneOff()));
        } else {
            differs(
                    parts,
                    false,
                    "it needs %s instead of %s to bear everything off",
                    it.crossovers(),
                    best.crossovers(),
                    "crossover");
        }
    }

    private void rolls(List<String> parts, boolean moreIsBetter, String what, int rolls, int others) {
        if (says(moreIsBetter, rolls, others)) {
            parts.add(what + " " + Phrases.rolls(rolls) + " instead of " + Phrases.ofAll(others));
        }
    }

    private void differs(List<String> parts, boolean moreIsBetter, String clause, int number, int other, String what) {
        if (says(moreIsBetter, number, other)) {
            parts.add(String.format(Locale.ROOT, clause, Phrases.numberOf(number, what), Phrases.orNone(other)));
        }
    }

    /** Whether a difference speaks the way that was asked for. */
    private boolean says(boolean moreIsBetter, int number, int other) {
        return number != other && number > other == (moreIsBetter != against);
    }
}
