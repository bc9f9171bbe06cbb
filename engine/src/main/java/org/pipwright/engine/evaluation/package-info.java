/** Position to the six outcome chances and equity. */
package org.pipwright.engine.evaluation;
