package org.pipwright.training.run;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.fuzz.ScratchFile;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;
import org.pipwright.training.learner.LearnerState;

/** Checkpoints, with the checksum put right. */
final class CheckpointTarget implements Target {
    private final ScratchFile file = new ScratchFile();

    @Override
    public List<byte[]> seeds() {
        LearnerState small = new LearnerState(3, List.of(new float[] {1, 2}, new float[] {-3}));
        try {
            Path path = file.with(new byte[0]);
            CheckpointFile.write(path, new Checkpoint(1, 2, 3, 4.5, 0.5, small, small, Optional.empty()));
            return List.of(Files.readAllBytes(path));
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
        Checkpoint checkpoint;
        try {
            checkpoint = CheckpointFile.read(path);
        } catch (IOException e) {
            return false;
        }
        CheckpointFile.write(path, checkpoint);
        Seeds.requireSame(ByteBuffer.wrap(data), ByteBuffer.wrap(Files.readAllBytes(path)));
        return true;
    }
}
