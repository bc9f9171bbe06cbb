package org.pipwright.training.cuda;

import static org.bytedeco.cuda.global.cudart.cuDeviceGetName;
import static org.bytedeco.cuda.global.cudart.cudaFree;
import static org.bytedeco.cuda.global.cudart.cudaFreeHost;
import static org.bytedeco.cuda.global.cudart.cudaGetDeviceCount;
import static org.bytedeco.cuda.global.cudart.cudaGetErrorString;
import static org.bytedeco.cuda.global.cudart.cudaMalloc;
import static org.bytedeco.cuda.global.cudart.cudaMallocHost;
import static org.bytedeco.cuda.global.cudart.cudaMemcpyAsync;
import static org.bytedeco.cuda.global.cudart.cudaMemsetAsync;
import static org.bytedeco.cuda.global.cudart.cudaRuntimeGetVersion;
import static org.bytedeco.cuda.global.cudart.cudaSetDevice;
import static org.bytedeco.cuda.global.cudart.cudaStreamCreate;
import static org.bytedeco.cuda.global.cudart.cudaStreamSynchronize;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Loader;
import org.bytedeco.javacpp.Pointer;
import org.pipwright.training.device.MissingDeviceException;

/**
 * The first graphics card: its memory, pinned memory of this machine, and streams of work. Addresses on the card are plain
 * longs, as kernels and offsets want them. Memory is given back when the program ends.
 */
final class Gpu {
    static final int TO_CARD = 1;
    static final int FROM_CARD = 2;

    private Gpu() {}

    /** A pointer to a given address. */
    static final class Address extends Pointer {
        Address(long address) {
            super((Pointer) null);
            this.address = address;
        }
    }

    /**
     * Makes the card the calling thread's; each thread that uses it says so once.
     *
     * @throws MissingDeviceException if there is no card, or a library it needs is missing
     */
    static void use() {
        try {
            int[] count = new int[1];
            int status = cudaGetDeviceCount(count);
            if (status != 0 || count[0] == 0) {
                throw new MissingDeviceException(MissingCuda.card(status));
            }
            ok(cudaSetDevice(0), "choosing the card");
            ok(cudaFree(null), "starting the card");
        } catch (LinkageError e) {
            throw new MissingDeviceException(MissingCuda.library(e));
        }
    }

    /** Loads every library that a run needs, so that what is missing is said before anything is written. */
    static void load() {
        try {
            Loader.load(org.bytedeco.cuda.global.cudart.class);
            Loader.load(org.bytedeco.cuda.global.nvrtc.class);
            Loader.load(org.bytedeco.cuda.global.cublas.class);
        } catch (LinkageError e) {
            throw new MissingDeviceException(MissingCuda.library(e));
        }
    }

    /** Name of the card, and the CUDA version it runs with. */
    static String description() {
        byte[] name = new byte[256];
        int[] version = new int[1];
        boolean known = cuDeviceGetName(name, name.length, 0) == 0;
        ok(cudaRuntimeGetVersion(version), "asking for the CUDA version");
        return (known ? new String(name, StandardCharsets.US_ASCII).replaceFirst("\0.*", "") : "a card") + ", CUDA "
                + version[0] / 1000 + "." + version[0] % 1000 / 10;
    }

    static void ok(int status, String what) {
        if (status != 0) {
            BytePointer text = cudaGetErrorString(status);
            throw new IllegalStateException(
                    what + " failed: " + (text == null ? "status " : text.getString() + ", status ") + status);
        }
    }

    static CUstream_st stream() {
        CUstream_st stream = new CUstream_st();
        ok(cudaStreamCreate(stream), "making a stream");
        return stream;
    }

    static void await(CUstream_st stream) {
        ok(cudaStreamSynchronize(stream), "work on the card");
    }

    /** Memory on the card, not cleared. */
    static long allocate(long bytes) {
        Pointer memory = new Pointer();
        ok(cudaMalloc(memory, bytes), "asking the card for " + (bytes >> 20) + " MiB");
        return memory.address();
    }

    static void free(long address) {
        ok(cudaFree(new Address(address)), "giving memory back");
    }

    /** Memory of this machine that the card can copy from and to by itself, at most 2 GiB. */
    static ByteBuffer pinned(long bytes) {
        BytePointer memory = new BytePointer();
        ok(cudaMallocHost(memory, bytes), "asking for " + (bytes >> 20) + " MiB of pinned memory");
        memory.capacity(bytes);
        return memory.asByteBuffer().order(ByteOrder.nativeOrder());
    }

    static void unpin(ByteBuffer memory) {
        ok(cudaFreeHost(new Pointer(memory)), "giving pinned memory back");
    }

    /** Copies from the start of a direct buffer; done when the stream has got there. */
    static void toCard(java.nio.Buffer from, long to, long bytes, CUstream_st stream) {
        ok(
                cudaMemcpyAsync(new Address(to), new Address(new Pointer(from).address()), bytes, TO_CARD, stream),
                "copying to the card");
    }

    /** Copies to the start of a direct buffer; done when the stream has got there. */
    static void fromCard(long from, java.nio.Buffer to, long bytes, CUstream_st stream) {
        ok(
                cudaMemcpyAsync(new Address(new Pointer(to).address()), new Address(from), bytes, FROM_CARD, stream),
                "copying from the card");
    }

    static void clear(long address, long bytes, CUstream_st stream) {
        ok(cudaMemsetAsync(new Address(address), 0, bytes, stream), "clearing memory");
    }
}
