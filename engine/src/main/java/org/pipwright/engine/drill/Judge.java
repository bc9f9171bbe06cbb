package org.pipwright.engine.drill;

import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.search.Judgement;

/**
 * What one thread finds right answers with.
 *
 * @param judgement judges plays, and chances before the roll
 * @param second an equal judgement with buffers of its own, for games and the cube
 * @param terms how the cube is judged under given stakes, seen from the side on roll
 */
public record Judge(Judgement judgement, Judgement second, Function<Stakes, CubeTerms> terms) {}
