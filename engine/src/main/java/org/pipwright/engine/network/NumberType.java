package org.pipwright.engine.network;

/** How a model file stores numbers, by the names of the safetensors format. */
enum NumberType {
    F32(4),
    F16(2);

    final int bytes;

    NumberType(int bytes) {
        this.bytes = bytes;
    }
}
