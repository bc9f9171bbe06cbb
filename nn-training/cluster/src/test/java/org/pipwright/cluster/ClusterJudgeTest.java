package org.pipwright.cluster;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import org.apache.spark.api.java.JavaRDD;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

/** A data set of positions, judged by Spark and by one judge. */
class ClusterJudgeTest {
    /** A start, contact, a race that is simulated, and the last checkers, which the tables know. */
    private static final List<String> POSITIONS = List.of(
            "start",
            "5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar",
            "5@8 4@7 3@6 3@10 / 5@8 4@7 3@6 3@11",
            "5@1 / 3@2");

    private static final Knowledge KNOWLEDGE = Knowledge.of(
                    ModelCatalog.shipped().load("fifth"))
            .with(EndgameTables.standard(TableFolder.ofUser(System.getenv()), 1, TableListener.SILENT));

    private static Question question(String position) {
        return Question.of(PositionText.parse(position), Roll.parse("5-2"));
    }

    private static void assertSame(JavaRDD<Question> asked, Effort effort, ClusterJudge cluster) {
        List<Verdict> found = cluster.ask(asked, effort).collect();
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            assertEquals(
                    asked.collect().stream()
                            .map(question -> judge.ask(question, effort))
                            .collect(Collectors.toList()),
                    found);
        }
    }

    @Test
    void aDataSetOfPositionsIsMappedToVerdicts() {
        try (Local local = new Local()) {
            ClusterJudge judge = new ClusterJudge(local.spark, KNOWLEDGE);
            for (int partitions = 1; partitions <= 3; partitions++) {
                JavaRDD<String> positions = local.spark.parallelize(POSITIONS, partitions);
                assertSame(positions.map(ClusterJudgeTest::question), Effort.lookahead(1), judge);
                assertSame(
                        positions.map(text ->
                                Question.before(PositionText.parse(text)).inMatch(3, 5)),
                        Effort.STATIC,
                        judge);
            }
        }
    }
}
