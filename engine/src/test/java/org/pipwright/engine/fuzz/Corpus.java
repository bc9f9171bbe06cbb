package org.pipwright.engine.fuzz;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Inputs that fuzzing found worth keeping, each of which goes another way through a reader: a resource beside the target,
 * {@code NAME.corpus}, with a line of Base64 for each.
 */
public final class Corpus {
    /** Longer ones are not kept: they would be most of the file. */
    private static final int LONGEST = 2000;

    private Corpus() {}

    /** The target of a class. */
    public static Target target(String name) throws ReflectiveOperationException {
        var constructor = Class.forName(name).getDeclaredConstructor();
        constructor.setAccessible(true);
        return (Target) constructor.newInstance();
    }

    /** What is kept for a target; nothing where nothing was. */
    public static List<byte[]> kept(Target target) throws IOException {
        String name = target.getClass().getSimpleName() + ".corpus";
        try (InputStream in = target.getClass().getResourceAsStream(name)) {
            return in == null
                    ? List.of()
                    : new String(in.readAllBytes(), StandardCharsets.US_ASCII)
                            .lines()
                            .map(Base64.getDecoder()::decode)
                            .toList();
        }
    }

    /**
     * For scripts: {@code unpack TARGET FOLDER} writes seeds and what is kept into a folder, {@code pack FOLDER FILE} makes a
     * file of what is kept of a folder.
     */
    public static void main(String[] args) throws IOException, ReflectiveOperationException {
        if (args[0].equals("unpack")) {
            unpack(target(args[1]), Path.of(args[2]));
        } else {
            pack(Path.of(args[1]), Path.of(args[2]));
        }
    }

    private static void unpack(Target target, Path folder) throws IOException {
        List<byte[]> inputs = new ArrayList<>(target.seeds());
        inputs.addAll(kept(target));
        Files.createDirectories(folder);
        for (int i = 0; i < inputs.size(); i++) {
            Files.write(folder.resolve("kept-" + i), inputs.get(i));
        }
    }

    private static void pack(Path folder, Path file) throws IOException {
        List<String> lines = new ArrayList<>();
        try (Stream<Path> inputs = Files.list(folder)) {
            for (Path input : inputs.collect(Collectors.toList())) {
                byte[] bytes = Files.readAllBytes(input);
                if (bytes.length <= LONGEST) {
                    lines.add(Base64.getEncoder().encodeToString(bytes));
                }
            }
        }
        lines.sort(null);
        Files.writeString(file, lines.stream().map(line -> line + "\n").collect(Collectors.joining()));
    }
}
