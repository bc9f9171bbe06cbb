package org.pipwright.cli;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;

/**
 * Requests that no client would send, byte by byte. A server that refuses a request closes the connection, and what a client
 * still has to send then may cost it the answer: here all is sent in one piece.
 */
public final class RawRequest {
    private static final int PATIENCE_MS = 10_000;

    private RawRequest() {}

    /**
     * The status of a server's answer.
     *
     * @param server its address
     * @param request the request's lines, the first one without the protocol; a host is added unless there is one
     * @param body what follows the empty line
     * @return the answer's status
     */
    public static int status(URI server, String request, String body) throws IOException {
        String[] lines = request.split("\n", 2);
        StringBuilder head = new StringBuilder(lines[0]).append(" HTTP/1.1\n");
        if (!request.contains("Host:")) {
            head.append("Host: ").append(server.getAuthority()).append('\n');
        }
        head.append(lines[1]).append("\n\n");
        try (Socket socket = new Socket(server.getHost(), server.getPort())) {
            socket.setSoTimeout(PATIENCE_MS);
            String all = head.toString().replace("\n", "\r\n") + body;
            socket.getOutputStream().write(all.getBytes(StandardCharsets.US_ASCII));
            String answer =
                    new String(socket.getInputStream().readNBytes("HTTP/1.1 200".length()), StandardCharsets.US_ASCII);
            return Integer.parseInt(answer.substring("HTTP/1.1 ".length()));
        }
    }
}
