package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Who comes in from other devices, and how codes are kept from being found by trying. */
class GuestsTest {
    private long now = -5;
    private final Guests guests = new Guests(() -> now);

    private void wait(int seconds) {
        now += TimeUnit.SECONDS.toNanos(seconds);
    }

    @Test
    void theCodeLetsIn() {
        String code = guests.code();
        assertTrue(code.matches("[A-HJ-NP-Z2-9]{6}"), code);
        assertEquals(Guests.Entry.RIGHT, guests.look("a", code));
        String typed = " " + code.substring(0, 3).toLowerCase(Locale.ROOT) + "-" + code.substring(3);
        assertEquals(Guests.Entry.RIGHT, guests.look("a", typed));
        for (String wrong : new String[] {null, "", code.substring(1), code + code}) {
            assertEquals(Guests.Entry.WRONG, guests.look("b" + wrong, wrong));
        }
        String key = guests.admit();
        assertTrue(guests.knows(key));
        assertFalse(guests.knows(key.substring(1)));
        assertFalse(guests.knows(null));
        assertFalse(guests.knows(code), "the code itself is no key");
    }

    @Test
    void whoSendsWrongCodesWaits() {
        for (int i = 0; i < WrongCodes.MAX_OF_ONE; i++) {
            assertEquals(Guests.Entry.WRONG, guests.look("a", "WRONG"));
        }
        assertEquals(Guests.Entry.WAIT, guests.look("a", guests.code()), "the right one is not looked at either");
        assertEquals(Guests.Entry.RIGHT, guests.look("b", guests.code()), "others need not wait");
        wait(59);
        assertEquals(Guests.Entry.WAIT, guests.look("a", guests.code()));
        wait(2);
        assertEquals(Guests.Entry.RIGHT, guests.look("a", guests.code()));
    }

    @Test
    void manyAddressesHelpNobody() {
        for (int i = 0; i < WrongCodes.MAX_OF_ALL; i++) {
            assertEquals(Guests.Entry.WRONG, guests.look("a" + i, "WRONG"));
        }
        assertEquals(Guests.Entry.WAIT, guests.look("b", guests.code()));
        wait(61);
        assertEquals(Guests.Entry.RIGHT, guests.look("b", guests.code()));
    }

    @Test
    void anotherCodeSendsEverybodyOut() {
        String before = guests.code();
        String key = guests.admit();
        guests.renew();
        assertNotEquals(before, guests.code());
        assertFalse(guests.knows(key));
        assertEquals(Guests.Entry.WRONG, guests.look("a", before));
        assertEquals(0, guests.present());
    }

    @Test
    void whoIsAwayGivesWay() {
        List<String> keys = new ArrayList<>();
        for (int i = 0; i < Guests.MAX; i++) {
            assertEquals(Guests.Entry.RIGHT, guests.look("a", guests.code()));
            keys.add(guests.admit());
        }
        assertEquals(Guests.MAX, guests.present());
        assertEquals(Guests.Entry.FULL, guests.look("a", guests.code()));
        wait(11);
        assertTrue(guests.knows(keys.get(0)));
        assertEquals(1, guests.present());
        assertEquals(Guests.Entry.RIGHT, guests.look("a", guests.code()));
        assertTrue(guests.knows(keys.get(0)), "who is here stays");
    }
}
