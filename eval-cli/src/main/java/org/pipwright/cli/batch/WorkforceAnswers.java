package org.pipwright.cli.batch;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Queue;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.QuestionTrade;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.parallel.Workforce;

/** Answers by judges of other machines. Lines are read and answers written here, by the thread that asks. */
final class WorkforceAnswers implements Answers {
    /** For each of those who work at a time: many, since a round ends with some of them waiting. */
    private static final int QUESTIONS = 64;

    private final Workforce workforce;
    private final QuestionTrade trade;
    private final int piece;

    /** {@code piece} is how many lines are nothing to speak of. */
    WorkforceAnswers(Workforce workforce, QuestionTrade trade, int piece) {
        this.workforce = workforce;
        this.trade = trade;
        this.piece = piece;
    }

    @Override
    public int most() {
        return QUESTIONS * workforce.size() * piece;
    }

    @Override
    public void answer(List<Line> round, Clerk clerk, Consumer<String> texts) {
        Deque<Asked> asked = round.stream().map(clerk::read).collect(Collectors.toCollection(ArrayDeque::new));
        List<Question> questions = asked.stream()
                .filter(each -> each.question() != null)
                .map(Asked::question)
                .collect(Collectors.toList());
        texts.accept(clerk.text(round.size(), sheet -> {
            Queue<Verdict> verdicts = new ArrayDeque<>(questions.size());
            workforce.inOrder(trade, questions.iterator(), verdicts::add, () -> false);
            for (Asked each : asked) {
                clerk.write(each, each.question() == null ? null : verdicts.remove(), sheet);
            }
        }));
    }

    @Override
    public void close() {
        // Who opened the workforce closes it.
    }
}
