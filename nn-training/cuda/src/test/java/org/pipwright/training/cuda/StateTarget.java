package org.pipwright.training.cuda;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.fuzz.ScratchFile;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** Checkpoints of runs on a card, of networks with a few weights, with the checksum put right. */
final class StateTarget implements Target {
    private static final int[] SIZES = {3, 2};

    private final ScratchFile file = new ScratchFile();

    @Override
    public List<byte[]> seeds() {
        NetState one = new NetState(
                new float[] {1, -2, 3}, new float[] {0, 0.5f, 0}, new float[3], new float[] {1, -2, Float.NaN}, 7);
        NetState other = NetState.fresh(new float[] {0.25f, -0.5f});
        try {
            List<byte[]> seeds = new ArrayList<>();
            for (double began : new double[] {Double.NaN, 4}) {
                Path path = file.with(new byte[0]);
                StateFile.write(path, new RunState(12.5, 3, began, 1000, 20, 5, List.of(one, other)));
                seeds.add(Files.readAllBytes(path));
            }
            return seeds;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Override
    public boolean read(byte[] data) throws IOException {
        return taken(data) | taken(Seeds.sealed(data));
    }

    private boolean taken(byte[] data) throws IOException {
        Path path = file.with(data);
        RunState state;
        try {
            state = StateFile.read(path, SIZES);
        } catch (IOException e) {
            return false;
        }
        if (!(state.seconds() >= 0 && state.targets() >= 0 && state.games() >= 0)) {
            throw new IllegalStateException("taken: " + state);
        }
        StateFile.write(path, state);
        Seeds.requireSame(shown(state), shown(StateFile.read(path, SIZES)));
        return true;
    }

    private static List<Object> shown(RunState state) {
        List<Object> shown = new ArrayList<>(
                List.of(state.seconds(), state.copied(), state.began(), state.targets(), state.games(), state.seeds()));
        for (NetState net : state.nets()) {
            shown.add(net.steps());
            for (float[] numbers : List.of(net.weights(), net.firstMoments(), net.secondMoments(), net.average())) {
                shown.add(Arrays.toString(numbers));
            }
        }
        return shown;
    }
}
