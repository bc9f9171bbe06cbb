package org.pipwright.engine.drill;

import java.io.Serializable;

/**
 * What exercises of a sheet should not have in common too often.
 *
 * @param answer the part of the answer that a student could guess from other exercises; null if there is none
 * @param lesson a word for what is taught, equal for exercises that teach the same; null where that does not matter
 */
record Kind(Serializable answer, String lesson) implements Serializable {
    private static final String TOO_GOOD = "too good";

    static Kind of(PlayExercise exercise, MainReason why, Theme theme) {
        boolean hits = Facts.hits(exercise.position(), exercise.best().play().result()) > 0;
        return new Kind(theme == Theme.HITTING ? hits : null, why.lesson(exercise));
    }

    static Kind of(CubeExercise exercise) {
        return new Kind(exercise.best(), exercise.values().tooGood() ? TOO_GOOD : null);
    }
}
