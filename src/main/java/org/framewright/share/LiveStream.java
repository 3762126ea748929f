package org.framewright.share;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;

/**
 * What one device hears, as a stream of events (WHATWG HTML, section 9.2). It runs on the thread of
 * its exchange, so that a slow reader holds nobody else up, and skips to the newest.
 */
final class LiveStream {
  /** A reader finds out after two or three of these that the line is dead. */
  static final Duration WORD = Duration.ofSeconds(5);

  /** So much is written at a time, each with the whole patience of the watch. */
  private static final int PIECE = 16 << 10;

  private static final String NOTHING_NEW = ": \n\n";
  private static final String UNPAIRED = "event: unpaired\ndata: {}\n\n";

  /** Why a stream is at its end. */
  enum End {
    /** Another one of the same device, or the server, takes its place. */
    REPLACED,
    /** The device may hear no more. */
    UNPAIRED
  }

  private volatile Optional<End> end = Optional.empty();

  /** It ends as soon as whoever waits for a moment is woken. */
  void end(End why) {
    end = Optional.of(why);
  }

  /** Writes what there is to hear until it is ended or nobody reads any more. */
  void run(Hearing hearing, OutputStream out, WriteWatch.Guard guard)
      throws IOException, InterruptedException {
    while (end.isEmpty()) {
      var next = hearing.next(WORD, () -> end.isPresent());
      if (end.isEmpty()) {
        write(next.orElse(NOTHING_NEW), out, guard);
      }
    }
    if (end.equals(Optional.of(End.UNPAIRED))) {
      write(UNPAIRED, out, guard);
    }
  }

  private static void write(String text, OutputStream out, WriteWatch.Guard guard)
      throws IOException {
    var bytes = text.getBytes(StandardCharsets.UTF_8);
    for (int from = 0; from < bytes.length; from += PIECE) {
      guard.writing();
      out.write(bytes, from, Math.min(PIECE, bytes.length - from));
    }
    guard.writing();
    out.flush();
    guard.written();
  }
}
