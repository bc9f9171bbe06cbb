package org.pipwright.engine.record;

import java.util.ArrayList;
import java.util.List;

/** SGF text to the main lines of its game trees: of variations the first is followed, the others are skipped. */
final class SgfReader {
    /** Deeper nesting than any record needs; keeps a hostile file from exhausting the stack. */
    private static final int DEEPEST = 200;

    private final String text;
    private int at;
    private int counted;
    private int lines = 1;
    private int lineStart;

    private SgfReader(String text) {
        this.text = text;
    }

    /** The nodes of each game; at least one game, each with at least one node. */
    static List<List<SgfNode>> read(String text) {
        return new SgfReader(text.startsWith("\ufeff") ? text.substring(1) : text).games();
    }

    private List<List<SgfNode>> games() {
        List<List<SgfNode>> games = new ArrayList<>();
        for (skip(); at < text.length(); skip()) {
            List<SgfNode> nodes = new ArrayList<>();
            tree(nodes, 0);
            games.add(nodes);
        }
        if (games.isEmpty()) {
            throw fault("no game: expected '(' and a game tree");
        }
        return games;
    }

    private void tree(List<SgfNode> nodes, int depth) {
        expect('(', "a game tree");
        if (depth > DEEPEST) {
            throw fault("variations in variations, " + DEEPEST + " deep: expected fewer");
        }
        skip();
        if (peek() != ';') {
            throw fault("expected ';' and a node");
        }
        for (; peek() == ';'; skip()) {
            nodes.add(node());
        }
        for (boolean first = true; peek() == '('; skip()) {
            tree(first ? nodes : new ArrayList<>(), depth + 1);
            first = false;
        }
        expect(')', "the end of the game tree");
    }

    private SgfNode node() {
        SgfNode node = new SgfNode(line(), column());
        at++;
        for (skip(); Character.isUpperCase(peek()); skip()) {
            int start = at;
            while (Character.isUpperCase(peek())) {
                at++;
            }
            String name = text.substring(start, at);
            List<String> values = new ArrayList<>();
            for (skip(); peek() == '['; skip()) {
                values.add(value());
            }
            if (values.isEmpty()) {
                throw fault("property " + name + ": expected '[' and a value");
            }
            if (node.properties().put(name, values) != null) {
                throw fault("property " + name + " twice in one node: expected once");
            }
        }
        return node;
    }

    /** A backslash takes the next character as it is, and itself and a line break away. */
    private String value() {
        StringBuilder value = new StringBuilder();
        for (at++; peek() != ']'; at++) {
            if (at >= text.length()) {
                throw fault("expected ']' after a value");
            }
            char c = text.charAt(at);
            if (c == '\\' && at + 1 < text.length()) {
                at++;
                if (lineBreak()) {
                    continue;
                }
                c = text.charAt(at);
            } else if (lineBreak()) {
                c = '\n';
            }
            value.append(c);
        }
        at++;
        return value.toString();
    }

    /** Whether a line break is here; of two characters the first is passed over. */
    private boolean lineBreak() {
        char c = text.charAt(at);
        if (c == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n') {
            at++;
        }
        return c == '\r' || c == '\n';
    }

    private void expect(char wanted, String what) {
        if (peek() != wanted) {
            throw fault("expected '" + wanted + "' and " + what);
        }
        at++;
    }

    private char peek() {
        return at < text.length() ? text.charAt(at) : 0;
    }

    private void skip() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    private InvalidRecordException fault(String problem) {
        String here = at < text.length() ? "'" + Notes.tidy(text.substring(at, at + 1)) + "'" : "the end of the file";
        return new InvalidRecordException(line(), column(), here + ": " + problem);
    }

    private int line() {
        count();
        return lines;
    }

    private int column() {
        count();
        return at - lineStart + 1;
    }

    /** Counts lines on from where it did last, so that a long file costs one pass, and a long line too. */
    private void count() {
        for (; counted < at; counted++) {
            if (text.charAt(counted) == '\n') {
                lines++;
                lineStart = counted + 1;
            }
        }
    }
}
