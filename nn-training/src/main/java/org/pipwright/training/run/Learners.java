package org.pipwright.training.run;

import java.util.Map;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.roll.Dice;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.learner.Learner;
import org.pipwright.training.learner.ReferenceLearner;
import org.pipwright.training.learner.SparseLearner;
import org.pipwright.training.parallel.Workers;
import org.pipwright.training.settings.Setting;
import org.pipwright.training.settings.TrainingSettings;

/** The two learners of a run: contact and race. */
final class Learners implements AutoCloseable {
    /** Keeps the order of samples apart from the dice of the games. */
    private static final long SHUFFLE = 0x1F83D9ABFB41BD6BL;

    final Learner contact;
    final Learner race;
    private final TrainingSettings settings;

    Learners(TrainingSettings settings, Workers workers) {
        this.settings = settings;
        long seed = settings.whole(Setting.SEED);
        contact = learner(
                InitialLayers.network(FeatureSet.CONTACT_1, settings.sizes(Setting.CONTACT_HIDDEN), seed), workers);
        race = learner(
                InitialLayers.network(FeatureSet.RACE_1, settings.sizes(Setting.RACE_HIDDEN), seed + 1), workers);
    }

    private Learner learner(Network start, Workers workers) {
        return settings.text(Setting.LEARNER).equals("reference")
                ? new ReferenceLearner(start)
                : new SparseLearner(start, workers);
    }

    /** Mean losses of one round. */
    record Losses(double contact, double race) {}

    Losses fit(Round round, long number, double rate) {
        int batch = (int) settings.whole(Setting.BATCH);
        long seed = settings.whole(Setting.SEED) ^ SHUFFLE;
        return new Losses(
                Batches.fit(contact, round.contact, batch, rate, Dice.ofGame(seed, 2 * number)),
                Batches.fit(race, round.race, batch, rate, Dice.ofGame(seed, 2 * number + 1)));
    }

    Model model(Map<String, String> notes) {
        return new Model(contact.network(), race.network(), notes);
    }

    @Override
    public void close() {
        contact.close();
        race.close();
    }
}
