package org.pipwright.charts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Drawings as SVG. */
class DrawnSvgTest {
    private static final int WIDTH = 120;
    private static final int HEIGHT = 80;

    /** A gradient needs a definition with a name; one text is of characters that XML has a meaning for. */
    private static void draw(Graphics2D to) {
        to.setPaint(new GradientPaint(0, 0, Color.RED, 50, 0, Color.BLUE));
        to.fillRect(1, 2, 30, 20);
        to.setPaint(Color.BLACK);
        to.drawString("a < b & c", 10f, 40f);
        to.drawString("0.125", 10f, 60f);
    }

    private static Element parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
    }

    private static Set<String> names(String svg) {
        return Pattern.compile(" id=\"([^\"]*)\"")
                .matcher(svg)
                .results()
                .map(id -> id.group(1))
                .collect(Collectors.toSet());
    }

    @Test
    void aFileIsAsLargeAsItWasDrawnAndNeedsNothingElse() throws Exception {
        String svg = DrawnSvg.file(WIDTH, HEIGHT, DrawnSvgTest::draw);
        assertEquals(svg, DrawnSvg.file(WIDTH, HEIGHT, DrawnSvgTest::draw));
        assertFalse(svg.contains("<!DOCTYPE"));
        Element root = parsed(svg);
        assertEquals("svg", root.getTagName());
        assertEquals("120", root.getAttribute("width"));
        assertEquals("0 0 120 80", root.getAttribute("viewBox"));
    }

    /** Whatever font is there when it is looked at. */
    @Test
    void textsKeepTheirWidths() throws Exception {
        NodeList texts =
                parsed(DrawnSvg.file(WIDTH, HEIGHT, DrawnSvgTest::draw)).getElementsByTagName("text");
        assertEquals(2, texts.getLength());
        assertEquals("a < b & c", texts.item(0).getTextContent());
        for (int i = 0; i < 2; i++) {
            double width = Double.parseDouble(((Element) texts.item(i)).getAttribute("textLength"));
            assertTrue(width > 10 && width < WIDTH, "width " + width);
        }
    }

    /** Or the second would be painted with the colours of the first. */
    @Test
    void elementsOfOnePageShareNoNames() throws Exception {
        String one = DrawnSvg.element(WIDTH, HEIGHT, "one", DrawnSvgTest::draw);
        String two = DrawnSvg.element(WIDTH, HEIGHT, "two", DrawnSvgTest::draw);
        assertFalse(parsed(one).hasAttribute("width"));
        assertTrue(names(one).size() >= 2, names(one).toString());
        Set<String> shared = new HashSet<>(names(one));
        shared.retainAll(names(two));
        assertEquals(Set.of(), shared);
    }
}
