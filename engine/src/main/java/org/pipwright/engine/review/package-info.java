/** Recorded games judged decision by decision: what each cost, the luck of the rolls, where the game turned. */
package org.pipwright.engine.review;
