package org.pipwright.engine.files;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Lines of text that begin with the name and version of their form and end with the SHA-256 of all before, so that a
 * damaged or cut file is told from a whole one.
 */
public final class SealedLines {
    private static final String SEAL = "sha256 ";

    private SealedLines() {}

    /**
     * Seals some lines.
     *
     * @param form name and version, one line
     * @param lines the lines, without line breaks
     * @return the text, each line ended by a line feed
     */
    public static String print(String form, List<String> lines) {
        String body = form + "\n" + lines.stream().map(line -> line + "\n").collect(Collectors.joining());
        return body + SEAL + sha256(body) + "\n";
    }

    /**
     * Reads them back.
     *
     * @param form name and version
     * @param text the text
     * @return the lines between form and seal; empty if the text is not whole or of another form
     */
    public static Optional<List<String>> parse(String form, String text) {
        int sealAt = text.lastIndexOf(SEAL);
        if (!text.startsWith(form + "\n") || sealAt < 0) {
            return Optional.empty();
        }
        String body = text.substring(0, sealAt);
        return text.substring(sealAt).equals(SEAL + sha256(body) + "\n")
                ? Optional.of(body.lines().skip(1).collect(Collectors.toList()))
                : Optional.empty();
    }

    /**
     * The SHA-256 of a text in UTF-8.
     *
     * @param text any text
     * @return 64 hexadecimal digits
     */
    public static String sha256(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            StringBuilder hex = new StringBuilder();
            for (byte b : digest.digest(text.getBytes(StandardCharsets.UTF_8))) {
                hex.append(String.format("%02x", b));
            }
            return hex.toString();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
