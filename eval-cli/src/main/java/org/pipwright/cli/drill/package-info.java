/** Exercise sheets: progress of the search, the sheet for print, the page that checks answers. */
package org.pipwright.cli.drill;
