package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StateFileTest {
    private static final ResidualShape SHAPE = new ResidualShape(128, 1);

    @TempDir
    Path folder;

    private Path file;
    private RunState state;

    @BeforeEach
    void write() throws IOException {
        NetState net = new NetState(
                Weights.random(SHAPE.size(), 1, -1, 1),
                Weights.random(SHAPE.size(), 2, -1, 1),
                Weights.random(SHAPE.size(), 3, 0, 1),
                Weights.random(SHAPE.size(), 4, -1, 1),
                77);
        state = new RunState(12.5, 3, 4, 1000, 20, 5, List.of(net));
        file = folder.resolve("state");
        StateFile.write(file, state);
    }

    @Test
    void isReadBack() throws IOException {
        RunState back = StateFile.read(file, List.of(SHAPE));
        NetState net = back.nets().get(0);
        assertArrayEquals(state.nets().get(0).weights(), net.weights());
        assertArrayEquals(state.nets().get(0).firstMoments(), net.firstMoments());
        assertArrayEquals(state.nets().get(0).secondMoments(), net.secondMoments());
        assertArrayEquals(state.nets().get(0).average(), net.average());
        assertEquals(77, net.steps());
        assertEquals(
                List.of(12.5, 3.0, 4.0, 1000L, 20L, 5L),
                List.of(back.seconds(), back.copied(), back.began(), back.targets(), back.games(), back.seeds()));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 20, 60, 5000, -1, -40})
    void damageIsSeen(int at) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        bytes[at < 0 ? bytes.length + at : at] ^= 16;
        Files.write(file, bytes);
        assertThrows(IOException.class, () -> StateFile.read(file, List.of(SHAPE)));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 7, 100, 40_000})
    void aCutIsSeen(int length) throws IOException {
        Files.write(file, Arrays.copyOf(Files.readAllBytes(file), length));
        IOException e = assertThrows(IOException.class, () -> StateFile.read(file, List.of(SHAPE)));
        assertEquals("cut off", e.getMessage());
    }

    /** Whole, and yet no run was ever there. */
    @Test
    void countsAndTimesOutOfRangeAreRefused() throws IOException {
        List<NetState> nets = state.nets();
        NetState net = nets.get(0);
        NetState back = new NetState(net.weights(), net.firstMoments(), net.secondMoments(), net.average(), -1);
        for (RunState odd : List.of(
                new RunState(Double.NaN, 3, 4, 1000, 20, 5, nets),
                new RunState(-1, 3, 4, 1000, 20, 5, nets),
                new RunState(12.5, Double.POSITIVE_INFINITY, 4, 1000, 20, 5, nets),
                new RunState(12.5, 3, -4, 1000, 20, 5, nets),
                new RunState(12.5, 3, 4, -1, 20, 5, nets),
                new RunState(12.5, 3, 4, 1000, -1, 5, nets),
                new RunState(12.5, 3, 4, 1000, 20, -1, nets),
                new RunState(12.5, 3, 4, 1000, 20, 5, List.of(back)))) {
            StateFile.write(file, odd);
            IOException e = assertThrows(IOException.class, () -> StateFile.read(file, List.of(SHAPE)));
            assertEquals("has counts or seconds out of range", e.getMessage());
        }
        StateFile.write(file, new RunState(0, 0, Double.NaN, 0, 0, 0, nets));
        assertTrue(Double.isNaN(StateFile.read(file, List.of(SHAPE)).began()));
    }

    @Test
    void otherNetworksAreRefused() {
        for (List<ResidualShape> others : List.of(List.of(new ResidualShape(128, 2)), List.of(SHAPE, SHAPE))) {
            IOException e = assertThrows(IOException.class, () -> StateFile.read(file, others));
            assertTrue(e.getMessage().contains("other networks"), e.getMessage());
        }
    }
}
