package org.pipwright.models;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URL;
import java.net.URLConnection;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.text.Excerpt;

/**
 * The nets that come with Pipwright, by name, and model files by their path. A net is two resources beside this class,
 * {@code NAME.safetensors} and {@code NAME.md}, its card.
 */
public final class ModelCatalog {
    private static final String SUFFIX = ".safetensors";

    /** Names of the nets in this folder of resources, the default net first. */
    private static final List<String> NAMES = List.of("standard", "swift", "fifth");

    private static final ModelCatalog SHIPPED = new ModelCatalog(NAMES, ModelCatalog::beside);

    private final List<String> names;
    private final Function<String, Optional<Resource>> resources;

    /**
     * A resource to be read once.
     *
     * @param bytes its bytes
     * @param crc32 their CRC-32, where the resource comes from a jar, which knows that of each of its entries
     */
    record Resource(InputStream bytes, OptionalLong crc32) {}

    ModelCatalog(List<String> names, Function<String, Optional<Resource>> resources) {
        this.names = List.copyOf(names);
        this.resources = resources;
    }

    /**
     * The nets that come with Pipwright.
     *
     * @return the catalog
     */
    public static ModelCatalog shipped() {
        return SHIPPED;
    }

    /**
     * The names of the nets.
     *
     * @return all names, the default net's first
     */
    public List<String> names() {
        return names;
    }

    /**
     * The name of the net that is used unless another is asked for.
     *
     * @return its name
     * @throws InvalidModelException if the catalog is empty
     */
    public String defaultName() {
        if (names.isEmpty()) {
            throw new InvalidModelException("no net comes with this build: give the path of a " + SUFFIX + " file");
        }
        return names.get(0);
    }

    /**
     * Loads a net and checks all of it.
     *
     * @param nameOrFile name of a net of this catalog, or path of a model file
     * @return the model
     * @throws InvalidModelException if there is no such net or file, or it is damaged; one line says which
     */
    public Model load(String nameOrFile) {
        return load(nameOrFile, true);
    }

    /**
     * The same, but the SHA-256 of the weights is worked out even where the jar that the net comes from vouches for it.
     *
     * @param nameOrFile name of a net of this catalog, or path of a model file
     * @return the model
     * @throws InvalidModelException if there is no such net or file, or it is damaged; one line says which
     */
    public Model verify(String nameOrFile) {
        return load(nameOrFile, false);
    }

    private Model load(String nameOrFile, boolean trusting) {
        if (!names.contains(nameOrFile)) {
            return ModelFile.read(path(nameOrFile));
        }
        Resource resource = resource(nameOrFile + SUFFIX);
        try (InputStream in = resource.bytes()) {
            return trusting && resource.crc32().isPresent()
                    ? ModelFile.read(in, nameOrFile, resource.crc32().getAsLong())
                    : ModelFile.read(in, nameOrFile);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the net '" + nameOrFile + "' from the class path", e);
        }
    }

    /**
     * The card of a net: what it is, how it was trained and what it was measured to do.
     *
     * @param nameOrFile name of a net of this catalog, or path of a model file, whose card lies beside it as {@code .md}
     * @return the card as Markdown; empty if a file has none
     * @throws InvalidModelException if there is no such net or file
     */
    public Optional<String> card(String nameOrFile) {
        try {
            if (names.contains(nameOrFile)) {
                try (InputStream in = resource(nameOrFile + ".md").bytes()) {
                    return Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
                }
            }
            Path card = cardBeside(path(nameOrFile));
            return Files.isRegularFile(card) ? Optional.of(Files.readString(card)) : Optional.empty();
        } catch (IOException e) {
            throw new InvalidModelException("cannot read the card of '" + nameOrFile + "': " + e.getMessage());
        }
    }

    private static Path cardBeside(Path file) {
        String name = file.getFileName().toString();
        String stem = name.endsWith(SUFFIX) ? name.substring(0, name.length() - SUFFIX.length()) : name;
        return file.resolveSibling(stem + ".md");
    }

    /** A path as given; what looks like a name must exist as a file, or else be a mistyped name. */
    private Path path(String text) {
        try {
            Path path = Path.of(text);
            boolean looksLikeName = !text.contains("/") && !text.contains(File.separator) && !text.endsWith(SUFFIX);
            if (text.isEmpty() || looksLikeName && !Files.exists(path)) {
                throw new InvalidModelException("no net '" + Excerpt.ofPath(text) + "': " + choice());
            }
            return path;
        } catch (InvalidPathException e) {
            throw new InvalidModelException("no net '" + Excerpt.ofPath(text.replace('\0', ' ')) + "': " + choice());
        }
    }

    private String choice() {
        String file = "the path of a " + SUFFIX + " file";
        return names.isEmpty()
                ? "none comes with this build, give " + file
                : "use " + String.join(", ", names) + " or " + file;
    }

    private Resource resource(String name) {
        return resources
                .apply(name)
                .orElseThrow(() -> new IllegalStateException("resource " + name + " is missing from this build"));
    }

    private static Optional<Resource> beside(String name) {
        URL url = ModelCatalog.class.getResource(name);
        if (url == null) {
            return Optional.empty();
        }
        try {
            URLConnection connection = url.openConnection();
            OptionalLong crc32 = connection instanceof JarURLConnection jar
                    ? OptionalLong.of(jar.getJarEntry().getCrc())
                    : OptionalLong.empty();
            return Optional.of(new Resource(connection.getInputStream(), crc32));
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the resource " + name, e);
        }
    }
}
