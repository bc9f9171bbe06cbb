package org.pipwright.cli.picture;

import java.util.List;
import java.util.stream.Collectors;

/** One thing on a drawing. Its role says what it stands for, as words that end up in the SVG's class attribute. */
public sealed interface Shape {
    /**
     * What it stands for.
     *
     * @return words of letters and digits, such as {@code checker mine point-6}
     */
    String role();

    /**
     * The same thing elsewhere.
     *
     * @param dx units to the right
     * @param dy units down
     * @return the shape moved by that
     */
    Shape moved(double dx, double dy);

    /**
     * The same thing seen in a mirror that stands upright.
     *
     * @param width of the page, in units
     * @return the shape with left and right exchanged; letters still read from left to right
     */
    Shape mirrored(double width);

    /**
     * A circle.
     *
     * @param role what it stands for
     * @param at its centre
     * @param radius in units
     * @param ink its colours
     */
    record Disc(String role, Spot at, double radius, Ink ink) implements Shape {
        @Override
        public Disc moved(double dx, double dy) {
            return new Disc(role, at.moved(dx, dy), radius, ink);
        }

        @Override
        public Disc mirrored(double page) {
            return new Disc(role, at.mirrored(page), radius, ink);
        }
    }

    /**
     * A rectangle with round corners.
     *
     * @param role what it stands for
     * @param at its upper left corner
     * @param width in units
     * @param height in units
     * @param corner radius of the corners, in units
     * @param ink its colours
     */
    record Box(String role, Spot at, double width, double height, double corner, Ink ink) implements Shape {
        @Override
        public Box moved(double dx, double dy) {
            return new Box(role, at.moved(dx, dy), width, height, corner, ink);
        }

        @Override
        public Box mirrored(double page) {
            return new Box(role, at.mirrored(page).moved(-width, 0), width, height, corner, ink);
        }
    }

    /**
     * A quadratic curve.
     *
     * @param role what it stands for
     * @param from where it begins
     * @param control the point it bends towards
     * @param to where it ends
     * @param ink its line
     */
    record Bow(String role, Spot from, Spot control, Spot to, Ink ink) implements Shape {
        @Override
        public Bow moved(double dx, double dy) {
            return new Bow(role, from.moved(dx, dy), control.moved(dx, dy), to.moved(dx, dy), ink);
        }

        @Override
        public Bow mirrored(double page) {
            return new Bow(role, from.mirrored(page), control.mirrored(page), to.mirrored(page), ink);
        }
    }

    /**
     * A closed polygon.
     *
     * @param role what it stands for
     * @param corners three or more
     * @param ink its colours
     */
    record Polygon(String role, List<Spot> corners, Ink ink) implements Shape {
        /**
         * Keeps the corners.
         *
         * @param role what it stands for
         * @param corners three or more
         * @param ink its colours
         */
        public Polygon {
            corners = List.copyOf(corners);
        }

        @Override
        public Polygon moved(double dx, double dy) {
            return new Polygon(
                    role, corners.stream().map(spot -> spot.moved(dx, dy)).collect(Collectors.toList()), ink);
        }

        @Override
        public Polygon mirrored(double page) {
            return new Polygon(
                    role, corners.stream().map(spot -> spot.mirrored(page)).collect(Collectors.toList()), ink);
        }
    }

    /**
     * A line of text.
     *
     * @param role what it stands for
     * @param at its middle or left end, at half the height of a capital letter
     * @param text the text, without control characters
     * @param size height of the font in units
     * @param bold whether the letters are heavy
     * @param centred whether {@code at} is its middle; else its left end
     * @param colour 0xRRGGBB
     */
    record Label(String role, Spot at, String text, double size, boolean bold, boolean centred, int colour)
            implements Shape {
        /** From half the height of a capital to its foot, as a share of the font's height. */
        static final double DROP = 0.36;

        @Override
        public Label moved(double dx, double dy) {
            return new Label(role, at.moved(dx, dy), text, size, bold, centred, colour);
        }

        @Override
        public Label mirrored(double page) {
            return new Label(role, at.mirrored(page), text, size, bold, centred, colour);
        }
    }
}
