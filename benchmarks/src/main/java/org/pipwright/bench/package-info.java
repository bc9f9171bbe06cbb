/** How fast the engine is, measured beside its peers. */
package org.pipwright.bench;
