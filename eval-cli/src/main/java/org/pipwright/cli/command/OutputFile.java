package org.pipwright.cli.command;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.TypeConversionException;

/**
 * Files that commands write. The converters look at a file while the command line is read, so that what is wrong with it
 * is told before any work: every option that names a file to write has one of them. Whether a file may be replaced is
 * {@link OutputGuard}'s to decide.
 */
final class OutputFile {
    /** Where an option accepts it, standard output. */
    static final Path STDOUT = Path.of("-");

    /** Endings that say what a file is; one that belongs to another format is a slip. */
    private static final Set<String> FORMATS = Set.of(
            "svg",
            "png",
            "jpg",
            "jpeg",
            "gif",
            "webp",
            "bmp",
            "tif",
            "tiff",
            "pdf",
            "html",
            "htm",
            "json",
            "jsonl",
            "txt",
            "csv",
            "md",
            "sgf",
            "safetensors",
            "onnx");

    private OutputFile() {}

    /**
     * A file that can be written as far as one can tell without writing.
     *
     * @param name its path
     * @param endings endings that fit its format, without the point; none if any will do
     * @return the path
     * @throws UserError if its folder is missing or not writable, if it is a folder itself, or its ending contradicts
     */
    static Path checked(String name, String... endings) {
        Path path = path(name);
        String ending = ending(name);
        if (endings.length > 0 && FORMATS.contains(ending) && !Set.of(endings).contains(ending)) {
            throw new UserError("'" + Excerpt.of(name) + "' ends in ." + ending + ", but what is written is "
                    + endings[0].toUpperCase(Locale.ROOT) + ": let the name end in ." + endings[0]);
        }
        Path folder = path.toAbsolutePath().getParent();
        if (Files.isDirectory(path)) {
            throw cannotWrite(name, "it is a folder: name a file in it");
        }
        if (!Files.isDirectory(folder)) {
            throw cannotWrite(name, "there is no folder '" + folder(path) + "'");
        }
        requireOrdinary(name, path);
        if (!Files.isWritable(folder)) {
            throw cannotWrite(name, "its folder is not yours to write to");
        }
        return path;
    }

    /** What is no file yet is looked for all the same: the system then says whether a file can have that name. */
    private static void requireOrdinary(String name, Path path) {
        try {
            if (!Files.readAttributes(path, BasicFileAttributes.class).isRegularFile()) {
                throw cannotWrite(name, "it is not an ordinary file");
            }
        } catch (NoSuchFileException e) {
            // It will be made.
        } catch (IOException e) {
            throw cannotWrite(name, Reason.of(e));
        }
    }

    /** Writes a file whole or not at all; what goes wrong is the user's to mend. */
    static void write(Path file, byte[] bytes) {
        try {
            AtomicFile.write(file, out -> out.write(bytes));
        } catch (IOException e) {
            throw cannotWrite(file.toString(), reason(e));
        }
    }

    /** Why it failed; not with the name that the file had while it was written. */
    private static String reason(IOException e) {
        return e instanceof NoSuchFileException || e instanceof AccessDeniedException
                ? "its folder is missing or not yours to write to"
                : Reason.of(e);
    }

    private static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new UserError("'" + Excerpt.of(name) + "' is not a file name: " + e.getReason());
        }
    }

    private static String ending(String name) {
        int point = name.lastIndexOf('.');
        return point < 0 ? "" : name.substring(point + 1).toLowerCase(Locale.ROOT);
    }

    private static Path folder(Path path) {
        return path.getParent() == null ? path.toAbsolutePath().getParent() : path.getParent();
    }

    private static UserError cannotWrite(String name, String why) {
        return new UserError("cannot write '" + Excerpt.of(name) + "': " + why);
    }

    /** What an argument's file is to have; empty if it names none to write. */
    static Optional<OutputKind> kind(ArgSpec argument) {
        for (ITypeConverter<?> converter : argument.converters()) {
            if (converter instanceof Format format) {
                return Optional.of(format.kind);
            }
        }
        return Optional.empty();
    }

    /** A file of a format, as an option or a parameter. */
    private abstract static class Format implements ITypeConverter<Path> {
        private final OutputKind kind;
        private final String[] endings;

        Format(OutputKind kind, String... endings) {
            this.kind = kind;
            this.endings = endings;
        }

        @Override
        public Path convert(String name) {
            try {
                return checked(name, endings);
            } catch (UserError e) {
                throw new TypeConversionException(e.getMessage());
            }
        }
    }

    /** A file for work that is kept as it goes on. */
    static final class Work extends Format {
        Work() {
            super(OutputKind.WORK);
        }
    }

    /** A file that is there, and will be written anew. */
    static final class Kept extends Format {
        Kept() {
            super(OutputKind.KEPT);
        }

        @Override
        public Path convert(String name) {
            if (!Files.exists(path(name))) {
                throw new TypeConversionException("no such file '" + Excerpt.of(name) + "': check the path");
            }
            return super.convert(name);
        }
    }

    /** An SVG file. */
    static class Svg extends Format {
        Svg() {
            super(OutputKind.SVG, "svg");
        }
    }

    /** An SVG file, or standard output. */
    static final class SvgOrStdout extends Svg {
        @Override
        public Path convert(String name) {
            return STDOUT.toString().equals(name) ? STDOUT : super.convert(name);
        }
    }

    /** A PNG file. */
    static final class Png extends Format {
        Png() {
            super(OutputKind.PNG, "png");
        }
    }

    /** A model file. */
    static final class Net extends Format {
        Net() {
            super(OutputKind.NET, "safetensors");
        }
    }

    /** An HTML file. */
    static final class Html extends Format {
        Html() {
            super(OutputKind.HTML, "html", "htm");
        }
    }
}
