package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Makes the view of a board that is set up. */
final class BoardViews {
    private final SettingForm form;
    private final Setting setting;
    private final String refused;
    private final UnaryOperator<String> field;
    private final Opinions opinions;

    /**
     * The makings of a view.
     *
     * @param form what the address holds
     * @param refused why the last move was refused; may be empty
     * @param field gives the text of a field of the request, or null
     * @param opinions whom to ask
     */
    BoardViews(SettingForm form, String refused, UnaryOperator<String> field, Opinions opinions) {
        this.form = form;
        setting = form.setting();
        this.refused = refused;
        this.field = field;
        this.opinions = opinions;
    }

    /** The view; {@code changed} is what has changed, in words, or null for a page that nobody has seen yet. */
    BoardView view(String changed) {
        String wrong = BoardView.together(refused, form.errors());
        Asked asked = Asked.of(setting, opinions);
        return new BoardView(
                setting.query(),
                setting.fields(),
                BoardDrawing.svg(setting),
                BoardDrawing.words(setting),
                setting.look().homeLeft(),
                Place.all().stream().map(this::link).collect(Collectors.toList()),
                refused,
                sides(setting),
                tools(),
                setting.look()
                        .picked()
                        .filter(place -> place.number() != Planes.OFF)
                        .map(this::picked),
                setting.layout().text(),
                form.typed(),
                setting.roll().map(Roll::toString).orElse(""),
                setting.with(Optional.empty()).address(),
                stakes(),
                form.errors(),
                asked.answer(),
                asked.play(),
                asked.next(),
                setting.asking().ahead(),
                wrong.isEmpty() ? said(changed, asked) : wrong);
    }

    private static String said(String changed, Asked asked) {
        return changed == null ? "" : changed + " " + asked.said();
    }

    /** What is on the board, in a few words. */
    static String summary(Setting setting) {
        return setting.look()
                .picked()
                .map(place -> "Picked " + place.words() + ": " + there(setting.layout(), place) + ".")
                .orElseGet(() -> String.join(". ", sides(setting)) + ".");
    }

    private BoardView.PlaceLink link(Place place) {
        Layout layout = setting.layout();
        boolean picked = setting.look().picked().filter(place::equals).isPresent();
        Optional<Place> from = setting.look().picked().filter(other -> !picked && layout.count(other) > 0);
        String href = from.map(other -> move(other, place))
                .orElseGet(() -> setting.picking(picked ? Optional.empty() : Optional.of(place))
                        .address());
        String side = layout.count(place, true) > 0 ? "mine" : layout.count(place, false) > 0 ? "theirs" : "none";
        return new BoardView.PlaceLink(
                place.name(), css(place), href, place.words() + ": " + there(layout, place), side, picked);
    }

    private String move(Place from, Place to) {
        Map<String, String> fields = new LinkedHashMap<>(setting.fields());
        fields.put("from", from.name());
        fields.put("to", to.name());
        return "/board/move?" + Setting.query(fields);
    }

    private static String there(Layout layout, Place place) {
        int mine = layout.count(place, true);
        int theirs = layout.count(place, false);
        return mine > 0 ? mine + " of yours" : theirs > 0 ? theirs + " of the opponent's" : "empty";
    }

    private static String css(Place place) {
        if (!place.point()) {
            return (place.number() == Planes.BAR ? "middle " : "tray ") + (place.theirs() ? "up" : "low");
        }
        boolean up = place.number() > 12;
        return "c" + (up ? place.number() - 12 : 13 - place.number()) + (up ? " up" : " low");
    }

    private static List<String> sides(Setting setting) {
        return List.of(side(setting, "You", true), side(setting, "Opponent", false));
    }

    private static String side(Setting setting, String who, boolean mine) {
        int off = setting.layout().off(mine);
        Optional<Position> position = setting.layout().position();
        int all = position.map(Position::checkers).orElse(Position.FULL);
        int pips =
                position.map(seen -> mine ? seen.pips() : seen.opponentPips()).orElse(0);
        return who + ": " + (setting.look().pips() ? pips + " pips, " : "") + (all - off) + " on the board"
                + (off > 0 ? ", " + off + " off" : "");
    }

    private List<BoardView.Tool> tools() {
        Setting free = setting.picking(Optional.empty());
        List<BoardView.Tool> tools = new ArrayList<>();
        tools.add(new BoardView.Tool("Start", free.with(Setting.START.layout()).address()));
        tools.add(new BoardView.Tool("Empty", free.with(Layout.empty()).address()));
        tools.add(new BoardView.Tool("Swap sides", free.swapped().address()));
        boolean left = setting.look().homeLeft();
        tools.add(new BoardView.Tool("Mirror", setting.homeLeft(!left).address()));
        boolean shown = setting.look().pips();
        tools.add(new BoardView.Tool(
                shown ? "Hide pips" : "Show pips", setting.pips(!shown).address()));
        return tools;
    }

    private BoardView.Picked picked(Place place) {
        Layout layout = setting.layout();
        int mine = layout.count(place, true);
        int theirs = layout.count(place, false);
        boolean both = place.point();
        return new BoardView.Picked(
                place.name(),
                place.words(),
                mine,
                theirs,
                both && theirs == 0 || !both && !place.theirs() ? mine + layout.off(true) : 0,
                both && mine == 0 || !both && place.theirs() ? theirs + layout.off(false) : 0);
    }

    /** As they were sent, if they could not be used. */
    private Map<String, String> stakes() {
        Map<String, String> stakes = new LinkedHashMap<>(
                Map.of("for", "money", "cube", "1", "owner", "centre", "away", PlayedFor.USUAL_SCORE));
        if (form.errors().containsKey("stakes")) {
            BoardView.stakesFields()
                    .forEach(name -> Optional.ofNullable(field.apply(name)).ifPresent(text -> stakes.put(name, text)));
        } else {
            setting.playedFor().write(stakes);
        }
        return stakes;
    }
}
