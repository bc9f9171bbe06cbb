package org.pipwright.cli.command;

import org.pipwright.engine.roll.Roll;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * What {@code --roll} of {@code rank} asks for.
 *
 * @param one the roll; null for all 21
 */
record RollChoice(Roll one) {
    private static final String ALL = "all";

    boolean all() {
        return one == null;
    }

    /** As it is given. */
    @Override
    public String toString() {
        return all() ? ALL : one.toString();
    }

    /** Reads it from an argument. */
    static final class Converter implements ITypeConverter<RollChoice> {
        @Override
        public RollChoice convert(String text) {
            if (text.equals(ALL)) {
                return new RollChoice(null);
            }
            try {
                return new RollChoice(Roll.parse(text));
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
        }
    }
}
