package org.pipwright.engine.record;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A node of an SGF file: its properties in order, and where it stands. */
record SgfNode(int line, int column, Map<String, List<String>> properties) {
    SgfNode(int line, int column) {
        this(line, column, new LinkedHashMap<>());
    }

    boolean has(String name) {
        return properties.containsKey(name);
    }

    /** The first value of a property, or a default. */
    String value(String name, String otherwise) {
        return has(name) ? properties.get(name).get(0) : otherwise;
    }

    InvalidRecordException fault(String problem) {
        return new InvalidRecordException(line, column, problem);
    }
}
