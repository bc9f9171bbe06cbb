package org.pipwright.training.settings;

import java.util.Optional;
import org.pipwright.engine.features.FeatureSet;

/** One setting of a training run: its key in the file, what it does, its default and which values it takes. */
public enum Setting implements SettingKey {
    /** Games to play in all. */
    GAMES("games", "0", SettingKind.whole(0, 1_000_000_000_000L), "Games to play in all; 0 if the run ends by time."),
    /** Minutes to train in all. */
    MINUTES("minutes", "0", SettingKind.number(0, 1e6), "Minutes to train in all; 0 if the run ends by games."),
    /** Seed of everything random. */
    SEED(
            "seed",
            "1",
            SettingKind.whole(Long.MIN_VALUE, Long.MAX_VALUE),
            "Seed of the dice, the first weights and the order of samples."),
    /** Checkers a side. */
    CHECKERS(
            "checkers",
            "15",
            SettingKind.choice("15", "2", "3"),
            "Checkers a side: 15, or 2 or 3 for the reduced games that are solved exactly."),
    /** Whether games may open with a double. */
    OPENING(
            "opening",
            "no-doubles",
            SettingKind.choice(OpeningRoll.class),
            "The first roll of a game: no-doubles, as the game is played, or any."),
    /** Share of games that begin with random turns. */
    RANDOM_OPENINGS(
            "random.openings",
            "0",
            SettingKind.number(0, 1),
            "Share of games that begin with two to nine turns played at random, which shows the networks odd positions.",
            "varied"),
    /** Where games end. */
    ENDS(
            "ends",
            "played",
            SettingKind.choice(GameEnd.class),
            "Games are played to their end (played), or end where the exact bear-off tables know their chances (tables);"
                    + " a net trained so must be used with the tables."),
    /** Longest game. */
    MAX_TURNS(
            "max.turns",
            "2000",
            SettingKind.whole(1, 1_000_000),
            "Rolls of both sides after which a game is truncated and valued by the net. Trained nets need about 55; but what"
                    + " nets learn early may keep games going for ever, and one game could hold up a night's run.",
            "most.turns"),
    /** Kind of targets. */
    TARGETS(
            "targets",
            "td",
            SettingKind.choice(TargetKind.class),
            "The targets of samples: td, those of TD(lambda); lookahead, the chances at lookahead 1 (slower); rollout, those"
                    + " of a short rollout (slower still: keep a small share); or net, those of another net, to train a"
                    + " smaller net that is nearly as strong."),
    /** Net that targets come from. */
    TARGET_NET(
            "target.net",
            "none",
            SettingKind.ANY,
            "Model file of the net that targets = net asks, of any shape; the run keeps a copy. Lambda has no effect then, and"
                    + " a net trained with ends = tables needs that here too."),
    /** Games of a rollout that gives a target. */
    ROLLOUT_GAMES(
            "rollout.games",
            "36",
            SettingKind.whole(36, 1 << 20),
            "Games of such a rollout, a multiple of 36, with variance reduction."),
    /** Rolls after which they are truncated. */
    ROLLOUT_TRUNCATION(
            "rollout.truncation",
            "7",
            SettingKind.whole(0, 10_000),
            "Rolls after which its games are truncated and valued by the net; 0 to play them out.",
            "rollout.rolls"),
    /** Share of positions that become samples. */
    SAMPLE_SHARE(
            "sample.share",
            "1",
            SettingKind.number(0, 1),
            "Share of the positions of a game that become samples.",
            "keep"),
    /** Which positions of a game may become samples. */
    SAMPLES(
            "samples",
            "all",
            SettingKind.choice(SampledPositions.class),
            "Which positions may become samples: all, those whose roll left a choice (choices), or those of one side, drawn"
                    + " anew for each game (one-side)."),
    /** Net to begin with. */
    START_NET(
            "start.net",
            "none",
            SettingKind.ANY,
            "Model file to begin with; none for random weights. Its inputs and hidden layers must be those below, except that"
                    + " it may lack the pairs of contact-2."),
    /** Input of the contact network. */
    CONTACT_FEATURES(
            "contact.features",
            FeatureSet.CONTACT_2.label(),
            SettingKind.choice(FeatureSet.CONTACT_2.label(), FeatureSet.CONTACT_1.label(), FeatureSet.RACE_1.label()),
            "Input of the network for positions with contact: contact-2, contact-1, which lacks the pairs of places that"
                    + " face each other (games are played 11 % quicker), or race-1, which has places and pips alone."),
    /** Hidden layers of the contact network. */
    CONTACT_HIDDEN(
            "contact.hidden", "256,32", SettingKind.SIZES, "Hidden layers of the network for positions with contact."),
    /** Hidden layers of the race network. */
    RACE_HIDDEN("race.hidden", "64", SettingKind.SIZES, "Hidden layers of the network for races."),
    /** Which learner. */
    LEARNER(
            "learner",
            "sparse",
            SettingKind.choice(LearnerKind.class),
            "The learner: sparse (our own, fast, any number of threads) or reference (Deeplearning4j, one thread)."),
    /** Games a round. */
    ROUND("round", "512", SettingKind.whole(1, 1 << 20), "Games per round."),
    /** Samples a batch. */
    BATCH("batch", "512", SettingKind.whole(1, 1 << 20), "About how many samples a step of gradient descent takes."),
    /** Passes over the samples. */
    EPOCHS("epochs", "1", SettingKind.whole(1, 1000), "Passes over the samples of a round.", "passes"),
    /** Rounds that the net which plays is behind. */
    STALENESS(
            "staleness",
            "0",
            SettingKind.whole(0, 1),
            "Rounds that the net which plays is behind the one that learns: 0, or 1 so that a cluster plays the next round"
                    + " while this machine learns from the last. The net then differs from that of 0; it is the same on a cluster"
                    + " and on one machine."),
    /** Steps averaged over. */
    AVERAGE(
            "average",
            "0",
            SettingKind.whole(0, 1_000_000_000L),
            "The net that plays and is kept has weights averaged over about this many steps; 0 if they are not averaged."),
    /** Lambda at the start. */
    LAMBDA_FIRST("lambda.first", "0.7", SettingKind.number(0, 1), "Lambda of TD(lambda) at the start ..."),
    /** Lambda at the end. */
    LAMBDA_LAST("lambda.last", "0", SettingKind.number(0, 1), "... and at the end of the run."),
    /** Rate at the start. */
    RATE_FIRST("rate.first", "0.002", SettingKind.number(0, 1), "Learning rate (Adam) at the start ..."),
    /** Rate at the end. */
    RATE_LAST("rate.last", "0", SettingKind.number(0, 1), "... and at the end of the run."),
    /** Share of the run before lambda and rate begin to fall. */
    CONSTANT_SHARE(
            "constant.share",
            "0.25",
            SettingKind.number(0, 0.99),
            "Share of the run for which lambda and rate are constant; then they fall, linearly.",
            "hold"),
    /** Whom strength is evaluated against. */
    EVALUATION_RIVAL(
            "evaluation.rival",
            EvaluationSettings.PIPS,
            SettingKind.ANY,
            "What the net is evaluated against: the baseline pips; or, with variance reduction, a net that comes with"
                    + " Pipwright or a model file. With fewer than 15 checkers it is pips."),
    /** Games against the rival. */
    EVALUATION_GAMES(
            "evaluation.games",
            "1000",
            SettingKind.whole(2, 1 << 20),
            "Games of each evaluation, in pairs with the same dice.",
            "gauge.games"),
    /** Seconds between two evaluations. */
    EVALUATION_SECONDS(
            "evaluation.seconds",
            "60",
            SettingKind.number(1, 1e6),
            "Seconds between two evaluations; the first ones follow each other sooner.",
            "gauge.seconds"),
    /** Seconds between two checkpoints. */
    CHECKPOINT_SECONDS(
            "checkpoint.seconds",
            "60",
            SettingKind.number(0.1, 1e6),
            "Seconds between two checkpoints: the most a crash can lose.");

    private final SettingFacts facts;

    Setting(String key, String byDefault, SettingKind kind, String comment) {
        facts = new SettingFacts(key, byDefault, kind, comment);
    }

    Setting(String key, String byDefault, SettingKind kind, String comment, String oldKey) {
        facts = new SettingFacts(key, Optional.of(oldKey), byDefault, kind, comment);
    }

    @Override
    public SettingFacts facts() {
        return facts;
    }
}
