package org.pipwright.training.settings;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import org.pipwright.engine.features.FeatureSet;

/** One setting of a training run: its key in the file, what it does, its default and which values it takes. */
public enum Setting {
    /** Games to play in all. */
    GAMES("games", "0", Kind.whole(0, 1_000_000_000_000L), "Games to play in all; 0 if the run ends by time."),
    /** Minutes to train in all. */
    MINUTES("minutes", "0", Kind.number(0, 1e6), "Minutes to train in all; 0 if the run ends by games."),
    /** Seed of everything random. */
    SEED(
            "seed",
            "1",
            Kind.whole(Long.MIN_VALUE, Long.MAX_VALUE),
            "Seed of the dice, the first weights and the order of samples."),
    /** Checkers a side. */
    CHECKERS(
            "checkers",
            "15",
            Kind.choice("15", "2", "3"),
            "Checkers a side: 15, or 2 or 3 for the reduced games that are solved exactly."),
    /** Whether games may open with a double. */
    OPENING(
            "opening",
            "no-doubles",
            Kind.choice(OpeningRoll.class),
            "The first roll of a game: no-doubles, as the game is played, or any."),
    /** Share of games that begin with random turns. */
    RANDOM_OPENINGS(
            "random.openings",
            "0",
            Kind.number(0, 1),
            "Share of games that begin with two to nine turns played at random, which shows the networks odd positions.",
            "varied"),
    /** Where games end. */
    ENDS(
            "ends",
            "played",
            Kind.choice(GameEnd.class),
            "Games are played to their end (played), or end where the exact bear-off tables know their chances (tables);"
                    + " a net trained so must be used with the tables."),
    /** Longest game. */
    MAX_TURNS(
            "max.turns",
            "2000",
            Kind.whole(1, 1_000_000),
            "Rolls of both sides after which a game is truncated and valued by the net. Trained nets need about 55; but what"
                    + " nets learn early may keep games going for ever, and one game could hold up a night's run.",
            "most.turns"),
    /** Kind of targets. */
    TARGETS(
            "targets",
            "td",
            Kind.choice(TargetKind.class),
            "What a sample should give: td, as TD(lambda) has it, lookahead, the chances at lookahead 1 (slower), rollout,"
                    + " those of a short rollout (slower still: keep a small share), or net, those of another net, for one"
                    + " that shall be smaller and nearly as strong."),
    /** Net that targets come from. */
    TARGET_NET(
            "target.net",
            "none",
            Kind.ANY,
            "Model file of the net that targets = net asks, of any shape; the run keeps a copy. Lambda has no effect then, and"
                    + " a net trained with ends = tables needs that here too."),
    /** Games of a rollout that gives a target. */
    ROLLOUT_GAMES(
            "rollout.games", "36", Kind.whole(36, 1 << 20), "Games of such a rollout, by 36, with variance reduction."),
    /** Rolls after which they are truncated. */
    ROLLOUT_TRUNCATION(
            "rollout.truncation",
            "7",
            Kind.whole(0, 10_000),
            "Rolls after which they are truncated and valued by the net; 0 to play them out.",
            "rollout.rolls"),
    /** Share of positions that become samples. */
    SAMPLE_SHARE(
            "sample.share", "1", Kind.number(0, 1), "Share of the positions of a game that become samples.", "keep"),
    /** Which positions of a game may become samples. */
    SAMPLES(
            "samples",
            "all",
            Kind.choice(SampledPositions.class),
            "Which positions may become samples: all, those whose roll left a choice (choices), or those of one side, drawn"
                    + " anew for each game (one-side)."),
    /** Net to begin with. */
    START_NET(
            "start.net",
            "none",
            Kind.ANY,
            "Model file to begin with, whose inputs and hidden layers must be those below, but that it may lack the pairs of"
                    + " contact-2; none for random weights."),
    /** Input of the contact network. */
    CONTACT_FEATURES(
            "contact.features",
            FeatureSet.CONTACT_2.label(),
            Kind.choice(FeatureSet.CONTACT_2.label(), FeatureSet.CONTACT_1.label(), FeatureSet.RACE_1.label()),
            "Input of the network for positions with contact: contact-2, contact-1, which lacks the pairs of places that"
                    + " face each other (games are played 11 % quicker), or race-1, which has places and pips alone."),
    /** Hidden layers of the contact network. */
    CONTACT_HIDDEN("contact.hidden", "256,32", Kind.SIZES, "Hidden layers of the network for positions with contact."),
    /** Hidden layers of the race network. */
    RACE_HIDDEN("race.hidden", "64", Kind.SIZES, "Hidden layers of the network for races."),
    /** Which learner. */
    LEARNER(
            "learner",
            "sparse",
            Kind.choice(LearnerKind.class),
            "Who fits the networks: sparse (our own, fast, any number of threads) or reference (Deeplearning4j, one thread)."),
    /** Games a round. */
    ROUND("round", "512", Kind.whole(1, 1 << 20), "Games played between two times of learning."),
    /** Samples a batch. */
    BATCH("batch", "512", Kind.whole(1, 1 << 20), "Samples a step of gradient descent, about."),
    /** Times the samples are gone through. */
    EPOCHS("epochs", "1", Kind.whole(1, 1000), "Times the samples of a round are gone through.", "passes"),
    /** Steps averaged over. */
    AVERAGE(
            "average",
            "0",
            Kind.whole(0, 1_000_000_000L),
            "The net that plays and is kept has weights averaged over about this many steps; 0 if they are not averaged."),
    /** Lambda at the start. */
    LAMBDA_FIRST("lambda.first", "0.7", Kind.number(0, 1), "Lambda of TD(lambda) at the start ..."),
    /** Lambda at the end. */
    LAMBDA_LAST("lambda.last", "0", Kind.number(0, 1), "... and at the end of the run."),
    /** Rate at the start. */
    RATE_FIRST("rate.first", "0.002", Kind.number(0, 1), "Learning rate (Adam) at the start ..."),
    /** Rate at the end. */
    RATE_LAST("rate.last", "0", Kind.number(0, 1), "... and at the end of the run."),
    /** Share of the run before lambda and rate begin to fall. */
    CONSTANT_SHARE(
            "constant.share",
            "0.25",
            Kind.number(0, 0.99),
            "Share of the run for which lambda and rate are constant; then they fall, linearly.",
            "hold"),
    /** Games against the baseline. */
    EVALUATION_GAMES(
            "evaluation.games",
            "1000",
            Kind.whole(2, 1 << 20),
            "Games against the baseline pips each time strength is evaluated.",
            "gauge.games"),
    /** Seconds between two evaluations. */
    EVALUATION_SECONDS(
            "evaluation.seconds", "60", Kind.number(1, 1e6), "Seconds between two evaluations.", "gauge.seconds"),
    /** Seconds between two checkpoints. */
    CHECKPOINT_SECONDS(
            "checkpoint.seconds",
            "60",
            Kind.number(0.1, 1e6),
            "Seconds between two checkpoints: the most a crash can lose.");

