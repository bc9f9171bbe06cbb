package org.pipwright.engine.bearoff;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import org.pipwright.engine.files.Reason;

/** Which of the tables in a folder to use: the largest that is whole. */
final class LargestTable {
    private LargestTable() {}

    /**
     * The largest table that covers all that another one does. Files are read in full: a damaged one is told in a line and
     * left out, since to build it again, as for a standard table, might take hours.
     *
     * @param kind which kind
     * @param least the other one, which need not be there
     * @return its size; {@code least} if there is none larger
     */
    static SideIndex in(TableFolder folder, TableKind kind, SideIndex least, TableListener listener) {
        return entries(folder).stream()
                .filter(entry -> entry.kind() == kind && covers(entry.index(), least))
                .sorted(Comparator.comparing(entry -> -entry.index().size()))
                .filter(entry -> whole(folder, entry, listener))
                .findFirst()
                .map(TableFolder.Entry::index)
                .orElse(least);
    }

    private static boolean covers(SideIndex index, SideIndex least) {
        return index.points() >= least.points() && index.checkers() >= least.checkers() && index.size() > least.size();
    }

    private static List<TableFolder.Entry> entries(TableFolder folder) {
        try {
            return folder.entries();
        } catch (IOException e) {
            return List.of();
        }
    }

    private static boolean whole(TableFolder folder, TableFolder.Entry entry, TableListener listener) {
        String reason;
        try {
            folder.check(entry.kind(), entry.index());
            return true;
        } catch (DamagedTableException e) {
            reason = "is damaged (" + e.getMessage();
        } catch (IOException e) {
            reason = "cannot be read (" + Reason.of(e);
        }
        listener.note("the table '" + folder.file(entry.kind(), entry.index()) + "' " + reason
                + ") and left out: remove it, or build it again with pipwright tables");
        return false;
    }
}
