package org.pipwright.engine.network;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a model file holds: a network for positions with contact, one for races, and what is known of where they come from.
 *
 * @param contact network for positions with contact
 * @param race network for positions without
 * @param notes provenance as short texts by name (run, games, parent, licence, ...), sorted by name
 */
public record Model(Network contact, Network race, Map<String, String> notes) {
    /**
     * Copies the notes.
     *
     * @param contact network for positions with contact
     * @param race network for positions without
     * @param notes provenance
     */
    public Model {
        notes = Collections.unmodifiableMap(new TreeMap<>(notes));
    }

    /**
     * Shapes of both networks.
     *
     * @return for instance {@code contact 270-256-32-6, race 262-64-6}
     */
    public String shape() {
        return "contact " + contact.shape() + ", race " + race.shape();
    }
}
