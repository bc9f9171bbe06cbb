package org.pipwright.cli.command;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/** What a command writes, and which files that are there already it may replace without being told to. */
enum OutputKind {
    /** Replaces SVG pictures. */
    SVG("an SVG picture") {
        @Override
        boolean is(String head) {
            return head.startsWith("<svg") || head.startsWith("<?xml");
        }
    },
    /** Replaces PNG pictures. */
    PNG("a PNG picture") {
        @Override
        boolean is(String head) {
            return head.startsWith("\u0089PNG\r\n\u001a\n");
        }
    },
    /** Replaces pages for a browser. */
    HTML("a page for a browser") {
        @Override
        boolean is(String head) {
            return head.toLowerCase(Locale.ROOT).startsWith("<!doctype html");
        }
    },
    /** Replaces nets: the length of a header in eight bytes, then the header, in JSON. */
    NET("a net") {
        @Override
        boolean is(String head) {
            return head.startsWith("\0\0\0{", 5);
        }
    },
    /** Replaces ONNX files: the first field is the number of the format. */
    ONNX("an ONNX file") {
        @Override
        boolean is(String head) {
            return head.startsWith("\b");
        }
    },
    /** Work that is kept as it goes on replaces nothing: what was kept before may have taken days. */
    WORK("") {
        @Override
        Optional<String> objection(String name, String head) {
            return Optional.of(
                    head.startsWith("pipwright-")
                            ? name + " has work that was kept before: --resume goes on with it, --force begins it anew"
                            : name + " is there already: name another file, or replace it with --force");
        }
    },
    /** Records replace nothing: they may have been typed by hand. */
    RECORD("") {
        @Override
        Optional<String> objection(String name, String head) {
            return Optional.of(name + " exists: --force replaces it");
        }
    },
    /** A file that is read first and then kept up to date; reading it refuses what it should not be. */
    KEPT("") {
        @Override
        Optional<String> objection(String name, String head) {
            return Optional.empty();
        }
    };

    /** Bytes to tell a kind by. */
    static final int HEAD = 32;

    private final String words;

    OutputKind(String words) {
        this.words = words;
    }

    /** Whether a file that begins so is of this kind; each byte is a char. */
    boolean is(String head) {
        return false;
    }

    /** Why a file that is there, and not empty, should not be replaced; empty if it may be. */
    Optional<String> objection(String name, String head) {
        return is(head)
                ? Optional.empty()
                : Optional.of(
                        name + " is there and is not " + words + ": name another file, or replace it with --force");
    }

    /** The head of a file as {@link #is} wants it. */
    static String head(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}
