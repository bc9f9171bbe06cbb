package org.pipwright.engine.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("fast")
class ReasonTest {
    @Test
    void reasonsAreWords() {
        assertEquals("No space left on device", Reason.of(new IOException("No space left on device")));
        assertEquals("File too large", Reason.of(new FileSystemException("/a", null, "File too large")));
        assertEquals("no such file, /a", Reason.of(new NoSuchFileException("/a")));
        assertEquals("access denied, /a", Reason.of(new AccessDeniedException("/a")));
        assertEquals("it ends too soon", Reason.of(new EOFException()));
        assertEquals("io", Reason.of(new IOException()));
    }
}
