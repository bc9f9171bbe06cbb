package org.pipwright.engine.cube;

import org.pipwright.engine.PublicApi;

/** Who may turn the cube next, seen from the side on roll. */
@PublicApi
public enum CubeOwner {
    /** Nobody has doubled: both sides may. */
    CENTRE,
    /** The side on roll. */
    ME,
    /** The opponent of the side on roll. */
    THEM;

    /**
     * The same owner seen from the other side.
     *
     * @return ME and THEM exchanged
     */
    public CubeOwner swapped() {
        switch (this) {
            case ME:
                return THEM;
            case THEM:
                return ME;
            default:
                return CENTRE;
        }
    }
}
