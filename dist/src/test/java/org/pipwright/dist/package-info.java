/** Makes manual pages and completion for the archive of a release, and looks at the archive. */
package org.pipwright.dist;
