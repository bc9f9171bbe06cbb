package org.pipwright.cli.desk;

import org.pipwright.cli.drill.BoardWords;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Description;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.picture.View;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.position.Position;

/** Draws what is set up, as {@code draw} draws it. */
final class BoardDrawing {
    private BoardDrawing() {}

    /** The picture as an SVG element. */
    static String svg(Setting setting) {
        return SvgText.of(drawing(
                setting,
                setting.layout()
                        .position()
                        .map(position -> scene(setting, position))
                        .orElse(null)));
    }

    /** The board in words. */
    static String words(Setting setting) {
        return setting.layout()
                .position()
                .map(position ->
                        BoardWords.of(scene(setting, position), setting.look().pips()))
                .orElse("The board is empty.");
    }

    /** What is set up; its layout has a position. */
    static Scene scene(Setting setting, Position position) {
        Scene scene = Scene.of(position);
        if (!(setting.playedFor().stakes() instanceof CubelessStakes)) {
            scene = scene.with(setting.playedFor().cube());
        }
        if (setting.playedFor().stakes() instanceof MatchStakes) {
            scene = scene.with(((MatchStakes) setting.playedFor().stakes()).score());
        }
        return setting.roll().isPresent()
                ? scene.with(setting.roll().get(), setting.asking().play().orElse(null))
                : scene;
    }

    /** The picture as a file has it, which says what it shows as {@code draw} does. */
    static Drawing file(Setting setting) {
        Scene scene = setting.layout()
                .position()
                .map(position -> scene(setting, position))
                .orElse(null);
        boolean counts = scene != null && setting.look().pips();
        return counts ? shown(setting, scene, Description.of(scene)) : drawing(setting, scene);
    }

    /** A scene as the setting has it shown; null is the empty board. */
    static Drawing drawing(Setting setting, Scene scene) {
        boolean pips = setting.look().pips();
        return shown(setting, scene, scene == null ? "The board is empty." : BoardWords.of(scene, pips));
    }

    private static Drawing shown(Setting setting, Scene scene, String title) {
        Drawing plain = scene == null ? BoardPicture.empty(Theme.LIGHT) : BoardPicture.of(scene, Theme.LIGHT);
        Drawing named = new Drawing(plain.width(), plain.height(), plain.paper(), title, plain.shapes());
        return new View(setting.look().pips(), setting.look().homeLeft()).of(named);
    }
}
