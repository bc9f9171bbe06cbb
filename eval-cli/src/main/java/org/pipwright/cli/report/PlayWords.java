package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.explain.Blot;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Exposure;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Prime;
import org.pipwright.engine.explain.Swing;

/** What a play does, in short sentences about "it". */
final class PlayWords {
    /** From so many points on a row is worth a word (common practice, no source). */
    static final int PRIME = 4;

    /** What the next turn may bring. */
    static final String NEW_POINT = "another good point (3 to 7, 18 to 22)";

    /** How many of the opponent's rolls are named at either end. */
    private static final int ROLLS = 3;

    private PlayWords() {}

    /** What it does to the board and the chances, and which rolls of the opponent matter. */
    static List<String> sentences(ExplainedPlay play) {
        List<String> said = facts(play);
        rolls("best", "cost", play.swings().feared(ROLLS), said);
        rolls("worst", "bring", play.swings().hoped(ROLLS), said);
        return said;
    }

    /** What it does to the board and the chances. */
    static List<String> facts(ExplainedPlay play) {
        List<String> said = new ArrayList<>();
        PlayFacts facts = play.facts();
        points(facts, said);
        checkers(facts, said);
        if (facts.after().contact()) {
            blots(facts.exposure(), said);
            newPoints(facts, said);
            prime(facts, said);
            timing(facts, said);
            anchors(facts, said);
        }
        if (facts.exposure().idle() > 0) {
            said.add("The opponent cannot move with "
                    + Phrases.rolls(facts.exposure().idle()) + ".");
        }
        if (!facts.play().next().finished()) {
            said.add("After it the race is " + facts.after().pips() + " to "
                    + facts.after().theirPips() + ": "
                    + Phrases.lead(facts.after().lead()) + ".");
            said.add(chances(play.ranked().outcomes(), play));
        }
        return said;
    }

    private static void points(PlayFacts facts, List<String> said) {
        boolean makes = !facts.made().isEmpty();
        boolean breaks = !facts.broken().isEmpty();
        if (makes || breaks) {
            said.add("It " + (makes ? "makes " + Phrases.pointsAndAnchors(facts.made()) : "")
                    + (makes && breaks ? " and " : "")
                    + (breaks ? "gives up " + Phrases.pointsAndAnchors(facts.broken()) : "") + ".");
        }
    }

    private static void checkers(PlayFacts facts, List<String> said) {
        if (facts.hits() > 0) {
            said.add("It hits " + Phrases.some(facts.hits(), "checker") + ", which costs the opponent "
                    + Phrases.count(facts.pipsTaken(), "pip") + ".");
        }
        if (facts.borneOff() > 0) {
            said.add("It bears off " + Phrases.some(facts.borneOff(), "checker") + ".");
        }
    }

    private static void blots(Exposure exposure, List<String> said) {
        List<Blot> blots = Phrases.fromTheHighest(exposure.blots());
        if (blots.isEmpty()) {
            said.add("It leaves no blot.");
            return;
        }
        String where = Phrases.numbered(blots.size(), "blot") + " on " + Phrases.points(Phrases.where(blots));
        if (exposure.shots() == 0) {
            said.add("It leaves " + where + ", which no roll hits at once.");
            return;
        }
        boolean one = blots.size() == 1;
        said.add("It leaves " + where + "; " + Phrases.each(blots, Blot::shots) + " of 36 rolls hit "
                + (one ? "it" : "them") + ", which loses " + Phrases.each(blots, Blot::pips)
                + (one && blots.get(0).pips() == 1 ? " pip." : " pips."));
        said.add("On average the opponent's next roll can take " + Numbers.tenths(exposure.risk()) + " pips.");
    }

    private static void newPoints(PlayFacts facts, List<String> said) {
        if (facts.newPoints() > 0) {
            said.add("Left alone, it makes " + NEW_POINT + " with " + Phrases.rolls(facts.newPoints()) + ".");
        }
    }

    private static void prime(PlayFacts facts, List<String> said) {
        Prime now = facts.after().prime();
        Prime was = facts.before().prime();
        if (now.length() >= PRIME) {
            said.add("It holds a prime of " + now.length() + " points, from " + now.from() + " to "
                    + (now.from() + now.length() - 1) + ", with " + Phrases.count(now.trapped(), "checker")
                    + " behind it"
                    + (was.length() == now.length()
                            ? "."
                            : "; before, the longest such row had " + was.length() + "."));
        } else if (was.length() >= PRIME) {
            said.add("The prime of " + was.length() + " points is gone; the longest row with a checker behind it has "
                    + now.length() + ".");
        }
        Prime theirs = facts.after().theirPrime();
        if (theirs.length() >= PRIME) {
            said.add("The opponent has a prime of " + theirs.length() + " points with "
                    + Phrases.count(theirs.trapped(), "checker") + " of this side behind it.");
        }
    }

    /** Where one side blocks the other, who must break first counts. */
    private static void timing(PlayFacts facts, List<String> said) {
        if (Math.max(facts.after().prime().length(), facts.after().theirPrime().length()) >= PRIME) {
            int mine = facts.plans().spread().spare();
            said.add("Before a point from 4 to 8 breaks it has " + (mine == 0 ? "no pips" : Phrases.count(mine, "pip"))
                    + " to play, the opponent "
                    + Phrases.orNone(facts.plans().theirSpread().spare()) + ".");
        }
    }

    private static void anchors(PlayFacts facts, List<String> said) {
        List<Integer> kept = new ArrayList<>(facts.after().mine().anchors());
        kept.removeAll(facts.made());
        if (!kept.isEmpty()) {
            said.add("It keeps " + (kept.size() == 1 ? "the anchor on " : "the anchors on ") + Phrases.points(kept)
                    + ".");
        }
    }

    private static String chances(Outcomes outcomes, ExplainedPlay play) {
        String wins = "It wins " + Numbers.percent(outcomes.win()) + " % of the games";
        return gammonsHappen(play.gammonsWon() + play.gammonsLost())
                ? wins + ", " + Numbers.percent(play.gammonsWon()) + " % with a gammon or more, and loses "
                        + Numbers.percent(play.gammonsLost()) + " % that way."
                : wins + "; gammons no longer happen.";
    }

    /** Whether their chance is not 0 when printed. */
    static boolean gammonsHappen(double chance) {
        return chance >= 0.0005;
    }

    /** Rolls that change nothing, as printed, are not named. */
    private static void rolls(String which, String does, List<Swing> all, List<String> said) {
        List<Swing> rolls =
                all.stream().filter(swing -> !size(swing).equals("0.000")).collect(Collectors.toList());
        if (rolls.isEmpty()) {
            return;
        }
        Swing first = rolls.get(0);
        if (first.reply().steps().isEmpty()) {
            said.add("The opponent's " + which + " rolls are those with which it cannot move: they " + does + " "
                    + size(first) + " points against the mean of all rolls.");
            return;
        }
        StringBuilder text = new StringBuilder("The opponent's " + which + " roll is " + first.roll() + " ("
                + first.reply() + "): it " + does + "s " + size(first) + " points against the mean of all rolls");
        for (int i = 1; i < rolls.size(); i++) {
            Swing next = rolls.get(i);
            text.append(i == 1 ? "; " : ", ").append(next.roll()).append(i == 1 ? " " + does + "s " : " ");
            text.append(size(next));
        }
        said.add(text.append('.').toString());
    }

    static String size(Swing swing) {
        return Numbers.thousandths(Math.abs(swing.change()));
    }
}
