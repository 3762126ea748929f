package org.framewright.share;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/** Requests byte by byte, as no well-behaved client sends them. */
final class RawHttp {
  private static final Pattern STATUS = Pattern.compile("HTTP/1\\.1 ([0-9]{3}).*", Pattern.DOTALL);

  private RawHttp() {}

  /** What is answered until the connection ends; empty where it ends without a word. */
  static String send(URI server, String request) throws IOException {
    try (var socket = new Socket(server.getHost(), server.getPort())) {
      socket.setSoTimeout(5_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    } catch (java.net.SocketException e) {
      return ""; // Cut off.
    }
  }

  /** A request of these lines, with what makes the server end the connection behind it. */
  static String lines(String... lines) {
    return String.join("\r\n", lines) + "\r\nConnection: close\r\n\r\n";
  }

  /** The status of an answer; 0 where there was none. */
  static int status(String answer) {
    var match = STATUS.matcher(answer);
    return match.matches() ? Integer.parseInt(match.group(1)) : 0;
  }
}
