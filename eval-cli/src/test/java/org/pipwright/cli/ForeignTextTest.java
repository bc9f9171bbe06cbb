package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.text.Printable;

/** Text of others in names, notes and arguments never steers the terminal, and never spoils a file. */
class ForeignTextTest {
    private static final String NASTY = "\u001b]0;x\u0007\u009b31m\u202e";

    @TempDir
    Path folder;

    private static void requireFit(String text) {
        text.codePoints()
                .filter(c -> c != '\n' && !Printable.is(c))
                .findFirst()
                .ifPresent(c -> assertEquals("", Integer.toHexString(c), text));
    }

    @Test
    void notesOfANetAreShownByNumbers() throws IOException {
        Path file = folder.resolve("net");
        ModelFile.write(file, new Model(TestNet.MODEL.contact(), TestNet.MODEL.race(), Map.of("machine", NASTY)));
        Run run = Run.of("net", "describe", file.toString());
        assertEquals(0, run.code(), run.err());
        requireFit(run.out());
        assertTrue(run.out().contains("\\u001b]0;x\\u0007\\u009b31m\\u202e"), run.out());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank start --roll NASTY",
                "rank NASTY --roll 31",
                "NASTY",
                "rank --NASTY",
                "rank start --roll 31 --net NASTY",
                "rank start --roll 31 --plays NASTY",
                "rank --batch NASTY",
                "draw start --svg none/NASTY",
                "draw start --theme NASTY",
                "review NASTY",
                "help NASTY",
                "train --settings NASTY --out x"
            })
    void errorLinesAreFit(String line) {
        String[] args = line.split(" ");
        for (int i = 0; i < args.length; i++) {
            args[i] = args[i].replace("NASTY", NASTY);
        }
        Run run = Run.of(args);
        assertEquals(2, run.code());
        assertEquals(1, run.err().lines().count(), run.err());
        requireFit(run.err() + run.out());
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aChartOfANastyNameIsXml() throws Exception {
        Path net = Files.copy(Path.of(TestNet.path()), folder.resolve("a" + NASTY + "<b>"));
        Path chart = folder.resolve("chart.svg");
        Run run = Run.of("standings", net.toString(), "pips", "--games", "20", "--chart", chart.toString());
        assertEquals(0, run.code(), run.err());
        requireFit(run.out());
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        factory.newDocumentBuilder().parse(chart.toFile());
        String text = Files.readString(chart, StandardCharsets.UTF_8);
        requireFit(text.replace("\r", "").replace("\t", ""));
    }

    @Test
    void aCaptionOfNastyTextIsXml() throws Exception {
        Path svg = folder.resolve("a.svg");
        assertEquals(
                0,
                Run.of("draw", "start", "--caption", NASTY + "\ufffe", "--svg", svg.toString())
                        .code());
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(svg.toFile());
    }
}
