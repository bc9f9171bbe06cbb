package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.ranking.Grade;

/** Where an exercise comes from, and what its weaker choice is therefore called. */
final class DrillOrigin {
    private DrillOrigin() {}

    /** Who made the weaker choice, for a table; empty where nobody did. */
    static String chooser(Exercise exercise) {
        if (exercise.origin() instanceof Origin.OwnGame) {
            return "what a weaker player chose";
        }
        if (exercise.origin() instanceof Origin.Recorded) {
            return exercise instanceof PlayExercise ? "what was played" : "what was done";
        }
        return "";
    }

    /** What the weaker choice gives away, in a sentence. */
    static String mistake(Exercise exercise, String weak) {
        String given = given(exercise) + ": " + Grade.ofCost(exercise.cost()).word() + ".";
        if (exercise.origin() instanceof Origin.OwnGame) {
            return "A weaker player chose " + weak + ", which gives away " + given;
        }
        if (exercise.origin() instanceof Origin.Recorded) {
            return weak + (exercise instanceof PlayExercise ? " was played" : " was chosen") + " in "
                    + turn((Origin.Recorded) exercise.origin()) + ", which gives away " + given;
        }
        return (exercise instanceof PlayExercise ? "The next best, " + weak + "," : weak) + " gives away " + given;
    }

    private static String given(Exercise exercise) {
        return exercise instanceof PlayExercise
                ? GivenAway.by(exercise, ((PlayExercise) exercise).weak())
                : GivenAway.by((CubeExercise) exercise, ((CubeExercise) exercise).weak());
    }

    private static String turn(Origin.Recorded at) {
        return at.file() + ", game " + at.game() + ", turn " + at.turn();
    }

    /** The line of a file that it was taken from; empty for other exercises. */
    static String line(Exercise exercise) {
        if (exercise.origin() instanceof Origin.Listed) {
            Origin.Listed at = (Origin.Listed) exercise.origin();
            return at.file() + ", line " + at.line();
        }
        return "";
    }

    static void write(JsonGenerator json, Origin origin) throws IOException {
        if (origin instanceof Origin.OwnGame) {
            json.writeNumberField("game", ((Origin.OwnGame) origin).number());
        } else if (origin instanceof Origin.Recorded) {
            Origin.Recorded at = (Origin.Recorded) origin;
            json.writeObjectFieldStart("played");
            json.writeStringField("record", at.file());
            json.writeNumberField("game", at.game());
            json.writeNumberField("turn", at.turn());
            json.writeStringField("player", at.player());
            json.writeEndObject();
        } else {
            json.writeNumberField("line", ((Origin.Listed) origin).line());
        }
    }
}
