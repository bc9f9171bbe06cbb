package org.pipwright.bench.signature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.bench.Main;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Network;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The signature of the code as it is. */
class SignatureTest {
    /** Changes only with a change of behaviour: features, inference, generation, notation or ranking. Say so in the commit. */
    private static final String RECORDED = "94a1f027226c6dd1";

    /** In a JVM of its own, which gets the plain kernel. */
    @Test
    void codeBehavesAsRecorded() throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        Main.class.getName(),
                        "signature")
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor());
        assertEquals(RECORDED + "  contact 270-256-32-6, race 262-64-6", out.strip());
    }

    @Test
    void anotherNetworkHasAnotherSignature() {
        Model same = BenchNetworks.model();
        Model swapped = new Model(same.contact(), otherRace(same), Map.of());
        assertNotEquals(new Signature(same).hash(), new Signature(swapped).hash());
    }

    /** The race network with one bias moved. */
    private static Network otherRace(Model model) {
        List<Layer> layers = new ArrayList<>(model.race().layers());
        Layer last = layers.remove(1);
        float[] biases = last.biases().clone();
        biases[0] += 0.01f;
        layers.add(new Layer(last.inputs(), last.outputs(), last.weights(), biases));
        return new Network(model.race().features(), layers);
    }

    @Test
    void linesNamePositionRollPlayAndEquity() {
        Signature signature = new Signature(BenchNetworks.model());
        List<String> lines = signature.lines(Position.start(), Roll.parse("3-1"));
        assertEquals(16, lines.size(), "plays of 3-1 from the start");
        assertTrue(lines.stream().anyMatch(line -> line.matches(".* 3-1 8/5 6/5 -?[0-3]\\.[0-9]{4}")), lines.get(0));
        assertTrue(Signature.positions().stream().anyMatch(position -> !position.contact()), "races too");
    }
}
