package org.pipwright.cli.picture;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Contrast as WCAG 2.1 defines it (W3C Recommendation, 2018): relative luminance, which needs no hue, so that what holds
 * here holds for every kind of colour vision and in grey.
 */
class ThemeTest {
    static Stream<Theme> themes() {
        return Stream.of(Theme.LIGHT, Theme.PRINT);
    }

    private static double channel(int rgb, int shift) {
        double c = (rgb >> shift & 0xFF) / 255.0;
        return c <= 0.03928 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double luminance(int rgb) {
        return 0.2126 * channel(rgb, 16) + 0.7152 * channel(rgb, 8) + 0.0722 * channel(rgb, 0);
    }

    private static double contrast(int a, int b) {
        double x = luminance(a);
        double y = luminance(b);
        return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
    }

    @ParameterizedTest
    @MethodSource("themes")
    void theSidesDifferInLightness(Theme theme) {
        assertTrue(contrast(theme.mine(), theme.theirs()) > 7);
        assertTrue(contrast(theme.mine(), theme.odd()) > 4.5 && contrast(theme.mine(), theme.even()) > 4.5);
    }

    /** A light checker on a light point is told by its outline. */
    @ParameterizedTest
    @MethodSource("themes")
    void outlinesStandOut(Theme theme) {
        for (int ground : List.of(theme.odd(), theme.even(), theme.paper(), theme.theirs())) {
            assertTrue(contrast(theme.theirsEdge(), ground) > 3);
            assertTrue(contrast(theme.mark(), ground) > 3);
            assertTrue(contrast(theme.arrow(), ground) > 4.5);
        }
        assertTrue(contrast(theme.text(), theme.paper()) > 7);
    }
}
