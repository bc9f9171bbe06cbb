package org.pipwright.engine.drill;

import java.io.Serializable;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.position.Position;

/**
 * Making exercises of decisions elsewhere; null where none comes of one.
 *
 * @param known what right answers are found with
 * @param theme what they are about; null for anything
 * @param count of the settings
 * @param clarity of the settings
 * @param sifted of the settings
 * @param apart of the settings
 */
record SelectionTrade(
        Shared<PortableKnowledge> known, Theme theme, int count, Clarity clarity, boolean sifted, int apart)
        implements Trade<SelectionTrade.Sent, Exercise> {
    /** Exercises as settings have them. */
    static SelectionTrade of(SelectionSettings settings, Shared<PortableKnowledge> known) {
        return new SelectionTrade(
                known,
                settings.theme().orElse(null),
                settings.count(),
                settings.clarity(),
                settings.sifted(),
                settings.apart());
    }

    /** A candidate, null for what is empty in it. */
    record Sent(Origin origin, Question question, boolean answering, Position played, CubeAction done)
            implements Serializable {
        static Sent of(Candidate candidate) {
            return new Sent(
                    candidate.origin(),
                    candidate.question(),
                    candidate.answering(),
                    candidate.played().orElse(null),
                    candidate.done().orElse(null));
        }

        Candidate candidate() {
            return new Candidate(origin, question, answering, Optional.ofNullable(played), Optional.ofNullable(done));
        }
    }

    @Override
    public Worker<Sent, Exercise> hire() {
        SelectionSettings settings = new SelectionSettings(Optional.ofNullable(theme), count, clarity, sifted, apart);
        return new Looking(settings, known.get().knowledge());
    }

    /** Looks for one thread. */
    private static final class Looking implements Worker<Sent, Exercise> {
        private final SelectionWorker worker;
        private BooleanSupplier stopped = () -> false;

        Looking(SelectionSettings settings, Knowledge knowledge) {
            worker = new SelectionWorker(settings, knowledge, Progress.until(() -> stopped.getAsBoolean()));
        }

        @Override
        public Exercise work(Sent sent, BooleanSupplier told) {
            stopped = told;
            return worker.exercise(sent.candidate()).orElse(null);
        }

        @Override
        public void close() {
            worker.close();
        }
    }
}
