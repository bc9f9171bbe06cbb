package org.pipwright.engine.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.features.FeatureSet;

/** What a model says of the nets in it, and what it refuses. */
class ModelTest {
    private static final ResidualNetwork DEEP = RandomNetworks.residual(FeatureSet.PLACES_1, 1, 64, 2);
    private static final Model LANES = RandomNetworks.model(1);

    @Test
    void shapes() {
        Model deep = new Model(DEEP, Map.of());
        assertEquals("residual 64 x 2", deep.shape());
        assertEquals(
                "residual 64 x 2, quick contact 270-20-8-6, race 262-12-6",
                deep.withQuick(LANES.net()).shape());
        assertSame(LANES.contact(), ((Lanes) LANES.net()).contact());
        assertEquals(
                LANES.contact().weights() + LANES.race().weights(), LANES.net().weights());
    }

    @Test
    void notesCanBeExchanged() {
        Model named = new Model(DEEP, Map.of("run", "one")).withQuick(DEEP).withNotes(Map.of("run", "two"));
        assertEquals(Map.of("run", "two"), named.notes());
        assertSame(DEEP, named.quick().get());
    }

    @Test
    void oneNetworkForAllHasNoneForRacesAlone() {
        Model deep = new Model(DEEP, Map.of());
        String message =
                "the net is residual 64 x 2, one network for all positions: this needs a net with one for contact"
                        + " and one for races";
        assertEquals(
                message,
                assertThrows(InvalidModelException.class, deep::contact).getMessage());
        assertEquals(
                message, assertThrows(InvalidModelException.class, deep::race).getMessage());
    }

    @Test
    void nothingGoesBeforeAQuickNet() {
        String message = assertThrows(InvalidModelException.class, () -> LANES.withQuick(DEEP))
                .getMessage();
        assertEquals(
                "a quick net goes before a residual network, but this one is contact 270-20-8-6, race 262-12-6: it is"
                        + " quick itself",
                message);
    }
}
