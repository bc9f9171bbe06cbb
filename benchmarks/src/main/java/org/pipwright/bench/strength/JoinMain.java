package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;

/** Joins the parts of a reference into one file and checks that it is whole. */
public final class JoinMain {
    private JoinMain() {}

    public static void main(String[] args) {
        Main.run(args, JoinMain::run);
    }

    private static void run(List<String> args) throws IOException {
        Options options = new Options(args, Set.of("--decisions", "--parts", "--out"), Set.of("--so-far"));
        Path decisions = Path.of(options.required("--decisions"));
        List<Path> parts = new ArrayList<>();
        for (String part : options.required("--parts").split(",")) {
            parts.add(Path.of(part));
        }
        Path out = Path.of(options.required("--out"));
        Joined joined = join(decisions, parts, out, options.has("--so-far"));
        System.out.println(joined.kept() + " references in " + out + ", " + joined.unsure()
                + " left out, whose standard errors are larger than they should be");
    }

    /**
     * What became of the references.
     *
     * @param kept how many are in the file
     * @param unsure how many are not, since they are not sure enough
     */
    record Joined(int kept, int unsure) {}

    /** Joins; decisions without a reference are an error unless {@code soFar}. */
    static Joined join(Path decisions, List<Path> parts, Path out, boolean soFar) throws IOException {
        ReferenceHeader header = null;
        TreeMap<Integer, Reference> all = new TreeMap<>();
        for (Path part : parts) {
            var content = JsonLines.read(part, ReferenceHeader.class, Reference.class);
            if (header != null && !header.equals(content.header())) {
                throw new IllegalArgumentException(
                        "'" + part + "' was made with other settings than the parts before it");
            }
            header = content.header();
            content.records().forEach(reference -> all.put(reference.id(), reference));
        }
        if (header == null || !header.decisionsSha256().equals(ReferenceMain.sha256(decisions))) {
            throw new IllegalArgumentException("the parts are not of the decisions in '" + decisions + "'");
        }
        Set<Integer> missing = new HashSet<>();
        JsonLines.read(decisions, DecisionsHeader.class, Decision.class)
                .records()
                .forEach(decision -> missing.add(decision.id()));
        missing.removeAll(all.keySet());
        if (!soFar && !missing.isEmpty()) {
            throw new IllegalArgumentException(
                    missing.size() + " decisions have no reference yet: run their parts to the end, or give --so-far");
        }
        int found = all.size();
        // Some come to the most games before they are known well enough.
        all.values().removeIf(unsure(header));
        JsonLines.write(out, header, new ArrayList<>(all.values()));
        return new Joined(all.size(), found - all.size());
    }

    private static Predicate<Reference> unsure(ReferenceHeader header) {
        return reference ->
                !reference.plays().stream().allMatch(rolled -> header.exactEnough(rolled.behind(), rolled.error()));
    }
}
