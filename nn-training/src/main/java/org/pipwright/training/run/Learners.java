package org.pipwright.training.run;

import java.nio.file.Path;
import java.util.Map;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.roll.Dice;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.learner.Learner;
import org.pipwright.training.learner.SparseLearner;
import org.pipwright.training.reference.ReferenceLearner;
import org.pipwright.training.settings.LearnerKind;
import org.pipwright.training.settings.NetworkSettings;
import org.pipwright.training.settings.TrainingSettings;

/** The two learners of a run: contact and race. */
final class Learners implements AutoCloseable {
    /** Keeps the order of samples apart from the dice of the games. */
    private static final long SHUFFLE = 0x1F83D9ABFB41BD6BL;

    final Learner contact;
    final Learner race;
    private final TrainingSettings settings;

    /** Learners of a new run, or of one whose weights a checkpoint will give. */
    Learners(TrainingSettings settings, boolean fresh, Crew<Integer> workers) {
        this.settings = settings;
        if (settings.learning().learner() == LearnerKind.REFERENCE
                && settings.learning().average() > 0) {
            throw new InvalidRunException("learner = reference keeps no averages: set average = 0 or learner = sparse");
        }
        Model start = fresh ? start(settings) : random(settings);
        contact = learner(start.contact(), workers);
        race = learner(start.race(), workers);
    }

    /** The net of {@code start.net}, checked; random weights if there is none. */
    static Model start(TrainingSettings settings) {
        Model random = random(settings);
        if (settings.networks().start().isEmpty()) {
            return random;
        }
        Path file = settings.networks().start().get();
        Model given = ModelFile.read(file);
        Model start = widened(given, random.contact().features());
        if (!start.shape().equals(random.shape())) {
            throw new InvalidRunException("start.net '" + file + "' is " + given.shape() + ", but the settings ask for "
                    + random.shape() + ": set contact.features, contact.hidden and race.hidden to what it has");
        }
        return start;
    }

    /** A net that reads no pairs may begin a run whose net shall. */
    private static Model widened(Model given, FeatureSet wanted) {
        boolean lacksPairs = given.contact().features() == FeatureSet.CONTACT_1 && wanted == FeatureSet.CONTACT_2;
        return lacksPairs ? new Model(InitialLayers.withPairs(given.contact()), given.race(), given.notes()) : given;
    }

    private static Model random(TrainingSettings settings) {
        NetworkSettings wanted = settings.networks();
        long seed = settings.seed();
        return new Model(
                InitialLayers.network(wanted.contactFeatures(), wanted.contactHidden(), seed),
                InitialLayers.network(FeatureSet.RACE_1, wanted.raceHidden(), seed + 1),
                Map.of());
    }

    private Learner learner(Network start, Crew<Integer> workers) {
        return settings.learning().learner() == LearnerKind.REFERENCE
                ? new ReferenceLearner(start)
                : new SparseLearner(start, settings.learning().average(), workers);
    }

    /** Mean losses of one round. */
    record Losses(double contact, double race) {}

    Losses fit(Round round, long number, double rate) {
        int batch = settings.learning().batch();
        int epochs = settings.learning().epochs();
        long seed = settings.seed() ^ SHUFFLE;
        return new Losses(
                Batches.fit(contact, round.contact, batch, epochs, rate, Dice.ofGame(seed, 2 * number)),
                Batches.fit(race, round.race, batch, epochs, rate, Dice.ofGame(seed, 2 * number + 1)));
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
