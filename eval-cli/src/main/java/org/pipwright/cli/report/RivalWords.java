package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.explain.Blot;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Prime;
import org.pipwright.engine.explain.Swing;

/** How a rival differs from the best play, in short sentences about the rival. */
final class RivalWords {
    private final PlayFacts best;
    private final PlayFacts rival;
    private final List<String> said = new ArrayList<>();

    private RivalWords(PlayFacts best, PlayFacts rival) {
        this.best = best;
        this.rival = rival;
    }

    static List<String> sentences(ExplainedPlay best, ExplainedPlay rival) {
        RivalWords words = new RivalWords(best.facts(), rival.facts());
        words.points();
        words.checkers();
        words.blots();
        words.primes();
        words.race();
        words.chances(best, rival);
        words.rolls(rival.swings().feared(1));
        return words.said;
    }

    private void points() {
        List<Integer> gained = without(rival, best);
        List<Integer> missing = without(best, rival);
        if (!gained.isEmpty()) {
            said.add("It has " + Phrases.pointsAndAnchors(gained)
                    + (missing.isEmpty() ? " as well." : " instead of " + Phrases.pointsAndAnchors(missing) + "."));
        } else if (!missing.isEmpty()) {
            said.add("It does not have " + Phrases.pointsAndAnchors(missing) + ".");
        }
    }

    private static List<Integer> without(PlayFacts one, PlayFacts other) {
        return one.after().mine().made().stream()
                .filter(point -> !other.after().mine().made().contains(point))
                .collect(Collectors.toList());
    }

    private void checkers() {
        if (rival.hits() != best.hits()) {
            said.add(
                    rival.hits() == 0
                            ? "It does not hit."
                            : "It hits " + Phrases.some(rival.hits(), "checker")
                                    + (best.hits() == 0 ? "." : " instead of " + best.hits() + "."));
        }
        if (rival.borneOff() != best.borneOff()) {
            said.add("It bears off " + Phrases.count(rival.borneOff(), "checker") + " instead of " + best.borneOff()
                    + ".");
        }
    }

    private void blots() {
        int shots = rival.exposure().shots();
        if (shots != best.exposure().shots()) {
            List<Integer> hit = rival.exposure().blots().stream()
                    .filter(blot -> blot.shots() > 0)
                    .map(Blot::point)
                    .collect(Collectors.toList());
            said.add(hitBy(shots, hit) + ", instead of " + best.exposure().shots() + ".");
        }
        if (rival.exposure().idle() != best.exposure().idle()) {
            said.add("The opponent cannot move with " + rival.exposure().idle() + " of 36 rolls instead of "
                    + best.exposure().idle() + ".");
        }
    }

    private static String hitBy(int shots, List<Integer> hit) {
        if (shots == 0) {
            return "No roll hits a blot";
        }
        return shots + " of 36 rolls hit its " + (hit.size() == 1 ? "blot on " : "blots on ") + Phrases.points(hit);
    }

    private void primes() {
        Prime mine = rival.after().prime();
        Prime other = best.after().prime();
        if (!mine.equals(other) && Math.max(mine.length(), other.length()) >= PlayWords.PRIME) {
            said.add("Its longest row of points with a checker behind it has " + row(mine) + " instead of " + row(other)
                    + ".");
        }
        Prime theirs = rival.after().theirPrime();
        Prime otherTheirs = best.after().theirPrime();
        if (!theirs.equals(otherTheirs) && Math.max(theirs.length(), otherTheirs.length()) >= PlayWords.PRIME) {
            said.add("The opponent's longest row against it has " + row(theirs) + " instead of " + row(otherTheirs)
                    + ".");
        }
    }

    private static String row(Prime prime) {
        return prime.length() + " (" + prime.trapped() + " behind)";
    }

    private void race() {
        int lead = rival.after().lead();
        if (lead != best.after().lead()) {
            said.add("In the race it has " + Phrases.lead(lead) + "; the best play has "
                    + Phrases.lead(best.after().lead()) + ".");
        }
    }

    private void chances(ExplainedPlay bestPlay, ExplainedPlay rivalPlay) {
        List<String> parts = new ArrayList<>();
        part("wins", rivalPlay.moreWins(bestPlay), parts);
        part("wins", "gammons", rivalPlay.moreGammons(bestPlay), parts);
        part("loses", "gammons", rivalPlay.moreGammonsLost(bestPlay), parts);
        if (!parts.isEmpty()) {
            said.add("Of 100 games it " + Phrases.list(parts) + ".");
        }
    }

    private static void part(String does, double more, List<String> parts) {
        part(does, "", more, parts);
    }

    private static void part(String does, String what, double more, List<String> parts) {
        String size = Numbers.percent(Math.abs(more));
        if (!size.equals("0.0")) {
            parts.add(does + " " + size + (more > 0 ? " more" : " fewer") + (what.isEmpty() ? "" : " " + what));
        }
    }

    private void rolls(List<Swing> feared) {
        for (Swing swing : feared) {
            said.add("The opponent's best roll against it is " + swing.roll() + " (" + swing.reply() + "), which costs "
                    + PlayWords.size(swing) + " points.");
        }
    }
}
