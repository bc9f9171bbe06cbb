/** Results as text for people and as JSON for programs, and the text board. */
package org.pipwright.cli.report;
