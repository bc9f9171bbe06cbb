package org.pipwright.engine.drill;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.position.Position;

/**
 * What an exercise is about. A theme of plays says where it can come up, and what must set the best play apart from the
 * weaker player's; a theme of the cube only says where. The words are the trade's (common practice, no source); the limits are
 * our own. A position may fit several themes.
 */
public enum Theme {
    /** At least 24 of the 30 checkers stand where they started. */
    OPENING(
            "the first moves of a game",
            p -> p.contact() && Facts.unmoved(p) >= Theme.EARLY,
            Contrast.ANY,
            EnumSet.allOf(Motive.class)),

    /** The best play hits more checkers than the other one, or fewer. */
    HITTING(
            "whether to hit, and how often",
            Position::contact,
            (before, best, other) -> Facts.hits(before, best) != Facts.hits(before, other),
            EnumSet.of(Motive.HIT, Motive.SHOTS, Motive.HOME_BLOTS)),

    /** After the best play four points or more in a row block some checker; after the other one the block is shorter. */
    PRIMING(
            "building and keeping a prime",
            Position::contact,
            (before, best, other) -> Facts.prime(best) >= Theme.LONG && Facts.prime(best) > Facts.prime(other),
            EnumSet.of(Motive.PRIME, Motive.POINT)),

    /**
     * Past the opening, the opponent holds three or more of the six points in front of the rearmost checker; the two plays
     * leave different numbers of checkers in the opponent's home or on the bar.
     */
    ESCAPING(
            "whether a checker in the opponent's home should leave",
            p -> p.contact() && Facts.unmoved(p) < Theme.EARLY && Facts.back(p) > 0 && Facts.block(p) >= Theme.BLOCK,
            (before, best, other) -> Facts.back(best) != Facts.back(other),
            EnumSet.of(Motive.ESCAPE, Motive.ANCHOR)),

    /** No checker is further back than the own 12 point, and not all are home. */
    BEARING_IN(
            "bringing the last checkers home",
            p -> Facts.rearmost(p) > Theme.HOME && Facts.rearmost(p) <= Theme.HALF_WAY,
            Contrast.ANY,
            EnumSet.of(Motive.SHOTS, Motive.NEXT_SHOTS, Motive.SPREAD, Motive.OFF, Motive.SAVE)),

    /** All checkers are home or off. */
    BEARING_OFF(
            "taking checkers off",
            p -> Facts.rearmost(p) <= Theme.HOME,
            Contrast.ANY,
            EnumSet.of(Motive.SHOTS, Motive.NEXT_SHOTS, Motive.SPREAD, Motive.OFF)),

    /** Without contact: double or roll, for points. */
    RACE_DOUBLES("doubling in a race", p -> !p.contact()),

    /** A double has been offered that makes sense: take or pass, for points. */
    TAKES_AND_PASSES("answering a double", p -> true),

    /** A cube decision of a match where the score changes the right action. */
    MATCH_SCORES("the cube at a match score", p -> true);

    private static final int EARLY = 24;
    private static final int LONG = 4;
    private static final int BLOCK = 3;
    private static final int HOME = 6;
    private static final int HALF_WAY = 12;

    private final String about;
    private final Predicate<Position> setting;
    private final Contrast contrast;
    private final Set<Motive> motives;

    /** What must set the best play apart from another one. */
    @FunctionalInterface
    private interface Contrast {
        Contrast ANY = (before, best, other) -> true;

        /** The position before the play, and what either play leads to, all seen from the side that plays. */
        boolean between(Position before, Position best, Position other);
    }

    Theme(String about, Predicate<Position> setting) {
        this(about, setting, null, EnumSet.noneOf(Motive.class));
    }

    Theme(String about, Predicate<Position> setting, Contrast contrast, Set<Motive> motives) {
        this.about = about;
        this.setting = setting;
        this.contrast = contrast;
        this.motives = motives;
    }

    /**
     * The theme of a name.
     *
     * @param word as {@link #word()} gives it
     * @return the theme, or empty if there is none of that name
     */
    public static Optional<Theme> named(String word) {
        return Arrays.stream(values())
                .filter(theme -> theme.word().equals(word))
                .findFirst();
    }

    /**
     * Its name on command lines and in files.
     *
     * @return such as {@code bearing-off}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * Its name for people.
     *
     * @return such as {@code Bearing off}
     */
    public String title() {
        return name().charAt(0) + word().substring(1).replace('-', ' ');
    }

    /**
     * What it asks about.
     *
     * @return a few words
     */
    public String about() {
        return about;
    }

    /**
     * Whether it asks about the cube rather than about plays.
     *
     * @return true for cube decisions
     */
    public boolean cube() {
        return contrast == null;
    }

    /**
     * Whether it can come up in a position.
     *
     * @param position an unfinished position, seen from the side on roll
     * @return true if the position is right; the plays may still not be
     */
    public boolean comesUpIn(Position position) {
        return setting.test(position);
    }

    /**
     * Whether a kind of fact is what it is about: the main reason of an answer should be.
     *
     * @param motive the kind
     * @return true for any in the opening; false for themes of the cube
     */
    public boolean about(Motive motive) {
        return motives.contains(motive);
    }

    /** Whether it is what sets the best play of an exercise apart from the weaker one. */
    boolean setsApart(PlayExercise exercise) {
        return setsApart(
                exercise.position(),
                exercise.best().play().result(),
                exercise.weak().play().result());
    }

    /**
     * Whether it is what sets two plays apart.
     *
     * @param before a position it comes up in
     * @param best what the best play leads to, seen from the side that plays
     * @param other what the other play leads to, likewise
     * @return true if the theme explains the difference; always for themes without such a condition
     */
    public boolean setsApart(Position before, Position best, Position other) {
        return contrast.between(before, best, other);
    }
}
