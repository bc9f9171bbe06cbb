package org.pipwright.bench.signature;

import java.nio.file.Path;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;

/**
 * Prints the signature of a model file, or without an argument that of a network with fixed random weights: then it changes
 * only if the code behaves otherwise than before.
 */
public final class SignatureMain {
    private static final String KERNEL = "pipwright.kernel";

    private SignatureMain() {}

    public static void main(String[] args) {
        // Before any network is touched: the kernel is chosen once.
        System.setProperty(KERNEL, System.getProperty(KERNEL, "plain"));
        try {
            Model model = args.length == 0 ? BenchNetworks.model() : ModelFile.read(Path.of(args[0]));
            System.out.println(new Signature(model).hash() + "  " + model.shape());
        } catch (InvalidModelException e) {
            System.err.println(e.getMessage());
            System.exit(2);
        }
    }
}
