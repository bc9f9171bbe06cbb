package org.pipwright.cli.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.w3c.dom.Element;

class BoardPictureTest {
    private static Svg svg(Scene scene) {
        return new Svg(SvgText.of(BoardPicture.of(scene, Theme.LIGHT)));
    }

    /** Counts read from the picture give the position back, for every position of a few hundred turns. */
    @Test
    void everyCheckerIsThere() {
        int bars = 0;
        int high = 0;
        int off = 0;
        for (RandomGames.Turn turn : RandomGames.turns(6, 11)) {
            Position position = turn.position();
            Svg svg = svg(Scene.of(position));
            assertEquals(position, read(svg), position.toString());
            bars += svg.with("checker", "bar").size();
            high += svg.with("count").size();
            off += svg.with("slab").size();
            assertEquals(position.pips() + " pips", svg.text("pips", "mine"));
            assertEquals(position.opponentPips() + " pips", svg.text("pips", "theirs"));
            assertEquals("on roll", svg.text("turn", "mine"));
        }
        assertTrue(bars > 10 && high > 10 && off > 10, bars + " on the bar, " + high + " high, " + off + " off");
    }

    private static Position read(Svg svg) {
        int[] mine = new int[26];
        int[] theirs = new int[26];
        for (int point = 1; point <= 24; point++) {
            mine[point] = svg.with("checker", "mine", "point-" + point).size();
            theirs[25 - point] = svg.with("checker", "theirs", "point-" + point).size();
        }
        mine[25] = svg.with("checker", "mine", "bar").size();
        theirs[25] = svg.with("checker", "theirs", "bar").size();
        mine[0] = svg.with("slab", "mine").size();
        theirs[0] = svg.with("slab", "theirs").size();
        return Position.of(mine, theirs);
    }

    /** Checkers stand inside the slot of their point, whatever the height of the stack. */
    @Test
    void checkersStandOnTheirPoints() {
        for (RandomGames.Turn turn : RandomGames.turns(3, 12)) {
            Svg svg = svg(Scene.of(turn.position()));
            for (int point = 1; point <= 24; point++) {
                Element slot = svg.with("point", "point-" + point).get(0);
                double top = Svg.number(slot, "y");
                double bottom = top + Svg.number(slot, "height");
                double x = Svg.number(slot, "x") + Svg.number(slot, "width") / 2;
                for (Element checker : svg.with("checker", "point-" + point)) {
                    double y = Svg.number(checker, "cy");
                    double r = Svg.number(checker, "r");
                    assertEquals(x, Svg.number(checker, "cx"), 1e-9);
                    assertTrue(y - r >= top && y + r <= bottom, turn.position() + " point " + point);
                }
            }
        }
    }

    /** Moving checkers as the arrows say leads where the play leads. */
    @Test
    void arrowsSayWhatThePlayDoes() {
        int hits = 0;
        int bearOffs = 0;
        for (RandomGames.Turn turn : RandomGames.turns(6, 13)) {
            Svg svg = svg(Scene.of(turn.position()).with(turn.roll(), turn.play()));
            int[] counts = new int[26];
            for (int place = 0; place <= 25; place++) {
                counts[place] = turn.position().count(place);
            }
            for (Element arrow : svg.with("arrow")) {
                int from = place(arrow, "from-");
                int to = place(arrow, "to-");
                counts[from]--;
                counts[to]++;
                bearOffs += to == 0 ? 1 : 0;
                hits += to > 0 && turn.position().opponentCount(25 - to) == 1 ? 1 : 0;
            }
            for (int place = 0; place <= 25; place++) {
                assertEquals(turn.play().result().count(place), counts[place], turn + " place " + place);
            }
        }
        assertTrue(hits > 10 && bearOffs > 10, hits + " hits, " + bearOffs + " borne off");
    }

    private static int place(Element arrow, String prefix) {
        for (String word : arrow.getAttribute("class").split(" ")) {
            if (word.startsWith(prefix)) {
                return Integer.parseInt(word.substring(prefix.length()));
            }
        }
        throw new AssertionError(arrow.getAttribute("class"));
    }

