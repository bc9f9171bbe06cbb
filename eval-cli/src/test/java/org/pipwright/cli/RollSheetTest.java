package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** {@code rank --roll all}. */
class RollSheetTest {
    private static Run rank(String... args) {
        List<String> all = new ArrayList<>(List.of("rank"));
        all.addAll(List.of(args));
        all.addAll(List.of("--net", TestNet.path()));
        return Run.of(all.toArray(String[]::new));
    }

    @Test
    void everyRollHasTheRankersBestPlay() {
        Position position = Position.start();
        List<String> lines = rank("start", "--roll", "all").out().lines().toList();
        assertEquals("roll", lines.get(3).strip().split("\\s+")[0]);
        PlayRanker ranker = new PlayRanker(new NetworkEvaluator(TestNet.MODEL));
        double sum = 0;
        for (int i = 0; i < Roll.COUNT; i++) {
            Roll roll = Roll.all().get(i);
            List<PlayVerdict> plays = ranker.rank(position, roll);
            String[] cells = lines.get(4 + i).strip().split("\\s{2,}");
            assertEquals(
                    List.of(
                            roll.toString(),
                            plays.get(0).play().toString(),
                            String.format(Locale.ROOT, "%+.4f", plays.get(0).equity()),
                            plays.get(1).play().toString()),
                    List.of(cells).subList(0, 4));
            assertEquals(plays.get(1).equity() - plays.get(0).equity(), Double.parseDouble(cells[4]), 1e-4);
            sum += roll.ways() * plays.get(0).equity();
        }
        assertEquals(String.format(Locale.ROOT, "mean of the 36 throws: %+.4f", sum / 36), lines.get(26));
        assertEquals(27, lines.size());
    }

    @Test
    void aPlayBeforeIsPlayedFirst() {
        Position before = Position.start();
        Position after = PlayText.parse("8/5 6/5", before, Roll.parse("3-1")).next();
        String replies =
                rank("start", "--play-on", "3-1: 8/5 6/5", "--roll", "all").out();
        assertEquals(rank(after.toString(), "--roll", "all").out(), replies);
    }

    @Test
    void aMatchIsInPerCentAndARollWithoutAPlayHasNoNext() {
        String text = rank("2@6 3@8 9@13 1@bar / 2@1 2@2 2@3 2@4 2@5 2@6 3@7", "--roll", "all", "--away", "3,5")
                .out();
        assertTrue(text.contains("match, %"), text);
        assertEquals(
                21,
                text.lines().filter(line -> line.matches("\\d-\\d .*no play.*")).count(),
                text);
    }

    @ParameterizedTest
    @CsvSource({"--json", "--explain", "--top=2", "--rollout=36", "--seconds=1", "--plays=8/5 6/5"})
    void whatIsForOneRollIsRefused(String option) {
        Run run = rank("start", "--roll", "all", option);
        assertEquals(2, run.code());
        assertTrue(run.err().contains("is for one roll: leave it out with --roll all"), run.err());
        assertEquals("", run.out());
    }

    @Test
    void aRollBehindThePositionIsRefused() {
        Run run = rank("start", "3-1", "--roll", "all");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("leave one of them out"), run.err());
    }
}
