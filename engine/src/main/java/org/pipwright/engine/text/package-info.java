/** Helpers for reading what people and programs write: excerpts for error lines, strict JSON. */
package org.pipwright.engine.text;
