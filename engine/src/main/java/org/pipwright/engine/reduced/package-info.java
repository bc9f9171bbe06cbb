/** Games with one to three checkers a side: index of all positions, exact solution, exact value of a policy. */
package org.pipwright.engine.reduced;
