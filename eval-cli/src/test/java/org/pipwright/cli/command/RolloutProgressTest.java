package org.pipwright.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.rollout.Estimate;

/** Errors of standings show at least one digit, and values as many decimals as their errors. */
class RolloutProgressTest {
    @ParameterizedTest
    @CsvSource({
        "0.12345, 0.0234, +0.123 (error 0.023)",
        "-0.12345, 0.004, -0.123 (error 0.004)",
        "0.12345, 0.00043, +0.1235 (error 0.0004)",
        "-0.1234567, 0.0000021, -0.123457 (error 0.000002)",
        "0.5, 0.00096, +0.5000 (error 0.0010)",
        "1, 0, +1.000 (error 0.000)",
        "1, 3e-17, +1.000 (error 0.000)"
    })
    void digitsFitTheError(double mean, double error, String told) {
        assertEquals(told, RolloutProgress.standing("", new Estimate(mean, error)));
        assertEquals("13/7 " + told, RolloutProgress.standing("13/7", new Estimate(mean, error)));
    }
}
