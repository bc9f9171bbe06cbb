package org.pipwright.cli.command;

import org.pipwright.engine.text.Excerpt;
import org.pipwright.engine.text.PlainNumber;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Two numbers with a comma between them. */
record TwoNumbers(double first, double second) {
    /** From text. */
    static final class Converter implements ITypeConverter<TwoNumbers> {
        @Override
        public TwoNumbers convert(String text) {
            String[] parts = text.split(",", -1);
            try {
                if (parts.length == 2) {
                    return new TwoNumbers(PlainNumber.decimal(parts[0]), PlainNumber.decimal(parts[1]));
                }
            } catch (NumberFormatException e) {
                // Said below.
            }
            throw new TypeConversionException(
                    "'" + Excerpt.of(text) + "' is not two numbers: write them with a comma, as in 0,0.02");
        }
    }
}
