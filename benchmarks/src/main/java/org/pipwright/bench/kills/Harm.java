package org.pipwright.bench.kills;

/** What is done to a command while it works. */
enum Harm {
    /** What nobody can catch: the end of the process at once. */
    KILL("kill -9", "KILL"),

    /** What a system sends before it shuts down. */
    TERM("SIGTERM", "TERM"),

    /** What Ctrl-C sends. */
    INT("SIGINT", "INT"),

    /** A disk with room for nothing, which gets room later. */
    FULL_FIRST("disk full at the first write", 0.0),

    /** A disk with half the room that the command needs, which gets more later. */
    FULL_MIDDLE("in the middle", 0.5),

    /** A disk with a page less than the command needs, which gets more later. */
    FULL_LAST("at the last write", 1.0),

    /** A folder for exact tables that is empty and can only be read. */
    READ_ONLY("read-only cache", null, -1),

    /** The same command twice at once in the same place. */
    TWICE("two at once", null, -1);

    private final String title;
    private final String signal;
    private final double room;

    Harm(String title, String signal) {
        this(title, signal, -1);
    }

    Harm(String title, double room) {
        this(title, null, room);
    }

    Harm(String title, String signal, double room) {
        this.title = title;
        this.signal = signal;
        this.room = room;
    }

    String title() {
        return title;
    }

    boolean isSignal() {
        return signal != null;
    }

    /** The signal that is sent. */
    String signal() {
        return signal;
    }

    boolean isFullDisk() {
        return room >= 0;
    }

    /** Room on the disk for a command that needs so many bytes at its fullest. */
    long room(long needed) {
        return Math.round(room * needed) - Disk.PAGE;
    }

    /** Whether it needs a disk of its own, which only root can have. */
    boolean needsDisk() {
        return isFullDisk() || this == READ_ONLY;
    }
}
