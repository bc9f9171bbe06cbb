package org.pipwright.bench.signature;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.BenchNetworks;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/**
 * Prints the signature of a model file, or without an argument that of a network with fixed random weights: then it changes
 * only if the code behaves otherwise than before. The last line is the hash of all others.
 */
@Command(name = "signature", description = "Hashes of the answers to fixed questions: has behaviour changed?")
public final class SignatureCommand extends BenchCommand {
    private static final String KERNEL = "pipwright.kernel";

    @Parameters(arity = "0..1", paramLabel = "MODEL", description = "A model file (default: fixed random weights).")
    private Path file;

    @Override
    protected void run() {
        // Before any network is touched: the kernel is chosen once.
        System.setProperty(KERNEL, System.getProperty(KERNEL, "plain"));
        Model model = file == null ? BenchNetworks.model() : ModelFile.read(file);
        Map<String, String> hashes = new Signature(model).hashes();
        hashes.forEach((part, hash) -> out().println(hash + "  " + part));
        out().println(Signature.hash(List.copyOf(hashes.values())) + "  all, " + model.shape());
    }
}
