/** When a game ends, for how much, and which outcomes are still possible. */
package org.pipwright.engine.rules;
