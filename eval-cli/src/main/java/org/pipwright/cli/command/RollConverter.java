package org.pipwright.cli.command;

import org.pipwright.engine.roll.Roll;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a roll from an argument. */
final class RollConverter implements ITypeConverter<Roll> {
    @Override
    public Roll convert(String text) {
        try {
            return Roll.parse(text);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException(e.getMessage());
        }
    }
}
