package org.pipwright.cli.picture;

/** This Java has no fonts, so that nothing can be written on a picture. */
public final class NoFontsException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NoFontsException(Throwable cause) {
        super("no fonts", cause);
    }
}
