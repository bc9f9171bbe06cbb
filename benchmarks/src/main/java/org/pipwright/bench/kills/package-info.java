/** Commands of Pipwright that are disturbed while they work, in processes of their own, and whether anything is lost. */
package org.pipwright.bench.kills;
