package org.pipwright.engine.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Pull reader for small JSON texts that accepts exactly what its caller expects: no unknown or repeated keys, no other
 * types, nothing after the value. Every fault becomes the caller's exception with one line that says where and why.
 */
public final class StrictJson {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final Function<String, ? extends RuntimeException> fault;
    private final JsonParser parser;

    /** A token that was looked at to see whether an array ends, still to be read; null if there is none. */
    private JsonToken ahead;

    private StrictJson(JsonParser parser, Function<String, ? extends RuntimeException> fault) {
        this.parser = parser;
        this.fault = fault;
    }

    /**
     * Reads one value with a given reader.
     *
     * @param <T> type of what is read
     */
    @FunctionalInterface
    public interface Reader<T> {
        /**
         * Reads the value.
         *
         * @param json the text
         * @return what was read
         */
        T read(StrictJson json);
    }

    /**
     * Reads a text that is one JSON value.
     *
     * @param <T> type of the result
     * @param text the JSON text
     * @param limit longest text accepted, in chars
     * @param fault makes the exception for a line that says what is wrong
     * @param reader reads the value
     * @return what the reader returns
     */
    public static <T> T read(
            String text, int limit, Function<String, ? extends RuntimeException> fault, Reader<T> reader) {
        if (text.length() > limit) {
            throw fault.apply("the JSON text has " + text.length() + " characters: at most " + limit);
        }
        try (JsonParser parser = FACTORY.createParser(text)) {
            StrictJson json = new StrictJson(parser, fault);
            T value = reader.read(json);
            json.end();
            return value;
        } catch (IOException e) {
            throw new UncheckedIOException("reading a string does no I/O", e);
        }
    }

    private void end() {
        if (next() != null) {
            throw fault.apply("something follows the JSON value " + place() + ": give one value only");
        }
    }

    /**
     * Reads an object.
     *
     * @param what what it is, for the error line
     * @param expected the keys it may have, for the error line
     * @param member is called at each key, reads the key's value and returns true, or reads nothing and returns false if
     *     the key is unknown
     * @return the keys that were there
     */
    public Set<String> object(String what, String expected, Predicate<String> member) {
        expect(JsonToken.START_OBJECT, what, "an object");
        Set<String> seen = new HashSet<>();
        while (next() == JsonToken.FIELD_NAME) {
            String key = name();
            if (!seen.add(key)) {
                throw fault.apply("'" + Excerpt.of(key) + "' is twice in " + what + ": give it once");
            }
            if (!member.test(key)) {
                throw fault.apply("'" + Excerpt.of(key) + "' is not known in " + what + ": use " + expected);
            }
        }
        return seen;
    }

    /**
     * Reads an array.
     *
     * @param what what it is, for the error line
     * @param limit most elements accepted
     * @param element reads one element; is called for each
     */
    public void array(String what, int limit, Runnable element) {
        expect(JsonToken.START_ARRAY, what, "an array");
        for (int n = 0; ; n++) {
            ahead = next();
            if (ahead == JsonToken.END_ARRAY) {
                ahead = null;
                return;
            }
            if (n == limit) {
                throw fault.apply(what + " has more than " + limit + " elements: use at most " + limit);
            }
            element.run();
        }
    }

    /**
     * Reads a whole number.
     *
     * @param what what it is, for the error line
     * @param least least value accepted
     * @param most largest value accepted
     * @return the number
     */
    public int integer(String what, int least, int most) {
        expect(JsonToken.VALUE_NUMBER_INT, what, "a whole number");
        String digits = string();
        long value = digits.length() > 10 ? Long.MAX_VALUE : Long.parseLong(digits);
        if (value < least || value > most) {
            throw fault.apply(what + " is " + Excerpt.of(digits) + ": use " + least + " to " + most);
        }
        return (int) value;
    }

    /**
     * Reads true or false.
     *
     * @param what what it is, for the error line
     * @return the value
     */
    public boolean bool(String what) {
        JsonToken token = next();
        if (token != JsonToken.VALUE_TRUE && token != JsonToken.VALUE_FALSE) {
            throw wrongType(token, what, "true or false");
        }
        return token == JsonToken.VALUE_TRUE;
    }

    private void expect(JsonToken wanted, String what, String described) {
        JsonToken token = next();
        if (token != wanted) {
            throw wrongType(token, what, described);
        }
    }

    private RuntimeException wrongType(JsonToken token, String what, String described) {
        return fault.apply(
                token == null
                        ? "the JSON text ends where " + what + " should be: expected " + described
                        : what + " should be " + described + " " + place());
    }

    /** The next token, null at the end of the text. */
    private JsonToken next() {
        if (ahead != null) {
            JsonToken token = ahead;
            ahead = null;
            return token;
        }
        try {
            return parser.nextToken();
        } catch (JsonProcessingException e) {
            throw notJson(e);
        } catch (IOException e) {
            throw new UncheckedIOException("reading a string does no I/O", e);
        }
    }

    private String name() {
        try {
            return parser.currentName();
        } catch (IOException e) {
            throw new UncheckedIOException("reading a string does no I/O", e);
        }
    }

    private String string() {
        try {
            return parser.getText();
        } catch (JsonProcessingException e) {
            throw notJson(e);
        } catch (IOException e) {
            throw new UncheckedIOException("reading a string does no I/O", e);
        }
    }

    private RuntimeException notJson(JsonProcessingException e) {
        return fault.apply("the text is not JSON " + place() + ": " + Excerpt.of(e.getOriginalMessage()));
    }

    private String place() {
        return "(line " + parser.currentLocation().getLineNr() + ", column "
                + parser.currentLocation().getColumnNr() + ")";
    }
}
