package org.pipwright.bench.calibration;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.pipwright.bench.Picture;

/** The curves of all chances beside each other, three in a row. */
final class CalibrationPicture {
    private static final int COLUMNS = 3;
    private static final int MARGIN = 24;
    private static final int TOP = 110;

    private static final Color INK = CurveChart.INK;
    private static final Color FAINT = new Color(0x6b, 0x72, 0x7a);

    private CalibrationPicture() {}

    static Picture of(Calibration calibration) {
        return new Picture(width(), height(calibration), graphics -> draw(calibration, graphics));
    }

    private static int width() {
        return 2 * MARGIN + COLUMNS * CurveChart.WIDTH;
    }

    private static int height(Calibration calibration) {
        int rows = (calibration.curves().size() + COLUMNS - 1) / COLUMNS;
        return TOP + MARGIN + rows * CurveChart.HEIGHT;
    }

    private static void draw(Calibration calibration, Graphics2D graphics) {
        graphics.setColor(Color.WHITE);
        graphics.fill(new Rectangle2D.Double(0, 0, width(), height(calibration)));
        graphics.setColor(INK);
        graphics.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 18));
        graphics.drawString("Does it happen as often as predicted?", MARGIN + 8, 34);
        graphics.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 13));
        graphics.setColor(FAINT);
        graphics.drawString(calibration.source(), MARGIN + 8, 56);
        graphics.drawString(
                "Above: observed against predicted, dashed where they are equal. Below: their difference with two standard"
                        + " errors; the band is one point to each side.",
                MARGIN + 8,
                74);
        graphics.drawString(
                "Ranges of the prediction with fewer than " + CurveChart.MIN
                        + " positions are left out; so are positions in which the rules have ruled a chance out.",
                MARGIN + 8,
                92);
        List<Curve> curves = calibration.curves();
        for (int i = 0; i < curves.size(); i++) {
            CurveChart.of(curves.get(i))
                    .draw(
                            graphics,
                            new Rectangle2D.Double(
                                    MARGIN + i % COLUMNS * CurveChart.WIDTH,
                                    TOP + i / COLUMNS * CurveChart.HEIGHT,
                                    CurveChart.WIDTH,
                                    CurveChart.HEIGHT));
        }
    }
}
