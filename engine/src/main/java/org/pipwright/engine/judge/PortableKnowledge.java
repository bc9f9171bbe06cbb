package org.pipwright.engine.judge;

import java.io.Serializable;
import java.util.function.Function;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.network.PortableModel;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Judging;

/**
 * What a judge knows, on its way to another machine. The standard exact tables are not sent: they are the same everywhere,
 * and opened or built where they are needed, in that machine's folder.
 */
public final class PortableKnowledge implements Judging, Serializable {
    private static final long serialVersionUID = 1;

    private final PortableModel model;
    private final Basis ends;
    private final MatchTable matches;
    private transient Knowledge knowledge;

    /**
     * Knowledge to be sent.
     *
     * @param model the net
     * @param ends as in {@link Knowledge#with(EndgameTables, Basis)}; null without tables
     * @param matches the match table; null for the one that comes with Pipwright
     */
    PortableKnowledge(PortableModel model, Basis ends, MatchTable matches) {
        this.model = model;
        this.ends = ends;
        this.matches = matches;
    }

    /**
     * The knowledge; put together when it is first asked for where it has arrived.
     *
     * @return the same for all threads
     */
    public synchronized Knowledge knowledge() {
        knowledge = knowledge == null ? assembled() : knowledge;
        return knowledge;
    }

    @Override
    public Judgement judgement() {
        return knowledge().judgement();
    }

    @Override
    public Function<Stakes, CubeTerms> terms() {
        return knowledge().terms();
    }

    private Knowledge assembled() {
        Knowledge known = Knowledge.of(model.model());
        if (ends != null) {
            TableFolder folder = TableFolder.ofUser(System.getenv());
            known = known.with(EndgameTables.standard(folder, 1, TableListener.SILENT), ends);
        }
        return matches == null ? known : known.with(matches);
    }
}
