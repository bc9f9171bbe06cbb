package org.pipwright.dist;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/**
 * Names the licence of everything in a list of materials, by a table that is kept by hand: what makes the list knows a
 * licence only by some addresses.
 */
public final class Materials {
    private static final String PACKAGE = "pkg:maven/";

    private Materials() {}

    /**
     * Names them.
     *
     * @param args the list, an SPDX document, which is written anew; the table
     * @throws IOException if one cannot be read or written, or the table lacks a library
     */
    public static void main(String[] args) throws IOException {
        Path list = Path.of(args[0]);
        Files.writeString(list, named(Files.readString(list), table(Files.readString(Path.of(args[1])))));
    }

    /** Licences by group, or by group and artifact with a slash between. */
    static Map<String, String> table(String text) {
        Map<String, String> table = new TreeMap<>();
        text.lines().filter(line -> !line.startsWith("#")).forEach(line -> {
            String[] columns = line.split("\t", -1);
            if (columns.length != 3 || table.put(columns[0], columns[1]) != null) {
                throw new IllegalArgumentException("library, licence and source once a library, not: " + line);
            }
        });
        return table;
    }

    /** The list with the table's licences; a package's address comes before what is said of its licence. */
    static String named(String list, Map<String, String> table) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonParser from = new JsonFactory().createParser(list);
                JsonGenerator to = new JsonFactory().createGenerator(text).useDefaultPrettyPrinter()) {
            String licence = null;
            while (from.nextToken() != null) {
                String field = from.currentName();
                boolean value = from.currentToken() == JsonToken.VALUE_STRING;
                if (value && "referenceLocator".equals(field) && from.getText().startsWith(PACKAGE)) {
                    licence = licence(from.getText(), table);
                }
                if (value && ("licenseConcluded".equals(field) || "licenseDeclared".equals(field))) {
                    to.writeString(licence == null ? from.getText() : licence);
                } else if (value && "copyrightText".equals(field)) {
                    // SPDX's word for what nobody looked up.
                    to.writeString("NOASSERTION");
                } else {
                    to.copyCurrentEvent(from);
                }
            }
        }
        return text + "\n";
    }

    private static String licence(String address, Map<String, String> table) {
        String library = address.substring(PACKAGE.length()).replaceFirst("@.*", "");
        String licence = table.getOrDefault(library, table.get(library.replaceFirst("/.*", "")));
        if (licence == null) {
            throw new IllegalArgumentException(
                    "no licence is kept for " + library + ": add it to dist/src/licences.tsv");
        }
        return licence;
    }
}
