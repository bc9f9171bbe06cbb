package org.pipwright.bench;

import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;

/** What measurements judge with. */
public final class Nets {
    private Nets() {}

    /** A net, with the bear-off tables in the user's cache folder if they are wanted. */
    public static Knowledge knowledge(Model model, boolean tables, int threads) {
        return tables ? withTables(model, threads) : Knowledge.of(model);
    }

    /** A net with those tables. */
    public static Knowledge withTables(Model model, int threads) {
        TableFolder folder = TableFolder.ofUser(System.getenv());
        return Knowledge.of(model).with(EndgameTables.standard(folder, threads, TableListener.SILENT));
    }
}
