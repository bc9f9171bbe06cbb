package org.pipwright.cli.report;

import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.explain.Cause;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Telling;

/** What the sentences of explanations can tell. */
public enum Sentences implements Telling {
    /** All that they have: there is one way to put a cause. */
    ALL;

    @Override
    public boolean tells(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons, Cause cause) {
        return RivalWords.clause(best, rival, gammons, cause).isPresent();
    }
}
