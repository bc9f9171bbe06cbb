package org.pipwright.charts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSSerializer;

/** What is drawn by Java's graphics as an SVG element; the same drawing always gives the same text. */
public final class DrawnSvg {
    private static final String SVG = "http://www.w3.org/2000/svg";

    /** Decimal places of coordinates. */
    private static final int PLACES = 2;

    private DrawnSvg() {}

    /**
     * Draws into an element that is as large as its surroundings let it be.
     *
     * @param width of the picture, in units
     * @param height of the picture, in units
     * @param prefix what names within the element begin with: elements on one page must not share any
     * @param drawing draws it
     * @return the element
     */
    public static String element(int width, int height, String prefix, Consumer<Graphics2D> drawing) {
        return text(width, height, prefix, drawing, false);
    }

    /**
     * Draws into a file.
     *
     * @param width in pixels
     * @param height in pixels
     * @param drawing draws it
     * @return the text of an SVG file
     */
    public static String file(int width, int height, Consumer<Graphics2D> drawing) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + text(width, height, "", drawing, true);
    }

    private static String text(
            int width, int height, String prefix, Consumer<Graphics2D> drawing, boolean withDimensions) {
        Lettering svg = new Lettering(context(prefix));
        svg.setSVGCanvasSize(new Dimension(width, height));
        drawing.accept(svg);
        Element root = svg.getRoot();
        svg.keepWidths(root);
        // Every drawing has this one, named alike.
        ((Element) root.getElementsByTagNameNS(SVG, "defs").item(0)).setAttributeNS(null, "id", prefix + "common");
        root.setAttributeNS(null, "viewBox", "0 0 " + width + " " + height);
        if (!withDimensions) {
            root.removeAttributeNS(null, "width");
            root.removeAttributeNS(null, "height");
        }
        return written(root);
    }

    /** Batik's own writer puts a document type before it, which viewers would have to fetch. */
    private static String written(Element root) {
        DOMImplementationLS implementation =
                (DOMImplementationLS) root.getOwnerDocument().getImplementation();
        LSSerializer serializer = implementation.createLSSerializer();
        serializer.getDomConfig().setParameter("xml-declaration", false);
        return serializer.writeToString(root);
    }

    private static SVGGeneratorContext context(String prefix) {
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document());
        context.setComment(null);
        context.setPrecision(PLACES);
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String kind) {
                return prefix + super.generateID(kind);
            }
        });
        return context;
    }

    private static Document document() {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("every JDK makes documents", e);
        }
    }

    /** Texts keep the width that they were laid out with where another font is all there is. */
    private static final class Lettering extends SVGGraphics2D {
        /** Measures as a page draws: widths are not rounded to whole pixels. */
        private final Graphics2D measuring = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();

        private final List<Double> widths = new ArrayList<>();

        Lettering(SVGGeneratorContext context) {
            super(context, false);
            measuring.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        }

        @Override
        public FontMetrics getFontMetrics(Font font) {
            // The constructor of what this extends asks before there is anything to measure with.
            return measuring == null ? super.getFontMetrics(font) : measuring.getFontMetrics(font);
        }

        @Override
        public void drawString(String text, float x, float y) {
            widths.add(getFont()
                    .getStringBounds(text, measuring.getFontRenderContext())
                    .getWidth());
            super.drawString(text, x, y);
        }

        void keepWidths(Element root) {
            NodeList texts = root.getElementsByTagNameNS(SVG, "text");
            if (texts.getLength() != widths.size()) {
                throw new IllegalStateException(widths.size() + " texts drawn, and " + texts.getLength() + " written");
            }
            for (int i = 0; i < widths.size(); i++) {
                Element text = (Element) texts.item(i);
                text.setAttributeNS(null, "textLength", String.format(Locale.ROOT, "%.2f", widths.get(i)));
                text.setAttributeNS(null, "lengthAdjust", "spacingAndGlyphs");
            }
        }
    }
}
