package org.pipwright.cli.picture;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** An SVG text read back. */
final class Svg {
    private final Document document;

    Svg(String text) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            document =
                    factory.newDocumentBuilder().parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        } catch (Exception e) {
            throw new AssertionError(text, e);
        }
    }

    Element root() {
        return document.getDocumentElement();
    }

    /** The elements whose class has all of the words. */
    List<Element> with(String... words) {
        List<Element> found = new ArrayList<>();
        NodeList all = document.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            if (Set.of(element.getAttribute("class").split(" ")).containsAll(Set.of(words))) {
                found.add(element);
            }
        }
        return found;
    }

    /** The text of the one element whose class has all of the words. */
    String text(String... words) {
        List<Element> found = with(words);
        if (found.size() != 1) {
            throw new AssertionError(found.size() + " elements have " + List.of(words));
        }
        return found.get(0).getTextContent();
    }

    /** A number of an element. */
    static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }
}
