package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import org.pipwright.engine.explain.Blot;
import org.pipwright.engine.explain.Exposure;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Prime;

/**
 * How a weaker play ("it") differs from the best in one kind of fact, as a clause. Only what differs in the numbers that are
 * printed is said; a kind that has nothing to show is empty.
 */
final class MotiveWords {
    /** Points from here on are the opponent's bar point and its home: anchors, as the word is used here. */
    private static final int ANCHORS = 18;

    private final PlayFacts best;
    private final PlayFacts it;
    private boolean against;

    MotiveWords(PlayFacts best, PlayFacts it) {
        this.best = best;
        this.it = it;
    }

    /** The clause about a kind of fact that speaks against the weaker play, or for it; what speaks the other way is left out. */
    Optional<String> clause(Motive motive, boolean speaksAgainst) {
        against = speaksAgainst;
        List<String> parts = new ArrayList<>();
        switch (motive) {
            case POINT -> points(parts);
            case ANCHOR -> anchors(parts);
            case HIT -> hits(parts);
            case SHOTS -> shots(parts);
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
            does(parts, "does not make", missing, best.made()::contains);
            does(parts, "gives up", missing, point -> !best.made().contains(point));
        }
        one(parts, extras);
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

    private void shots(List<String> parts) {
        Exposure mine = it.exposure();
        Exposure other = best.exposure();
        String risk = Numbers.tenths(mine.risk());
        boolean otherRisk = !risk.equals(Numbers.tenths(other.risk()));
        String taken = " take " + size(mine, " pips on average") + " instead of " + size(other, "");
        boolean fewer = mine.costly() < other.costly() && mine.risk() > other.risk();
        if (mine.costly() == 0 && other.costly() > 0) {
            parts.add("none of the opponent's 36 rolls hits" + where(mine) + " instead of " + other.costly());
        } else if (mine.costly() != other.costly()) {
            parts.add("the opponent hits with " + (mine.costly() == 36 ? "all" : mine.costly() + " of its 36")
                    + " rolls"
                    + where(mine) + " instead of "
                    + Phrases.ofAll(other.costly())
                    + (other.costly() != 0 && otherRisk ? (fewer ? ", but its hits" : ", and its hits") + taken : ""));
        } else if (otherRisk) {
            parts.add("the opponent's hits" + where(mine) + taken);
        }
    }

    /** What hits take, in words where it is nothing when printed. */
    private static String size(Exposure exposure, String unit) {
        String risk = Numbers.tenths(exposure.risk());
        return risk.equals("0.0") ? exposure.shots() == 0 ? "nothing" : "hardly anything" : risk + unit;
    }

    /** The blots whose loss counts, and that the rolls do not count what hits the others. */
    private static String where(Exposure exposure) {
        List<Blot> hit = Phrases.fromTheHighest(exposure.blots().stream()
                .filter(blot -> blot.shots() > 0 && blot.pips() >= Exposure.DEAR)
                .collect(Collectors.toList()));
        List<String> said = new ArrayList<>();
        if (!hit.isEmpty()) {
            said.add(Phrases.numbered(hit.size(), "blot") + " on " + Phrases.points(Phrases.where(hit)));
        }
        if (exposure.costly() != exposure.shots()) {
            said.add("cheap hits on its 1 to 3 points left out");
        }
        return said.isEmpty() ? "" : " (" + String.join("; ", said) + ")";
    }

    /** Rolls that make a point, and how many different numbers work: the fewer are the same, the better. */
    private void builders(List<String> parts) {
        rolls(
                parts,
                true,
                "left alone, it makes another good point (3 to 7, 18 to 22) with",
                it.newPoints(),
                best.newPoints());
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
                parts.add("its longest row of points with a checker behind it has " + mine.length() + " instead of "
                        + other.length());
            } else if (mine.length() == other.length() && says(true, mine.trapped(), other.trapped())) {
                parts.add("its row of " + mine.length() + " points holds " + Phrases.count(mine.trapped(), "checker")
                        + " instead of " + other.trapped());
            }
        }
        int escapes = it.plans().theirEscape().escapes();
        int others = best.plans().theirEscape().escapes();
        if (it.plans().theirEscape().behind() > 0 && best.plans().theirEscape().behind() > 0) {
            rolls(parts, false, "the opponent gets a checker out from behind it with", escapes, others);
        }
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
        differs(
                parts,
                false,
                "it has %s instead of %s on its 1 and 2 points",
                it.plans().spread().buried(),
                best.plans().spread().buried(),
                "checker");
        differs(
                parts,
                false,
                "%s instead of %s stacked beyond the third on a point",
                it.plans().spread().stacked(),
                best.plans().spread().stacked(),
                "checker");
        differs(
                parts,
                false,
                "%s instead of %s empty in its home",
                it.plans().spread().gaps(),
                best.plans().spread().gaps(),
                "point");
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
            parts.add("it bears off " + Phrases.numberOf(it.borneOff(), "checker") + " instead of "
                    + Phrases.orNone(best.borneOff()));
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
            parts.add(what + " " + Phrases.orNone(rolls) + " of 36 rolls instead of " + Phrases.ofAll(others));
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
