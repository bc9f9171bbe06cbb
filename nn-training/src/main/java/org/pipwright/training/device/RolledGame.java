package org.pipwright.training.device;

import java.util.function.Supplier;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * A game to be rolled out.
 *
 * @param start where it begins, unfinished or not
 * @param dice its rolls, asked for one after another by one thread at a time
 * @param tag what the asker knows it by
 */
public record RolledGame(Position start, Supplier<Roll> dice, Object tag) {}
