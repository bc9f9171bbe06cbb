package org.pipwright.engine.play;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.engine.play.Reading.Fault;
import org.pipwright.engine.play.StepRules.Obstacle;
import org.pipwright.engine.play.WrittenPlay.Hop;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The one line that says why a play is not legal. */
final class WhyNot {
    /** Why a checker cannot enter says more than that others have to wait for it; else in the order of the rules. */
    private static final Comparator<Fault> GRAVITY = Comparator.<Fault, Boolean>comparing(
                    fault -> fault.from() != Planes.BAR)
            .thenComparing(Fault::obstacle);

    private WhyNot() {}

    /** The dice do not have the pips: the first hop that no die or sum of dice makes, else all of them together. */
    static String notTheRoll(List<Hop> hops, Roll roll) {
        for (Hop hop : hops) {
            if (!Reading.fits(List.of(hop), roll)) {
                return hop + " is " + pips(hop) + " pips: " + whatPlays(roll);
            }
        }
        String together = hops.stream().map(Hop::toString).collect(Collectors.joining(" "));
        String pips = and(hops.stream().map(WhyNot::pips).collect(Collectors.toList()));
        return together + " is " + pips + " pips: " + whatPlays(roll);
    }

    private static int pips(Hop hop) {
        return hop.from() - hop.to();
    }

    private static String whatPlays(Roll roll) {
        String plays =
                roll.isDouble() ? "up to four " + roll.high() + "s" : "one " + roll.high() + " and one " + roll.low();
        return "the roll " + roll + " plays " + plays;
    }

    /** What is in the way on the board. */
    static String obstructed(List<Fault> faults, Position position) {
        Fault fault = faults.stream().min(GRAVITY).orElseThrow();
        switch (fault.obstacle()) {
            case CHECKER_ON_BAR:
                return fault.hop() + " has to wait: a checker is still on the bar and must enter first";
            case NO_CHECKER:
                return noChecker(fault, position.count(fault.from()));
            case BLOCKED:
                return fault.hop() + " is blocked: the opponent holds " + blockedPoints(faults, fault.hop());
            case NOT_ALL_HOME:
                return fault.hop() + " has to wait: not all checkers are home, the last is on "
                        + PlayPrinter.place(fault.rearmost());
            case CHECKER_ON_HIGHER_POINT:
                return fault.hop() + " is not allowed: a " + fault.die() + " bears off from the highest point, and a"
                        + " checker is on " + fault.rearmost();
            default:
                throw new IllegalStateException("an obstacle that is none: " + fault);
        }
    }

    private static String noChecker(Fault fault, int count) {
        String place = fault.from() == Planes.BAR ? "the bar" : "point " + fault.from();
        if (count == 0) {
            return fault.hop() + " has no checker to move: none is on " + place;
        }
        return fault.hop() + " is written more often than there are checkers: " + place + " has " + count;
    }

    private static String blockedPoints(List<Fault> faults, Hop hop) {
        Collection<Integer> points = faults.stream()
                .filter(fault ->
                        fault.obstacle() == Obstacle.BLOCKED && fault.hop().equals(hop))
                .map(fault -> fault.from() - fault.die())
                .collect(Collectors.toCollection(TreeSet::new));
        return (points.size() > 1 ? "points " : "point ") + and(points);
    }

    /** Not everything that could be played has been: the number of steps, or the wrong die. */
    static String incomplete(int steps, Play legal, Roll roll) {
        int possible = legal.steps().size();
        if (steps == possible) {
            return "the larger die must be played if only one can be: play the " + roll.high() + ", as in " + legal;
        }
        if (possible == 1) {
            return "a longer play exists: a checker can move, as in " + legal;
        }
        return "a longer play exists: "
                + (roll.isDouble() ? possible + " steps can be played" : "both dice can be played") + ", as in "
                + legal;
    }

    /** The text means several plays. */
    static String ambiguous(List<Play> plays) {
        return "the play can be read as "
                + plays.stream().map(Play::toString).collect(Collectors.joining(" or as "))
                + ": write the point on the way";
    }

    /** Stars where no checker is hit. Every way to play the hops hits the same of the places where they end. */
    static String nothingHit(int stars, int hits) {
        List<String> places = IntStream.rangeClosed(Planes.OFF, Planes.BAR)
                .filter(place -> ((stars & ~hits) >> place & 1) != 0)
                .mapToObj(PlayPrinter::place)
                .collect(Collectors.toList());
        return "nothing is hit on " + and(places) + ": leave the star out";
    }

    private static String and(Collection<?> things) {
        return things.stream().map(Object::toString).collect(Collectors.joining(" and "));
    }
}
