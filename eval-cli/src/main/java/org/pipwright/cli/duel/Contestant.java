package org.pipwright.cli.duel;

import java.io.File;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.text.Excerpt;
import org.pipwright.models.ModelCatalog;

/**
 * Who plays, as asked for on the command line: a baseline by its name, or a net by name or file, perhaps with a lookahead
 * of its own as in {@code fifth@1}.
 *
 * @param name as asked for
 * @param net the net's checksum and lookahead; empty for a baseline
 * @param entrant what plays
 */
public record Contestant(String name, Optional<Net> net, Entrant entrant) {
    /** How a name says its lookahead. */
    private static final char AT = '@';

    /**
     * A net that plays.
     *
     * @param model the net itself
     * @param sha256 checksum of its weights, in hexadecimal
     * @param lookahead future rolls averaged over
     */
    public record Net(Model model, String sha256, int lookahead) {}

    /**
     * Reads a name and loads what it names.
     *
     * @param text a baseline, or a net by name or path; after a net's an at sign and a lookahead may follow
     * @param catalog the nets that have names
     * @param lookahead of a net that does not say its own; baselines have none
     * @return the contestant
     * @throws UserError if the lookahead makes no sense
     * @throws org.pipwright.engine.network.InvalidModelException if there is no such net, or it is damaged
     */
    public static Contestant read(String text, ModelCatalog catalog, int lookahead) {
        int at = text.lastIndexOf(AT);
        boolean own = at > 0 && text.substring(at + 1).matches("\\d{1,9}");
        String name = own ? text.substring(0, at) : text;
        Optional<Entrant> baseline = Baselines.named(name);
        if (baseline.isPresent()) {
            if (own) {
                throw new UserError(
                        "'" + text + "': " + name + " is a formula and looks no rolls ahead: write " + name);
            }
            return new Contestant(name, Optional.empty(), baseline.get());
        }
        requireExists(name, catalog);
        int depth = requireLookahead(own ? Integer.parseInt(text.substring(at + 1)) : lookahead);
        Model model = catalog.load(name);
        Net net = new Net(model, model.notes().get(ModelFile.SHA256), depth);
        return new Contestant(text, Optional.of(net), Entrant.ofModel(text, model, depth));
    }

    /** What is no path must be a name. */
    private static void requireExists(String name, ModelCatalog catalog) {
        boolean path = name.contains("/") || name.contains(File.separator) || name.endsWith(".safetensors");
        if (path || catalog.names().contains(name) || new File(name).exists()) {
            return;
        }
        List<String> known = new ArrayList<>(catalog.names());
        known.addAll(Baselines.names());
        throw new UserError("no player '" + Excerpt.of(name) + "': use " + String.join(", ", known)
                + " or the path of a .safetensors file");
    }

    private static int requireLookahead(int lookahead) {
        if (lookahead < 0 || lookahead > LookaheadSettings.MAX) {
            throw new UserError("a lookahead of " + lookahead + ": use 0 to " + LookaheadSettings.MAX);
        }
        return lookahead;
    }

    /**
     * How deeply it thinks, for people.
     *
     * @return for instance {@code lookahead 1}, or {@code formula}
     */
    public String depth() {
        return net.map(known -> "lookahead " + known.lookahead()).orElse("formula");
    }
}
