package org.pipwright.training.learner;

import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.network.Layer;

/**
 * One layer as the sparse learner keeps it: a row an input and a last row for the bias, padded to {@link #width}; and
 * Adam's running means in arrays of the same shape. The padding is 0 and stays 0, since its gradient is.
 */
final class SparseLayer {
    final int inputs;
    final int outputs;
    final int width;
    final float[] weights;
    final float[] mean;
    final float[] square;

    SparseLayer(Layer layer) {
        inputs = layer.inputs();
        outputs = layer.outputs();
        width = (outputs + LayerKernel.LANES - 1) / LayerKernel.LANES * LayerKernel.LANES;
        weights = new float[(inputs + 1) * width];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(layer.weights(), i * outputs, weights, i * width, outputs);
        }
        System.arraycopy(layer.biases(), 0, weights, inputs * width, outputs);
        mean = new float[weights.length];
        square = new float[weights.length];
    }

    Layer toLayer() {
        float[] packed = new float[inputs * outputs];
        for (int i = 0; i < inputs; i++) {
            System.arraycopy(weights, i * width, packed, i * outputs, outputs);
        }
        return new Layer(
                inputs, outputs, packed, Arrays.copyOfRange(weights, inputs * width, inputs * width + outputs));
    }

    List<float[]> state() {
        return List.of(weights.clone(), mean.clone(), square.clone());
    }

    void restore(List<float[]> state) {
        List<float[]> mine = List.of(weights, mean, square);
        for (int i = 0; i < mine.size(); i++) {
            if (state.get(i).length != mine.get(i).length) {
                throw new IllegalArgumentException(
                        "a layer of " + mine.get(i).length + " numbers cannot be restored from " + state.get(i).length);
            }
            System.arraycopy(state.get(i), 0, mine.get(i), 0, mine.get(i).length);
        }
    }
}
