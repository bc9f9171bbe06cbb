package org.pipwright.dist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.CommandTree;

/** The archive of a release, unpacked into an empty folder and used there, away from the sources. */
@DisabledOnOs(OS.WINDOWS)
class ArchiveCheck {
    private static final String NAME = "pipwright-" + System.getProperty("pipwright.version");

    private static final Path BUILT = Path.of("target", NAME + ".zip").toAbsolutePath();

    @TempDir
    static Path folder;

    private static Path home;

    private record Ran(int code, String out, String err) {}

    @BeforeAll
    static void unpack() throws IOException {
        Path target = Files.createDirectory(folder.resolve("a folder"));
        try (ZipFile zip = new ZipFile(BUILT.toFile())) {
            for (ZipEntry entry : zip.stream().toList()) {
                Path file = target.resolve(entry.getName());
                if (entry.isDirectory()) {
                    Files.createDirectories(file);
                } else {
                    Files.createDirectories(file.getParent());
                    Files.copy(zip.getInputStream(entry), file);
                }
            }
        }
        home = target.resolve(NAME);
        assertTrue(home.resolve("bin/pipwright").toFile().setExecutable(true));
    }

    private static ProcessBuilder builder(String... args) {
        List<String> command =
                new ArrayList<>(List.of(home.resolve("bin/pipwright").toString()));
        command.addAll(List.of(args));
        ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().put("PIPWRIGHT_CACHE", folder.resolve("tables").toString());
        return builder;
    }

    private static Ran run(String... args) throws IOException, InterruptedException {
        Path err = folder.resolve("err");
        Process process = builder(args).redirectError(err.toFile()).start();
        process.getOutputStream().close();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ran(process.waitFor(), out, Files.readString(err));
    }

    private static String works(String... args) throws IOException, InterruptedException {
        Ran ran = run(args);
        assertEquals(0, ran.code(), ran.err());
        assertEquals("", ran.err());
        return ran.out();
    }

    private static List<Path> files(String name) throws IOException {
        try (Stream<Path> all = Files.list(home.resolve(name))) {
            return all.sorted().toList();
        }
    }

    /** Twice: the first start makes the archive of classes, the second uses it. */
    @Test
    void playsAreRanked() throws Exception {
        String first = works("rank", "start", "--roll", "3-1", "--top", "1");
        assertTrue(first.contains("1  8/5 6/5 "), first);
        assertEquals(first, works("rank", "start", "--roll", "3-1", "--top", "1"));
        assertTrue(Files.size(home.resolve("lib/classes-" + System.getProperty("java.version") + ".jsa")) > 0);
        assertTrue(works("rank", "start", "--roll", "3-1", "--lookahead", "1").contains("lookahead 1"));
    }

    @Test
    void boardsAreDrawn() throws Exception {
        assertTrue(works("draw", "start").contains("24"));
        works("draw", "start", "--png", "board.png");
        assertTrue(Files.size(folder.resolve("board.png")) > 1000);
    }

    @Test
    void theVersionIsThatOfTheArchive() throws Exception {
        assertEquals(
                NAME.replace("pipwright-", "Pipwright "), works("--version").strip());
    }

    /** Its pages and what they load come out of the jars. */
    @Test
    void theDeskServesItsPages() throws Exception {
        assertTrue(works("desk", "--help").contains("Usage: pipwright desk"));
        Process desk = builder("desk", "--no-browser", "--net", "swift")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (BufferedReader lines = desk.inputReader()) {
            String address = lines.lines()
                    .flatMap(line -> Arrays.stream(line.split(" ")))
                    .filter(word -> word.startsWith("http://"))
                    .findFirst()
                    .orElseThrow();
            HttpClient client = HttpClient.newHttpClient();
            HttpResponse<String> door = client.send(
                    HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofString());
            String cookie =
                    door.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
            HttpResponse<String> page = client.send(
                    HttpRequest.newBuilder(URI.create(address).resolve("/"))
                            .header("Cookie", cookie)
                            .build(),
                    HttpResponse.BodyHandlers.ofString());
            assertEquals(200, page.statusCode());
            assertTrue(page.body().contains("<html"), page.body());
        } finally {
            desk.destroy();
            assertTrue(desk.waitFor(20, TimeUnit.SECONDS));
        }
    }

