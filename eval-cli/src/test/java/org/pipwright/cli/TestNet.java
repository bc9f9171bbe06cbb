package org.pipwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.RandomModel;

/** A tiny random net in a file, so that what commands print does not change with the nets that ship. */
final class TestNet {
    static final Model MODEL = RandomModel.of(5);

    private static final Path FILE = write();

    private TestNet() {}

    private static Path write() {
        try {
            Path file = Files.createTempDirectory("pipwright-test").resolve("tiny.safetensors");
            ModelFile.write(file, MODEL);
            file.toFile().deleteOnExit();
            file.getParent().toFile().deleteOnExit();
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String path() {
        return FILE.toString();
    }
}
