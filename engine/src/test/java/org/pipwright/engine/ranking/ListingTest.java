package org.pipwright.engine.ranking;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ListingTest {
    /** The best stays where it is, even if others seem to be worth more. */
    @Test
    void theRestGoesByValue() {
        List<Double> ranking = List.of(0.3, 0.1, -0.2, 0.4, 0.2);
        assertEquals(List.of(0.3, 0.4, 0.2, 0.1, -0.2), Listing.byValue(ranking, 9, value -> value));
        assertEquals(List.of(0.3, 0.1, -0.2), Listing.byValue(ranking, 3, value -> value));
        assertEquals(List.of(0.3), Listing.byValue(ranking, 1, value -> value));
    }
}
