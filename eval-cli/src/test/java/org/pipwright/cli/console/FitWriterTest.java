package org.pipwright.cli.console;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class FitWriterTest {
    private static final String TEXT = "a\u0000\u001b[31m\u0007\u009b\u202e\u2028\ud83c\udfb2\u0627\t\r\n";

    private static String written(boolean colour) throws IOException {
        StringWriter whole = new StringWriter();
        StringWriter signs = new StringWriter();
        FitWriter bySign = new FitWriter(signs, colour);
        new FitWriter(whole, colour).write(TEXT.toCharArray());
        for (char sign : TEXT.toCharArray()) {
            bySign.write(sign);
        }
        assertEquals(whole.toString(), signs.toString());
        return whole.toString();
    }

    @Test
    void whatSteersATerminalIsWrittenByItsNumber() throws IOException {
        String expected = "a\\u0000\\u001b[31m\\u0007\\u009b\\u202e\\u2028\ud83c\udfb2\u0627\t\r\n";
        assertEquals(expected, written(false));
        assertEquals(expected.replace("\\u001b", "\u001b"), written(true));
    }
}
