package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0.0",
        "-0.0, 0.0",
        "1, 1.0",
        "-3, -3.0",
        "0.5, 0.5",
        "0.25, 0.25",
        "0.0000004, 0.0",
        "-0.0000004, 0.0",
        "0.0000006, 0.000001",
        "0.9999996, 1.0",
        "-0.123456789, -0.123457",
        "1234567.25, 1234567.25",
        "0.100000, 0.1",
        "0.000010, 0.00001"
    })
    void byHand(double number, String text) {
        assertEquals(text, Numbers.millionths(number));
    }

    /** A minus sign needs a digit that is not 0. */
    @ParameterizedTest
    @CsvSource({"0.5, +0.5000", "-0.5, -0.5000", "0, +0.0000", "-0.00004, +0.0000", "-0.00006, -0.0001"})
    void pointsHaveASign(double number, String text) {
        assertEquals(text, Numbers.points(number));
    }

    /** The same value as the JDK prints for the rounded number. */
    @Test
    void likeTheJdk() {
        SplittableRandom random = new SplittableRandom(9);
        for (int n = 0; n < 20_000; n++) {
            double number = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(10) - 4);
            String text = Numbers.millionths(number);
            BigDecimal jdk = new BigDecimal(Double.toString(Numbers.rounded(number)));
            // Halves are rounded away from zero here and upwards there.
            assertEquals(jdk.doubleValue(), Double.parseDouble(text), 1e-6 + 1e-12, text);
            if (Math.abs(Math.abs(number * 1e6 % 1) - 0.5) > 1e-3) {
                assertEquals(0, jdk.compareTo(new BigDecimal(text)), number + " is " + text);
            }
        }
    }

    /** Chances and points as they come, floats among them, and halves, which are the hard ones. */
    @Test
    void roundedAsTheirExactForm() {
        SplittableRandom random = new SplittableRandom(10);
        for (int n = 0; n < 20_000; n++) {
            double number = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12) - 4);
            number = n % 3 == 0 ? (float) number : n % 3 == 1 ? Math.rint(number * 20_000) / 20_000 : number;
            String text = number + " is ";
            assertEquals(text + Numbers.exactly(number, 1), text + Numbers.tenths(number));
            assertEquals(text + Numbers.exactly(number, 2), text + Numbers.hundredths(number));
            assertEquals(text + Numbers.exactly(number, 3), text + Numbers.thousandths(number));
            assertEquals(text + Numbers.exactly(number, 4), text + Numbers.size(number));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.125, 0.13",
        "-0.125, -0.13",
        "0.375, 0.38",
        "1e15, 1000000000000000.00",
        "-0.001, 0.00",
        "2.675, 2.67"
    })
    void halvesGoAwayFromZero(double number, String text) {
        assertEquals(text, Numbers.hundredths(number));
    }
}
