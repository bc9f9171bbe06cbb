package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

class StandingsCommandTest {
    private static final String[] LINE = {"standings", "racer", "hitter", "builder", "--games", "100", "--seed", "3"};

    private static String[] with(String... more) {
        String[] all = Arrays.copyOf(LINE, LINE.length + more.length);
        System.arraycopy(more, 0, all, LINE.length, more.length);
        return all;
    }

    @Test
    void jsonHasTheDuelsAndTheirFit() throws IOException {
        Run run = Run.of(with("--json", "--anchor", "racer"));
        assertEquals("", run.err());
        assertEquals(List.of(), Schemas.faults("standings", run.out()));
        JsonNode json = new ObjectMapper().readTree(run.out());
        assertEquals(3, json.get("duels").size());
        for (int d = 0; d < 3; d++) {
            JsonNode duel = json.get("duels").get(d);
            assertEquals(3 + d, duel.get("seed").asInt());
            Run alone = Run.of(
                    "duel",
                    duel.get("a").asText(),
                    duel.get("b").asText(),
                    "--games",
                    "100",
                    "--seed",
                    duel.get("seed").asText(),
                    "--json");
            assertEquals(new ObjectMapper().readTree(alone.out()).get("value"), duel.get("points"));
        }
        double last = Double.POSITIVE_INFINITY;
        for (JsonNode player : json.get("players")) {
            assertTrue(player.get("rating").asDouble() <= last, "best first");
            last = player.get("rating").asDouble();
            boolean anchor = player.get("name").asText().equals("racer");
            assertEquals(anchor, player.get("standardError").asDouble() == 0);
        }
        assertEquals(1, json.get("fit").get("degreesOfFreedom").asInt());
    }

    @Test
    void theTextHasRatingsAndResults() {
        String text = Run.of(with()).out();
        assertTrue(text.startsWith("3 players, 3 duels, 300 games in pairs, seed 3\n\n"), text);
        assertTrue(text.contains("builder, formula"), text);
        assertTrue(text.contains("0  by definition\n"), text);
        assertTrue(text.contains("\npoints per game against builder; chi-squared "), text);
        // Each result is there from both sides.
        String results = text.substring(text.indexOf("line against column:"));
        assertEquals(3, results.split(" [+]", -1).length - 1, text);
        assertEquals(3, results.split(" -", -1).length - 1, text);
    }

    @Test
    void theChartIsAnSvgThatNamesEverybody(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("chart.svg");
        assertEquals(0, Run.of(with("--chart", file.toString())).code());
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        Document svg = factory.newDocumentBuilder().parse(file.toFile());
        assertEquals("svg", svg.getDocumentElement().getTagName());
        NodeList texts = svg.getElementsByTagName("text");
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < texts.getLength(); i++) {
            all.append(texts.item(i).getTextContent()).append('\n');
        }
        for (String name : List.of("racer", "hitter", "builder", "points per game against builder")) {
            assertTrue(all.toString().contains(name), all.toString());
        }
        String first = Files.readString(file);
        Run.of(with("--chart", file.toString()));
        assertEquals(first, Files.readString(file));
    }
}
