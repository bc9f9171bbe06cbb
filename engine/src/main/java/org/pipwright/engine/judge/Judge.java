package org.pipwright.engine.judge;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeWindows;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.Market;
import org.pipwright.engine.cube.MarketLosers;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollReply;

/**
 * Answers questions about positions: by the exact tables where they know, by simulation in races beyond them, else by a
 * net and lookahead, and by games if they are asked for. The same question with the same effort gets the same answer
 * whatever the number of threads, unless a time is the limit. One thread may ask at a time.
 */
@PublicApi
public final class Judge implements AutoCloseable {
    private final Knowledge knowledge;
    private final int threads;
    private final Thinking thinking;
    private final Answers answers;
    private Crew<Judge> team;

    /**
     * A judge.
     *
     * @param knowledge what it knows
     * @param threads number of threads, at least 1
     */
    public Judge(Knowledge knowledge, int threads) {
        this.knowledge = knowledge;
        this.threads = threads;
        thinking = new Thinking(knowledge, threads);
        answers = new Answers(thinking);
    }

    /**
     * A judge by a net, with a thread for each core and the standard exact tables, which are kept in the user's cache folder
     * and built at first need.
     *
     * @param model the net
     * @return the judge
     */
    public static Judge open(Model model) {
        int cores = Runtime.getRuntime().availableProcessors();
        TableFolder folder = TableFolder.ofUser(System.getenv());
        EndgameTables tables = EndgameTables.standard(folder, cores, TableListener.SILENT);
        return new Judge(Knowledge.of(model).with(tables), cores);
    }

    /**
     * Answers a question.
     *
     * @param question what is asked
     * @param effort how hard to think
     * @return the answer
     * @throws IllegalArgumentException if the lookahead is more than there is for such a question, or the score beyond the
     *     match table
     */
    public Verdict ask(Question question, Effort effort) {
        return ask(question, effort, Progress.NONE);
    }

    /**
     * Answers a question unless it is told to stop.
     *
     * @param question what is asked
     * @param effort how hard to think
     * @param progress asked whether to stop
     * @return the answer
     * @throws IllegalArgumentException if the lookahead is more than there is for such a question, or the score beyond the
     *     match table
     * @throws CancellationException if it was stopped
     */
    public Verdict ask(Question question, Effort effort, Progress progress) {
        thinking.follow(progress);
        try {
            Verdict verdict = answers.answer(question, effort);
            thinking.goOn();
            return verdict;
        } finally {
            thinking.follow(Progress.NONE);
        }
    }

    /**
     * Answers many questions, each on one thread.
     *
     * @param questions what is asked
     * @param effort how hard to think about each
     * @param progress told after each answer, and asked whether to stop
     * @return the answers, in the order of the questions
     * @throws IllegalArgumentException if the lookahead is more than there is for such a question, or a score beyond
     *     the match table
     * @throws CancellationException if it was stopped
     */
    public List<Verdict> ask(List<Question> questions, Effort effort, Progress progress) {
        team = team == null ? new Crew<>(threads, () -> new Judge(knowledge, 1)) : team;
        Verdict[] verdicts = new Verdict[questions.size()];
        int[] done = {0};
        team.run(verdicts.length, (judge, task) -> {
            verdicts[task] = judge.ask(questions.get(task), effort, Progress.until(progress::stopped));
            synchronized (done) {
                progress.reached(++done[0], verdicts.length);
            }
        });
        return List.of(verdicts);
    }

    /**
     * What surrounds a cube decision.
     *
     * @param verdict an answer about a cube before the roll
     * @param effort how hard to think
     * @return the outlook
     * @throws IllegalArgumentException if the verdict is not about a cube
     */
    public CubeOutlook outlook(Verdict verdict, Effort effort) {
        if (verdict.cube() == null) {
            throw new IllegalArgumentException("only cube decisions have an outlook");
        }
        Question question = verdict.question();
        CubeTerms terms = answers.terms(question.stakes());
        GammonShares shares = GammonShares.of(verdict.outcomes());
        return new CubeOutlook(
                CubeWindows.of(terms, question.position(), shares, question.cube()),
                GammonValues.of(terms, question.cube()),
                verdict.cube().mayDouble() ? Optional.of(market(question, effort)) : Optional.empty());
    }

