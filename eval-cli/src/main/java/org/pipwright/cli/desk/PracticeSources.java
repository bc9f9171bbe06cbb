package org.pipwright.cli.desk;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.Theme;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.record.Heading;
import org.pipwright.models.ModelCatalog;

/** What can be practised at a desk: themes, mistakes of opened records, opened files of positions, and what the log has. */
final class PracticeSources {
    private static final String THEME = "theme-";
    private static final String MISTAKES = "mistakes-";
    private static final String POSITIONS = "positions-";
    private static final String LOG = "log";

    /** Whose mistakes {@code drill} looks for unless it is told otherwise. */
    private static final String WEAKER = "builder";

    private final Records records;
    private final Map<String, List<Candidate>> positions;
    private final PracticeLog log;

    /**
     * Something that can be practised.
     *
     * @param title what it is
     * @param supply where the exercises come from
     * @param about the kinds of fact that their lessons are to be about
     */
    record Chosen(String title, Supply supply, Predicate<Motive> about) {}

    PracticeSources(Records records, Map<String, List<Candidate>> positions, PracticeLog log) {
        this.records = records;
        this.positions = positions;
        this.log = log;
    }

    /** What there is to choose from: words for people by words for forms. */
    Map<String, String> choices() {
        Map<String, String> choices = new LinkedHashMap<>();
        for (Theme theme : Theme.values()) {
            choices.put(THEME + theme.word(), theme.title() + ": " + theme.about());
        }
        for (int record = 1; record <= records.files().size(); record++) {
            Heading heading = records.find(Integer.toString(record))
                    .orElseThrow()
                    .review()
                    .record()
                    .heading();
            for (int side = 0; side < 2; side++) {
                choices.put(
                        MISTAKES + record + "-" + side,
                        "Mistakes of " + heading.name(side) + " in "
                                + records.files().get(record - 1));
            }
        }
        List<String> files = new ArrayList<>(positions.keySet());
        for (int file = 1; file <= files.size(); file++) {
            choices.put(POSITIONS + file, "The positions of " + files.get(file - 1));
        }
        int wrong = wrong().size();
        if (wrong > 0) {
            choices.put(LOG, "What went wrong last time: " + (wrong == 1 ? "1 position" : wrong + " positions"));
        }
        return choices;
    }

    private List<Candidate> wrong() {
        try {
            return log.wrong();
        } catch (IOException e) {
            throw new IllegalArgumentException("the log '" + log.file() + "' cannot be read: " + Reason.of(e), e);
        }
    }

    /**
     * What was chosen.
     *
     * @param choice as {@link #choices()} has it, or null
     * @throws IllegalArgumentException if there is nothing of that name
     */
    Chosen choose(String choice) {
        String title = choice == null ? null : choices().get(choice);
        if (title == null) {
            throw new IllegalArgumentException("choose what to practise");
        }
        return new Chosen(title, supply(choice), about(choice));
    }

    private Supply supply(String choice) {
        if (choice.equals(LOG)) {
            return Supply.ofAll(wrong());
        }
        String[] parts = choice.substring(choice.indexOf('-') + 1).split("-");
        if (choice.startsWith(MISTAKES)) {
            return Supply.ofMistakes(records.find(parts[0]).orElseThrow(), Integer.parseInt(parts[1]));
        }
        if (choice.startsWith(POSITIONS)) {
            return Supply.ofAll(new ArrayList<>(positions.values()).get(Integer.parseInt(parts[0]) - 1));
        }
        return Supply.ofTheme(
                theme(choice).orElseThrow(),
                new SplittableRandom().nextLong(1_000_000_000),
                Contestant.read(WEAKER, ModelCatalog.shipped(), 0));
    }

    private static Optional<Theme> theme(String choice) {
        return Arrays.stream(Theme.values())
                .filter(each -> choice.equals(THEME + each.word()))
                .findFirst();
    }

    private static Predicate<Motive> about(String choice) {
        return theme(choice).<Predicate<Motive>>map(theme -> theme::about).orElse(motive -> true);
    }
}
