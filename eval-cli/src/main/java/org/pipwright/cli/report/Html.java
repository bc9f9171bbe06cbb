package org.pipwright.cli.report;

import org.pipwright.engine.text.Printable;

/** Text made fit for HTML. */
public final class Html {
    private Html() {}

    /**
     * A text as content or as a quoted attribute.
     *
     * @param text the text
     * @return the text with every character that means something in HTML written as a reference
     */
    public static String escaped(Object text) {
        return Printable.with(text.toString(), "\n")
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    /** An element with escaped text. */
    static String element(String tag, Object text) {
        String name = tag.contains(" ") ? tag.substring(0, tag.indexOf(' ')) : tag;
        return "<" + tag + ">" + escaped(text) + "</" + name + ">";
    }
}
