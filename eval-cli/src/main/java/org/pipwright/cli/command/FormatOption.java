package org.pipwright.cli.command;

import java.util.Arrays;
import java.util.Iterator;
import java.util.Locale;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The form of an answer, for people or for programs. */
final class FormatOption {
    @Option(
            names = "--format",
            paramLabel = "FORM",
            converter = Converter.class,
            completionCandidates = Names.class,
            description = "table (the default, except for batches), csv (a row for each, with headings) or json.")
    private Format format;

    @Option(names = "--json", description = "The same as --format json; ${COMMAND-NAME}.schema.json describes it.")
    private boolean json;

    /** How answers are written. */
    enum Format {
        /** For people. */
        TABLE,
        /** For spreadsheets. */
        CSV,
        /** For programs. */
        JSON;

        /** As it is written. */
        String written() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What a shell offers. */
    static final class Names implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Arrays.stream(Format.values()).map(Format::written).iterator();
        }
    }

    /** What was asked for, or else what is usual. */
    Format or(Format usual) {
        if (json && format != null && format != Format.JSON) {
            throw new UserError(
                    "--json is --format json, but --format asks for " + format.written() + ": leave one of them out");
        }
        return json ? Format.JSON : format == null ? usual : format;
    }

    /** Reads it from an argument. */
    static final class Converter implements ITypeConverter<Format> {
        @Override
        public Format convert(String text) {
            for (Format each : Format.values()) {
                if (each.written().equals(text)) {
                    return each;
                }
            }
            throw new TypeConversionException("'" + Excerpt.of(text) + "' is not a format: use table, csv or json");
        }
    }
}
