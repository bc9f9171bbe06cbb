package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
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
        int lines = join(decisions, parts, out, options.has("--so-far"));
        System.out.println(lines + " references in " + out);
    }

    /** Joins; decisions without a reference are an error unless {@code soFar}. */
    static int join(Path decisions, List<Path> parts, Path out, boolean soFar) throws IOException {
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
        JsonLines.write(out, header, new ArrayList<>(all.values()));
        return all.size();
    }
}
