package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;

/** A file of references, a decision a line. */
final class ReferenceFile extends ResumableLines<ReferenceHeader, Reference> {
    /** Opens a file to go on with, or begins one. */
    ReferenceFile(Path path, ReferenceHeader header) throws IOException {
        super(path, header, Reference.class, Reference::id);
    }
}
