package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import org.pipwright.bench.BenchCommand;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Joins the parts of a reference into one file and checks that it is whole. */
@Command(name = "join", description = "Joins the parts of a reference into one file.")
public final class JoinCommand extends BenchCommand {
    @Option(names = "--decisions", paramLabel = "FILE", required = true, description = "The decisions.")
    private Path decisions;

    @Option(
            names = "--parts",
            split = ",",
            paramLabel = "FILES",
            required = true,
            description = "The parts, with commas between.")
    private List<Path> parts;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "The file to write.")
    private Path file;

    @Option(names = "--so-far", description = "Join though some decisions have no reference yet.")
    private boolean soFar;

    @Override
    protected void run() throws IOException {
        int lines = join(decisions, parts, file, soFar);
        out().println(lines + " references in " + file);
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
        if (header == null || !header.decisionsSha256().equals(ReferenceCommand.sha256(decisions))) {
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
