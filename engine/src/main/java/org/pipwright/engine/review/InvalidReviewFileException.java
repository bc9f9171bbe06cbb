package org.pipwright.engine.review;

/** A file of a review that is damaged or belongs to another review; the message says so in one line and how to mend it. */
public final class InvalidReviewFileException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    InvalidReviewFileException(String message) {
        super(message);
    }
}
