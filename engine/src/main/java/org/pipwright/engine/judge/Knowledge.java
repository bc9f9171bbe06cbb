package org.pipwright.engine.judge;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactFirstEvaluator;
import org.pipwright.engine.bearoff.TableHorizon;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.ExactCube;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.TermsByStakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.PortableModel;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.search.ChanceCache;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.ParallelLookahead;

/**
 * What a judge knows: how to value a position, the exact tables, and the chances to win a match from each score. Shared by
 * judges and threads, as is the memory of what their lookahead has found, which changes no answer; what it makes serves one
 * thread each.
 */
@PublicApi
public final class Knowledge {
    private static final Supplier<MatchTable> SHIPPED = () -> Shipped.TABLE;

    private final Supplier<PositionEvaluator> evaluators;
    private final Model model;
    private final EndgameTables tables;
    private final Basis ends;
    private final ExactCube exactCube;
    private final Supplier<MatchTable> matches;
    private ChanceCache memory;

    /** {@code model} is what {@code evaluators} ask; null for those that ask no net. */
    private Knowledge(
            Supplier<PositionEvaluator> evaluators,
            Model model,
            EndgameTables tables,
            Basis ends,
            Supplier<MatchTable> matches) {
        this.evaluators = evaluators;
        this.model = model;
        this.tables = tables;
        this.ends = ends;
        this.exactCube = tables == null ? null : new ExactCube(tables);
        this.matches = matches;
    }

    /** The table that comes with Pipwright, read when the first match is asked about. */
    private static final class Shipped {
        static final MatchTable TABLE = ShippedMatchTable.load();
    }

    /**
     * A net alone: no exact tables, so that races are not simulated either, and the match table that comes with Pipwright.
     *
     * @param model the net
     * @return what is known
     */
    public static Knowledge of(Model model) {
        return new Knowledge(() -> new NetworkEvaluator(model), model, null, Basis.EXACT, SHIPPED);
    }

    /**
     * The same with anything that values positions.
     *
     * @param evaluators makes an evaluator for one thread; all equal
     * @return what is known
     */
    public static Knowledge of(Supplier<PositionEvaluator> evaluators) {
        return new Knowledge(evaluators, null, null, Basis.EXACT, SHIPPED);
    }

    /**
     * The same with exact tables, which are asked first; lookahead and games end where they are exact.
     *
     * @param known the tables
     * @return what is known
     */
    public Knowledge with(EndgameTables known) {
        return with(known, Basis.EXACT);
    }

    /**
     * The same with exact tables, which are asked first.
     *
     * @param known the tables
     * @param weakest EXACT to end lookahead and games at the two-sided table only, DISTRIBUTIONS to end them wherever both
     *     sides' distributions are known
     * @return what is known
     */
    public Knowledge with(EndgameTables known, Basis weakest) {
        return new Knowledge(evaluators, model, known, weakest, matches);
    }

    /**
     * The same with another match table.
     *
     * @param table chances to win a match from each score
     * @return what is known
     */
    public Knowledge with(MatchTable table) {
        return new Knowledge(evaluators, model, tables, ends, () -> table);
    }

    /**
     * The exact tables.
     *
     * @return the tables; empty if there are none
     */
    public Optional<EndgameTables> tables() {
        return Optional.ofNullable(tables);
    }

    /**
     * What one thread judges positions with: the tables where they know, else the net.
     *
     * @return a fresh one
     */
    public Judgement judgement() {
        PositionEvaluator evaluator = evaluators.get();
        return tables == null
                ? Judgement.by(evaluator)
                : new Judgement(new ExactFirstEvaluator(tables, evaluator), new TableHorizon(tables, ends));
    }

    /**
     * Makes terms for one thread: what results, chances and cubes are worth. Exact in money play where the tables know.
     *
     * @param stakes money or a match, seen from the side on roll
     * @return fresh terms, seen from that side
     * @throws IllegalArgumentException without a cube, or if the score is beyond the match table
     */
    public CubeTerms terms(Stakes stakes) {
        if (stakes instanceof MoneyStakes) {
            return new MoneyTerms((MoneyStakes) stakes, exactCube);
        }
        if (stakes instanceof MatchStakes) {
            return new MatchTerms((MatchStakes) stakes, matchTable());
        }
        throw new IllegalArgumentException("without a cube there are no terms");
    }

    private MatchTable matchTable() {
        MatchTable table = matches.get();
        if (tables != null) {
            tables.folder().ifPresent(folder -> table.keepEndingsIn(folder.path()));
        }
        return table;
    }

    /**
     * Remembers the terms of one thread.
     *
     * @return a fresh memory, which gives the terms of any stakes
     */
    public Function<Stakes, CubeTerms> terms() {
        return new TermsByStakes(this::terms);
    }

    /**
     * The same for other machines. Their tables, where these know any, are the standard ones.
     *
     * @return what can be sent to them
     * @throws IllegalStateException if what values positions is no net, which cannot be sent
     */
    public PortableKnowledge portable() {
        if (model == null) {
            throw new IllegalStateException("only what a net knows can be sent to other machines");
        }
        return new PortableKnowledge(
                new PortableModel(model), tables == null ? null : ends, matches == SHIPPED ? null : matches.get());
    }

    /** What the lookahead of all judges has found; made at first need. */
    synchronized ChanceCache memory() {
        memory = memory == null ? ParallelLookahead.memory() : memory;
        return memory;
    }

    /**
     * What the chances of a position rest on, before anything is looked ahead or simulated.
     *
     * @param position any position
     * @return EXACT for finished games and where the exact table knows, DISTRIBUTIONS, or ESTIMATED
     */
    public Basis basis(Position position) {
        if (position.finished()) {
            return Basis.EXACT;
        }
        return tables == null ? Basis.ESTIMATED : tables.basis(position.toPlanes(), 0);
    }

    /**
     * Whether a position is a race that is better simulated than asked of the net.
     *
     * @param position any position
     * @return true for unfinished races beyond the tables; false without tables, which a simulation needs
     */
    public boolean simulated(Position position) {
        return tables != null && !position.contact() && basis(position) == Basis.ESTIMATED;
    }
}