    @Test
    void ourOwnLearnerTrainsAndTheOtherIsNamedByItsArchive() throws Exception {
        Path settings = folder.resolve("tiny.txt");
        String tiny = "checkers = 2\ncontact.hidden = 8\nrace.hidden = 4\nround = 8\n";
        Files.writeString(settings, tiny);
        Ran own = run("train", "--settings", settings.toString(), "--games", "16", "--threads", "1", "--out", "run");
        assertEquals(0, own.code(), own.err());
        assertTrue(Files.exists(folder.resolve("run/net.safetensors")), own.err());
        Files.writeString(settings, tiny + "learner = reference\n");
        Ran ran = run("train", "--settings", settings.toString(), "--games", "16", "--out", "other");
        assertEquals(2, ran.code(), ran.out());
        assertEquals(1, ran.err().lines().count(), ran.err());
        assertTrue(ran.err().contains("unpack pipwright-reference of the same release"), ran.err());
    }

    @Test
    void everyCommandHasAManualPageAndIsCompleted() throws Exception {
        List<String> pages = files("share/man/man1").stream()
                .map(page -> page.getFileName().toString())
                .toList();
        String script = Files.readString(home.resolve("share/bash-completion/completions/pipwright"));
        for (String command : CommandTree.all().getSubcommands().keySet()) {
            assertTrue(pages.contains("pipwright-" + command + ".1"), command);
            assertTrue(script.contains(" _picocli_pipwright_" + command + ";"), command);
        }
        assertTrue(pages.contains("pipwright.1"));
    }

    /** In the list of materials and in that of licences; our own are in neither. */
    @Test
    void everyLibraryIsNamedWithItsLicence() throws Exception {
        String materials = Files.readString(home.resolve("pipwright.spdx.json"));
        String licences = Files.readString(home.resolve("licences/THIRD-PARTY.txt"));
        List<String> jars = files("lib").stream()
                .map(file -> file.getFileName().toString())
                .filter(name -> name.endsWith(".jar"))
                .map(name -> name.substring(0, name.length() - ".jar".length()))
                .toList();
        for (String jar : jars) {
            int dash = jar.length() - jar.replaceFirst("^.*?-(?=[0-9])", "").length();
            String artifact = jar.substring(0, dash - 1);
            String version = jar.substring(dash);
            boolean own = List.of("engine", "models", "nn-training", "charts", "eval-cli")
                    .contains(artifact);
            assertTrue(own || materials.contains("/" + artifact + "@" + version + "\""), jar);
            assertEquals(!own, licences.contains(":" + artifact + ":" + version + " "), jar);
        }
        assertTrue(jars.size() > 20);
    }

    /** Whoever may choose among several finds at least one. */
    @Test
    void everyLicenceIsNamedAndItsTextIsThere() throws Exception {
        String materials = Files.readString(home.resolve("pipwright.spdx.json"));
        assertFalse(materials.contains("\"licenseDeclared\" : \"NOASSERTION\""), materials);
        Matcher declared = Pattern.compile("\"licenseDeclared\" : \"([^\"]*)\"").matcher(materials);
        int found = 0;
        while (declared.find()) {
            found++;
            boolean there = Arrays.stream(declared.group(1).split(" OR "))
                    .anyMatch(licence -> licence.equals("Apache-2.0")
                            ? Files.exists(home.resolve("LICENSE"))
                            : Files.exists(
                                    home.resolve("licences/" + licence.replaceFirst("-or-later$", "") + ".txt")));
            assertTrue(there, declared.group(1));
            assertFalse(declared.group(1).matches("GPL[^ ]*|.* AND GPL.*"), declared.group(1));
        }
        assertTrue(found > 40, "licences: " + found);
    }

    @Test
    void itIsSmallAndItsSumIsRight() throws Exception {
        assertTrue(Files.size(BUILT) < 50_000_000L);
        String sums = Files.readString(BUILT.resolveSibling(NAME + ".sha256"));
        for (String end : List.of(".zip", ".tar.gz")) {
            try (InputStream in = Files.newInputStream(BUILT.resolveSibling(NAME + end))) {
                byte[] sum = MessageDigest.getInstance("SHA-256").digest(in.readAllBytes());
                assertTrue(sums.contains(HexFormat.of().formatHex(sum) + " *" + NAME + end), sums);
            }
        }
    }

    @Test
    void bothFormsHoldTheSameFiles() throws Exception {
        Process tar = new ProcessBuilder(
                        "tar", "-tzf", BUILT.resolveSibling(NAME + ".tar.gz").toString())
                .start();
        TreeSet<String> inTar = tar.inputReader()
                .lines()
                .filter(name -> !name.endsWith("/"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(0, tar.waitFor());
        try (ZipFile zip = new ZipFile(BUILT.toFile())) {
            assertEquals(
                    zip.stream()
                            .map(ZipEntry::getName)
                            .filter(name -> !name.endsWith("/"))
                            .collect(Collectors.toCollection(TreeSet::new)),
                    inTar);
        }
        assertFalse(inTar.stream().anyMatch(name -> name.contains("nd4j")));
    }
}
