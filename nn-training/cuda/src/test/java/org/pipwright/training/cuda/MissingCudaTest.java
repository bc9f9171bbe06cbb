package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MissingCudaTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "libcuda.so.1 | no NVIDIA card was found: its driver's library libcuda.so.1 is missing",
                "libcublas.so.13 | the CUDA 13 library libcublas.so.13 is missing: install the CUDA 13 toolkit, or name"
                        + " the library's folder in LD_LIBRARY_PATH"
            })
    void theLibraryIsNamed(String library, String expected) {
        Throwable inner = new UnsatisfiedLinkError(
                "/x/libjnicudart.so: " + library + ": cannot open shared object file: No such file or directory");
        UnsatisfiedLinkError error = new UnsatisfiedLinkError("no jnicudart in java.library.path");
        error.initCause(inner);
        assertEquals(expected, MissingCuda.library(error));
    }

    @ParameterizedTest
    @CsvSource({
        "35,the NVIDIA driver is missing or too old for CUDA 13: --device cuda needs one that knows it",
        "100,no NVIDIA card was found: --device cuda needs one",
        "0,no NVIDIA card was found: --device cuda needs one"
    })
    void theCardIsMissed(int status, String expected) {
        assertEquals(expected, MissingCuda.card(status));
    }
}
