package org.pipwright.training.cuda;

import static org.bytedeco.cuda.global.cudart.cuLaunchKernel;
import static org.bytedeco.cuda.global.cudart.cuModuleGetFunction;
import static org.bytedeco.cuda.global.cudart.cuModuleLoadData;
import static org.bytedeco.cuda.global.nvrtc.nvrtcCompileProgram;
import static org.bytedeco.cuda.global.nvrtc.nvrtcCreateProgram;
import static org.bytedeco.cuda.global.nvrtc.nvrtcGetPTX;
import static org.bytedeco.cuda.global.nvrtc.nvrtcGetPTXSize;
import static org.bytedeco.cuda.global.nvrtc.nvrtcGetProgramLog;
import static org.bytedeco.cuda.global.nvrtc.nvrtcGetProgramLogSize;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.bytedeco.cuda.cudart.CUfunc_st;
import org.bytedeco.cuda.cudart.CUmod_st;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.bytedeco.cuda.nvrtc._nvrtcProgram;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.javacpp.PointerPointer;
import org.bytedeco.javacpp.SizeTPointer;

/**
 * The kernels of {@code kernels.cu} and {@code layers.cu}, compiled for one network width when the program starts, and how
 * they are launched.
 * Serves one thread at a time.
 */
final class Kernels {
    /** Ampere: the oldest cards with products of bfloat16. */
    private static final String ARCHITECTURE = "--gpu-architecture=compute_80";

    private static final int MAX_ARGUMENTS = 20;

    /** For those that use no kernel which depends on the width. */
    static final int ANY_WIDTH = 128;

    private final CUmod_st module = new CUmod_st();
    private final Map<String, CUfunc_st> functions = new HashMap<>();
    private final CUstream_st stream;
    private final BytePointer memory = new BytePointer((long) MAX_ARGUMENTS * Long.BYTES);
    private final ByteBuffer arguments;
    private final PointerPointer<Pointer> pointers = new PointerPointer<>(MAX_ARGUMENTS);
    private int size;

    Kernels(int width, CUstream_st stream) {
        this.stream = stream;
        arguments = memory.asByteBuffer().order(ByteOrder.nativeOrder());
        for (int i = 0; i < MAX_ARGUMENTS; i++) {
            pointers.put(i, new Gpu.Address(memory.address() + (long) i * Long.BYTES));
        }
        BytePointer code = compile(width);
        Gpu.ok(cuModuleLoadData(module, code), "loading the kernels");
    }

    private static String source() {
        return source("kernels.cu") + source("layers.cu");
    }

    private static String source(String file) {
        try (InputStream in = Kernels.class.getResourceAsStream(file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static BytePointer compile(int width) {
        _nvrtcProgram program = new _nvrtcProgram();
        Gpu.ok(
                nvrtcCreateProgram(
                        program,
                        new BytePointer(source()),
                        new BytePointer("kernels.cu"),
                        0,
                        (PointerPointer<?>) null,
                        (PointerPointer<?>) null),
                "reading the kernels");
        PointerPointer<BytePointer> options = new PointerPointer<>(ARCHITECTURE, "-DW=" + width);
        if (nvrtcCompileProgram(program, 2, options) != 0) {
            SizeTPointer length = new SizeTPointer(1);
            nvrtcGetProgramLogSize(program, length);
            BytePointer log = new BytePointer(length.get());
            nvrtcGetProgramLog(program, log);
            throw new IllegalStateException("the kernels do not compile: " + log.getString());
        }
        SizeTPointer length = new SizeTPointer(1);
        Gpu.ok(nvrtcGetPTXSize(program, length), "compiling the kernels");
        BytePointer code = new BytePointer(length.get());
        Gpu.ok(nvrtcGetPTX(program, code), "compiling the kernels");
        return code;
    }

    CUstream_st stream() {
        return stream;
    }

    /** Adds an argument: an address or a 64-bit number. */
    Kernels with(long value) {
        arguments.putLong(size++ * Long.BYTES, value);
        return this;
    }

    Kernels with(int value) {
        arguments.putInt(size++ * Long.BYTES, value);
        return this;
    }

    Kernels with(float value) {
        arguments.putFloat(size++ * Long.BYTES, value);
        return this;
    }

    /** Starts a kernel with the arguments added since the last start. */
    void start(String name, long blocks, int blocksDown, int threads) {
        CUfunc_st function = functions.computeIfAbsent(name, this::find);
        size = 0;
        int status = cuLaunchKernel(
                function, Math.toIntExact(blocks), blocksDown, 1, threads, 1, 1, 0, stream, pointers, (PointerPointer<
                                ?>)
                        null);
        if (status != 0) {
            throw new IllegalStateException("starting the kernel " + name + " failed: status " + status);
        }
    }

    /** One thread an element. */
    void each(String name, long elements) {
        start(name, (elements + 255) / 256, 1, 256);
    }

    /** One warp of 32 threads a row. */
    void warps(String name, long rows) {
        start(name, (rows + 7) / 8, 1, 256);
    }

    private CUfunc_st find(String name) {
        CUfunc_st function = new CUfunc_st();
        Gpu.ok(cuModuleGetFunction(function, module, name), "finding the kernel " + name);
        return function;
    }
}
