/**
 * The public door: a question about a position, an effort, a judge and its verdict. Whoever wants to know what a play, a
 * position or a cube action is worth asks here, so that the same question gets the same answer everywhere.
 */
package org.pipwright.engine.judge;
