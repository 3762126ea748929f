package org.framewright.share;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.framewright.base.Text;

/**
 * What one device hears of the job, as a stream of events (WHATWG HTML, section 9.2). It runs on
 * the thread of its exchange, so that a slow reader holds nobody else up, and skips to the newest.
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

  private final String device;
  private final Role role;
  private final Function<Text, String> say;
  private final LongSupplier last;
  private final Clock clock;
  private volatile Optional<End> end = Optional.empty();

  /**
   * @param last the number of the device's last event that is kept
   */
  LiveStream(String device, Role role, Function<Text, String> say, LongSupplier last, Clock clock) {
    this.device = device;
    this.role = role;
    this.say = say;
    this.last = last;
    this.clock = clock;
  }

  /** It ends as soon as whoever waits for a moment is woken. */
  void end(End why) {
    end = Optional.of(why);
  }

  /** Writes what there is to hear until it is ended or nobody reads any more. */
  void run(Moments moments, Folds folds, OutputStream out, WriteWatch.Guard guard)
      throws IOException, InterruptedException {
    Optional<Fold> told = Optional.empty();
    long toldLast = -1;
    long number = 0;
    while (end.isEmpty()) {
      var next = moments.after(number, WORD, () -> end.isPresent());
      if (end.isPresent()) {
        break;
      }
      var moment = next.orElseGet(moments::newest);
      number = moment.number();
      var fold = folds.of(role, moment);
      long nowLast = last.getAsLong();
      boolean news =
          told.filter(before -> before.saysTheSameAs(fold)).isEmpty() || toldLast != nowLast;
      if (news) {
        var data = Message.of(told, fold, device, nowLast, clock.instant(), say);
        write(
            "id: " + fold.moment().number() + "\nevent: state\ndata: " + data + "\n\n", out, guard);
        told = Optional.of(fold);
        toldLast = nowLast;
      } else if (next.isEmpty()) {
        write(NOTHING_NEW, out, guard);
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
