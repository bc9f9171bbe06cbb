package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.training.settings.InvalidSettingsException;
import org.pipwright.training.settings.SettingValues;

/**
 * All that decides a run, as numbers.
 *
 * @param minutes minutes to train in all
 * @param processorTime whether minutes and seconds are processor time divided by the threads, not those that pass
 * @param seed seed of dice, first weights and draws
 * @param shapes the deep network's, the quick one's, the pupils'
 * @param copySeconds seconds of copying to begin with
 * @param starts nets that networks begin with, by name or file, in the order of the shapes; null where there is none
 * @param teachOnly whether only pupils learn
 * @param teachSteps their steps a turn of a lane then
 * @param lanes groups of games that take turns on the card
 * @param games games a lane
 * @param rules how games go
 * @param keepMargin equity within which results are kept by the quick network, in points
 * @param lambdaFirst lambda of the targets at the beginning
 * @param lambdaLast lambda at the end
 * @param memory lessons kept to draw from
 * @param uses times a lesson is used on average
 * @param quickSteps steps of the quick network a turn
 * @param rate highest learning rate
 * @param learner how networks learn
 * @param deepRows rows the deep network takes at once
 * @param quickRows rows the quick network takes at once
 * @param evaluation how strength is evaluated
 * @param checkpointSeconds seconds between two checkpoints
 * @param checkpointsKept newest checkpoints that are kept
 */
