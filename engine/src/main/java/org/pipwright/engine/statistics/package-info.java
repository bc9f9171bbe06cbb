/** Running means and their errors, tests that may look again and again, the normal distribution. */
package org.pipwright.engine.statistics;
