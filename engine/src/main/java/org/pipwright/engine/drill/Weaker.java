package org.pipwright.engine.drill;

import java.util.function.Supplier;
import org.pipwright.engine.match.Player;

/**
 * The player whose mistakes make the exercises. Players keep buffers, so each thread gets its own from the suppliers.
 *
 * @param name what reports call it
 * @param players makes a player for a thread; all of them must choose alike
 * @param opinions makes an opinion of the cube for a thread
 */
public record Weaker(String name, Supplier<Player> players, Supplier<CubeOpinion> opinions) {}
