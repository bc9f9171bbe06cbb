/** Board pictures: what to show, where it goes on the page, and the page as SVG text or as pixels. */
package org.pipwright.cli.picture;
