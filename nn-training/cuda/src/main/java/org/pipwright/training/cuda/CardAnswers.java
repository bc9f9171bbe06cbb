package org.pipwright.training.cuda;

/** A network on the card that answers. */
interface CardAnswers {
    /** How its kernels are started; all its work goes through their stream. */
    Kernels kernels();

    /**
     * Asks about positions.
     *
     * @param planes positions on the card
     * @param index which of them, or 0 for the first so many
     * @param swap whether the side that is second in memory is on roll, as after a play; answers are for the first side
     * @param rows how many
     * @param chances where six chances a row go, or 0
     * @param equity where the equity of a row goes, or 0
     */
    void answer(long planes, long index, boolean swap, int rows, long chances, long equity);
}
