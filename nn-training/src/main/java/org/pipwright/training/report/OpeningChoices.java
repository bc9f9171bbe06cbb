package org.pipwright.training.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Which play the networks chose for each opening roll, evaluation by evaluation; kept as a CSV file. */
public final class OpeningChoices {
    private static final int MAX_COLUMNS = 8;

    private final Path file;
    private final List<Line> lines = new ArrayList<>();

    /**
     * The choices at one time.
     *
     * @param games games trained until then
     * @param plays one play an opening roll, in the order of {@link Roll#opening()}
     */
    public record Line(long games, List<String> plays) {
        private String toCsv() {
            return games + "," + String.join(",", plays);
        }

        private static Line ofCsv(String line) {
            List<String> fields = Arrays.asList(line.split(",", -1));
            return new Line(Long.parseLong(fields.get(0)), List.copyOf(fields.subList(1, fields.size())));
        }
    }

    private OpeningChoices(Path file) {
        this.file = file;
    }

    /**
     * Reads what a run has left.
     *
     * @param file the CSV file, which need not exist
     * @param games lines about more games than this are dropped
     * @return the choices so far
     * @throws IOException if the file cannot be read
     */
    public static OpeningChoices open(Path file, long games) throws IOException {
        OpeningChoices choices = new OpeningChoices(file);
        if (Files.exists(file)) {
            Files.readAllLines(file, StandardCharsets.UTF_8).stream()
                    .filter(line -> line.matches("\\d{1,18}(,[^,]*){15}"))
                    .map(Line::ofCsv)
                    .filter(line -> line.games() <= games)
                    .forEach(choices.lines::add);
        }
        return choices;
    }

    /**
     * Adds what a model chooses now.
     *
     * @param games games trained until now
     * @param model the model
     */
    public void add(long games, Model model) {
        try (Judge judge = new Judge(Knowledge.of(model), 1)) {
            List<String> plays = Roll.opening().stream()
                    .map(roll -> judge.ask(Question.of(Position.start(), roll), Effort.STATIC)
                            .best())
                    .map(best -> PlayText.print(best.play()))
                    .toList();
            lines.add(new Line(games, plays));
        }
    }

    /**
     * Writes the file as a whole.
     *
     * @throws IOException if that fails; the file is then as before
     */
    public void write() throws IOException {
        String header = "games," + Roll.opening().stream().map(Roll::toString).collect(Collectors.joining(","));
        String text =
                header + "\n" + lines.stream().map(line -> line.toCsv() + "\n").collect(Collectors.joining());
        AtomicFile.write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    /**
     * A table for people, of a few times spread over the run.
     *
     * @return the table, a row an opening roll
     */
    public OpeningTable table() {
        return table(MAX_COLUMNS);
    }

    /**
     * The same.
     *
     * @param most most times
     * @return the table, a row an opening roll
     */
    OpeningTable table(int most) {
        List<Line> shown = spread(most);
        return new OpeningTable(
                shown.stream().map(Line::games).toList(),
                IntStream.range(0, Roll.opening().size())
                        .mapToObj(r -> row(r, shown))
                        .toList());
    }

    private static OpeningTable.Row row(int number, List<Line> shown) {
        Roll roll = Roll.opening().get(number);
        PrintedOpening printed = PrintedOpening.all().stream()
                .filter(opening -> opening.roll().equals(roll))
                .findFirst()
                .orElseThrow();
        List<OpeningTable.Choice> choices = choices(number, shown);
        String last = choices.isEmpty() ? "" : choices.get(choices.size() - 1).play();
        boolean agrees = !last.isEmpty() && printed.isAllowed(PlayText.parse(last, Position.start(), roll));
        String named = printed.best().stream().map(PlayText::print).collect(Collectors.joining(" or "));
        return new OpeningTable.Row(roll.toString(), choices, named, agrees);
    }

    private static List<OpeningTable.Choice> choices(int roll, List<Line> shown) {
        List<OpeningTable.Choice> choices = new ArrayList<>();
        String before = null;
        for (Line line : shown) {
            String play = line.plays().get(roll);
            choices.add(new OpeningTable.Choice(play, play.equals(before)));
            before = play;
        }
        return choices;
    }

    /** Up to {@code most} lines: the first, the last, and between them each time about a constant factor more games. */
    private List<Line> spread(int most) {
        if (lines.size() <= most) {
            return lines;
        }
        List<Line> shown = new ArrayList<>();
        for (int i = 0; i < most; i++) {
            double share = Math.pow(lines.size(), (double) i / (most - 1));
            Line line = lines.get((int) Math.min(lines.size() - 1, Math.round(share) - 1));
            if (!shown.contains(line)) {
                shown.add(line);
            }
        }
        return shown;
    }
}
