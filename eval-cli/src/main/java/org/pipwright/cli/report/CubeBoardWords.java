package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.explain.BoardFacts;
import org.pipwright.engine.explain.Exposure;
import org.pipwright.engine.explain.Prime;
import org.pipwright.engine.measures.KeithCount;
import org.pipwright.engine.measures.Kleinman;
import org.pipwright.engine.position.Position;

/** What the board shows that bears on a double: the race with its rules of thumb, or what threatens whom. */
final class CubeBoardWords {
    /** Rules of thumb are for races at least so long, in pips of either side. */
    private static final int LONG = 20;

    private final CubeCase asked;
    private final Voice voice;
    private final List<String> said = new ArrayList<>();

    private CubeBoardWords(CubeCase asked, Voice voice) {
        this.asked = asked;
        this.voice = voice;
    }

    static List<String> sentences(CubeCase asked, Voice voice) {
        CubeBoardWords words = new CubeBoardWords(asked, voice);
        BoardFacts board = BoardFacts.of(asked.position());
        words.race(board);
        if (board.contact()) {
            words.contact(board);
        } else {
            words.rules();
        }
        return words.said;
    }

    private void race(BoardFacts board) {
        int lead = board.lead();
        String who = lead >= 0 ? voice.doubler("lead") : voice.answerer("lead");
        said.add("The race is " + board.pips() + " to " + board.theirPips() + ": "
                + (lead == 0
                        ? "even."
                        : who + " by " + Phrases.count(Math.abs(lead), "pip")
                                + (board.contact() || lead < 0
                                        ? "."
                                        : ", " + Numbers.percent((double) lead / board.pips()) + " % of " + board.pips()
                                                + ".")));
    }

    /** Rules of thumb beside what the chances are. */
    private void rules() {
        Position position = asked.position();
        KeithCount keith = KeithCount.of(position);
        boolean centred = asked.cube().owner() == CubeOwner.CENTRE;
        if (Math.min(position.pips(), position.opponentPips()) < LONG) {
            return;
        }
        if (position.opponentPips() > position.pips()) {
            said.add("By rule of thumb one doubles with a lead of 8 %, redoubles with 9 %, and takes up to 12 % (common"
                    + " practice).");
        }
        said.add("The Keith count is " + keith.onRoll() + " to " + keith.opponent() + ": "
                + (centred ? advice(keith.doubles(), "double") : advice(keith.redoubles(), "redouble")) + ", "
                + (keith.takes() ? "take" : "pass") + " for money.");
        String by = asked.basis() == Basis.EXACT
                ? "the exact table"
                : asked.basis() == Basis.SIMULATED
                        ? "playing it out many times"
                        : asked.basis() == Basis.DISTRIBUTIONS ? "the distributions of rolls" : "the net";
        said.add("Kleinman's formula gives " + Numbers.percent(Kleinman.win(position.pips(), position.opponentPips()))
                + " % from the pips alone, " + by + " "
                + Numbers.percent(asked.chances().win()) + " %.");
    }

    private static String advice(boolean does, String what) {
        return does ? what : "no " + what;
    }

    private void contact(BoardFacts board) {
        bar(voice.doubler("have"), board.mine().onBar());
        bar(voice.answerer("have"), board.theirs().onBar());
        row(voice.doubler("have"), board.prime());
        row(voice.answerer("have"), board.theirPrime());
        // Those of the side that is not on roll: the doubler's roll comes next.
        Exposure exposure = Exposure.of(asked.position());
        if (exposure.shots() > 0) {
            String risk = Numbers.tenths(exposure.risk());
            said.add(Phrases.sentence(voice.doubler("hit") + " with " + Phrases.rolls(exposure.shots())
                    + (risk.equals("0.0") ? "" : " and can take " + risk + " pips on average")));
        }
    }

    private void bar(String who, int onBar) {
        if (onBar > 0) {
            said.add(Phrases.sentence(who + " " + Phrases.count(onBar, "checker") + " on the bar"));
        }
    }

    private void row(String who, Prime prime) {
        if (prime.length() >= PlayWords.PRIME) {
            said.add(Phrases.sentence(who + " a prime of " + prime.length() + " points with "
                    + Phrases.count(prime.trapped(), "checker") + " behind it"));
        }
    }
}
