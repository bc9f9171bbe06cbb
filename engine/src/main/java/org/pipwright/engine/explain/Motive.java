package org.pipwright.engine.explain;

/** Kinds of fact that make a play better than another. */
public enum Motive {
    /** It makes or keeps a better point. */
    POINT,
    /** It has an anchor, or a better one. */
    ANCHOR,
    /** It hits. */
    HIT,
    /** Less of it is hit with the opponent's next roll. */
    SHOTS,
    /** The opponent comes in from the bar, or moves at all, with fewer rolls. */
    ENTRY,
    /** It blocks more checkers, with more points, that have fewer rolls to get out. */
    PRIME,
    /** It gets checkers away from the opponent's home or from behind its row, or has more rolls to. */
    ESCAPE,
    /** More of its next rolls make a good point. */
    BUILDERS,
    /** It can play longer before something breaks. */
    TIMING,
    /** Fewer of its own next rolls leave a shot. */
    NEXT_SHOTS,
    /** More of the opponent's next rolls leave a shot. */
    WAITING,
    /** Its checkers stand better: fewer stacked or buried, fewer gaps. */
    SPREAD,
    /** Fewer blots in its home, when the opponent may be hit and hit back. */
    HOME_BLOTS,
    /** The opponent's good numbers are the same ones. */
    NUMBERS,
    /** It bears off more, or brings more checkers into the next quarter. */
    OFF,
    /** It wins pips. */
    RACE,
    /** Its last checkers come home sooner, which saves gammons. */
    SAVE,
    /** Gammons decide, by what they are worth at the score. */
    GAMMONS
}
