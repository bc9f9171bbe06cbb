package org.pipwright.engine.review;

import java.util.Iterator;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;

/** Other machines. They are sent the record once, and send their findings as files have them, which reads back exactly. */
final class ReviewersElsewhere implements Reviewers {
    private final Knowledge knowledge;
    private final Shared<PortableKnowledge> sent;
    private final ReviewSettings settings;
    private final Workforce workforce;

    ReviewersElsewhere(Knowledge knowledge, ReviewSettings settings, Workforce workforce) {
        this.knowledge = knowledge;
        this.settings = settings;
        this.workforce = workforce;
        sent = workforce.share(knowledge.portable());
    }

    /** How to look at turns of a record, by their numbers. */
    private record Reviewing(Shared<PortableKnowledge> known, ReviewSettings settings, Shared<String> record)
            implements Trade<Integer, String> {
        @Override
        public Worker<Integer, String> hire() {
            return new Looking(known.get().knowledge(), settings, Moments.of(RecordText.parse(record.get())));
        }
    }

    /** Looks for one thread. */
    private static final class Looking implements Trade.Worker<Integer, String> {
        private final Reviewer reviewer;
        private final List<Moment> moments;
        private BooleanSupplier stopped = () -> false;

        Looking(Knowledge knowledge, ReviewSettings settings, List<Moment> moments) {
            this.moments = moments;
            reviewer = new Reviewer(knowledge, settings, () -> stopped.getAsBoolean());
        }

        @Override
        public String work(Integer turn, BooleanSupplier told) {
            stopped = told;
            return FindingText.print(reviewer.find(moments.get(turn)));
        }

        @Override
        public void close() {
            reviewer.close();
        }
    }

    @Override
    public void find(
            GameRecord record, List<Integer> turns, BiConsumer<Integer, Finding> found, BooleanSupplier stopped) {
        List<Moment> moments = Moments.of(record);
        Reviewing trade = new Reviewing(sent, settings, workforce.share(RecordText.print(record)));
        Iterator<Integer> next = turns.iterator();
        workforce.inOrder(
                trade,
                turns.iterator(),
                line -> {
                    int turn = next.next();
                    found.accept(turn, FindingLines.finding(line, moments.get(turn), knowledge.terms()));
                    return true;
                },
                stopped);
    }
}
