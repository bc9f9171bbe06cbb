package org.pipwright.cli.desk;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.pipwright.cli.page.Pages;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;

/**
 * Plays chosen plays, or what comes before the roll, out many times, and sends how the figures tighten. It has threads of
 * its own, so that it keeps no answer waiting; no more than two run at a time.
 */
final class BoardRollout {
    private static final int MAX_GAMES = 12_960;
    private static final int MAX_PLAYS = 8;
    private static final int USUAL_GAMES = RolloutSettings.DEFAULT.trials();

    /** More often than this nobody can read. */
    private static final long PAUSE_NANOS = 300_000_000;

    /** More often than this nobody wants to hear how it stands. */
    private static final long SILENCE_NANOS = 20_000_000_000L;

    private final Semaphore running = new Semaphore(2);
    private final Judges judges;
    private final String net;
    private final int threads;

    BoardRollout(Judges judges, String net, int threads) {
        this.judges = judges;
        this.net = net;
        this.threads = threads;
    }

    /** What a request asks for; fails with a {@link RefusedException} if it cannot be done. */
    Consumer<Stream> asked(Context context) {
        Question question = SettingForm.parse(context::queryParam)
                .setting()
                .question()
                .orElseThrow(() -> new RefusedException("there is nothing to roll out"));
        List<Play> plays = plays(context, question);
        int games = games(context.queryParam("games"));
        return stream -> run(question, plays, games, stream);
    }

    private static int games(String text) {
        int games = text == null || !text.matches("[0-9]{1,5}") ? USUAL_GAMES : Integer.parseInt(text);
        return Math.max(RolloutSettings.ROUND, Math.min(games, MAX_GAMES));
    }

    private static List<Play> plays(Context context, Question question) {
        if (question.roll() == null) {
            return List.of();
        }
        List<Play> plays = new ArrayList<>();
        try {
            for (String text : context.queryParams("out")) {
                plays.add(PlayText.parse(text, question.position(), question.roll()));
            }
        } catch (IllegalPlayException e) {
            throw new RefusedException(e.getMessage());
        }
        if (plays.isEmpty() || plays.size() > MAX_PLAYS) {
            throw new RefusedException("tick 1 to " + MAX_PLAYS + " plays to roll out");
        }
        return plays;
    }

    private void run(Question question, List<Play> plays, int games, Stream stream) {
        await(stream);
        try {
            Knowledge knowledge = judges.knowledge(net);
            RolloutSettings settings = RolloutSettings.DEFAULT.withTrials(games);
            try (Rollouts rollouts = new Rollouts(knowledge::judgement, knowledge::terms, settings, threads)) {
                List<String> names = names(question, plays);
                RolloutReport report =
                        report(rollouts, question, plays, listener(stream, question, names, settings.trials()));
                RolloutView view = RolloutView.of(question, names, settings.trials(), report, true);
                stream.send("rollout", Pages.of("desk/rollout.jte", view));
                stream.say(RolloutView.said(view));
            }
        } finally {
            running.release();
        }
    }

    private void await(Stream stream) {
        try {
            while (!running.tryAcquire(100, TimeUnit.MILLISECONDS)) {
                if (stream.gone()) {
                    throw new CancellationException("nobody waits for the rollout");
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("interrupted");
        }
    }

    private static List<String> names(Question question, List<Play> plays) {
        if (question.roll() != null) {
            return plays.stream().map(Play::toString).collect(Collectors.toList());
        }
        return question.cubeful() ? List.of("roll", "double, take", "double, beaver") : List.of("before the roll");
    }

    private static RolloutReport report(
            Rollouts rollouts, Question question, List<Play> plays, RolloutListener listener) {
        if (question.roll() != null) {
            return rollouts.compare(
                    question.position(),
                    question.roll(),
                    plays,
                    question.stakes(),
                    question.cube(),
                    WorkFile.NONE,
                    listener);
        }
        return question.cubeful()
                ? rollouts.actions(question.position(), question.cube(), question.stakes(), WorkFile.NONE, listener)
                : rollouts.odds(question.position(), WorkFile.NONE, listener);
    }

    private static RolloutListener listener(Stream stream, Question question, List<String> names, int most) {
        return new RolloutListener() {
            private long sent;
            private long said = System.nanoTime();

            @Override
            public boolean round(RolloutReport report) {
                if (System.nanoTime() - sent > PAUSE_NANOS) {
                    sent = System.nanoTime();
                    RolloutView view = RolloutView.of(question, names, most, report, false);
                    stream.send("rollout", Pages.of("desk/rollout.jte", view));
                    if (sent - said > SILENCE_NANOS) {
                        said = sent;
                        stream.say(RolloutView.said(view));
                    }
                }
                return !stream.gone();
            }

            @Override
            public boolean stopped() {
                return stream.gone();
            }
        };
    }
}
