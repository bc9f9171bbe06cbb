package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.rules.GameResult;

class SgfTextTest {
    private static final String TEXT = "pipwright record 1\nplayers: Ada, Ben\nmatch: 3\n\n"
            + "game 1: 0-0\nAda 3-1: 8/5 6/5\nBen 6-2: 24/18 13/11  # runs [far]\nAda doubles\nBen passes\n\n"
            + "game 2: 1-0\n# Ben starts\nBen 6-5: 24/13\nAda resigns\n";

    /** Letters by hand: Black's 8, 6 and 5 points are h, f and e; White's 24, 18, 13 and 11 are a, g, l and n. */
    private static final String SGF =
            "(;FF[4]GM[6]CA[UTF-8]AP[Pipwright]PB[Ada]PW[Ben]RU[Crawford]MI[length:3][game:1][bs:0][ws:0]RE[B+1]\n"
                    + ";B[31hefe]\n;W[62agln]C[runs [far\\]]\n;B[double]\n;W[drop]\n)\n"
                    + "(;FF[4]GM[6]CA[UTF-8]AP[Pipwright]PB[Ada]PW[Ben]RU[Crawford]MI[length:3][game:2][bs:1][ws:0]"
                    + "RE[W+1R]\n;C[Ben starts]\n;W[65aggl]\n)\n";

    @Test
    void theSmallRecordBecomesThisFile() {
        String sgf = SgfText.print(RecordText.parse(TEXT));
        // The roll of 6-5 may be played in either order.
        assertEquals(SGF, sgf.replace("65affl", "65aggl"));
    }

    @Test
    void theFileBecomesTheRecord() {
        assertEquals(TEXT, RecordText.print(SgfText.parse(SGF)));
    }

    /** What SGF cannot hold is changed first; all else comes back. */
    private static GameRecord asSgfHasIt(GameRecord record) {
        List<Game> games = new ArrayList<>();
        for (Game game : record.games()) {
            List<Entry> entries = new ArrayList<>();
            int cube = 1;
            for (Entry entry : game.entries()) {
                if (entry instanceof Entry.Cube) {
                    switch (((Entry.Cube) entry).action()) {
                        case TAKE:
                            cube *= 2;
                            break;
                        case BEAVER:
                            cube *= 4;
                            break;
                        default:
                    }
                }
                if (entry instanceof Entry.Resignation) {
                    Entry.Resignation given = (Entry.Resignation) entry;
                    if (!given.note().isEmpty()) {
                        entries.add(new Entry.Remark(given.note()));
                    }
                    GameResult counted = GameResult.values()[Math.abs(game.points()) / cube - 1];
                    entries.add(new Entry.Resignation(given.side(), counted, ""));
                } else {
                    entries.add(entry);
                }
            }
            games.add(new Game(entries, game.points()));
        }
        return new GameRecord(record.heading(), games);
    }

    @Test
    void recordsComeBackFromSgf() {
        RandomRecords random = new RandomRecords(31);
        for (int i = 0; i < 60; i++) {
            GameRecord record = random.next();
            String sgf = SgfText.print(record);
            GameRecord back = SgfText.parse(sgf);
            assertEquals(asSgfHasIt(record), back);
            assertEquals(sgf, SgfText.print(back));
        }
        assertTrue(random.resignations > 20 && random.doubles > 100);
    }

    @Test
    void variationsBesideTheFirstAreSkipped() {
        String sgf = "(;GM[6]PB[Ada]PW[Ben]MI[length:3];B[31hefe](;W[62agln]N[x\\\ny](;B[double])(;B[66]))(;W[11]))";
        GameRecord record = SgfText.parse(sgf);
        assertEquals(3, record.games().get(0).entries().size());
        assertEquals(0, record.games().get(0).points());
    }

    /** A file may nest variations, and a hostile one must not exhaust the stack. */
    @Test
    void variationsNestToALimit() {
        String open = "(;GM[6]PB[Ada]PW[Ben]";
        for (int deep : new int[] {1, 200}) {
            String text = open + "(;C[x]".repeat(deep) + ")".repeat(deep + 1);
            assertEquals(
                    deep, SgfText.parse(text).games().get(0).entries().size(), "as many remarks as nodes with one");
        }
        for (int deep : new int[] {201, 1_000_000}) {
            String text = open + "(;C[x]".repeat(deep) + ")".repeat(deep + 1);
            InvalidRecordException e = assertThrows(InvalidRecordException.class, () -> SgfText.parse(text));
            assertTrue(e.getMessage().endsWith("variations in variations, 200 deep: expected fewer"), e.getMessage());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "(;GM[1]) | line 1, column 2: GM[1]: expected GM[6], backgammon",
                "(;FF[3]GM[6]) | line 1, column 2: FF[3]: expected FF[4]",
                "hello | line 1, column 1: 'h': expected '(' and a game tree",
                "(;GM[6];B[31hefe] | line 1, column 18: the end of the file: expected ')' and the end of the game tree",
                "(;GM[6];B[31hefe | line 1, column 17: the end of the file: expected ']' after a value",
                "(;GM[6];B) | line 1, column 10: ')': property B: expected '[' and a value",
                "(;GM[6];B[31he]B[x]) | line 1, column 20: ')': property B twice in one node: expected once",
                "(;GM[6];AB[a]) | line 1, column 8: AB: expected a game from the start, without positions set up by hand",
                "(;GM[6];B[71he]) | line 1, column 8: '71he': expected two dice and pairs of letters, as in 31hefe, or double, take, drop",
                "(;GM[6];B[31hefe];B[31hefe]) | line 1, column 18: Black rolls out of turn: expected White to roll or double",
                "(;GM[6]RE[B+1];B[31hefe];W[double];B[drop]) | line 1, column 2: RE[B+1]: the moves come to another result",
                "(;GM[6]RE[B+5];B[31hefe]) | line 1, column 2: 5 points for a resignation with the cube at 1: expected once, twice or three times the cube",
            })
    void aMistakeIsToldWithPlaceAndMending(String sgf, String message) {
        InvalidRecordException e = assertThrows(InvalidRecordException.class, () -> SgfText.parse(sgf));
        assertEquals(message, e.getMessage());
    }
}
