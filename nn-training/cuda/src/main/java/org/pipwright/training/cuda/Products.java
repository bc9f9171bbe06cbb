package org.pipwright.training.cuda;

import static org.bytedeco.cuda.global.cublas.CUBLASLT_EPILOGUE_RELU_BIAS;
import static org.bytedeco.cuda.global.cublas.CUBLASLT_MATMUL_DESC_BIAS_POINTER;
import static org.bytedeco.cuda.global.cublas.CUBLASLT_MATMUL_DESC_EPILOGUE;
import static org.bytedeco.cuda.global.cublas.CUBLASLT_MATMUL_PREF_MAX_WORKSPACE_BYTES;
import static org.bytedeco.cuda.global.cublas.CUBLAS_COMPUTE_32F;
import static org.bytedeco.cuda.global.cublas.cublasCreate_v2;
import static org.bytedeco.cuda.global.cublas.cublasGemmEx;
import static org.bytedeco.cuda.global.cublas.cublasLtCreate;
import static org.bytedeco.cuda.global.cublas.cublasLtMatmul;
import static org.bytedeco.cuda.global.cublas.cublasLtMatmulAlgoGetHeuristic;
import static org.bytedeco.cuda.global.cublas.cublasLtMatmulDescCreate;
import static org.bytedeco.cuda.global.cublas.cublasLtMatmulDescSetAttribute;
import static org.bytedeco.cuda.global.cublas.cublasLtMatmulPreferenceCreate;
import static org.bytedeco.cuda.global.cublas.cublasLtMatmulPreferenceSetAttribute;
import static org.bytedeco.cuda.global.cublas.cublasLtMatrixLayoutCreate;
import static org.bytedeco.cuda.global.cublas.cublasSetStream_v2;

import java.util.HashMap;
import java.util.Map;
import org.bytedeco.cuda.cublas.cublasContext;
import org.bytedeco.cuda.cublas.cublasLtContext;
import org.bytedeco.cuda.cublas.cublasLtMatmulDescOpaque_t;
import org.bytedeco.cuda.cublas.cublasLtMatmulHeuristicResult_t;
import org.bytedeco.cuda.cublas.cublasLtMatmulPreferenceOpaque_t;
import org.bytedeco.cuda.cublas.cublasLtMatrixLayoutOpaque_t;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.LongPointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Products of matrices of two-byte numbers with sums in float. All matrices are row-major; the library wants them
 * column-major, so each call asks for the transposed product. Serves one thread at a time.
 */
final class Products {
    /** Types of what is multiplied and of what comes out. */
    enum Kind {
        /** bfloat16 to bfloat16. */
        BFLOAT(14, 14),
        /** bfloat16 to float. */
        BFLOAT_TO_FLOAT(14, 0),
        /** IEEE half to half. */
        HALF(2, 2),
        /** IEEE half to float. */
        HALF_TO_FLOAT(2, 0);

        private final int from;
        private final int to;

        Kind(int from, int to) {
            this.from = from;
            this.to = to;
        }
    }

    private static final int FLOAT = 0;
    private static final int DEFAULT_ALGORITHM = -1;
    private static final int AS_IS = 0;
    private static final int TRANSPOSED = 1;
    private static final long WORKSPACE = 32L << 20;

    private final CUstream_st stream;
    private final cublasContext handle = new cublasContext();
    private final cublasLtContext light = new cublasLtContext();
    private final long workspace = Gpu.allocate(WORKSPACE);
    private final FloatPointer one = new FloatPointer(1f);
    private final FloatPointer zero = new FloatPointer(0f);
    private final LongPointer biasAddress = new LongPointer(1);
    private final Map<String, Plan> plans = new HashMap<>();

    Products(CUstream_st stream) {
        this.stream = stream;
        Gpu.ok(cublasCreate_v2(handle), "starting cuBLAS");
        Gpu.ok(cublasSetStream_v2(handle, stream), "starting cuBLAS");
        Gpu.ok(cublasLtCreate(light), "starting cuBLASLt");
    }

    private void call(
            int leftTransposed,
            int rightTransposed,
            int m,
            int n,
            int k,
            long a,
            int lda,
            long b,
            int ldb,
            boolean add,
            long c,
            int ldc,
            Kind kind) {
        int status = cublasGemmEx(
                handle,
                leftTransposed,
                rightTransposed,
                m,
                n,
                k,
                one,
                new Gpu.Address(a),
                kind.from,
                lda,
                new Gpu.Address(b),
                kind.from,
                ldb,
                add ? one : zero,
                new Gpu.Address(c),
                kind.to,
                ldc,
                CUBLAS_COMPUTE_32F,
                DEFAULT_ALGORITHM);
        if (status != 0) {
            throw new IllegalStateException(
                    "a product of " + m + " x " + n + " x " + k + " failed: cuBLAS status " + status);
        }
    }

