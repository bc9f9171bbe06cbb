package org.pipwright.cli.report;

import java.util.Comparator;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import org.pipwright.engine.explain.Blot;
import org.pipwright.engine.explain.PlayFacts;

/** Lists, counts and points in words. */
final class Phrases {
    private Phrases() {}

    /** Such as {@code a, b and c}. */
    static String list(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }

    /** A list behind what leads to it; empty if it is. */
    static String named(String before, List<String> words) {
        return words.isEmpty() ? "" : before + list(words);
    }

    /** A fact with a capital letter and a full stop. */
    static String sentence(String fact) {
        return Character.toUpperCase(fact.charAt(0)) + fact.substring(1) + ".";
    }

    /** Such as {@code 1 checker} or {@code 2 checkers}. */
    static String count(int number, String what) {
        return number + " " + what + (number == 1 ? "" : "s");
    }

    /** The same, or such as {@code no checker}. */
    static String numberOf(int number, String what) {
        return number == 0 ? "no " + what : count(number, what);
    }

    /** Such as {@code 2} or {@code none}. */
    static String orNone(int number) {
        return number == 0 ? "none" : String.valueOf(number);
    }

    /** The same of the 36 throws, such as {@code 35} or {@code all}. */
    static String ofAll(int rolls) {
        return rolls == 36 ? "all" : orNone(rolls);
    }

    /** Such as {@code 35 of 36 rolls} or {@code all 36 rolls}. */
    static String rolls(int rolls) {
        return (rolls == 36 ? "all 36" : orNone(rolls) + " of 36") + " rolls";
    }

    /** Such as {@code a checker} or {@code 2 checkers}. */
    static String some(int number, String what) {
        return number == 1 ? "a " + what : count(number, what);
    }

    /** Such as {@code a blot} or {@code blots}. */
    static String numbered(int number, String what) {
        return number == 1 ? "a " + what : what + "s";
    }

    /** Such as {@code 22, 24 and 2}: a number of each blot. */
    static String each(List<Blot> blots, ToIntFunction<Blot> number) {
        return list(blots.stream()
                .map(blot -> String.valueOf(number.applyAsInt(blot)))
                .collect(Collectors.toList()));
    }

    /** The blots that have come the shortest way first, as points are named. */
    static List<Blot> fromTheHighest(List<Blot> blots) {
        return blots.stream()
                .sorted(Comparator.comparingInt(blot -> -blot.point()))
                .collect(Collectors.toList());
    }

    /** Where blots stand. */
    static List<Integer> where(List<Blot> blots) {
        return blots.stream().map(Blot::point).collect(Collectors.toList());
    }

    /** Such as {@code the 5 point} or {@code the 8, 5 and 4 points}, the highest first. */
    static String points(List<Integer> points) {
        List<String> names =
                points.stream().sorted((a, b) -> b - a).map(String::valueOf).collect(Collectors.toList());
        return "the " + list(names) + (points.size() == 1 ? " point" : " points");
    }

    /** The same, with a word about those that are anchors. */
    static String pointsAndAnchors(List<Integer> points) {
        List<Integer> anchors = points.stream().filter(PlayFacts::anchor).collect(Collectors.toList());
        if (anchors.isEmpty()) {
            return points(points);
        }
        String which = anchors.size() == points.size()
                ? (anchors.size() == 1 ? "an anchor" : "anchors")
                : points(anchors) + (anchors.size() == 1 ? " an anchor" : " anchors");
        return points(points) + " (" + which + ")";
    }

    /** Who is ahead in the race, such as {@code a lead of 12 pips}. */
    static String lead(int lead) {
        return lead == 0 ? "no lead" : (lead > 0 ? "a lead of " : "a deficit of ") + count(Math.abs(lead), "pip");
    }
}
