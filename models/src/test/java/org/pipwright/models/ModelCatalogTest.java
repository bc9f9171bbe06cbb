package org.pipwright.models;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.zip.CRC32;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
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

    private Optional<ModelCatalog.Resource> open(String name) {
        return Optional.ofNullable(resources.get(name))
                .map(bytes -> new ModelCatalog.Resource(new ByteArrayInputStream(bytes), OptionalLong.empty()));
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

    /** A jar vouches for its entries; where it does not, or is not asked, the weights have to. */
    @Test
    void damagedWeightsAreFoundUnlessAJarVouchesForThem() {
        byte[] whole = ModelFile.toBytes(one);
        byte[] damaged = whole.clone();
        damaged[damaged.length - 1] ^= 1;
        assertSame(one, vouching(whole, crc32(whole)).load("one"));
        assertSame(one, vouching(whole, crc32(damaged)).load("one"));
        assertSame(one, vouching(whole, crc32(damaged)).verify("one"));
        vouching(damaged, crc32(damaged)).load("one");
        for (Executable refused : List.<Executable>of(
                () -> vouching(damaged, crc32(damaged)).verify("one"),
                () -> vouching(damaged, crc32(whole)).load("one"),
                () -> vouching(damaged, crc32(whole)).verify("one"))) {
            String message = assertThrows(InvalidModelException.class, refused).getMessage();
            assertTrue(message.contains("its weights are damaged"), message);
        }
    }

    private static ModelCatalog vouching(byte[] bytes, long crc32) {
        return new ModelCatalog(
                List.of("one"),
                name -> Optional.of(
                        new ModelCatalog.Resource(new ByteArrayInputStream(bytes), OptionalLong.of(crc32))));
    }

    private static long crc32(byte[] bytes) {
        CRC32 crc32 = new CRC32();
        crc32.update(bytes);
        return crc32.getValue();
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