    /** y = x w, or y += x w: x rows x in, w in x out, y rows x out. */
    void multiply(long x, long w, long y, int rows, int in, int out, boolean add, Kind kind) {
        call(AS_IS, AS_IS, out, rows, in, w, out, x, in, add, y, out, kind);
    }

    /** dx = dy w^T: dy rows x out, dx rows x in, all bfloat16. */
    void back(long dy, long w, long dx, int rows, int in, int out) {
        call(TRANSPOSED, AS_IS, in, rows, out, w, out, dy, out, false, dx, in, Kind.BFLOAT);
    }

    /** dw = x^T dy: dw in x out as float. */
    void gradient(long x, long dy, long dw, int rows, int in, int out) {
        call(AS_IS, TRANSPOSED, out, in, rows, dy, out, x, in, false, dw, out, Kind.BFLOAT_TO_FLOAT);
    }

    /** How one shape of product with bias and max(0, x) is computed. */
    private final class Plan {
        final cublasLtMatmulDescOpaque_t product;
        final cublasLtMatrixLayoutOpaque_t w;
        final cublasLtMatrixLayoutOpaque_t x;
        final cublasLtMatrixLayoutOpaque_t y;
        final cublasLtMatmulHeuristicResult_t choice = new cublasLtMatmulHeuristicResult_t();

        Plan(int rows, int width, Kind kind) {
            PointerPointer<Pointer> made = new PointerPointer<>(1);
            Gpu.ok(cublasLtMatmulDescCreate(made, CUBLAS_COMPUTE_32F, FLOAT), "describing a product");
            product = new cublasLtMatmulDescOpaque_t(made.get(0));
            IntPointer epilogue = new IntPointer(1).put(CUBLASLT_EPILOGUE_RELU_BIAS);
            Gpu.ok(
                    cublasLtMatmulDescSetAttribute(product, CUBLASLT_MATMUL_DESC_EPILOGUE, epilogue, Integer.BYTES),
                    "describing a product");
            w = layout(kind.from, width, width);
            x = layout(kind.from, width, rows);
            y = layout(kind.to, width, rows);
            choose();
        }

        private cublasLtMatrixLayoutOpaque_t layout(int type, int rows, int columns) {
            PointerPointer<Pointer> made = new PointerPointer<>(1);
            Gpu.ok(cublasLtMatrixLayoutCreate(made, type, rows, columns, rows), "describing a matrix");
            return new cublasLtMatrixLayoutOpaque_t(made.get(0));
        }

        private void choose() {
            PointerPointer<Pointer> made = new PointerPointer<>(1);
            Gpu.ok(cublasLtMatmulPreferenceCreate(made), "choosing a product");
            cublasLtMatmulPreferenceOpaque_t preference = new cublasLtMatmulPreferenceOpaque_t(made.get(0));
            Gpu.ok(
                    cublasLtMatmulPreferenceSetAttribute(
                            preference,
                            CUBLASLT_MATMUL_PREF_MAX_WORKSPACE_BYTES,
                            new LongPointer(1).put(WORKSPACE),
                            Long.BYTES),
                    "choosing a product");
            int[] found = new int[1];
            Gpu.ok(
                    cublasLtMatmulAlgoGetHeuristic(light, product, w, x, y, y, preference, 1, choice, found),
                    "choosing a product");
            if (found[0] == 0) {
                throw new IllegalStateException("cuBLASLt has no way to compute a product");
            }
        }
    }

    /** y = max(0, x w + bias): x rows x width, w width x width; all of the first type of the kind. */
    void rectified(long x, long w, long bias, long y, int rows, int width, Kind kind) {
        Plan plan = plans.computeIfAbsent(rows + " " + width + " " + kind, key -> new Plan(rows, width, kind));
        biasAddress.put(0, bias);
        Gpu.ok(
                cublasLtMatmulDescSetAttribute(
                        plan.product, CUBLASLT_MATMUL_DESC_BIAS_POINTER, biasAddress, Long.BYTES),
                "naming a bias");
        int status = cublasLtMatmul(
                light,
                plan.product,
                one,
                new Gpu.Address(w),
                plan.w,
                new Gpu.Address(x),
                plan.x,
                zero,
                new Gpu.Address(y),
                plan.y,
                new Gpu.Address(y),
                plan.y,
                plan.choice.algo(),
                new Gpu.Address(workspace),
                WORKSPACE,
                stream);
        if (status != 0) {
            throw new IllegalStateException("a product failed: cuBLASLt status " + status);
        }
    }
}
