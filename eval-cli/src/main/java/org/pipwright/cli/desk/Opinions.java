package org.pipwright.cli.desk;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/** What the desk's net says of positions that are set up, deeper and deeper; the last answers are remembered. */
final class Opinions {
    /** Deepest lookahead that can be asked for. */
    static final int MAX_LOOKAHEAD = 4;

    private static final int MAX_REMEMBERED = 200;

    private final Judges judges;
    private final String net;
    private final Recent<Asked, Verdict> known = new Recent<>(MAX_REMEMBERED);

    private record Asked(Question question, int lookahead) {}

    /**
     * An answer and how deeply it was asked for.
     *
     * @param verdict the answer
     * @param lookahead future rolls that were to be averaged over
     */
    record Known(Verdict verdict, int lookahead) {}

    Opinions(Judges judges, String net) {
        this.judges = judges;
        this.net = net;
    }

    /** The net that is asked. */
    String net() {
        return net;
    }

    /** Whom to ask without lookahead, for replies. */
    SharedJudge judge() {
        return judges.of(net, 0);
    }

    /** What the net knows. */
    Knowledge knowledge() {
        return judges.knowledge(net);
    }

    /** Whether the net has been loaded. */
    boolean ready() {
        return judges.ready(net);
    }

    /** The deepest answer that is remembered. */
    Optional<Known> deepest(Question question, int most) {
        for (int lookahead = most; lookahead >= 0; lookahead--) {
            Optional<Verdict> verdict = known.get(new Asked(question, lookahead));
            if (verdict.isPresent()) {
                return Optional.of(new Known(verdict.get(), lookahead));
            }
        }
        return Optional.empty();
    }

    /**
     * An answer.
     *
     * @param question what is asked
     * @param lookahead future rolls to average over
     * @param unwanted asked again and again whether to give up
     * @throws CancellationException if it was given up
     * @throws IllegalArgumentException if the score is beyond the match table
     */
    Verdict at(Question question, int lookahead, BooleanSupplier unwanted) {
        Asked asked = new Asked(question, lookahead);
        return known.get(asked).orElseGet(() -> {
            SharedJudge judge = judges.of(net, lookahead);
            // Many may ask the same at once: whoever waited for a turn looks again.
            return judge.inTurn(unwanted, mine -> known.get(asked).orElseGet(() -> {
                Verdict verdict = judge.ask(question, unwanted);
                known.put(asked, verdict);
                return verdict;
            }));
        });
    }
}
