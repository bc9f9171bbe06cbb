package org.pipwright.cli;

import org.pipwright.engine.text.Excerpt;
import org.pipwright.engine.text.PlainNumber;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Numbers of a command line. Classes with names, here and in {@link CommandErrors}: the archive that commands start from holds
 * those, while lambdas of picocli's types would be made anew at each start.
 */
final class NumberConverters {
    private NumberConverters() {}

    static void registerIn(CommandLine root) {
        Decimal decimal = new Decimal();
        root.registerConverter(double.class, decimal);
        root.registerConverter(Double.class, decimal);
        Whole whole = new Whole();
        root.registerConverter(int.class, whole);
        root.registerConverter(Integer.class, whole);
        Large large = new Large();
        root.registerConverter(long.class, large);
        root.registerConverter(Long.class, large);
    }

    private static final class Decimal implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            try {
                return PlainNumber.decimal(text);
            } catch (NumberFormatException e) {
                throw new TypeConversionException("'" + Excerpt.of(text) + "' is not a number");
            }
        }
    }

    private static final class Whole implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String text) {
            long number = large(text);
            if (number != (int) number) {
                throw new TypeConversionException("'" + Excerpt.of(text) + "' is out of range");
            }
            return (int) number;
        }
    }

    private static final class Large implements ITypeConverter<Long> {
        @Override
        public Long convert(String text) {
            return large(text);
        }
    }

    private static long large(String text) {
        try {
            return PlainNumber.whole(text);
        } catch (NumberFormatException e) {
            boolean digits = text.matches("[+-]?[0-9]+");
            throw new TypeConversionException(
                    "'" + Excerpt.of(text) + "' is " + (digits ? "out of range" : "not a whole number"));
        }
    }
}
