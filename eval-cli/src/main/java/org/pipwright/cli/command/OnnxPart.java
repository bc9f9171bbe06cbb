package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Net;
import org.pipwright.engine.network.OnnxFile;
import org.pipwright.engine.network.ResidualNetwork;

/** One network of a model as an ONNX file: where it goes, its shape, what makes its bytes. */
record OnnxPart(String file, String shape, Supplier<byte[]> bytes) {
    /** All networks of a model, as files whose names begin with a stem. */
    static List<OnnxPart> of(Model model, String stem, String ending) {
        List<OnnxPart> parts = new ArrayList<>();
        add(parts, model, model.net(), stem, ending);
        model.quick().ifPresent(quick -> add(parts, model, quick, stem + "-quick", ending));
        return parts;
    }

    private static void add(List<OnnxPart> parts, Model model, Net net, String stem, String ending) {
        if (net instanceof Lanes lanes) {
            parts.add(new OnnxPart(
                    stem + "-contact" + ending,
                    lanes.contact().shape(),
                    () -> OnnxFile.toBytes(lanes.contact(), model.notes())));
            parts.add(new OnnxPart(
                    stem + "-race" + ending,
                    lanes.race().shape(),
                    () -> OnnxFile.toBytes(lanes.race(), model.notes())));
        } else {
            ResidualNetwork network = (ResidualNetwork) net;
            parts.add(new OnnxPart(stem + ending, network.shape(), () -> OnnxFile.toBytes(network, model.notes())));
        }
    }
}
