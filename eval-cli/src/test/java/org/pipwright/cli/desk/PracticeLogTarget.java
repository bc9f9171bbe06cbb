package org.pipwright.cli.desk;

import java.io.IOException;
import java.util.List;
import org.pipwright.engine.fuzz.ScratchFile;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** Logs of what was practised: damaged lines are passed over, the others are read. */
final class PracticeLogTarget implements Target {
    private final ScratchFile file = new ScratchFile();

    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                "2026-01-01T00:00:00Z\twrong\t/board?roll=3-1\t24/20\t-0.1200\n",
                "2026-01-01T00:00:00Z\twrong\t/board?roll=3-1\t24/20\t-0.1200\n"
                        + "2026-01-01T00:00:00Z\twrong\t/board?for=match&away=3%2C5&asked=answer\tpass\t-0.1200\n"
                        + "2026-01-02T00:00:00Z\tright\t/board?roll=3-1\t8/5 6/5\t0.0000\n");
    }

    @Override
    public boolean read(byte[] data) throws IOException {
        return !new PracticeLog(file.with(data)).wrong().isEmpty();
    }
}
