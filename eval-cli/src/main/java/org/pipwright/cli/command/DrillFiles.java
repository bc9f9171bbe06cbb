package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.pipwright.cli.drill.PracticePage;
import org.pipwright.cli.drill.PrintSheet;
import org.pipwright.cli.report.DrillReport;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which files a drill writes. */
final class DrillFiles {
    @Option(
            names = "--sheet",
            paramLabel = "FILE.html",
            converter = OutputFile.Html.class,
            description = "Write a sheet for print: questions on pages of their own, answers after them.")
    private Path sheet;

    @Option(
            names = "--page",
            paramLabel = "FILE.html",
            converter = OutputFile.Html.class,
            description = "Write a page that checks answers, for the screen. It is one file and works offline.")
    private Path page;

    @Mixin
    private ForceOption force;

    boolean wanted() {
        return sheet != null || page != null;
    }

    /** Writes the files, each complete or not at all, and says which. */
    void write(DrillReport report, PrintWriter out) {
        if (sheet != null) {
            write(sheet, PrintSheet.html(report), out);
        }
        if (page != null) {
            write(page, PracticePage.html(report), out);
        }
    }

    private static void write(Path file, String html, PrintWriter out) {
        OutputFile.write(file, html.getBytes(StandardCharsets.UTF_8));
        out.println("wrote " + file);
    }
}
