/** The mark of what users of the library may rely on. */
package org.pipwright.engine;
