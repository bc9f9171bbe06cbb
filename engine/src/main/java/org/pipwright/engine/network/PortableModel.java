package org.pipwright.engine.network;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;

/** A model on its way to another machine: the bytes of its file, which carry a checksum, and the model once it was needed. */
public final class PortableModel implements Serializable {
    private static final long serialVersionUID = 1;

    private final byte[] file;
    private transient Model model;

    /**
     * A model that can be sent.
     *
     * @param model the model
     */
    public PortableModel(Model model) {
        file = ModelFile.toBytes(model);
        this.model = model;
    }

    /**
     * The model; read and checked when it is first asked for where it has arrived.
     *
     * @return the same for all threads
     * @throws InvalidModelException if it was damaged on its way
     */
    public synchronized Model model() {
        try {
            model = model == null ? ModelFile.read(new ByteArrayInputStream(file), "that was sent") : model;
            return model;
        } catch (IOException e) {
            throw new UncheckedIOException("reading from memory does no I/O", e);
        }
    }
}
