package org.pipwright.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.pipwright.cli.CommandTree;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/** Writes manual pages, as AsciiDoc, and the completion script from the commands themselves. */
public final class Manuals {
    private Manuals() {}

    /**
     * Writes all of them.
     *
     * @param args folder of the pages, folder of the script
     * @throws IOException if they cannot be written
     */
    public static void main(String[] args) throws IOException {
        CommandLine all = CommandTree.all();
        Path pages = Files.createDirectories(Path.of(args[0]));
        int failed =
                ManPageGenerator.generateManPage(pages.toFile(), null, new boolean[0], false, all.getCommandSpec());
        if (failed != 0) {
            throw new IOException("no manual pages: the generator says " + failed);
        }
        Path script = Files.createDirectories(Path.of(args[1])).resolve("pipwright");
        Files.writeString(script, AutoComplete.bash("pipwright", all));
    }
}
