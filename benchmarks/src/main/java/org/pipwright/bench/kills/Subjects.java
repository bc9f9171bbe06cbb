package org.pipwright.bench.kills;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.pipwright.engine.network.ModelFile;

/** Commands that keep something while they work. */
final class Subjects {
    private static final String SETTINGS = """
            games = 320
            round = 16
            contact.hidden = 32,8
            race.hidden = 8
            evaluation.games = 20
            evaluation.seconds = 1
            checkpoint.seconds = 0.1
            """;

    private static final String DEVICE_SETTINGS = """
            minutes = 0.05
            deep = 128x1
            quick = 128x1
            copy.seconds = 1
            games = 8
            batch = 64
            memory = 4000
            rival = fifth
            evaluation.seconds = 2
            evaluation.pairs = 4
            final.pairs = 8
            checkpoint.seconds = 0.2
            """;

    private static final String RECORD = """
            pipwright record 1
            players: Ada, Ben
            match: 3

            game 1: 0-0
            Ada 3-1: 8/5 6/5
            Ben 6-2: 24/18 13/11
            Ada 4-2: 8/4 6/4
            Ben 5-5: 13/3(2)
            """;

    private Subjects() {}

    /** All of them, those that take long last. */
    static List<Subject> all(Path scratch) throws IOException {
        Path settings = Files.writeString(scratch.resolve("settings"), SETTINGS);
        Path device = Files.writeString(scratch.resolve("device-settings"), DEVICE_SETTINGS);
        Path record = Files.writeString(scratch.resolve("record.txt"), RECORD);
        return List.of(
                new Training("train", settings, List.of("--threads", "2"), true),
                new Saved(
                        "rollout",
                        "rollout start --roll 3-1 --top 3 --net fifth --truncate 8 --trials 720 --json --threads 2"),
                new Saved("review", "review " + record + " --lookahead 2 --net fifth --json --threads 2"),
                new Drill(),
                new TableBuild(),
                new DeskGame(),
                new Training("train --device threads", device, List.of("--device", "threads", "--threads", "2"), false),
                new Training("train --cluster local[2]", settings, List.of("--cluster", "local[2]"), true));
    }

    private static String hash(Path file) throws IOException {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }

    private static List<String> words(String line, String... more) {
        List<String> words = new ArrayList<>(List.of(line.split(" ")));
        words.addAll(List.of(more));
        return words;
    }

    /**
     * A run of training; its weights are the same again, or if it ends by time, at least whole.
     *
     * @param name what the table calls it
     * @param settings a file
     * @param options further options
     * @param repeats whether the weights are the same again
     */
    private record Training(String name, Path settings, List<String> options, boolean repeats) implements Subject {
        @Override
        public boolean kept(Path folder) {
            return Files.exists(folder.resolve("run/settings.txt"));
        }

        @Override
        public List<String> words(Path folder, boolean again) {
            List<String> words =
                    Subjects.words("train", "--out", folder.resolve("run").toString());
            words.addAll(again ? List.of("--resume") : List.of("--settings", settings.toString()));
            words.addAll(options);
            return words;
        }

        @Override
        public String bits(Path folder, Work done) throws IOException {
            if (done.err().contains("unusable")) {
                return "a damaged checkpoint";
            }
            String weights = ModelFile.read(folder.resolve("run/net.safetensors"))
                    .notes()
                    .get(ModelFile.SHA256);
            return repeats ? weights : "whole";
        }
    }

    /**
     * A command that keeps its results in a file and prints them in the end.
     *
     * @param name what the table calls it
     * @param line the command
     */
    private record Saved(String name, String line) implements Subject {
        @Override
        public boolean kept(Path folder) {
            return Files.exists(folder.resolve("saved"));
        }

        @Override
        public List<String> words(Path folder, boolean again) {
            return Subjects.words(
                    line, again ? "--resume" : "--save", folder.resolve("saved").toString());
        }

        @Override
        public String bits(Path folder, Work done) throws IOException {
            return hash(folder.resolve("saved")) + done.out();
        }
    }

    /** Exercises, which are found again from the beginning. */
    private record Drill() implements Subject {
        @Override
        public String name() {
            return "drill";
        }

        @Override
        public List<String> words(Path folder, boolean again) {
            return Subjects.words(
                    "drill opening --count 3 --lookahead 1 --net fifth --threads 2" + (again ? " --force" : ""),
                    "--sheet",
                    folder.resolve("sheet.html").toString(),
                    "--page",
                    folder.resolve("page.html").toString());
        }

        @Override
        public String bits(Path folder, Work done) throws IOException {
            return hash(folder.resolve("sheet.html")) + hash(folder.resolve("page.html"));
        }
    }

    /** Exact tables, built into a folder. */
    private record TableBuild() implements Subject {
        @Override
        public String name() {
            return "tables";
        }

        @Override
        public List<String> words(Path folder, boolean again) {
            return Subjects.words("tables --points 7 --threads 2", "--cache", folder.toString());
        }

        @Override
        public boolean needsCache() {
            return true;
        }

        @Override
        public String bits(Path folder, Work done) throws IOException {
            StringBuilder bits = new StringBuilder();
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.filter(Subjects::isTable).sorted().toList()) {
                    bits.append(file.getFileName())
                            .append(' ')
                            .append(hash(file))
                            .append('\n');
                }
            }
            return bits.toString();
        }
    }

    private static boolean isTable(Path file) {
        String name = file.getFileName().toString();
        return !name.startsWith(".") && Files.isRegularFile(file);
    }
}
