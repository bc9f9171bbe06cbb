package org.pipwright.engine.architecture;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The jars of others that a module is built and tested with, held to the checksums in the file dependencies.sha256: that
 * what a registry gives today is what it gave when we looked.
 */
public final class Dependencies {
    private static final String LIST = "dependencies.sha256";
    private static final String OURS = "org/pipwright/";

    /** Native libraries of other platforms are not on the list. */
    private static final boolean LISTED_PLATFORM = System.getProperty("os.name").equals("Linux")
            && System.getProperty("os.arch").equals("amd64");

    private Dependencies() {}

    /** What is wrong with the jars of this JVM's class path, a line each; lines of the file for those that it lacks. */
    public static List<String> faults() throws IOException {
        String[] classPath = System.getProperty("java.class.path").split(File.pathSeparator);
        return Arrays.stream(classPath).allMatch(entry -> name(entry) == null)
                ? List.of("no jar on the class path to look at")
                : faults(classPath, known());
    }

    static List<String> faults(String[] classPath, Map<String, String> known) throws IOException {
        List<String> faults = new ArrayList<>();
        for (String entry : classPath) {
            String name = name(entry);
            if (name == null) {
                continue;
            }
            String found = sha256(Path.of(entry));
            String expected = known.get(name);
            if (expected == null && LISTED_PLATFORM) {
                faults.add("not in " + LIST + ": " + found + "  " + name);
            } else if (expected != null && !expected.equals(found)) {
                faults.add(name + " has another checksum than in " + LIST + ": " + found);
            }
        }
        return faults;
    }

    /** Path of a jar in a Maven repository: group, artifact, version, file; null for anything else. */
    private static String name(String entry) {
        String path = entry.replace('\\', '/');
        int at = path.lastIndexOf("/repository/");
        String name = at < 0 ? "" : path.substring(at + "/repository/".length());
        return name.endsWith(".jar") && !name.startsWith(OURS) ? name : null;
    }

    private static Map<String, String> known() throws IOException {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve(LIST))) {
            folder = folder.getParent();
        }
        return Files.readAllLines(folder.resolve(LIST)).stream()
                .map(line -> line.split(" +"))
                .collect(Collectors.toMap(words -> words[1], words -> words[0]));
    }

    private static String sha256(Path jar) throws IOException {
        try (InputStream in = Files.newInputStream(jar)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            new DigestInputStream(in, digest).transferTo(java.io.OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }
}
