/** Match play: chances to win a match from any score, and cube values in a match. */
package org.pipwright.engine.matchtable;
