package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.Market;
import org.pipwright.engine.cube.MoneyStakes;

/**
 * Why a cube action is right, in short sentences: first the one that decides; then how often the market is lost and by which
 * rolls; what a take needs; what gammons count; and what the board shows.
 */
final class CubeReasons {
    private static final int THROWS = 36;

    /** Rolls that lose the market are named if they do so with at least so many of the replies. */
    private static final int OFTEN = 12;

    /** Take points that differ by less are told as one. */
    private static final double TELLING = 0.002;

    /** How many of them are named. */
    private static final int NAMED = 5;

    /** Gammons are told of from so large a share of the games on. */
    private static final double SOME_GAMMONS = 0.05;

    private final CubeCase asked;
    private final CubeValues values;
    private final Voice voice;
    private final List<String> said = new ArrayList<>();

    private CubeReasons(CubeCase asked, Voice voice) {
        this.asked = asked;
        this.values = asked.values();
        this.voice = voice;
    }

    /** The sentences, spoken to one side or to none. */
    static List<String> sentences(CubeCase asked, Voice voice) {
        CubeReasons reasons = new CubeReasons(asked, voice);
        reasons.say(reasons.decides());
        if (voice == Voice.ANSWERER && reasons.taking()) {
            reasons.say(reasons.values.shouldDouble() ? reasons.doubling() : reasons.rolling());
        }
        if (reasons.values.mayDouble() && !asked.winsAnyway()) {
            asked.market()
                    .filter(market -> !asked.lastRoll() && !asked.freeForDoubler())
                    .ifPresent(reasons::market);
            reasons.take();
            reasons.last();
        }
        reasons.chances();
        reasons.gammons();
        reasons.said.addAll(CubeBoardWords.sentences(asked, voice));
        return reasons.said;
    }

    private void say(String sentence) {
        said.add(Phrases.sentence(sentence));
    }

    /** The sentence that decides, without its full stop. */
    private String decides() {
        if (!values.mayDouble() || asked.winsAnyway()) {
            String verdict = CubeWords.verdict(values, asked.cube(), asked.stakes());
            return verdict.substring(0, verdict.length() - 1);
        }
        if (voice == Voice.ANSWERER) {
            return answering();
        }
        return values.tooGood() ? tooGood() : values.shouldDouble() ? doubling() : rolling();
    }

    private boolean taking() {
        return values.mayDouble() && !asked.winsAnyway() && values.answer() == CubeAction.TAKE;
    }

    private String tooGood() {
        return "rolling is worth " + number(values.noDouble()) + ", more than the " + size(values.doublePass())
                + " of a pass: too good to " + turn() + gammonsWon();
    }

    /** What decides for the side that answers: its take, however good the double is. */
    private String answering() {
        if (values.answer() == CubeAction.PASS) {
            return doubling() + (values.tooGood() ? ", and the " + turn() + " even comes too late" : "");
        }
        return asked.window()
                .filter(window -> lose() >= window.takePoint())
                .map(window -> voice.answerer("win") + " " + Numbers.percent(lose()) + " % and need "
                        + Numbers.percent(window.takePoint()) + " %: take")
                .orElseGet(() -> "taken, a " + turn() + " is worth " + number(values.doubleTake()) + " to "
                        + voice.doubler() + ", less than the " + size(values.doublePass()) + " of a pass: take");
    }

    private String gammonsWon() {
        double won = asked.chances().winGammon() + asked.chances().winBackgammon();
        return won < SOME_GAMMONS ? "" : ", since " + voice.doubler("win") + gammonsWith(won);
    }

    private static String gammonsWith(double won) {
        return " a gammon or more with " + Numbers.percent(won) + " % of the games";
    }

