package org.pipwright.engine.files;

import java.io.IOException;
import java.nio.file.Path;

/** A process that has a part file open until it is ended. */
final class HeldPart {
    private HeldPart() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        PartFile part = PartFile.of(Path.of(arguments[0]));
        if (arguments[1].equals("discarded")) {
            part.discardedAtExit();
        }
        System.out.println("ready");
        Thread.sleep(600_000);
    }
}
