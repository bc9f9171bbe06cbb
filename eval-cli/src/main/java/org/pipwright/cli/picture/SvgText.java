package org.pipwright.cli.picture;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.stream.Collectors;
import org.pipwright.engine.text.Printable;

/** A drawing as the text of an SVG 1.1 file: no scripts, no style sheet, nothing to fetch. */
public final class SvgText {
    private static final String FONTS = "Helvetica, Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif";

    private final StringBuilder text = new StringBuilder();

    private SvgText() {}

    /**
     * Writes a drawing.
     *
     * @param drawing what to write
     * @return the file's text, the same for the same drawing
     */
    public static String of(Drawing drawing) {
        return new SvgText().write(drawing, null);
    }

    /**
     * Writes a drawing over another one, which the page that both are part of has as a symbol.
     *
     * @param drawing what to write
     * @param symbol id of the symbol under it
     * @return an svg element
     */
    public static String over(Drawing drawing, String symbol) {
        return new SvgText().write(drawing, symbol);
    }

    /**
     * Writes a drawing as a symbol for {@link #over}.
     *
     * @param drawing what to write; its title and paper are left out
     * @param id letters
     * @return an svg element that shows nothing by itself
     */
    public static String symbol(Drawing drawing, String id) {
        SvgText symbol = new SvgText();
        symbol.text
                .append("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"0\" height=\"0\" aria-hidden=\"true\"")
                .append(" class=\"under\" font-family=\"" + FONTS + "\"><symbol id=\"")
                .append(id)
                .append("\">\n");
        drawing.shapes().forEach(symbol::shape);
        return symbol.text.append("</symbol></svg>\n").toString();
    }

    private String write(Drawing drawing, String symbol) {
        String size = number(drawing.width()) + " " + number(drawing.height());
        text.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
                .append(size)
                .append('"');
        attribute("width", number(drawing.width()));
        attribute("height", number(drawing.height()));
        attribute("role", "img");
        attribute("font-family", FONTS);
        text.append(">\n<title>").append(escaped(drawing.title())).append("</title>\n<rect");
        attribute("width", number(drawing.width()));
        attribute("height", number(drawing.height()));
        attribute("fill", colour(drawing.paper()));
        text.append("/>\n").append(symbol == null ? "" : "<use href=\"#" + symbol + "\"/>\n");
        drawing.shapes().forEach(this::shape);
        return text.append("</svg>\n").toString();
    }

    private void shape(Shape shape) {
        if (shape instanceof Shape.Disc) {
            disc((Shape.Disc) shape);
        } else if (shape instanceof Shape.Box) {
            box((Shape.Box) shape);
        } else if (shape instanceof Shape.Bow) {
            bow((Shape.Bow) shape);
        } else if (shape instanceof Shape.Polygon) {
            polygon((Shape.Polygon) shape);
        } else {
            label((Shape.Label) shape);
        }
    }

    private void disc(Shape.Disc disc) {
        open("circle", disc.role());
        attribute("cx", number(disc.at().x()));
        attribute("cy", number(disc.at().y()));
        attribute("r", number(disc.radius()));
        close(disc.ink());
    }

    private void box(Shape.Box box) {
        open("rect", box.role());
        attribute("x", number(box.at().x()));
        attribute("y", number(box.at().y()));
        attribute("width", number(box.width()));
        attribute("height", number(box.height()));
        attribute("rx", number(box.corner()));
        close(box.ink());
    }

    private void bow(Shape.Bow bow) {
        open("path", bow.role());
        attribute("d", "M" + pair(bow.from()) + " Q" + pair(bow.control()) + " " + pair(bow.to()));
        attribute("stroke-linecap", "round");
        close(bow.ink());
    }

    private void polygon(Shape.Polygon polygon) {
        open("polygon", polygon.role());
        attribute("points", polygon.corners().stream().map(SvgText::pair).collect(Collectors.joining(" ")));
        attribute("stroke-linejoin", "round");
        close(polygon.ink());
    }

    private void label(Shape.Label label) {
        open("text", label.role());
        attribute("x", number(label.at().x()));
        attribute("y", number(label.at().y() + Shape.Label.DROP * label.size()));
        attribute("font-size", number(label.size()));
        attribute("fill", colour(label.colour()));
        if (label.bold()) {
            attribute("font-weight", "bold");
        }
        if (label.centred()) {
            attribute("text-anchor", "middle");
        }
        text.append('>').append(escaped(label.text())).append("</text>\n");
    }

    private void open(String tag, String role) {
        text.append('<').append(tag);
        attribute("class", role);
    }

    private void close(Ink ink) {
        attribute("fill", ink.fill() == Ink.NONE ? "none" : colour(ink.fill()));
        if (ink.edge() != Ink.NONE) {
            attribute("stroke", colour(ink.edge()));
            attribute("stroke-width", number(ink.width()));
        }
        if (ink.dashed()) {
            attribute("stroke-dasharray", number(Ink.DASH));
        }
        text.append("/>\n");
    }

    private void attribute(String name, String value) {
        text.append(' ').append(name).append("=\"").append(value).append('"');
    }

    private static String pair(Spot spot) {
        return number(spot.x()) + "," + number(spot.y());
    }

    /** With two digits after the point at most, the half rounded away from zero. A picture has hundreds of them. */
    static String number(double value) {
        double hundred = Math.abs(value) * 100;
        double beyond = hundred - Math.floor(hundred);
        if (!(hundred < 1e9) || Math.abs(beyond - 0.5) < 1e-6) {
            // Whether it is a half is for the digits to say, not for the nearest binary number.
            return slowly(value);
        }
        long hundredths = Math.round(hundred);
        long whole = hundredths / 100;
        long part = hundredths % 100;
        String digits = part == 0
                ? Long.toString(whole)
                : part % 10 == 0 ? whole + "." + part / 10 : whole + (part < 10 ? ".0" : ".") + part;
        return value < 0 && hundredths != 0 ? "-" + digits : digits;
    }

    static String slowly(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private static String colour(int rgb) {
        // The first bit is for the zeros at the beginning.
        return "#" + Integer.toHexString(0x1000000 | rgb).substring(1);
    }

    /** Characters beyond ASCII go by their numbers, so that the text may pass through any encoding. */
    private static String escaped(String text) {
        String safe =
                Printable.of(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
        StringBuilder ascii = new StringBuilder();
        safe.codePoints().forEach(c -> {
            if (c < 0x80) {
                ascii.append((char) c);
            } else {
                ascii.append("&#").append(c).append(';');
            }
        });
        return ascii.toString();
    }
}
