/** Pages from templates: the one place that knows the template engine, and the one way in which text is escaped. */
package org.pipwright.cli.page;
