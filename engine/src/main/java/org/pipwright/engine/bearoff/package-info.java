/** Exact tables of the bear-off, races from them, and the evaluator that asks them before the net. */
package org.pipwright.engine.bearoff;
