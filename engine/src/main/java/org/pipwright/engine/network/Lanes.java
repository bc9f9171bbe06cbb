package org.pipwright.engine.network;

/**
 * Two networks: one for positions with contact, one for races.
 *
 * @param contact network for positions with contact
 * @param race network for positions without
 */
public record Lanes(Network contact, Network race) implements Net {
    @Override
    public String shape() {
        return "contact " + contact.shape() + ", race " + race.shape();
    }

    @Override
    public int weights() {
        return contact.weights() + race.weights();
    }

    @Override
    public Lanes halved() {
        return new Lanes(contact.halved(), race.halved());
    }
}
