package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.OnnxFile;
import org.pipwright.models.ModelCatalog;

class NetCommandsTest {
    @TempDir
    Path folder;

    private static String checksum() {
        return ModelFile.read(Path.of(TestNet.path())).notes().get(ModelFile.SHA256);
    }

    @Test
    void describeSaysWhatTheFileSays() {
        Run run = Run.of("net", "describe", TestNet.path());
        assertEquals(0, run.code());
        assertTrue(run.out().contains("contact           270-4-6, 1114 weights\n"), run.out());
        assertTrue(run.out().contains("race              262-4-6, 1082 weights\n"), run.out());
        assertTrue(run.out().contains("run               random-5\n"), run.out());
        assertTrue(run.out().contains("sha256            " + checksum() + "\n"), run.out());
    }

    @Test
    void describeBeginsWithTheCard() throws IOException {
        Path file = Files.copy(Path.of(TestNet.path()), folder.resolve("mine.safetensors"));
        Files.writeString(folder.resolve("mine.md"), "# mine\n\nknows nothing\n\n\n");
        Run run = Run.of("net", "describe", file.toString());
        assertTrue(run.out().startsWith("# mine\n\nknows nothing\n\ncontact "), run.out());
    }

    @Test
    void describeListsAndDescribesWhatShips() {
        Run list = Run.of("net", "describe");
        assertEquals(0, list.code());
        assertEquals(ModelCatalog.shipped().names().size(), list.out().lines().count());
        for (String name : ModelCatalog.shipped().names()) {
            String shape = ModelCatalog.shipped().load(name).shape();
            assertTrue(list.out().contains(name + "  " + shape), list.out());
            Run one = Run.of("net", "describe", name);
            assertEquals(0, one.code());
            assertTrue(one.out().contains("\nsha256 "), one.out());
        }
    }

    @Test
    void verifySaysTheChecksum() {
        assertEquals(
                new Run(0, "whole: contact 270-4-6, race 262-4-6, SHA-256 of the weights " + checksum() + "\n", ""),
                Run.of("net", "verify", TestNet.path()));
    }

    @Test
    void exportWritesTheSameNet() throws IOException {
        Path target = folder.resolve("copy.safetensors");
        Run run = Run.of("net", "export", TestNet.path(), target.toString());
        assertEquals(new Run(0, "wrote " + target + ": contact 270-4-6, race 262-4-6\n", ""), run);
        assertArrayEquals(Files.readAllBytes(Path.of(TestNet.path())), Files.readAllBytes(target));
    }

    /** What is in the files is checked with ONNX Runtime, by the benchmarks' tests. */
    @Test
    void exportWritesOnnxInTwoFiles() throws IOException {
        String target = folder.resolve("copy").toString();
        Run run = Run.of("net", "export", TestNet.path(), target + ".onnx");
        String said = "wrote " + target + "-contact.onnx: 270-4-6\nwrote " + target + "-race.onnx: 262-4-6\n";
        assertEquals(new Run(0, said, ""), run);
        Model model = ModelFile.read(Path.of(TestNet.path()));
        assertArrayEquals(
                OnnxFile.toBytes(model.contact(), model.notes()),
                Files.readAllBytes(Path.of(target + "-contact.onnx")));
        assertArrayEquals(
                OnnxFile.toBytes(model.race(), model.notes()), Files.readAllBytes(Path.of(target + "-race.onnx")));
    }

    @Test
    void exportSaysWhyItCannotWrite() {
        Path file = folder.resolve("copy.txt");
        Run run = Run.of("net", "export", TestNet.path(), file.toString());
        assertEquals(new Run(2, "", "pipwright: the target '" + file + "' should end in .safetensors or .onnx\n"), run);
        assertFalse(Files.exists(file));
        Path nowhere = folder.resolve("none/copy.safetensors");
        run = Run.of("net", "export", TestNet.path(), nowhere.toString());
        String line = "pipwright: cannot write '" + nowhere + "': there is no folder '" + nowhere.getParent() + "'\n";
        assertEquals(new Run(2, "", line), run);
    }
}
