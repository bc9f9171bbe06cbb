package org.pipwright.bench.calibration;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.LongStream;
import org.pipwright.bench.games.GameTrade;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.search.Judgement;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.DeviceGames;
import org.pipwright.training.device.DeviceSelfPlay;
import org.pipwright.training.device.SelfPlayRules;

/**
 * A net's predictions held against the games it plays.
 *
 * @param who the net and what it plays with
 * @param seed of the dice
 * @param every of the positions of a game, each so-many-th was taken
 * @param games number of games
 * @param positions number of positions
 * @param curves one a chance
 * @param agreement how a device agreed with the processor; empty if the processor played
 */
record Calibration(
        String who,
        long seed,
        int every,
        int games,
        int positions,
        List<Curve> curves,
        Optional<DeviceAgreement> agreement) {
    /** Differences within this are the aim: one per cent of all games. */
    static final double AIM = 0.01;

    /** Plays games until there are enough positions. */
    static Calibration of(
            String who,
            Supplier<Judgement> judgements,
            int lookahead,
            int positions,
            int every,
            long seed,
            int threads) {
        Samples samples = new Samples(positions);
        int[] games = {0};
        try (SelfGames play = new SelfGames(judgements, lookahead, seed, threads)) {
            play.play(new Sampling(every), ofGame -> samples.add(games[0]++, ofGame));
        }
        return new Calibration(who, seed, every, games[0], positions, Curve.all(samples), Optional.empty());
    }

    /** The same with games that other machines play. */
    static Calibration elsewhere(
            String who, Knowledge knowledge, int lookahead, int positions, int every, long seed, Workforce workforce) {
        Samples samples = new Samples(positions);
        int[] games = {0};
        workforce.inOrder(
                new GameTrade<>(workforce.share(knowledge.portable()), lookahead, seed, new Sampling(every)),
                LongStream.iterate(0, game -> game + 1).iterator(),
                ofGame -> samples.add(games[0]++, ofGame),
                () -> false);
        return new Calibration(who, seed, every, games[0], positions, Curve.all(samples), Optional.empty());
    }

    /** The same with games that a device plays. */
    static Calibration onDevice(String who, DeviceGames device, SelfPlayRules rules, int positions, int threads) {
        Samples samples = new Samples(positions);
        int[] games = {0};
        DeviceSelfPlay played =
                device.selfPlay(rules, threads, game -> samples.add(games[0]++, Samples.ofDevice(game)));
        return new Calibration(
                who + ", on " + played.description(),
                rules.seed(),
                rules.every(),
                games[0],
                positions,
                Curve.all(samples),
                Optional.of(played.agreement()));
    }

    /** Where the figures come from, in a sentence. */
    String source() {
        return String.format(
                Locale.ROOT,
                "%s: %,d positions before the roll, one of every %d in %,d games of self-play played to the end, seed %d",
                who,
                positions,
                every,
                games,
                seed);
    }
}
