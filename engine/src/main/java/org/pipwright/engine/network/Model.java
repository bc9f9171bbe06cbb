package org.pipwright.engine.network;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.pipwright.engine.PublicApi;

/**
 * What a model file holds: the net that judges, in some files a quick net that drops plays before it, and notes on
 * where both come from.
 */
@PublicApi
public final class Model {
    private final Net net;
    private final Optional<Net> quick;
    private final Map<String, String> notes;

    /**
     * A model of two networks.
     *
     * @param contact network for positions with contact
     * @param race network for positions without
     * @param notes provenance as short texts by name (run, games, parent, licence, ...)
     */
    public Model(Network contact, Network race, Map<String, String> notes) {
        this(new Lanes(contact, race), notes);
    }

    /**
     * A model with one net.
     *
     * @param net what judges
     * @param notes provenance
     */
    public Model(Net net, Map<String, String> notes) {
        this(net, Optional.empty(), notes);
    }

    private Model(Net net, Optional<Net> quick, Map<String, String> notes) {
        this.net = net;
        this.quick = quick;
        this.notes = Collections.unmodifiableMap(new TreeMap<>(notes));
    }

    /**
     * The same model with a quick net before it.
     *
     * @param first the quick net
     * @return a model that judges as this one does, after the quick net has dropped plays
     * @throws InvalidModelException if this model's net is not a residual network: nothing else is slow enough
     */
    public Model withQuick(Net first) {
        if (net instanceof Lanes) {
            throw new InvalidModelException("a quick net goes before a residual network, but this one is " + net.shape()
                    + ": it is quick itself");
        }
        return new Model(net, Optional.of(first), notes);
    }

    /**
     * The same nets with other notes.
     *
     * @param others provenance
     * @return the model
     */
    public Model withNotes(Map<String, String> others) {
        return new Model(net, quick, others);
    }

    /**
     * The net that judges.
     *
     * @return the net
     */
    public Net net() {
        return net;
    }

    /**
     * The quick net that may drop plays before the other judges the rest.
     *
     * @return the quick net, or empty if the model has none
     */
    public Optional<Net> quick() {
        return quick;
    }

    /**
     * Provenance.
     *
     * @return short texts by name (run, games, parent, licence, ...), sorted by name
     */
    public Map<String, String> notes() {
        return notes;
    }

    /**
     * The network for positions with contact.
     *
     * @return the network
     * @throws InvalidModelException if the model has one network for all positions
     */
    public Network contact() {
        return lanes().contact();
    }

    /**
     * The network for races.
     *
     * @return the network
     * @throws InvalidModelException if the model has one network for all positions
     */
    public Network race() {
        return lanes().race();
    }

    private Lanes lanes() {
        if (net instanceof Lanes lanes) {
            return lanes;
        }
        throw new InvalidModelException("the net is " + net.shape()
                + ", one network for all positions: this needs a net with one for contact and one for races");
    }

    /**
     * Shapes of all networks.
     *
     * @return for instance {@code contact 270-256-32-6, race 262-64-6}
     */
    public String shape() {
        return net.shape() + quick.map(first -> ", quick " + first.shape()).orElse("");
    }
}
