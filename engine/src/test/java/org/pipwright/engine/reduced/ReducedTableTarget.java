package org.pipwright.engine.reduced;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.util.List;
import java.util.zip.CRC32C;
import org.pipwright.engine.fuzz.ScratchFile;
import org.pipwright.engine.fuzz.Target;

/** Files of solved games, with the checksum put right. */
final class ReducedTableTarget implements Target {
    private static final ReducedGame GAME = new ReducedGame(1);

    private final ScratchFile file = new ScratchFile();

    @Override
    public List<byte[]> seeds() {
        try {
            var path = Files.createTempFile("pipwright-", ".table");
            ReducedTableFile.write(path, ReducedSolver.solve(GAME, 1, 1e-12, ReducedSolver.Progress.NONE));
            byte[] bytes = Files.readAllBytes(path);
            Files.delete(path);
            return List.of(bytes);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Override
    public boolean read(byte[] data) throws IOException {
        return taken(data) | taken(sealed(data));
    }

    private boolean taken(byte[] data) throws IOException {
        try {
            ReducedTableFile.read(file.with(data), GAME, 1);
            return true;
        } catch (InvalidTableException e) {
            return false;
        }
    }

    private static byte[] sealed(byte[] data) throws IOException {
        int length = data.length - Long.BYTES;
        if (length < 0) {
            return data;
        }
        CRC32C sum = new CRC32C();
        sum.update(data, 0, length);
        byte[] sealed = data.clone();
        ByteBuffer.wrap(sealed).putLong(length, sum.getValue());
        return sealed;
    }
}
