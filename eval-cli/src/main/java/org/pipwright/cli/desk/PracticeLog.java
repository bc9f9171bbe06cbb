package org.pipwright.cli.desk;

import java.io.IOException;
import java.net.URLDecoder;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.judge.Question;

/**
 * The log of what was practised: a plain text file of the user's with a line for each answer. A line has five fields with
 * tabs between them: when, {@code right} or {@code wrong}, the position as the address of the board has it, what was
 * answered, and what that cost. Each line is written at once, behind what others have written; lines that do not make sense
 * are left alone.
 */
final class PracticeLog {
    private static final int FIELDS = 5;
    private static final String ANSWERING = "asked=answer";

    /** Lines of a year of hard work; older ones are not read. */
    private static final long MAX_BYTES = 8L << 20;

    private final Path file;

    PracticeLog(Path file) {
        this.file = file;
    }

    /** Where it is. */
    Path file() {
        return file;
    }

    /**
     * Adds an answer.
     *
     * @param exercise what was asked
     * @param answer what was answered
     * @param right whether that was right
     * @param cost what it cost, in points, at most 0
     * @throws IOException if the file cannot be written; nothing has been added then
     */
    synchronized void add(Exercise exercise, String answer, boolean right, double cost) throws IOException {
        String line = String.join(
                "\t",
                Instant.now().truncatedTo(ChronoUnit.SECONDS).toString(),
                right ? "right" : "wrong",
                address(exercise),
                answer,
                String.format(Locale.ROOT, "%.4f", cost + 0.0));
        try (FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            // Another desk may write to the same file; the lock ends with the channel.
            channel.lock();
            long end = channel.size();
            ByteBuffer last = ByteBuffer.allocate(1);
            boolean torn = end > 0 && channel.read(last, end - 1) == 1 && last.get(0) != '\n';
            ByteBuffer bytes = ByteBuffer.wrap(((torn ? "\n" : "") + line + "\n").getBytes(StandardCharsets.UTF_8));
            try {
                while (bytes.hasRemaining()) {
                    channel.write(bytes, end + bytes.position());
                }
                channel.force(true);
            } catch (IOException e) {
                channel.truncate(end);
                throw e;
            }
        }
    }

    /** The board on which it can be looked at again. */
    static String address(Exercise exercise) {
        Setting setting = new Setting(
                Layout.of(exercise.position()),
                exercise instanceof PlayExercise ? Optional.of(((PlayExercise) exercise).roll()) : Optional.empty(),
                new PlayedFor(exercise.stakes(), exercise.cube()),
                Setting.Asking.USUAL,
                Setting.Look.USUAL);
        boolean answering = exercise instanceof CubeExercise && ((CubeExercise) exercise).answering();
        String query = setting.query();
        return "/board?" + query + (answering ? (query.isEmpty() ? "" : "&") + ANSWERING : "");
    }

    /** What was answered wrongly when it was asked last, the oldest first; none where there is no file. */
    synchronized List<Candidate> wrong() throws IOException {
        if (!Files.isRegularFile(file) || Files.size(file) > MAX_BYTES) {
            return List.of();
        }
        Map<String, Long> wrong = new LinkedHashMap<>();
        long number = 0;
        // Not as strict UTF-8: a line that was damaged must not hide the others.
        for (String line : new String(Files.readAllBytes(file), StandardCharsets.UTF_8).split("\n", -1)) {
            number++;
            String[] fields = line.split("\t", -1);
            if (fields.length == FIELDS) {
                wrong.remove(fields[2]);
                if (fields[1].equals("wrong")) {
                    wrong.put(fields[2], number);
                }
            }
        }
        List<Candidate> candidates = new ArrayList<>();
        wrong.forEach((address, line) -> candidate(address, line).ifPresent(candidates::add));
        return candidates;
    }

    private Optional<Candidate> candidate(String address, long line) {
        if (!address.startsWith("/board?")) {
            return Optional.empty();
        }
        Map<String, String> fields = new HashMap<>();
        for (String field : address.substring("/board?".length()).split("&")) {
            int equals = field.indexOf('=');
            if (equals > 0) {
                fields.put(field.substring(0, equals), decoded(field.substring(equals + 1)));
            }
        }
        SettingForm form = SettingForm.parse(fields::get);
        if (!form.errors().isEmpty()) {
            return Optional.empty();
        }
        Origin origin = new Origin.Listed(file.getFileName().toString(), line);
        return form.setting()
                .question()
                .flatMap(question -> asked(origin, question, "answer".equals(fields.get("asked"))));
    }

    /** A value; one that is damaged says nothing that anybody could use. */
    private static String decoded(String value) {
        try {
            return URLDecoder.decode(value, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException e) {
            return "?";
        }
    }

    private static Optional<Candidate> asked(Origin origin, Question question, boolean answering) {
        if (question.roll() == null && !question.cubeful()) {
            return Optional.empty();
        }
        return Optional.of(new Candidate(origin, question, answering, Optional.empty(), Optional.empty()));
    }
}
