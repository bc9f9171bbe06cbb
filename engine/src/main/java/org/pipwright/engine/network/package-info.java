/** Weights and inference: layers, plain and vector kernels, model files. */
package org.pipwright.engine.network;
