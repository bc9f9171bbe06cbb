package org.pipwright.cli.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;

/**
 * Pages and parts of pages from the templates in {@code src/main/jte}, which the build compiles. Whatever a template shows
 * is escaped for the place where it stands.
 */
public final class Pages {
    private static final TemplateEngine TEMPLATES = TemplateEngine.createPrecompiled(ContentType.Html);

    private Pages() {}

    /**
     * Makes a page.
     *
     * @param template name of the template, such as {@code review/page.jte}
     * @param shown what it shows: the template's only parameter
     * @return HTML, to be written in UTF-8
     */
    public static String of(String template, Object shown) {
        StringOutput text = new StringOutput();
        TEMPLATES.render(template, shown, new PageOutput(text));
        // Each template that calls another one adds a newline of its own at the end.
        return text.toString().stripTrailing() + "\n";
    }
}
