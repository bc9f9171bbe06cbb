package org.pipwright.submit;

import java.nio.file.Path;
import java.util.Map;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;

/** Nets of training runs. */
final class Nets {
    private Nets() {}

    /** The file of a net without its notes, which tell how long it took and on which machine. */
    static byte[] weights(Path file) {
        Model model = ModelFile.read(file);
        return ModelFile.toBytes(new Model(model.contact(), model.race(), Map.of()));
    }
}
