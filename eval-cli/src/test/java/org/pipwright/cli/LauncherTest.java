package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The script that starts Pipwright, in a checkout that looks built, with a Java that prints what it is given. */
@DisabledOnOs(OS.WINDOWS)
class LauncherTest {
    @TempDir
    Path folder;

    private Path checkout(String name) throws IOException {
        Path home = Files.createDirectory(folder.resolve(name)).toRealPath();
        Path script = home.resolve("pipwright");
        Files.copy(Path.of("..", "pipwright"), script);
        Path rest = Path.of("dist/src/launch.bash");
        Files.createDirectories(home.resolve(rest).getParent());
        Files.copy(Path.of("..").resolve(rest), home.resolve(rest));
        Files.createFile(home.resolve("pom.xml"));
        for (String module : List.of("engine", "nn-training", "models", "charts", "eval-cli")) {
            Files.createDirectories(home.resolve(module).resolve("src/main"));
            Files.createFile(home.resolve(module).resolve("pom.xml"));
        }
        Path build = Files.createDirectories(home.resolve(".pipwright/build-1"));
        Files.writeString(home.resolve(".pipwright/current"), "build-1\n");
        Files.writeString(build.resolve("classpath"), "one.jar:two.jar:\n");
        Files.createFile(build.resolve("classes-17.0.9.jsa"));
        Files.createFile(build.resolve("stamp"));
        return home;
    }

    private Path java() throws IOException {
        Path java = Files.createDirectories(folder.resolve("jdk"));
        if (!Files.exists(java.resolve("release"))) {
            Files.writeString(java.resolve("release"), "JAVA_VERSION=\"17.0.9\"\n");
            Path program = Files.createDirectory(java.resolve("bin")).resolve("java");
            Files.writeString(program, "#!/bin/sh\nprintf '%s\\n' \"$@\"\n");
            assertTrue(program.toFile().setExecutable(true));
        }
        return java;
    }

    private Run start(Path home, String... args) throws IOException, InterruptedException {
        List<String> command =
                new ArrayList<>(List.of("bash", home.resolve("pipwright").toString()));
        command.addAll(List.of(args));
        Path err = folder.resolve("err");
        ProcessBuilder builder =
                new ProcessBuilder(command).directory(folder.toFile()).redirectError(err.toFile());
        builder.environment().put("JAVA_HOME", java().toString());
        Process process = builder.start();
        process.getOutputStream().close();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Run(process.waitFor(), out, Files.readString(err));
    }

    /** From any folder, for quick commands and for long ones. */
    @ParameterizedTest
    @ValueSource(strings = {"rank start", "train --print-settings"})
    void javaIsToldWhereTheSourcesAre(String line) throws Exception {
        Path home = checkout("a checkout");
        Run run = start(home, line.split(" "));
        assertEquals("", run.err());
        List<String> given = run.out().lines().toList();
        assertTrue(given.contains("-Dpipwright.home=" + home), run.out());
        assertTrue(
                given.contains(home + "/.pipwright/build-1/lib/one.jar:" + home + "/.pipwright/build-1/lib/two.jar"));
        assertEquals(List.of(line.split(" ")), given.subList(given.size() - 2, given.size()));
    }

    /** Has Java make archives that hold the words with which it was started to list classes. */
    private void keepArchives() throws IOException {
        Path program = java().resolve("bin/java");
        Files.writeString(program, """
                #!/bin/sh
                for word in "$@"; do
                    case $word in
                        -XX:DumpLoadedClassList=*) echo "$@" >"${word#*=}" ;;
                        -XX:SharedArchiveFile=*.new) new=${word#*=} ;;
                        -XX:SharedClassListFile=*) list=${word#*=} ;;
                    esac
                done
                if [ -n "$new" ]; then cp "$list" "$new"; else printf '%s\\n' "$@"; fi
                """);
    }

    /** Made when it is first started, by a run that ends by itself; other commands do not wait for it. */
    @Test
    void theDeskHasAnArchiveOfItsOwn() throws Exception {
        Path home = checkout("a checkout");
        keepArchives();
        Path archive = home.resolve(".pipwright/build-1/desk-17.0.9.jsa");
        start(home, "rank", "start");
        assertFalse(Files.exists(archive));
        for (int times = 0; times < 2; times++) {
            Run run = start(home, "desk", "--no-browser");
            assertEquals("", run.err());
            assertTrue(run.out().lines().toList().contains("-XX:SharedArchiveFile=" + archive), run.out());
            assertTrue(Files.readString(archive).contains("-Dpipwright.desk.rehearsal=true"));
        }
        assertFalse(start(home, "rank", "start").out().contains(archive.toString()));
    }

