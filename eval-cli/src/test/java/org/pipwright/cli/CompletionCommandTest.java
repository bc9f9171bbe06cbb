package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The script is loaded by a real bash, which is then asked what it would offer. */
@DisabledOnOs(OS.WINDOWS)
class CompletionCommandTest {
    @TempDir
    Path folder;

    private Set<String> offered(String... words) throws Exception {
        Path script = folder.resolve("script");
        Files.writeString(script, Run.of("completion", "bash").out());
        String quoted = String.join(
                " ", Arrays.stream(words).map(word -> "'" + word + "'").toList());
        String lines = "source '" + script + "'; COMP_WORDS=(" + quoted + "); COMP_CWORD=" + (words.length - 1)
                + "; COMP_LINE=\"${COMP_WORDS[*]}\"; _complete_pipwright 2>/dev/null; printf '%s\\n' \"${COMPREPLY[@]}\"";
        Process bash = new ProcessBuilder("bash", "--norc", "-c", lines).start();
        String out = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, bash.waitFor());
        return new TreeSet<>(
                out.lines().map(String::strip).filter(line -> !line.isEmpty()).toList());
    }

    @Test
    void commandsAreOffered() throws Exception {
        Set<String> all = offered("pipwright", "");
        assertTrue(all.containsAll(Commands.ALL.keySet()), all.toString());
        assertEquals(Set.of("rank"), offered("pipwright", "ra"));
        assertEquals(Set.of("standings"), offered("pipwright", "sta"));
    }

    @Test
    void optionsAndSubcommandsAreOffered() throws Exception {
        assertEquals(Set.of("--lookahead"), offered("pipwright", "rank", "start", "--lo"));
        assertTrue(offered("pipwright", "net", "").containsAll(List.of("describe", "verify", "export")));
        assertEquals(Set.of("race-doubles"), offered("pipwright", "drill", "ra"));
        assertTrue(offered("pipwright", "cube", "start", "--no").contains("--no-jacoby"));
    }

    /** What is offered is accepted. */
    @Test
    void valuesOfOptionsAreOffered() throws Exception {
        Set<String> formats = offered("pipwright", "rank", "start", "--format", "");
        assertEquals(Set.of("table", "csv", "json"), formats);
        for (String format : formats) {
            assertEquals(
                    0,
                    Run.of("rank", "start", "--roll", "3-1", "--format", format).code(),
                    format);
        }
        assertEquals(Set.of("cpu", "cuda"), offered("pipwright", "duel", "--device", ""));
        assertEquals(Set.of("cpu", "cuda", "threads"), offered("pipwright", "train", "--device", ""));
    }

    @Test
    void oneScriptDoesForBothShells() {
        Run bash = Run.of("completion", "bash");
        assertEquals(new Run(0, bash.out(), ""), Run.of("completion", "zsh"));
        assertTrue(bash.out().contains("bashcompinit"), "zsh has to be told to understand it");
        assertEquals(0, bash.code());
    }
}
