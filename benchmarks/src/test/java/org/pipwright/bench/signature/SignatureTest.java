package org.pipwright.bench.signature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.bench.cli.Main;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The signature of the code as it is. */
class SignatureTest {
    /**
     * Changes only with a change of behaviour: features, inference, generation, notation, ranking, lookahead, the cube,
     * rollouts or reviews. A commit that changes it says so, with the old and the new last line.
     */
    private static final String RECORDED = "recorded.txt";

    /** In a JVM of its own, which gets the plain kernel. */
    @Test
    void codeBehavesAsRecorded() throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        Main.class.getName(),
                        "signature")
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor());
        assertEquals(recorded(), out.lines().collect(Collectors.joining("\n")));
    }

    private static String recorded() throws IOException {
        try (InputStream in = SignatureTest.class.getResourceAsStream(RECORDED)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().collect(Collectors.joining("\n"));
        }
    }

    @Test
    void anotherNetworkHasAnotherSignature() {
        Model same = BenchNetworks.model();
        Model other = new Model(moved(same.contact()), moved(same.race()), Map.of());
        for (String part : List.of("plays", "odds cubeless contact 0", "cube money contact 0")) {
            assertNotEquals(hash(same, part), hash(other, part), part);
        }
    }

    /** Races are played out by simulation, which asks no network. */
    @Test
    void simulatedRacesAreTheSameWithAnyNetwork() {
        Model same = BenchNetworks.model();
        Model other = new Model(same.contact(), moved(same.race()), Map.of());
        for (String part : List.of("odds cubeless races 0", "cube money races 0")) {
            assertEquals(hash(same, part), hash(other, part), part);
        }
    }

    private static String hash(Model model, String part) {
        return Signature.hash(new Signature(model).lines(part));
    }

    /** A network with one bias of its last layer moved. */
    private static Network moved(Network network) {
        List<Layer> layers = new ArrayList<>(network.layers());
        Layer last = layers.remove(layers.size() - 1);
        float[] biases = last.biases().clone();
        biases[0] += 0.01f;
        layers.add(new Layer(last.inputs(), last.outputs(), last.weights(), biases));
        return new Network(network.features(), layers);
    }

    @Test
    void linesNamePositionRollPlayAndEquity() {
        AllPlays plays = new AllPlays(BenchNetworks.model());
        List<String> lines = plays.lines(Position.start(), Roll.parse("3-1"));
        assertEquals(16, lines.size(), "plays of 3-1 from the start");
        assertTrue(lines.stream().anyMatch(line -> line.matches(".* 3-1 8/5 6/5 -?[0-3]\\.[0-9]{4}")), lines.get(0));
        assertTrue(AllPlays.positions().stream().anyMatch(position -> !position.contact()), "races too");
    }

    /** Each part has lines of its own, or it would cover nothing. */
    @Test
    void partsDiffer() throws IOException {
        List<String> parts = new Signature(BenchNetworks.model()).names();
        List<String> hashes = recorded()
                .lines()
                .limit(parts.size())
                .map(line -> line.substring(0, line.indexOf(' ')))
                .collect(Collectors.toList());
        assertTrue(parts.size() >= 55, "kinds of questions: " + parts.size());
        assertTrue(!hashes.contains(Signature.hash(List.of())), "an empty part");
        assertEquals(parts.size(), hashes.stream().distinct().count());
    }

    @Test
    void racesAreWithinTheTablesAndBeyond() {
        for (int lookahead = 0; lookahead <= 2; lookahead++) {
            List<Basis> bases = Fixed.races(lookahead).stream()
                    .map(EndgameTables::standardBasis)
                    .collect(Collectors.toList());
            assertTrue(bases.contains(Basis.ESTIMATED) && bases.contains(Basis.EXACT), bases.toString());
            assertTrue(lookahead > 1 || bases.contains(Basis.DISTRIBUTIONS), bases.toString());
        }
        assertTrue(Fixed.contact(0).stream().allMatch(Position::contact), "contact");
    }
}
