package org.pipwright.cluster;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.ObjectStreamClass;
import java.io.Serializable;
import java.io.UncheckedIOException;

/**
 * Objects as bytes, so that a machine with other classes can be told from the rest before it reads what it would
 * misunderstand.
 */
final class Bytes {
    private Bytes() {}

    static byte[] of(Serializable object) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(object);
        } catch (IOException e) {
            throw new UncheckedIOException("what is sent to workers cannot be written", e);
        }
        return bytes.toByteArray();
    }

    /** Reads an object back, with the classes that this thread's task was sent with. */
    @SuppressWarnings("unchecked")
    static <T> T read(byte[] bytes) {
        try (ObjectInputStream in = new Reader(new ByteArrayInputStream(bytes))) {
            return (T) in.readObject();
        } catch (IOException e) {
            throw new UncheckedIOException("what came from another machine cannot be read", e);
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException("a class that another machine sent is missing here", e);
        }
    }

    /** Spark hands classes that came with a job to the thread, not to the loader of Spark's own. */
    private static final class Reader extends ObjectInputStream {
        Reader(InputStream in) throws IOException {
            super(in);
        }

        @Override
        protected Class<?> resolveClass(ObjectStreamClass description) throws IOException, ClassNotFoundException {
            try {
                return Class.forName(
                        description.getName(), false, Thread.currentThread().getContextClassLoader());
            } catch (ClassNotFoundException e) {
                return super.resolveClass(description);
            }
        }
    }
}
