package org.pipwright.engine.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RandomRecords;
import org.pipwright.engine.record.RecordBuilder;

class MomentsTest {
    /** Beside the referee that refuses what is illegal: the same positions, cubes and choices, entry by entry. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void turnsAreThoseTheRefereeSees(long seed) {
        RandomRecords records = new RandomRecords(seed);
        int doubles = 0;
        for (int n = 0; n < 6; n++) {
            GameRecord record = records.next();
            Iterator<Moment> moments = Moments.of(record).iterator();
            RecordBuilder builder = new RecordBuilder(record.heading());
            for (Game game : record.games()) {
                builder.game();
                List<Entry> turn = new ArrayList<>();
                for (Entry entry : game.entries()) {
                    turn.add(entry);
                    if (entry instanceof Entry.Turn || entry instanceof Entry.Resignation || passes(entry)) {
                        check(moments.next(), turn, builder);
                        doubles += (int) turn.stream()
                                .filter(each -> each instanceof Entry.Cube)
                                .count();
                        turn.clear();
                    }
                }
                turn.forEach(builder::add);
            }
            assertFalse(moments.hasNext());
        }
        assertTrue(doubles > 0);
    }

    private static boolean passes(Entry entry) {
        return entry instanceof Entry.Cube && ((Entry.Cube) entry).action() == CubeAction.PASS;
    }

    private static void check(Moment moment, List<Entry> turn, RecordBuilder builder) {
        assertEquals(builder.referee().position(), moment.position());
        assertEquals(builder.referee().cubeValue(), moment.cube().value());
        assertEquals(builder.referee().expected().endsWith("double"), moment.mayDouble());
        assertEquals(builder.number(), moment.game() + 1);
        boolean doubled = false;
        Optional<CubeAction> answer = Optional.empty();
        List<String> notes = new ArrayList<>();
        for (Entry entry : turn) {
            if (!entry.note().isEmpty()) {
                notes.add(entry.note());
            }
            if (entry instanceof Entry.Cube) {
                CubeAction action = ((Entry.Cube) entry).action();
                doubled |= action == CubeAction.DOUBLE;
                answer = action == CubeAction.DOUBLE ? Optional.empty() : Optional.of(action);
            } else if (entry instanceof Entry.Turn) {
                assertEquals(entry, moment.played().orElseThrow());
                assertEquals(((Entry.Turn) entry).side(), moment.onRoll());
                assertEquals(builder.referee().cubeValue(), moment.rolling().value());
            } else if (entry instanceof Entry.Resignation) {
                assertEquals(entry, moment.resigned().orElseThrow());
            }
            builder.add(entry);
        }
        assertEquals(doubled, moment.doubled());
        assertEquals(answer, moment.answer());
        assertEquals(notes, moment.notes());
    }

    @Test
    void theCubeIsSeenFromTheSideOnRoll() {
        GameRecord record = Setting.record(
                "match: 5",
                "game",
                "Ada 3-1: 8/5 6/5",
                "Ben 6-2: 24/18 13/11",
                "Ada doubles",
                "Ben takes",
                "Ada 2-1: 13/11 6/5",
                "Ben doubles");
        List<Moment> moments = Moments.of(record);
        assertEquals(4, moments.size());
        assertTrue(moments.get(0).opening() && !moments.get(0).mayDouble());
        assertEquals(new CubeState(2, CubeOwner.THEM), moments.get(2).rolling());
        assertEquals(CubeState.START, moments.get(2).cube());
        assertEquals(new CubeState(2, CubeOwner.ME), moments.get(3).cube());
        assertTrue(moments.get(3).doubled() && moments.get(3).answer().isEmpty());
    }

    @Test
    void scoresAreSeenFromTheSideOnRollAndCrawfordIsMarked() {
        GameRecord record = Setting.record(
                "match: 2",
                "game",
                "Ada 3-1: 8/5 6/5",
                "Ben resigns",
                "game",
                "Ben 3-1: 8/5 6/5",
                "Ada 3-1: 8/5 6/5",
                "Ada resigns",
                "game",
                "Ben 3-1: 8/5 6/5");
        List<MatchStakes> stakes = Moments.of(record).stream()
                .map(moment -> (MatchStakes) moment.stakes())
                .toList();
        assertEquals(
                "MatchScore[mine=2, theirs=2, crawford=false]",
                stakes.get(0).score().toString());
        assertEquals(
                "MatchScore[mine=2, theirs=1, crawford=true]",
                stakes.get(2).score().toString());
        assertEquals(
                "MatchScore[mine=1, theirs=2, crawford=true]",
                stakes.get(3).score().toString());
        assertEquals(
                "MatchScore[mine=1, theirs=1, crawford=false]",
                stakes.get(5).score().toString());
        assertFalse(Moments.of(record).get(3).mayDouble());
    }
}
