package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
        words.lead(main);
        words.others(main);
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
                : new MotiveWords(best.facts(), rival.facts()).clause(cause.motive(), cause.points() > 0);
    }

    private List<Cause> main() {
        Causes.of(best, rival, gammons).all().forEach(cause -> clause(best, rival, gammons, cause)
                .ifPresent(clause -> told.put(cause, clause)));
        return new Causes(List.copyOf(told.keySet())).leading(chances.sum());
    }

    private void lead(List<Cause> main) {
        if (main.isEmpty()) {
            said.add(
                    chances.sum() > 0
                            ? "Nothing that is counted here tells them apart: it shows in the chances alone."
                            : "The two are as good as equal.");
        } else {
            said.add("Mainly because "
                    + Phrases.list(main.stream().map(told::get).collect(Collectors.toList())) + ".");
        }
    }

    /** Causes besides the main ones, and merits, are worth a sentence from so many points on. */
    private double notable() {
        return Math.max(Causes.NOTABLE_POINTS, Causes.NOTABLE_PART * chances.sum());
    }

    private void others(List<Cause> main) {
        told.entrySet().stream()
                .filter(each -> !main.contains(each.getKey()) && each.getKey().points() >= notable())
                .limit(OTHERS)
                .forEach(each -> said.add(Phrases.sentence(each.getValue())));
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
        told.entrySet().stream()
                .filter(each -> -each.getKey().points() >= notable())
                .sorted((a, b) -> Double.compare(a.getKey().points(), b.getKey().points()))
                .limit(OTHERS)
                .forEach(each -> said.add("For it: " + each.getValue() + "."));
    }
}
