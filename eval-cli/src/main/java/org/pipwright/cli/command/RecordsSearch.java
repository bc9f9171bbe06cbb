package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.Predicate;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.DrillRecords;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.Clarity;
import org.pipwright.engine.drill.DrillListener;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Mistakes;
import org.pipwright.engine.drill.Selection;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Rules;
import org.pipwright.engine.review.Review;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.Reviews;
import org.pipwright.engine.text.Excerpt;

/** Exercises from the mistakes in records: a review finds them, a closer look keeps those that are clear. */
final class RecordsSearch {
    private final Map<String, GameRecord> records;
    private final Optional<String> player;
    private final SelectionSettings settings;
    private final PrintWriter err;

    private RecordsSearch(
            Map<String, GameRecord> records, Optional<String> player, SelectionSettings settings, PrintWriter err) {
        this.records = records;
        this.player = player;
        this.settings = settings;
        this.err = err;
    }

    static DrillSearch of(
            Map<String, GameRecord> records, Optional<String> player, SelectionSettings settings, PrintWriter err) {
        return new DrillSearch(
                new DrillRecords(List.copyOf(records.keySet()), player, settings),
                settings.count(),
                "mistakes",
                settings.clarity().lookahead(),
                "these records have no more such mistakes: leave THEME or --player out, or lower --grade, --cost or"
                        + " --margin",
                new RecordsSearch(records, player, settings, err)::find);
    }

    /** The records of some files; fails if one cannot be judged, or the player is in none of them. */
    static Map<String, GameRecord> read(List<String> files, Optional<String> player) {
        Map<String, GameRecord> records = new LinkedHashMap<>();
        Set<String> names = new LinkedHashSet<>();
        for (String file : files) {
            GameRecord record = RecordFiles.read(file);
            Rules rules = record.heading().rules();
            int longest = ShippedMatchTable.load().length();
            if (rules.match() && rules.length() > longest) {
                throw new UserError("'" + file + "' is a match to " + rules.length() + ": the match table ends at "
                        + longest + "-away");
            }
            records.put(file, record);
            names.addAll(record.heading().players());
        }
        player.filter(name -> names.stream().noneMatch(name::equalsIgnoreCase)).ifPresent(name -> {
            throw new UserError(
                    "--player is '" + Excerpt.of(name) + "': these records have " + String.join(", ", names));
        });
        return records;
    }

    private List<Exercise> find(Knowledge knowledge, DrillListener listener, Workers workers) {
        List<Candidate> candidates = candidates(knowledge, listener, workers);
        Selection selection = new Selection(settings, knowledge, listener);
        return workers.have(
                threads -> selection.run(candidates, threads), workforce -> selection.run(candidates, workforce));
    }

    private List<Candidate> candidates(Knowledge knowledge, DrillListener listener, Workers workers) {
        Clarity clarity = settings.clarity();
        ReviewSettings quick = new ReviewSettings(Math.min(1, clarity.lookahead()), 0, 1, clarity.simulateRaces());
        Predicate<String> wanted = name -> player.map(name::equalsIgnoreCase).orElse(true);
        Mistakes mistakes = new Mistakes(clarity.cost(), wanted);
        Reviews reviews = workers.have(
                threads -> new Reviews(knowledge, quick, threads),
                workforce -> new Reviews(knowledge, quick, workforce));
        try {
            for (Map.Entry<String, GameRecord> each : records.entrySet()) {
                mistakes.add(each.getKey(), review(reviews, each.getValue(), listener));
            }
        } catch (CancellationException e) {
            return new ArrayList<>();
        }
        return mistakes.costliestFirst();
    }

    private Review review(Reviews reviews, GameRecord record, DrillListener listener) {
        ReviewProgress shown = new ReviewProgress(err);
        try {
            return reviews.review(record, WorkFile.NONE, new Progress() {
                @Override
                public void reached(int done, int all) {
                    shown.reached(done, all);
                }

                @Override
                public boolean stopped() {
                    return listener.stopped();
                }
            });
        } finally {
            shown.close();
        }
    }
}
