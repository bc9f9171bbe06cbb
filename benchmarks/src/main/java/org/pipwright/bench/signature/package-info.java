/** Whether behaviour has changed: a hash over ranked plays and rounded equities of fixed positions. */
package org.pipwright.bench.signature;
