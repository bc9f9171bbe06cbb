package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** How tasks are packed. */
class ParcelsTest {
    private static final long MILLI = 1_000_000;

    private static List<Integer> unpacked(byte[] parcel) {
        Serializable[] tasks = Bytes.read(parcel);
        return Arrays.stream(tasks).map(task -> (Integer) task).collect(Collectors.toList());
    }

    @Test
    void allTasksInOrderHoweverTheyArePacked() {
        Iterator<Integer> tasks = IntStream.range(0, 1000).iterator();
        Parcels parcels = new Parcels();
        List<Integer> all = new ArrayList<>();
        List<Integer> sizes = new ArrayList<>();
        for (List<byte[]> some = parcels.next(tasks, 3); !some.isEmpty(); some = parcels.next(tasks, 3)) {
            for (byte[] parcel : some) {
                all.addAll(unpacked(parcel));
                sizes.add(unpacked(parcel).size());
                parcels.took(unpacked(parcel).size(), MILLI);
            }
        }
        assertEquals(IntStream.range(0, 1000).boxed().collect(Collectors.toList()), all);
        assertEquals(List.of(1, 1, 1, 64, 64, 64), sizes.subList(0, 6));
    }

    @Test
    void slowTasksGoOneByOne() {
        Parcels parcels = new Parcels();
        parcels.took(1, 100 * MILLI);
        assertEquals(4, parcels.each());
        parcels.took(4, 400 * MILLI);
        assertEquals(5, parcels.each());
        parcels.took(5, 9_000 * MILLI);
        assertEquals(1, parcels.each());
    }
}
