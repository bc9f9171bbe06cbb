package org.pipwright.cluster;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.UUID;
import org.apache.spark.TaskContext;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.FlatMapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.QuestionTrade;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;

/**
 * A judge for programs that use Spark themselves: maps a data set of questions to verdicts, the same as those of a {@link
 * Judge} on one machine.
 *
 * <pre>{@code
 * ClusterJudge judge = new ClusterJudge(spark, Knowledge.of(ModelFile.read(Path.of("my.safetensors"))));
 * JavaRDD<Question> questions = spark.textFile("positions.txt").map(line -> Question.before(PositionText.parse(line)));
 * judge.ask(questions, Effort.lookahead(1)).map(verdict -> verdict.value()).saveAsTextFile("values");
 * }</pre>
 *
 * <p>Executors need the jars of {@code engine} and {@code cluster}, and the JVM option {@code --add-modules
 * jdk.incubator.vector}, which Spark gives them of itself, to be as fast as this machine.
 */
public final class ClusterJudge {
    private final Broadcast<PortableKnowledge> known;

    /**
     * A judge. What it knows is sent once to each executor, when it is first needed there; exact tables are not sent but
     * opened or built in that machine's cache folder.
     *
     * @param spark the application
     * @param knowledge what it knows: a net, perhaps tables and a match table
     * @throws IllegalStateException if what values positions is no net
     */
    public ClusterJudge(JavaSparkContext spark, Knowledge knowledge) {
        known = spark.broadcast(knowledge.portable());
    }

    /**
     * Answers questions.
     *
     * @param questions what is asked
     * @param effort how hard to think about each
     * @return the answers, in the same partitions and order; worked out when they are needed, as data sets are
     */
    public JavaRDD<Verdict> ask(JavaRDD<Question> questions, Effort effort) {
        return questions.mapPartitions(new Asking(UUID.randomUUID().toString(), known, effort));
    }

    /** The answers of a partition. */
    private record Asking(String name, Broadcast<PortableKnowledge> known, Effort effort)
            implements FlatMapFunction<Iterator<Question>, Verdict> {
        private static final long serialVersionUID = 1;

        @Override
        public Iterator<Verdict> call(Iterator<Question> questions) {
            Shared<PortableKnowledge> here = known::value;
            Hands<Question, Verdict> hands = Hands.of(name, () -> new QuestionTrade(here, effort));
            Trade.Worker<Question, Verdict> judge = hands.take();
            TaskContext task = TaskContext.get();
            List<Verdict> verdicts = new ArrayList<>();
            questions.forEachRemaining(question -> verdicts.add(judge.work(question, task::isInterrupted)));
            hands.back(judge);
            return verdicts.iterator();
        }
    }
}