    private String doubling() {
        if (values.answer() == CubeAction.PASS) {
            return asked.window()
                    .filter(window -> lose() < window.takePoint())
                    .map(window -> voice.answerer("win") + " " + Numbers.percent(lose()) + " % and would need "
                            + Numbers.percent(window.takePoint()) + " % to take: " + turn() + " and pass")
                    .orElseGet(() -> "taken, a " + turn() + " is worth " + number(values.doubleTake())
                            + ", more than the " + size(values.doublePass()) + " of a pass: " + turn() + " and pass");
        }
        if (asked.freeForDoubler()) {
            return voice.doubler("lose") + " the match with this game anyway, so a " + turn() + " risks nothing";
        }
        if (asked.lastRoll()) {
            return "it is the last roll, won now or never: " + voice.doubler("win") + " with "
                    + Numbers.percent(win()) + " % of the rolls, and " + voice.answerer("take") + " with "
                    + Numbers.percent(lose()) + " %";
        }
        return asked.window()
                .filter(window -> win() >= window.from() && win() <= window.to())
                .map(window -> voice.doubler("win") + " " + Numbers.percent(win()) + " %, and a " + turn()
                        + " is right from " + Numbers.percent(window.from()) + " % on; " + voice.answerer("take"))
                .orElseGet(() -> "a " + turn() + " is worth " + number(values.doubled()) + ", rolling without one "
                        + size(values.noDouble()));
    }

    private String rolling() {
        String worth = "without a " + turn() + " the game is worth " + number(values.noDouble()) + ", with one "
                + size(values.doubled());
        if (asked.lastRoll()) {
            return "it is the last roll, won now or never, and " + voice.doubler("win") + " with only "
                    + Numbers.percent(win()) + " % of the rolls";
        }
        if (values.answer() == CubeAction.BEAVER) {
            return "doubled, " + voice.answerer("have") + " the better of it and would beaver: " + worth;
        }
        Optional<CubeWindow> window = asked.window();
        if (window.isPresent() && Double.isNaN(window.get().from())) {
            return "at no chance is a " + turn() + " right here: " + worth;
        }
        if (window.isPresent() && !asked.exact() && win() < window.get().from()) {
            return voice.doubler("win") + " " + Numbers.percent(win()) + " %, and a " + turn() + " is right only from "
                    + Numbers.percent(window.get().from()) + " % on";
        }
        return worth + (asked.cube().owner() == CubeOwner.ME ? ": the cube is worth keeping" : "");
    }

    private void market(Market market) {
        String swing = "the next two rolls swing the game by " + Numbers.hundredths(market.volatility())
                + " points (their standard deviation)";
        if (values.answer() == CubeAction.PASS) {
            String back = Numbers.percent(1 - market.losers());
            said.add(
                    back.equals("0.0")
                            ? "The market is lost for good."
                            : "The market is lost already; after " + back + " % of the next two rolls a double would be"
                                    + " taken again.");
        } else if (market.losers() == 0) {
            said.add("No two rolls lose the market, so there is no hurry.");
        } else {
            said.add(Numbers.percent(market.losers()) + " % of the next two rolls lose the market"
                    + Phrases.named(": ", named(market)) + ".");
        }
        say(swing);
    }

    /** The rolls of the side on roll that lose it most often. */
    private static List<String> named(Market market) {
        List<String> named = new ArrayList<>();
        List<Market.Loser> always = market.losing(THROWS, THROWS);
        if (!always.isEmpty()) {
            named.add(Phrases.list(rolls(always)) + " whatever the answer is");
        }
        List<Market.Loser> often = market.losing(OFTEN, THROWS - 1);
        for (Market.Loser each : often.subList(0, Math.min(often.size(), Math.max(0, NAMED - always.size())))) {
            boolean first = named.size() <= (always.isEmpty() ? 0 : 1);
            named.add(each.roll() + " with " + each.replies() + (first ? " of the 36 answers" : ""));
        }
        return named;
    }

    private static List<String> rolls(List<Market.Loser> losers) {
        return losers.stream().map(each -> each.roll().toString()).collect(Collectors.toList());
    }

