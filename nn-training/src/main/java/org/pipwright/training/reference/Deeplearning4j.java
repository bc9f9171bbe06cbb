package org.pipwright.training.reference;

/** The library of the reference learner, which an installation may leave out. */
public final class Deeplearning4j {
    private Deeplearning4j() {}

    /**
     * Whether its classes are on the class path; its native library for this machine may still be missing.
     *
     * @return true if they are
     */
    public static boolean isHere() {
        try {
            Class.forName("org.nd4j.linalg.factory.Nd4j", false, Deeplearning4j.class.getClassLoader());
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }
}
