package org.pipwright.cli.page;

import gg.jte.TemplateOutput;
import gg.jte.html.OwaspHtmlTemplateOutput;
import org.pipwright.engine.text.Printable;

/**
 * Where templates write. Text from outside is first made fit to print, as everywhere; characters that mean something in HTML
 * are then written as references, in contents and in attributes.
 */
final class PageOutput extends OwaspHtmlTemplateOutput {
    PageOutput(TemplateOutput to) {
        super(to);
    }

    @Override
    public void writeUserContent(String text) {
        super.writeUserContent(text == null ? null : Printable.with(text, "\n"));
    }
}