    /** What a take needs, as far as the first sentence has not said it. */
    private void take() {
        if (asked.lastRoll()) {
            asked.deadTakePoint()
                    .ifPresent(dead -> say("on a last roll " + voice.answerer("need") + " " + Numbers.percent(dead)
                            + " % to take and " + voice.answererAlso("have") + " " + Numbers.percent(lose()) + " %"));
            return;
        }
        asked.window().ifPresent(window -> {
            String needs = voice.answerer("need") + " " + Numbers.percent(window.takePoint()) + " % to take"
                    + (asked.exact() ? " on the last rolls and " : " by the cube model and ")
                    + voice.answererAlso("have") + " " + Numbers.percent(lose()) + " %";
            Optional<String> dead = asked.deadTakePoint()
                    .filter(point -> Math.abs(point - window.takePoint()) >= TELLING)
                    .map(point -> Numbers.percent(point) + " %");
            if (!said.get(0).contains(Numbers.percent(window.takePoint()))) {
                say(needs
                        + dead.map(point -> "; if nobody turned the cube again it would be " + point)
                                .orElse(""));
            } else {
                dead.ifPresent(point -> say("if nobody turned the cube again a take would need " + point));
            }
        });
    }

    /** Who has a use for the cube after a take, in a match. */
    private void last() {
        if (asked.deadForTaker() && asked.freeForTaker()) {
            say("taken, it is the last cube: the game decides the match");
        } else if (asked.deadForTaker()) {
            say("taken, the cube is dead: " + voice.answerer("win") + " the match with this game and will not turn it"
                    + " again");
        } else if (asked.freeForTaker()) {
            say("taken, " + voice.answerer("lose") + " the match with this game anyway, so it costs nothing to turn the"
                    + " cube again at once");
        }
    }

    /** The chances, as far as the first sentence has not said them. */
    private void chances() {
        double won = asked.chances().winGammon() + asked.chances().winBackgammon();
        double lost = asked.chances().loseGammon() + asked.chances().loseBackgammon();
        boolean told = said.get(0).contains(Numbers.percent(win()) + " %")
                || said.get(0).contains(Numbers.percent(lose()) + " %");
        String wins = voice.doubler("win") + " " + Numbers.percent(win()) + " % of the games";
        String gammons = Numbers.percent(won) + " % with a gammon or more, and " + voice.doublerAlso("lose") + " "
                + Numbers.percent(lost) + " % that way";
        if (said.get(0).contains(gammonsWith(won))) {
            say(wins + " and " + voice.doublerAlso("lose") + " " + Numbers.percent(lost) + " % with a gammon or more");
        } else if (!PlayWords.gammonsHappen(won + lost)) {
            say(told ? "gammons hardly happen" : wins + "; gammons hardly happen");
        } else {
            say(told ? voice.doubler("win") + " " + gammons : wins + ", " + gammons);
        }
    }

    /** What gammons count, if there are some. */
    private void gammons() {
        double some = asked.chances().winGammon()
                + asked.chances().winBackgammon()
                + asked.chances().loseGammon();
        if (some < SOME_GAMMONS) {
            return;
        }
        if (asked.match()) {
            asked.gammonsNow()
                    .ifPresent(now -> asked.gammonsDoubled().ifPresent(doubled -> say(atScore(now, doubled))));
        } else if (((MoneyStakes) asked.stakes()).jacoby() && asked.cube().owner() == CubeOwner.CENTRE) {
            say("by the Jacoby rule gammons count only once the cube has been turned");
        }
    }

    private String atScore(GammonValues now, GammonValues doubled) {
        String cubes = "with the cube at " + asked.cube().value() + " and ";
        return "to " + voice.doubler() + " a gammon has a value of " + Numbers.hundredths(now.mine()) + " " + cubes
                + Numbers.hundredths(doubled.mine()) + " with it at "
                + asked.cube().taken().value() + ", to "
                + voice.answerer() + " " + Numbers.hundredths(now.theirs()) + " and "
                + Numbers.hundredths(doubled.theirs()) + " (0.50 for money)";
    }

    private double win() {
        return asked.chances().win();
    }

    private double lose() {
        return 1 - asked.chances().win();
    }

    private String turn() {
        return asked.cube().owner() == CubeOwner.CENTRE ? "double" : "redouble";
    }

    private String number(double value) {
        return size(value) + (asked.match() ? " of the matches" : "");
    }

    private String size(double value) {
        return asked.match()
                ? Numbers.finePercent(value) + " %"
                : (value < 0 ? "-" : "+") + Numbers.thousandths(Math.abs(value));
    }
}