    /** The longer a command computes, the more the JVM makes ready for it: the first compiler, both, both and vectors. */
    @ParameterizedTest
    @CsvSource({
        "rank start 3-1, true, false",
        "rank start 3-1 --net=--lookahead2, true, false",
        "rank start 3-1 --explain, false, false",
        "rank start 3-1 --lookahead 1, false, false",
        "rank start --lookahead=0 --explain, false, false",
        "rank start --roll all, false, false",
        "rank start --lookahead 2 --explain, false, false",
        "rank start --roll=3-1 --lookahead=2, false, false",
        "rank start --roll all --lookahead 2, false, true",
        "rank start --lookahead=2 --roll=all, false, true",
        "rank start --lookahead 2 --roll all --batch file, false, true",
        "rank start --explain --lookahead=3, false, true",
        "cube start --explain --rollout 36, false, true",
        "odds --batch file --lookahead 1, false, true",
        "review file, false, true"
    })
    void javaStartsAsSuitsTheWork(String line, boolean firstCompilerAlone, boolean vectors) throws Exception {
        Path home = checkout("a checkout");
        Files.createFile(home.resolve(".pipwright/build-1/vectors-17.0.9.jsa"));
        List<String> given = start(home, line.split(" ")).out().lines().toList();
        assertEquals(firstCompilerAlone, given.contains("-XX:TieredStopAtLevel=1"), given::toString);
        assertEquals(vectors, given.contains("jdk.incubator.vector"), given::toString);
    }

    /** Else Java says at every start that it cannot use the archive, and starts as slowly as without. */
    @ParameterizedTest
    @CsvSource({"17.0.9, review file", "17.0.9, desk --no-browser", "25.0.1, review file", "25.0.1, desk --no-browser"})
    void anArchiveIsMadeWithTheModulesThatItIsUsedWith(String version, String line) throws Exception {
        Path home = checkout("a checkout");
        keepArchives();
        Files.writeString(java().resolve("release"), "JAVA_VERSION=\"" + version + "\"\n");
        List<String> given = start(home, line.split(" ")).out().lines().toList();
        String archive = line.startsWith("desk") ? "desk" : "vectors";
        List<String> made =
                List.of(Files.readString(home.resolve(".pipwright/build-1/" + archive + "-" + version + ".jsa"))
                        .trim()
                        .split(" "));
        assertEquals(modules(given), modules(made));
        assertEquals(version.startsWith("17"), !given.contains("--enable-native-access=ALL-UNNAMED"));
    }