record Recipe(
        double minutes,
        boolean processorTime,
        long seed,
        List<ResidualShape> shapes,
        double copySeconds,
        List<String> starts,
        boolean teachOnly,
        int teachSteps,
        int lanes,
        int games,
        GameRules rules,
        float keepMargin,
        double lambdaFirst,
        double lambdaLast,
        int memory,
        double uses,
        int quickSteps,
        double rate,
        LearnerSettings learner,
        int deepRows,
        int quickRows,
        Evaluating evaluation,
        double checkpointSeconds,
        int checkpointsKept) {
    /** Index of the network that gives targets. */
    static final int DEEP = 0;

    /** Index of the network that prunes replies. */
    static final int QUICK = 1;

    private static final String NONE = "none";

    /**
     * How strength is evaluated.
     *
     * @param seconds seconds between two evaluations
     * @param pairs pairs of games of each
     * @param finalPairs pairs of games of the last
     */
    record Evaluating(double seconds, int pairs, int finalPairs) {}

    /**
     * Reads settings.
     *
     * @throws InvalidSettingsException if they don't fit together
     */
    static Recipe of(SettingValues<CardSetting> settings) {
        List<ResidualShape> shapes = new ArrayList<>();
        shapes.add(ResidualShape.parse(settings.text(CardSetting.DEEP)));
        shapes.add(ResidualShape.parse(settings.text(CardSetting.QUICK)));
        list(settings.text(CardSetting.PUPILS)).stream()
                .map(ResidualShape::parse)
                .forEach(shapes::add);
        requireMultiple(settings, CardSetting.BATCH, 64);
        requireMultiple(settings, CardSetting.DEEP_ROWS, 256);
        requireMultiple(settings, CardSetting.QUICK_ROWS, 256);
        Recipe recipe = new Recipe(
                settings.number(CardSetting.MINUTES),
                settings.text(CardSetting.CLOCK).equals("processor"),
                settings.whole(CardSetting.SEED),
                List.copyOf(shapes),
                settings.number(CardSetting.COPY_SECONDS),
                starts(settings, shapes.size()),
                settings.text(CardSetting.TEACH_ONLY).equals("yes"),
                whole(settings, CardSetting.TEACH_STEPS),
                whole(settings, CardSetting.LANES),
                whole(settings, CardSetting.GAMES),
                rules(settings),
                (float) settings.number(CardSetting.KEEP_MARGIN),
                settings.number(CardSetting.LAMBDA_FIRST),
                settings.number(CardSetting.LAMBDA_LAST),
                whole(settings, CardSetting.MEMORY),
                settings.number(CardSetting.USES),
                whole(settings, CardSetting.QUICK_STEPS),
                settings.number(CardSetting.RATE),
                learner(settings),
                whole(settings, CardSetting.DEEP_ROWS),
                whole(settings, CardSetting.QUICK_ROWS),
                new Evaluating(
                        settings.number(CardSetting.EVALUATION_SECONDS),
                        whole(settings, CardSetting.EVALUATION_PAIRS),
                        whole(settings, CardSetting.FINAL_PAIRS)),
                settings.number(CardSetting.CHECKPOINT_SECONDS),
                whole(settings, CardSetting.CHECKPOINTS_KEPT));
        recipe.requireSense();
        return recipe;
    }

    /**
     * A recipe of which only the games are wanted: nothing is learned, and nearly no memory is taken for it.
     *
     * @param deep the first network
     * @param quick the second
     * @param games games a lane
     * @param keepMargin equity within which results are kept by the second network when it prunes for the first, in points
     */
    static Recipe ofGames(ResidualShape deep, ResidualShape quick, int games, double keepMargin) {
        return of(CardPreset.parse("minutes = 1\nmemory = 1000\nbatch = 64\ndeep = " + deep + "\nquick = " + quick
                + "\ngames = " + games + "\nkeep.margin = " + keepMargin + "\n"));
    }

    private static List<String> list(String text) {
        return text.equals(NONE) ? List.of() : List.of(text.split(",", -1));
    }

    private static int whole(SettingValues<CardSetting> settings, CardSetting setting) {
        return Math.toIntExact(settings.whole(setting));
    }

    private static void requireMultiple(SettingValues<CardSetting> settings, CardSetting setting, int step) {
        if (settings.whole(setting) % step != 0) {
            throw new InvalidSettingsException(
                    setting.key() + " must be a multiple of " + step + ", not '" + settings.text(setting) + "'");
        }
    }

    private static List<String> starts(SettingValues<CardSetting> settings, int networks) {
        List<String> starts =
                new ArrayList<>(List.of(settings.text(CardSetting.START_DEEP), settings.text(CardSetting.START_QUICK)));
        List<String> pupils = list(settings.text(CardSetting.START_PUPILS));
        if (!pupils.isEmpty() && pupils.size() != networks - 2) {
            throw new InvalidSettingsException("start.pupils names " + pupils.size() + " files for " + (networks - 2)
                    + " pupils: give one for each");
        }
        starts.addAll(pupils);
        while (starts.size() < networks) {
            starts.add(NONE);
        }
        starts.replaceAll(file -> file.equals(NONE) ? null : file);
        return java.util.Collections.unmodifiableList(starts);
    }

    private static GameRules rules(SettingValues<CardSetting> settings) {
        return new GameRules(
                settings.number(CardSetting.STRAY_SHARE),
                settings.number(CardSetting.RANDOM_STARTS),
                whole(settings, CardSetting.RANDOM_TURNS),
                settings.number(CardSetting.FORMULA_SHARE),
                whole(settings, CardSetting.FORMULA_TURNS),
                (float) settings.number(CardSetting.STRAY_MARGIN),
                whole(settings, CardSetting.MAX_TURNS));
    }

    private static LearnerSettings learner(SettingValues<CardSetting> settings) {
        return new LearnerSettings(
                whole(settings, CardSetting.BATCH),
                (float) settings.number(CardSetting.MEAN_DECAY),
                (float) settings.number(CardSetting.SQUARE_DECAY),
                (float) settings.number(CardSetting.WEIGHT_DECAY),
                (float) settings.number(CardSetting.CLIP),
                (float) settings.number(CardSetting.AVERAGE));
    }

    private void requireSense() {
        if (minutes == 0) {
            throw new InvalidSettingsException("say how long to train: --minutes M, --hours H or --preset NAME");
        }
        if (shapes.subList(2, shapes.size()).contains(shapes.get(DEEP))) {
            throw new InvalidSettingsException("pupils must have other shapes than deep, " + shapes.get(DEEP));
        }
        if (teachOnly && (!startsGiven() || shapes.size() == 2)) {
            throw new InvalidSettingsException(
                    "teach.only = yes needs start.deep, start.quick and pupils: set all three");
        }
    }

    /** Whether the first two networks begin with weights that have learned, so that nothing is copied. */
    boolean startsGiven() {
        return starts.get(DEEP) != null && starts.get(QUICK) != null;
    }

    /** The networks that copy to begin with, by index: those that begin with random weights. */
    List<Integer> copying() {
        return learning().stream().filter(net -> starts.get(net) == null).toList();
    }

    /** Rows a network takes at once. */
    int rows(int net) {
        return net == QUICK ? quickRows : deepRows;
    }

    /** What a network is called in files and figures; the quick one may have the shape of another. */
    String name(int net) {
        return net == QUICK ? "quick-" + shapes.get(net) : shapes.get(net).toString();
    }

    /** The networks that learn, by index. */
    List<Integer> learning() {
        return java.util.stream.IntStream.range(teachOnly ? 2 : 0, shapes.size())
                .boxed()
                .toList();
    }
}
