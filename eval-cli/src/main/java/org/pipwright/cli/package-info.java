/** The command line: one class a command, and the errors people see. */
package org.pipwright.cli;
