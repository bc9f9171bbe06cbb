package org.pipwright.engine.fuzz;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.files.WorkFile;

/** Files of work that is gone on with: an input is what was found, and gets form, task and seal around it. */
public final class SealedFile {
    private static final List<String> JUDGE = List.of("net test");

    private final ScratchFile file = new ScratchFile();
    private final WorkFile.Kind kind;
    private final String older;

    /** Files of a kind; an input that begins with a 1 is in the older form. */
    public SealedFile(WorkFile.Kind kind, String older) {
        this.kind = kind;
        this.older = older;
    }

    /** The file to go on with. */
    public WorkFile with(byte[] data, List<String> task) throws IOException {
        String text = Seeds.text(data);
        boolean old = text.startsWith("1");
        List<String> lines = new ArrayList<>(JUDGE);
        lines.addAll(task);
        lines.addAll(Arrays.asList((old ? text.substring(1) : text).split("\n")));
        String sealed = SealedLines.print(old ? older : kind.form(), lines);
        return kind.resumed(file.with(sealed.getBytes(StandardCharsets.UTF_8)), JUDGE);
    }
}
