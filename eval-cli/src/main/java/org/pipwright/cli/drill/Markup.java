package org.pipwright.cli.drill;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.pipwright.cli.report.Html;

/** What the pages share: elements, and a head that lets nothing be fetched. */
final class Markup {
    private Markup() {}

    /** An element with escaped text; nothing if the text is empty. */
    static String element(String open, Object text) {
        String name = open.split(" ")[0];
        return text.toString().isEmpty() ? "" : "<" + open + ">" + Html.escaped(text) + "</" + name + ">\n";
    }

    /** Everything before the body. */
    static String head(String title, String style) {
        return "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                + "<meta http-equiv=\"Content-Security-Policy\""
                + " content=\"default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'\">\n"
                + element("title", title)
                + "<style>\n" + resource(style) + "</style>\n</head>\n";
    }

    /** A text that comes with these classes. */
    static String resource(String name) {
        try (InputStream in = Markup.class.getResourceAsStream("/org/pipwright/cli/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the resource " + name, e);
        }
    }
}
