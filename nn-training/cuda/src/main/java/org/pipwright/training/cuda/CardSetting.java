package org.pipwright.training.cuda;

import org.pipwright.training.settings.SettingFacts;
import org.pipwright.training.settings.SettingKey;
import org.pipwright.training.settings.SettingKind;

/** One setting of a run on a card. */
enum CardSetting implements SettingKey {
    MINUTES(
            "minutes",
            "0",
            SettingKind.number(0, 1e6),
            "Minutes to train in all, including copying and evaluations, but not the last evaluation."),
    CLOCK(
            "clock",
            "wall",
            SettingKind.choice("wall", "processor"),
            "How time is counted: wall, as it passes; or processor, processor time divided by the threads, for a run beside"
                    + " other work. A card knows only wall."),
    SEED(
            "seed",
            "1",
            SettingKind.whole(Long.MIN_VALUE, Long.MAX_VALUE),
            "Seed of the dice, the first weights and the order of lessons. A card adds in any order: a run repeated with the"
                    + " same seed is alike, not the same bit for bit."),
    DEEP(
            "deep",
            "1024x6",
            Shapes.ONE,
            "The network that gives the targets: its width, 128 to 1024 in steps of 128, and its residual blocks."),
    QUICK("quick", "256x1", Shapes.ONE, "The network that prunes the replies before the deep one judges them."),
    PUPILS(
            "pupils",
            "none",
            Shapes.SOME,
            "Networks that learn from the same targets, such as 768x4,256x2; none if none do."),
    COPIED(
            "copied",
            "fifth",
            SettingKind.ANY,
            "Net whose chances are copied to begin with: a shipped one or a model file."),
    COPY_SECONDS(
            "copy.seconds",
            "25",
            SettingKind.number(0, 1e6),
            "Seconds spent on copying it; none if the deep and the quick network begin with weights that have learned."),
    START_DEEP(
            "start.deep",
            "none",
            SettingKind.ANY,
            "Net that the deep network begins with, a shipped one or a model file; it copies nothing then. None for random"
                    + " weights."),
    START_QUICK("start.quick", "none", SettingKind.ANY, "The same for the quick network."),
    START_PUPILS(
            "start.pupils",
            "none",
            SettingKind.ANY,
            "The same for the pupils, one for each, separated by commas; none for random weights."),
    TEACH_ONLY(
            "teach.only",
            "no",
            SettingKind.choice("no", "yes"),
            "Whether the deep and the quick network stay as they began and only the pupils learn: from what the deep one says"
                    + " of the replies it judges, and every fourth step from targets."),
    TEACH_STEPS(
            "teach.steps",
            "60",
            SettingKind.whole(1, 10_000),
            "With teach.only: steps that each pupil takes for each turn of a lane."),
    LANES(
            "lanes",
            "2",
            SettingKind.whole(1, 16),
            "Groups of games: while one is on the card, plays of another are made."),
    GAMES("games", "8192", SettingKind.whole(1, 1 << 16), "Games in each lane; they take their turns together."),
    STRAY_SHARE(
            "stray.share",
            "0.08",
            SettingKind.number(0, 1),
            "Share of turns in which a near-best play is made instead of the best."),
    STRAY_MARGIN(
            "stray.margin", "0.08", SettingKind.number(0, 6), "How much worse a near-best play may be, in points."),
    RANDOM_STARTS(
            "random.openings",
            "0.15",
            SettingKind.number(0, 1),
            "Share of games that begin with turns played at random."),
    RANDOM_TURNS(
            "random.turns",
            "8",
            SettingKind.whole(1, 1000),
            "Most turns played at random at the start of such a game; at least one is."),
    FORMULA_SHARE(
            "formula.games",
            "0",
            SettingKind.number(0, 1),
            "Share of games in which fixed formulas make the first plays of one side or both, which leads to positions that"
                    + " good play avoids."),
    FORMULA_TURNS(
            "formula.turns",
            "60",
            SettingKind.whole(1, 1000),
            "Most turns of such a game that a formula may play; at least one is."),
    MAX_TURNS("max.turns", "2000", SettingKind.whole(1, 1_000_000), "Turns after which a game is truncated."),
    KEEP_MARGIN(
            "keep.margin",
            "0.08",
            SettingKind.number(0, 6),
            "The deep network judges the replies within this many points of the quick one's best, six at most."),
    LAMBDA_FIRST(
            "lambda.first",
            "0.75",
            SettingKind.number(0, 1),
            "How much the later corrections of a game count at the start ..."),
    LAMBDA_LAST("lambda.last", "0.4", SettingKind.number(0, 1), "... and at the end of the run."),
    MEMORY("memory", "2000000", SettingKind.whole(1000, 50_000_000), "Lessons kept to draw from."),
    USES("uses", "4", SettingKind.number(0.01, 1000), "Times a lesson is used, on average."),
    BATCH("batch", "8192", SettingKind.whole(64, 1 << 17), "Lessons in a step of gradient descent, a multiple of 64."),
    QUICK_STEPS(
            "quick.steps",
            "2",
            SettingKind.whole(0, 1000),
            "Steps, for each turn of a lane, in which the quick network learns what the deep one says of replies."),
    RATE("rate", "0.001", SettingKind.number(0, 1), "Learning rate (AdamW) at the start; falls to 0 as a cosine."),
    MEAN_DECAY("adam.mean", "0.9", SettingKind.number(0, 0.9999), "AdamW: how slowly the mean of gradients moves ..."),
    SQUARE_DECAY("adam.square", "0.99", SettingKind.number(0, 0.9999), "... and how slowly that of their squares."),
    WEIGHT_DECAY(
            "weight.decay",
            "0.01",
            SettingKind.number(0, 1),
            "Decay of the weights in each step, as a share of the rate."),
    CLIP(
            "clip",
            "1",
            SettingKind.number(1e-6, 1e6),
            "Longest gradient of a batch's mean loss; longer ones are shortened."),
    AVERAGE(
            "average",
            "0.999",
            SettingKind.number(0, 0.999999),
            "How slowly the average of the weights moves, which judges and is kept."),
    DEEP_ROWS(
            "deep.rows",
            "16384",
            SettingKind.whole(256, 1 << 17),
            "Positions the deep network and the pupils take at once, a multiple of 256."),
    QUICK_ROWS(
            "quick.rows",
            "32768",
            SettingKind.whole(256, 1 << 17),
            "Positions the quick network takes at once, a multiple of 256."),
    RIVAL(
            "rival",
            "standard",
            SettingKind.ANY,
            "Net that strength is evaluated against: a shipped one or a model file."),
    EVALUATION_SECONDS("evaluation.seconds", "60", SettingKind.number(1, 1e6), "Seconds between two evaluations."),
    EVALUATION_PAIRS("evaluation.pairs", "8192", SettingKind.whole(2, 1 << 24), "Pairs of games in each evaluation."),
    FINAL_PAIRS(
            "final.pairs",
            "100000",
            SettingKind.whole(2, 1 << 24),
            "Pairs of games in the last evaluation, after the run."),
    CHECKPOINT_SECONDS(
            "checkpoint.seconds",
            "120",
            SettingKind.number(0.1, 1e6),
            "Seconds between two checkpoints: the most a crash can lose."),
    CHECKPOINTS_KEPT(
            "checkpoints.kept",
            "2",
            SettingKind.whole(1, 1000),
            "Newest checkpoints that are kept. Each has 16 bytes a weight: 206 MB for 1024x6, 79 MB for 768x4.");

    private final SettingFacts facts;

    CardSetting(String key, String byDefault, SettingKind kind, String comment) {
        facts = new SettingFacts(key, byDefault, kind, comment);
    }

    /** Kinds of settings that name shapes of networks. */
    private static final class Shapes {
        static final SettingKind ONE = new SettingKind(ResidualShape::isOne, "width x blocks, such as 1024x6");
        static final SettingKind SOME = new SettingKind(
                text -> text.equals("none") || isList(text), "different shapes such as 768x4,256x2, or none");

        private static boolean isList(String text) {
            java.util.List<String> shapes = java.util.List.of(text.split(",", -1));
            return shapes.stream().allMatch(ResidualShape::isOne)
                    && shapes.stream().distinct().count() == shapes.size();
        }
    }

    @Override
    public SettingFacts facts() {
        return facts;
    }
}
