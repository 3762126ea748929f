package org.framewright.job;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.framewright.shotlist.Setup;

/** The rules for the log that a computer keeps for a device. */
final class DeviceLog {
  /** A device's time may be ahead of the job's by what a network and a slow page take. */
  static final Duration MOST_AHEAD = Duration.ofSeconds(5);

  private DeviceLog() {}

  /**
   * Where an event of a device stands among those of all: when the person did it, so that frames
   * which came meanwhile fall to the right setup however late it was sent. It follows the device's
   * own last one, and is hardly ever ahead of the job's time.
   */
  static Stamp stamp(Device device, Instant at, Instant now, Optional<Stamp> last) {
    long millis = Math.min(at.toEpochMilli(), now.plus(MOST_AHEAD).toEpochMilli());
    return last.filter(before -> before.millis() >= millis)
        .map(before -> new Stamp(before.millis(), before.count() + 1, device.name()))
        .orElseGet(() -> new Stamp(millis, 0, device.name()));
  }

  /** Whether an event that is kept is what a device sends again. */
  static boolean isSame(Entry kept, Numbered sent) {
    return kept.at().equals(sent.at()) && isSame(kept.event(), sent.asked());
  }

  private static boolean isSame(Event kept, Asked asked) {
    return switch (asked) {
      case Asked.Named _ -> kept instanceof Event.Named;
      case Asked.Ticked(var setup, var state, var details) ->
          kept instanceof Event.Marked marked
              && isOne(marked.setup(), setup)
              && marked.state() == state
              && marked.details().by().equals(details.by())
              && marked.details().reason().equals(details.reason());
      case Asked.Commented(var setup, _, var text, _) ->
          kept instanceof Event.Commented commented
              && isOne(commented.setup(), setup)
              && commented.text().equals(Comment.line(text));
      case Asked.TakenBack _ -> kept instanceof Event.TakenBack;
    };
  }

  private static boolean isOne(String setup, String other) {
    return Setup.canonicalKey(setup).equals(Setup.canonicalKey(other));
  }
}