    private final String key;
    private final String byDefault;
    private final Kind kind;
    private final String comment;
    private final Optional<String> oldKey;

    Setting(String key, String byDefault, Kind kind, String comment) {
        this(key, byDefault, kind, comment, Optional.empty());
    }

    Setting(String key, String byDefault, Kind kind, String comment, String oldKey) {
        this(key, byDefault, kind, comment, Optional.of(oldKey));
    }

    Setting(String key, String byDefault, Kind kind, String comment, Optional<String> oldKey) {
        this.key = key;
        this.byDefault = byDefault;
        this.kind = kind;
        this.comment = comment;
        this.oldKey = oldKey;
    }

    /** Which values a setting takes: a test, and words that complete "must be ...". */
    private record Kind(Predicate<String> takes, String words) {
        static final Kind ANY = new Kind(text -> !text.isEmpty(), "a path or none");

        static final Kind SIZES = new Kind(Kind::areSizes, "one to four sizes from 1 to 4096, such as 256,32");

        private static boolean areSizes(String text) {
            List<String> sizes = Arrays.asList(text.split(",", -1));
            return sizes.size() <= 4
                    && sizes.stream().allMatch(size -> size.matches("[1-9]\\d{0,3}") && Integer.parseInt(size) <= 4096);
        }

        static Kind whole(long least, long most) {
            return new Kind(text -> isWhole(text, least, most), "a whole number from " + least + " to " + most);
        }

        private static boolean isWhole(String text, long least, long most) {
            try {
                long number = Long.parseLong(text);
                return number >= least && number <= most;
            } catch (NumberFormatException e) {
                return false;
            }
        }

        static Kind number(double least, double most) {
            return new Kind(
                    text -> isNumber(text, least, most),
                    String.format(Locale.ROOT, "a number from %.12g to %.12g", least, most)
                            .replaceAll("\\.?0+(?= |$)", ""));
        }

        private static boolean isNumber(String text, double least, double most) {
            try {
                double number = Double.parseDouble(text);
                return number >= least && number <= most;
            } catch (NumberFormatException e) {
                return false;
            }
        }

        static Kind choice(String... words) {
            return choice(List.of(words));
        }

        static Kind choice(Class<? extends Enum<?>> type) {
            return choice(Choices.words(type));
        }

        private static Kind choice(List<String> words) {
            return new Kind(words::contains, String.join(" or ", words));
        }
    }

    /**
     * Name in the settings file.
     *
     * @return for instance {@code rate.first}
     */
    public String key() {
        return key;
    }

    /**
     * What files of earlier versions call it.
     *
     * @return a name that is still read; empty if it never had another
     */
    public Optional<String> oldKey() {
        return oldKey;
    }

    /**
     * Value where the file does not give one.
     *
     * @return as it would be written
     */
    public String byDefault() {
        return byDefault;
    }

    /**
     * What it does.
     *
     * @return one or more sentences for people
     */
    public String comment() {
        return comment;
    }

    /**
     * Checks a value.
     *
     * @param value as written
     * @throws InvalidSettingsException if the setting does not take it
     */
    void require(String value) {
        if (!kind.takes().test(value)) {
            throw new InvalidSettingsException(key + " must be " + kind.words() + ", not '" + value + "'");
        }
    }
}
