package org.pipwright.cluster;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.network.Arithmetic;
import org.pipwright.engine.position.Position;

/** Which Pipwright runs in this process. */
final class Build {
    private static final int DIGITS = 12;

    private Build() {}

    private static final class Known {
        static final String ID = id(List.of(place(Position.class), place(Build.class)));
    }

    /** What tells this build from others: the same for the same classes of engine and of this module. */
    static String id() {
        return Known.ID;
    }

    /** How this process rounds. */
    static String arithmetic() {
        return Arithmetic.name();
    }

    /** The jars of Pipwright that a worker needs; none where classes do not come from jars. */
    static List<String> jars() {
        return Stream.of(Position.class, Build.class)
                .map(Build::place)
                .filter(Files::isRegularFile)
                .map(Path::toString)
                .collect(Collectors.toList());
    }

    /** Where a class comes from: a jar, or a folder. */
    static Path place(Class<?> type) {
        try {
            return Path.of(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException("classes come from no file", e);
        }
    }

    /** Of all classes in some jars or folders. */
    static String id(List<Path> places) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (Path place : places) {
                for (Path file : files(place)) {
                    digest.update(place.relativize(file)
                            .toString()
                            .replace(File.separatorChar, '/')
                            .getBytes(StandardCharsets.UTF_8));
                    digest.update(Files.readAllBytes(file));
                }
            }
            return HexFormat.of().formatHex(digest.digest()).substring(0, DIGITS);
        } catch (IOException e) {
            throw new UncheckedIOException("Pipwright's own classes cannot be read", e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static List<Path> files(Path place) throws IOException {
        try (Stream<Path> all = Files.walk(place)) {
            List<Path> files = new ArrayList<>(all.filter(Files::isRegularFile).collect(Collectors.toList()));
            files.sort(null);
            return files;
        }
    }
}