    /** The tip of a head lies on the point that the arrow leads to; heads never coincide. */
    @Test
    void arrowsEndOnTheirPoints() {
        for (RandomGames.Turn turn : RandomGames.turns(3, 14)) {
            Svg svg = svg(Scene.of(turn.position()).with(turn.roll(), turn.play()));
            TreeSet<String> tips = new TreeSet<>();
            for (Element head : svg.with("head")) {
                String tip = head.getAttribute("points").split(" ")[0];
                assertTrue(tips.add(tip), turn + " has two arrows to " + tip);
                int to = place(head, "to-");
                if (to > 0) {
                    Element slot = svg.with("point", "point-" + to).get(0);
                    double x = Double.parseDouble(tip.split(",")[0]);
                    double y = Double.parseDouble(tip.split(",")[1]);
                    assertEquals(Svg.number(slot, "x") + Svg.number(slot, "width") / 2, x, 0.01);
                    double depth = y - Svg.number(slot, "y");
                    assertTrue(depth > 0 && depth < Svg.number(slot, "height"), turn.toString());
                }
            }
        }
    }

    @Test
    void aHitOnTheWayGetsAnArrowOfItsOwn() {
        Position position = PositionText.parse("13@6 1@24 1@bar / 13@8 1@4 1@2");
        Roll roll = Roll.of(4, 3);
        Svg svg = svg(Scene.of(position).with(roll, PlayText.parse("bar/21*/18", position, roll)));
        assertEquals(1, svg.with("arrow", "from-25", "to-21").size());
        assertEquals(1, svg.with("arrow", "from-21", "to-18").size());
        assertEquals(1, svg.with("arrival").size());
    }

    @ParameterizedTest
    @CsvSource({"1, CENTRE, 240", "2, ME, 296", "64, THEM, 184", "1048576, ME, 296"})
    void theCubeIsNearItsOwner(int value, CubeOwner owner, double middle) {
        Svg svg = svg(Scene.of(Position.start()).with(new CubeState(value, owner)));
        Element cube = svg.with("cube").get(0);
        assertEquals(middle, Svg.number(cube, "y") + Svg.number(cube, "height") / 2, 1e-9);
        assertEquals(Integer.toString(value), svg.text("cube-value"));
        assertTrue(Svg.number(cube, "x") + Svg.number(cube, "width") < BoardPlan.WIDTH);
    }

    @Test
    void theScoreIsShownToItsSide() {
        Svg svg = svg(Scene.of(Position.start()).with(new MatchScore(3, 5, false)));
        assertEquals("3 away", svg.text("away", "mine"));
        assertEquals("5 away", svg.text("away", "theirs"));
        assertEquals(0, svg.with("crawford").size());
        Svg crawford = svg(Scene.of(Position.start()).with(new MatchScore(1, 5, true)));
        assertEquals("Crawford", crawford.text("crawford"));
    }

    @Test
    void diceShowTheirSpots() {
        for (Roll roll : Roll.all()) {
            Svg svg = svg(Scene.of(Position.start()).with(roll, null));
            assertEquals(roll.high() + roll.low(), svg.with("spot").size(), roll.toString());
            assertEquals(
                    roll.isDouble() ? 2 : 1,
                    svg.with("die", "shows-" + roll.high()).size());
        }
    }

    @Test
    void marksAreOnTheirPoints() {
        Svg svg = svg(Scene.of(Position.start()).marked(new TreeSet<>(List.of(5, 20))));
        assertEquals(2, svg.with("mark").size());
        assertEquals(1, svg.with("mark", "point-5").size());
        assertEquals(1, svg.with("mark", "point-20").size());
        assertEquals(2, svg.with("pill").size());
    }

    @Test
    void afterThePlayTheOtherSideIsOnRoll() {
        Roll roll = Roll.of(3, 1);
        Scene scene = Scene.of(Position.start()).with(roll, PlayText.parse("8/5 6/5", Position.start(), roll));
        Svg svg = svg(scene.after());
        assertEquals(scene.play().result(), read(svg));
        assertEquals("on roll", svg.text("turn", "theirs"));
        assertEquals(0, svg.with("turn", "mine").size());
        assertEquals(0, svg.with("arrow").size());
    }

    @Test
    void nobodyIsOnRollWhenTheGameIsOver() {
        assertEquals(
                0, svg(Scene.of(PositionText.parse("off / 15@1"))).with("turn").size());
    }

    @Test
    void thePictureSaysWhatItShows() {
        Roll roll = Roll.of(3, 1);
        Scene scene = Scene.of(Position.start())
                .with(roll, PlayText.parse("8/5 6/5", Position.start(), roll))
                .with(new CubeState(2, CubeOwner.THEM))
                .with(new MatchScore(3, 5, false))
                .marked(new TreeSet<>(List.of(5)));
        Svg svg = svg(scene);
        assertEquals(
                "Backgammon position 5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24; to play 3-1; play 8/5 6/5; cube at 2, owned"
                        + " by the opponent; 3 away against 5 away; marked point 5",
                svg.root().getElementsByTagName("title").item(0).getTextContent());
    }
}
