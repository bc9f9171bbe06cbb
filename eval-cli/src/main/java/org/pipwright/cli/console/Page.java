package org.pipwright.cli.console;

import java.io.PrintWriter;
import java.io.Writer;

/** Standard output with what it can show, for those who lay text out. */
final class Page extends PrintWriter {
    private final Screen screen;

    Page(Writer out, Screen screen) {
        super(out);
        this.screen = screen;
    }

    Screen screen() {
        return screen;
    }
}
