/** What a position is: bit planes, pip counts, contact, text and JSON forms. */
package org.pipwright.engine.position;
