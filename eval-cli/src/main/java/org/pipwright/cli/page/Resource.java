package org.pipwright.cli.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Style sheets and scripts that come with these classes, for pages that must stand alone. */
public final class Resource {
    private Resource() {}

    /**
     * The text of a resource.
     *
     * @param name its name below {@code org/pipwright/cli}
     * @return the text; the project's own, so that a page may hold it as it is
     */
    public static String text(String name) {
        try (InputStream in = Resource.class.getResourceAsStream("/org/pipwright/cli/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the resource " + name, e);
        }
    }
}