    private static List<String> modules(List<String> given) {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < given.size(); i++) {
            if (given.get(i).matches("--(add-modules|add-opens)")) {
                found.add(given.get(i) + " " + given.get(i + 1));
            } else if (given.get(i).matches("--(enable-native|sun-misc).*")) {
                found.add(given.get(i));
            }
        }
        return found;
    }

    /** Archives that Java could not make are empty, and not used. */
    @Test
    void eachKindOfStartHasAnArchiveOfClasses() throws Exception {
        Path home = checkout("a checkout");
        Path build = home.resolve(".pipwright/build-1");
        assertFalse(start(home, "rank", "start").out().contains("SharedArchiveFile"));
        assertFalse(start(home, "review", "file").out().contains("SharedArchiveFile"));
        assertTrue(Files.exists(build.resolve("vectors-17.0.9.jsa")), "tried");
        Files.writeString(build.resolve("classes-17.0.9.jsa"), "classes");
        Files.writeString(build.resolve("vectors-17.0.9.jsa"), "classes");
        assertTrue(start(home, "rank", "start").out().contains("SharedArchiveFile=" + build + "/classes-17.0.9.jsa\n"));
        assertTrue(
                start(home, "review", "file").out().contains("SharedArchiveFile=" + build + "/vectors-17.0.9.jsa\n"));
    }

    /** Its libraries are on the class path of no other command, and ND4J's JavaCPP not on its own. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "train --device cuda",
                "train --resume --device=cuda",
                "duel a b --device cuda",
                "train --device threads"
            })
    void aCardHasAClassPathOfItsOwn(String line) throws Exception {
        Path home = checkout("a checkout");
        Path build = home.resolve(".pipwright/build-1");
        Files.writeString(
                build.resolve("classpath"), "one.jar:nd4j-api-1.jar:javacpp-1.5.7.jar:openblas-0.3.jar:two.jar:\n");
        Path module = home.resolve("nn-training/cuda");
        Files.createDirectories(module.resolve("src/main"));
        Files.createFile(module.resolve("pom.xml"));
        Path cuda = Files.createDirectories(build.resolve("cuda-1"));
        Files.writeString(build.resolve("cuda"), "cuda-1\n");
        Files.writeString(cuda.resolve("classpath"), "cuda-13.jar:javacpp-1.5.13.jar:\n");
        Files.createFile(cuda.resolve("stamp"));
        Run run = start(home, line.split(" "));
        assertEquals("", run.err());
        String own = build + "/lib/one.jar:" + build + "/lib/two.jar:" + cuda + "/cuda-13.jar:" + build
                + "/cuda-1/javacpp-1.5.13.jar";
        assertTrue(run.out().lines().toList().contains(own), run.out());
        Run other = start(home, "train", "--device", "cpu");
        assertFalse(other.out().contains("cuda-13.jar"), other.out());
    }

    /** What runs has the jars of its own build open: a later one leaves their bytes alone. */
    @Test
    void aBuildDoesNotTouchTheOneBefore() throws Exception {
        Path home = checkout("a checkout");
        Path maven = home.resolve("mvnw");
        Files.writeString(maven, """
                #!/bin/sh
                cd eval-cli && mkdir -p target/own target/lib && cd target
                for jar in eval-cli-0.2.0 own/engine lib/other; do cat ../../release >$jar.jar; done
                """);
        assertTrue(maven.toFile().setExecutable(true));
        List<Path> builds = new ArrayList<>();
        for (String release : List.of("earlier", "later")) {
            Files.writeString(home.resolve("release"), release);
            Files.setLastModifiedTime(
                    home.resolve("pom.xml"), FileTime.from(Instant.now().plusSeconds(60)));
            Run run = start(home, "rank");
            assertEquals(0, run.code(), run.err());
            Path build = home.resolve(".pipwright")
                    .resolve(
                            Files.readString(home.resolve(".pipwright/current")).strip());
            Path lib = build.resolve("lib");
            String names = lib + "/eval-cli-0.2.0.jar:" + lib + "/engine.jar:" + lib + "/other.jar";
            assertTrue(run.out().lines().toList().contains(names), run.out());
            builds.add(lib);
        }
        assertFalse(builds.get(0).equals(builds.get(1)));
        for (String jar : List.of("eval-cli-0.2.0.jar", "engine.jar", "other.jar")) {
            assertEquals("earlier", Files.readString(builds.get(0).resolve(jar)));
            assertEquals("later", Files.readString(builds.get(1).resolve(jar)));
        }
    }

    /** Spark comes in where a cluster is asked for, with its version of what both have and what it needs of Java. */
    @ParameterizedTest
    @ValueSource(strings = {"rank --batch - --cluster local[2]", "duel a b --cluster=spark://localhost:7077"})
    void aClusterHasAClassPathOfItsOwn(String line) throws Exception {
        Path home = checkout("a checkout");
        Path build = home.resolve(".pipwright/build-1");
        Files.writeString(
                build.resolve("classpath"),
                "one.jar:commons-io-1.0.jar:commons-io-extra-2.jar:slf4j-simple-2.0.jar:\n");
        Path module = home.resolve("nn-training/cluster");
        Files.createDirectories(module.resolve("src/main"));
        Files.createFile(module.resolve("pom.xml"));
        Path cluster = Files.createDirectories(build.resolve("cluster-1"));
        Files.writeString(build.resolve("cluster"), "cluster-1\n");
        Files.writeString(cluster.resolve("classpath"), "cluster-0.jar:commons-io-1.1.jar:spark-core_2.13-4.jar:\n");
        Files.createFile(cluster.resolve("stamp"));
        Run run = start(home, line.split(" "));
        assertEquals("", run.err());
        String own = build + "/lib/one.jar:" + build + "/lib/commons-io-extra-2.jar:" + cluster
                + "/jars/cluster-0.jar:" + cluster + "/jars/commons-io-1.1.jar:" + cluster
                + "/jars/spark-core_2.13-4.jar";
        assertTrue(run.out().lines().toList().contains(own), run.out());
        assertTrue(run.out().contains("--add-opens=java.base/sun.nio.ch=ALL-UNNAMED"), run.out());
        Run other = start(home, "rank", "--batch", "-");
        assertFalse(other.out().contains("spark"), other.out());
        assertFalse(other.out().contains("sun.nio.ch"), other.out());
    }

    @Test
    void aPathThatJavaCannotTakeIsRefused() throws Exception {
        Path home = checkout("a:b");
        Run run = start(home, "help");
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count());
        assertTrue(run.err().startsWith("pipwright: Pipwright lies in '" + home + "', "), run.err());
        assertFalse(run.err().contains("Exception"));
    }
}
