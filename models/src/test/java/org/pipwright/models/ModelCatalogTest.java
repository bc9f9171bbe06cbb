package org.pipwright.models;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.RandomModel;

class ModelCatalogTest {
    private final Model one = RandomModel.of(1);
    private final Model two = RandomModel.of(2);
    private final Map<String, byte[]> resources = Map.of(
            "one.safetensors", ModelFile.toBytes(one),
            "two.safetensors", ModelFile.toBytes(two),
            "two.md", "# Zwei ● zwo\n".getBytes(StandardCharsets.UTF_8));
    private final ModelCatalog catalog = new ModelCatalog(List.of("one", "two"), this::open);
    private final ModelCatalog empty = new ModelCatalog(List.of(), this::open);

    @TempDir
    Path folder;

    private Path file;

    private InputStream open(String name) {
        return resources.containsKey(name) ? new ByteArrayInputStream(resources.get(name)) : null;
    }

    @BeforeEach
    void writeAFile() throws IOException {
        file = folder.resolve("mine.safetensors");
        ModelFile.write(file, two);
    }

    private static void assertSame(Model expected, Model actual) {
        assertArrayEquals(ModelFile.toBytes(expected), ModelFile.toBytes(actual));
    }

    @Test
    void loadsByNameAndByPath() {
        assertSame(one, catalog.load("one"));
        assertSame(two, catalog.load("two"));
        assertSame(two, catalog.load(file.toString()));
        assertSame(two, empty.load(file.toString()));
    }

    @Test
    void theFirstNameIsTheDefault() {
        assertEquals("one", catalog.defaultName());
        assertEquals(List.of("one", "two"), catalog.names());
    }

    @Test
    void aFileNeedNoSuffix() throws IOException {
        Path plain = Files.copy(file, folder.resolve("plain"));
        assertSame(two, catalog.load(plain.toString()));
    }

    @Test
    void findsCards() throws IOException {
        assertEquals(Optional.of("# Zwei ● zwo\n"), catalog.card("two"));
        assertEquals(Optional.empty(), catalog.card(file.toString()));
        Files.writeString(folder.resolve("mine.md"), "mine\n");
        assertEquals(Optional.of("mine\n"), catalog.card(file.toString()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "won | no net 'won': use one, two or the path of a .safetensors file",
                "''  | no net '': use one, two or the path of a .safetensors file",
                "nowhere/x.safetensors | no model file 'nowhere/x.safetensors': check the path",
                "x.safetensors | no model file 'x.safetensors': check the path",
            })
    void saysHowToMendAWrongName(String name, String message) {
        assertEquals(
                message,
                assertThrows(InvalidModelException.class, () -> catalog.load(name))
                        .getMessage());
    }

    @Test
    void saysThatAnEmptyCatalogNeedsAFile() {
        String end = "give the path of a .safetensors file";
        assertEquals(
                "no net comes with this build: " + end,
                assertThrows(InvalidModelException.class, empty::defaultName).getMessage());
        assertEquals(
                "no net 'one': none comes with this build, " + end,
                assertThrows(InvalidModelException.class, () -> empty.load("one"))
                        .getMessage());
    }

    @Test
    void aNameWithNullCharacterIsNoName() {
        assertThrows(InvalidModelException.class, () -> catalog.load("a\0b/c"));
    }

    @Test
    void aNamedNetWithoutItsFilesIsABug() {
        ModelCatalog broken = new ModelCatalog(List.of("none"), this::open);
        assertThrows(IllegalStateException.class, () -> broken.load("none"));
    }
}
