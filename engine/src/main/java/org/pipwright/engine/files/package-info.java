/** Files written so that a reader never sees half of one. */
package org.pipwright.engine.files;
