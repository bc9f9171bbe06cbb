package org.pipwright.cli.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.position.Position;

/** What a view leaves out, and where it puts the rest. */
class ViewTest {
    private static final Drawing PLAIN = BoardPicture.of(Scene.of(Position.start()), Theme.PRINT);

    private static List<Shape> checkers(Drawing drawing) {
        return drawing.shapes().stream()
                .filter(shape -> shape.role().startsWith("checker "))
                .collect(Collectors.toList());
    }

    @Test
    void theUsualViewChangesNothing() {
        assertEquals(PLAIN, View.USUAL.of(PLAIN));
    }

    @Test
    void onlyPipsAreHidden() {
        Drawing hidden = new View(false, false).of(PLAIN);
        assertEquals(PLAIN.shapes().size() - 2, hidden.shapes().size());
        assertTrue(hidden.shapes().stream().noneMatch(shape -> shape.role().startsWith("pips")));
        assertEquals(PLAIN, new View(false, false).solved().of(PLAIN), "the answer shows them");
    }

    /** A point is as far from the left as it was from the right. */
    @Test
    void homeAtTheLeftIsAMirror() {
        List<Shape> before = checkers(PLAIN);
        List<Shape> after = checkers(new View(true, true).of(PLAIN));
        assertEquals(30, after.size());
        for (int i = 0; i < before.size(); i++) {
            Spot was = ((Shape.Disc) before.get(i)).at();
            Spot is = ((Shape.Disc) after.get(i)).at();
            assertEquals(before.get(i).role(), after.get(i).role());
            assertEquals(PLAIN.width(), was.x() + is.x(), 1e-9);
            assertEquals(was.y(), is.y());
        }
    }
}
