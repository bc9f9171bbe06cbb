package org.pipwright.engine.network;

import java.util.ArrayList;
import java.util.List;

/**
 * Every layer of a residual network but the first, prepared for a kernel.
 *
 * @param first the first layers of the blocks
 * @param second the second ones, after {@code max(0, x)}
 * @param output the last layer
 */
record ResidualProducts(List<Product> first, List<SparseProduct> second, Product output) {
    static ResidualProducts of(ResidualNetwork network, Kernel kernel) {
        List<Product> first = new ArrayList<>();
        List<SparseProduct> second = new ArrayList<>();
        for (ResidualNetwork.Block block : network.blocks()) {
            first.add(kernel.product(block.a()));
            second.add(kernel.sparseProduct(block.b()));
        }
        return new ResidualProducts(first, second, kernel.product(network.output()));
    }
}
