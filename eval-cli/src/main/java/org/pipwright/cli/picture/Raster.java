package org.pipwright.cli.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.QuadCurve2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;

/** A drawing as pixels. */
public final class Raster {
    private final Graphics2D graphics;

    private Raster(Graphics2D graphics) {
        this.graphics = graphics;
    }

    /**
     * Paints a drawing.
     *
     * @param drawing what to paint
     * @param width pixels, at least 1; the height follows
     * @return the picture
     * @throws NoFontsException if this Java has no fonts
     */
    public static BufferedImage of(Drawing drawing, int width) {
        // A Java that looks for a screen may fail where there is none; nothing here needs one.
        if (System.getProperty("java.awt.headless") == null) {
            System.setProperty("java.awt.headless", "true");
        }
        requireFonts();
        double scale = width / drawing.width();
        int height = Math.max(1, (int) Math.round(drawing.height() * scale));
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.setColor(new Color(drawing.paper()));
        graphics.fillRect(0, 0, width, height);
        graphics.scale(scale, scale);
        drawing.shapes().forEach(new Raster(graphics)::paint);
        graphics.dispose();
        return image;
    }

    /** A Java without fonts says so in many ways, java.lang.Error itself among them. */
    private static void requireFonts() {
        try {
            glyphs(new Font(Font.SANS_SERIF, Font.BOLD, 12), "0").getOutline();
        } catch (RuntimeException | Error e) {
            throw new NoFontsException(e);
        }
    }

    private static GlyphVector glyphs(Font font, String text) {
        return font.createGlyphVector(new FontRenderContext(null, true, true), text);
    }

    private void paint(Shape shape) {
        if (shape instanceof Shape.Label) {
            label((Shape.Label) shape);
        } else if (shape instanceof Shape.Disc) {
            Shape.Disc disc = (Shape.Disc) shape;
            double size = 2 * disc.radius();
            draw(new Ellipse2D.Double(disc.at().x() - size / 2, disc.at().y() - size / 2, size, size), disc.ink());
        } else if (shape instanceof Shape.Box) {
            Shape.Box box = (Shape.Box) shape;
            double arc = 2 * box.corner();
            draw(
                    new RoundRectangle2D.Double(box.at().x(), box.at().y(), box.width(), box.height(), arc, arc),
                    box.ink());
        } else if (shape instanceof Shape.Bow) {
            Shape.Bow bow = (Shape.Bow) shape;
            QuadCurve2D curve = new QuadCurve2D.Double(
                    bow.from().x(),
                    bow.from().y(),
                    bow.control().x(),
                    bow.control().y(),
                    bow.to().x(),
                    bow.to().y());
            draw(curve, bow.ink());
        } else {
            draw(path(((Shape.Polygon) shape).corners()), ((Shape.Polygon) shape).ink());
        }
    }

    private static Path2D path(List<Spot> corners) {
        Path2D path = new Path2D.Double();
        path.moveTo(corners.get(0).x(), corners.get(0).y());
        corners.stream().skip(1).forEach(corner -> path.lineTo(corner.x(), corner.y()));
        path.closePath();
        return path;
    }

    private void draw(java.awt.Shape shape, Ink ink) {
        if (ink.fill() != Ink.NONE) {
            graphics.setColor(new Color(ink.fill()));
            graphics.fill(shape);
        }
        if (ink.edge() != Ink.NONE) {
            graphics.setColor(new Color(ink.edge()));
            float[] dashes = ink.dashed() ? new float[] {(float) Ink.DASH} : null;
            int cap = ink.dashed() ? BasicStroke.CAP_BUTT : BasicStroke.CAP_ROUND;
            graphics.setStroke(new BasicStroke((float) ink.width(), cap, BasicStroke.JOIN_ROUND, 1, dashes, 0));
            graphics.draw(shape);
        }
    }

    private void label(Shape.Label label) {
        Font font =
                new Font(Font.SANS_SERIF, label.bold() ? Font.BOLD : Font.PLAIN, 1).deriveFont((float) label.size());
        GlyphVector glyphs = glyphs(font, label.text());
        double left = label.centred() ? glyphs.getLogicalBounds().getCenterX() : 0;
        graphics.setColor(new Color(label.colour()));
        graphics.fill(glyphs.getOutline(
                (float) (label.at().x() - left), (float) (label.at().y() + Shape.Label.DROP * label.size())));
    }
}
