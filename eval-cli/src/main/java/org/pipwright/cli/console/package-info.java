/** What commands read from and write to, and the errors that are the user's to mend. */
package org.pipwright.cli.console;
