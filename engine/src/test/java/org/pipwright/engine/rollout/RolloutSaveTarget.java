package org.pipwright.engine.rollout;

import java.io.IOException;
import java.util.List;
import java.util.SplittableRandom;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.fuzz.SealedFile;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** What a rollout kept. */
final class RolloutSaveTarget implements Target {
    private static final List<String> TASK = List.of("seed 1");
    private static final int CANDIDATES = 2;
    private static final int SERIES = 1;

    private final SealedFile file = new SealedFile(MomentsText.KIND, "pipwright-rollout 2");

    @Override
    public List<byte[]> seeds() {
        Moments none = new Moments(CANDIDATES, SERIES);
        double[] numbers = new SplittableRandom(5)
                .doubles(Moments.size(CANDIDATES, SERIES))
                .toArray();
        Moments some = Moments.restore(CANDIDATES, SERIES, 36, numbers, null);
        return List.of(
                Seeds.of(String.join("\n", MomentsText.lines(none))).get(0),
                Seeds.of(String.join("\n", MomentsText.lines(some))).get(0),
                Seeds.of("1" + String.join("\n", MomentsText.lines(some))).get(0));
    }

    @Override
    public boolean read(byte[] data) throws IOException {
        try {
            Moments moments = MomentsText.read(file.with(data, TASK), TASK, CANDIDATES, SERIES);
            List<String> lines = MomentsText.lines(moments);
            byte[] written = Seeds.of(String.join("\n", lines)).get(0);
            Seeds.requireSame(
                    lines, MomentsText.lines(MomentsText.read(file.with(written, TASK), TASK, CANDIDATES, SERIES)));
            return true;
        } catch (InvalidWorkFileException e) {
            return false;
        }
    }
}
