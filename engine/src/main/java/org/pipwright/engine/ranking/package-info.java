/** Plays ordered by equity, what each costs against the best, and how deeply it was evaluated. */
package org.pipwright.engine.ranking;
