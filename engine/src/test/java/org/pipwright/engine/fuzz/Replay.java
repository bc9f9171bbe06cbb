package org.pipwright.engine.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.SplittableRandom;

/** Replays what fuzzing kept, and some inputs near it, in a test of an ordinary build. */
public final class Replay {
    private static final int NEAR = 300;
    private static final int SEED = 20261128;

    private Replay() {}

    /** Fails if a target does not take its seeds, or fails on an input in another way than its reader promises. */
    public static void of(Target target) throws IOException {
        for (byte[] seed : target.seeds()) {
            assertTrue(target.read(seed), () -> "not taken: " + shown(seed));
        }
        List<byte[]> inputs = new ArrayList<>(target.seeds());
        inputs.addAll(Corpus.kept(target));
        inputs.forEach(input -> read(target, input));
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < NEAR; i++) {
            read(target, near(inputs.get(random.nextInt(inputs.size())), random));
        }
    }

    private static void read(Target target, byte[] input) {
        try {
            target.read(input);
        } catch (IOException | RuntimeException | Error e) {
            throw new AssertionError("fails on " + shown(input), e);
        }
    }

    private static String shown(byte[] input) {
        return Base64.getEncoder().encodeToString(input);
    }

    /** One byte changed, or a piece left out or said twice. */
    private static byte[] near(byte[] input, SplittableRandom random) {
        if (input.length == 0) {
            return input;
        }
        int from = random.nextInt(input.length);
        int to = random.nextInt(from, Math.min(input.length, from + 20) + 1);
        byte[] changed = input.clone();
        switch (random.nextInt(3)) {
            case 0:
                changed[from] ^= (byte) (1 << random.nextInt(8));
                return changed;
            case 1:
                byte[] shorter = Arrays.copyOf(input, input.length - (to - from));
                System.arraycopy(input, to, shorter, from, input.length - to);
                return shorter;
            default:
                byte[] longer = Arrays.copyOf(input, input.length + (to - from));
                System.arraycopy(input, from, longer, to, input.length - from);
                return longer;
        }
    }
}
