/** A fixed crew of threads, each with buffers of its own, that shares out numbered tasks. */
package org.pipwright.engine.parallel;
