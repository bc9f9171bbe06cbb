/** One class a command, and the options they share; no logic beyond reading arguments and choosing a report. */
package org.pipwright.cli.command;