    /**
     * How the next two rolls change whether a double would be taken. Races that they lead to are simulated if the
     * effort says so, as the position itself is; otherwise the two would not be comparable.
     *
     * @param question a question about a cube that the side on roll may turn
     * @param effort whether to simulate races
     * @return which rolls lose the market, and how far the game swings
     */
    public Market market(Question question, Effort effort) {
        CubeTerms terms = answers.terms(question.stakes());
        MarketLosers losers = new MarketLosers(thinking.judgement().evaluator());
        return losers.of(question.position(), (position, outcomes) -> {
            boolean race = effort.simulateRaces() && knowledge.simulated(position);
            Outcomes known = race ? thinking.races().outlook(position).outcomes() : outcomes;
            return terms.values(position, known, question.cube()).answer() == CubeAction.PASS;
        });
    }

    /**
     * The same where it is quick to find: with contact, and where the cube may be turned. From a race all positions
     * would have to be simulated.
     *
     * @param question a question before the roll
     * @param effort whether to simulate races
     * @return which rolls lose the market; empty for a race and where a double is not allowed
     */
    public Optional<Market> quickMarket(Question question, Effort effort) {
        boolean quick = question.position().contact() && question.stakes().mayDouble(question.cube());
        return quick ? Optional.of(market(question, effort)) : Optional.empty();
    }

    /**
     * How lucky a roll was: the value after its best play, without lookahead, less the mean over all rolls that were
     * possible. The net judges races here.
     *
     * @param question a question with a roll
     * @param opening whether it was the first roll of a game, which is never a double
     * @param progress asked whether to stop
     * @return points per game; with a cube points per unit of it, or the chance to win the match
     * @throws IllegalArgumentException if there is no roll, or the score is beyond the match table
     * @throws CancellationException if it was stopped
     */
    public double luck(Question question, boolean opening, Progress progress) {
        if (question.roll() == null) {
            throw new IllegalArgumentException("no luck without a roll");
        }
        thinking.follow(progress);
        try {
            return thinking.lookahead()
                    .luck(question.position(), question.roll(), opening, question.stakes(), question.cube());
        } finally {
            thinking.follow(Progress.NONE);
        }
    }

    /**
     * The best reply to each roll, without a cube. The net judges races here.
     *
     * @param position an unfinished position
     * @param lookahead number of rolls after the reply to average over, at least 0; the mean over the rolls is the
     *     position's value with one more
     * @return 21 replies, in the order of {@link org.pipwright.engine.roll.Roll#all()}
     * @throws IllegalArgumentException if the game is over or the lookahead out of range
     */
    public List<RollReply> replies(Position position, int lookahead) {
        return replies(position, lookahead, Progress.NONE);
    }

    /**
     * The same unless it is told to stop.
     *
     * @param position an unfinished position
     * @param lookahead number of rolls after the reply to average over, at least 0
     * @param progress asked whether to stop
     * @return 21 replies
     * @throws IllegalArgumentException if the game is over or the lookahead out of range
     * @throws CancellationException if it was stopped
     */
    public List<RollReply> replies(Position position, int lookahead, Progress progress) {
        if (position.finished()) {
            throw new IllegalArgumentException("the game is over: no roll follows");
        }
        thinking.follow(progress);
        try {
            return thinking.lookahead().replies(position, lookahead);
        } finally {
            thinking.follow(Progress.NONE);
        }
    }

    /**
     * The best reply that hits nothing, without lookahead and without a cube, for each of some rolls. The net judges races
     * here.
     *
     * @param position an unfinished position
     * @param rolls the rolls
     * @param progress asked whether to stop
     * @return for each roll the six chances after it, for the side that replies; empty if every reply hits
     * @throws IllegalArgumentException if the game is over
     * @throws CancellationException if it was stopped
     */
    public List<Optional<Outcomes>> quietReplies(Position position, List<Roll> rolls, Progress progress) {
        if (position.finished()) {
            throw new IllegalArgumentException("the game is over: no roll follows");
        }
        thinking.follow(progress);
        try {
            return thinking.lookahead().quietReplies(position, rolls);
        } finally {
            thinking.follow(Progress.NONE);
        }
    }

    /**
     * Number of positions valued by evaluators so far in lookahead.
     *
     * @return at least 0
     */
    public long evaluations() {
        return thinking.evaluations();
    }

    /**
     * Share of look-ups of that lookahead that found a position searched before.
     *
     * @return 0 to 1
     */
    public double hitRate() {
        return thinking.hitRate();
    }

    /** Ends the threads. */
    @Override
    public void close() {
        thinking.close();
        if (team != null) {
            team.workers().forEach(Judge::close);
            team.close();
        }
    }
}
