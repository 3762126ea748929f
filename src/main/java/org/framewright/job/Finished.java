package org.framewright.job;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SequencedMap;
import org.framewright.shotlist.SetupState;

/** When setups were done with. */
final class Finished {
  private Finished() {}

  /**
   * By their codes, in the order of time: when the next one came on set on the same day, or when it
   * was ticked if that was earlier.
   */
  static SequencedMap<String, Instant> of(JobState state, ZoneId zone) {
    var left = new HashMap<String, Instant>();
    var spans = state.spans();
    for (int i = 0; i + 1 < spans.size(); i++) {
      var next = spans.get(i + 1).from();
      if (LocalDate.ofInstant(spans.get(i).from(), zone).equals(LocalDate.ofInstant(next, zone))) {
        left.put(spans.get(i).setup(), next);
      } else {
        left.remove(spans.get(i).setup());
      }
    }
    var finished = new LinkedHashMap<String, Instant>();
    state.setups().entrySet().stream()
        .filter(
            setup ->
                setup.getValue().state() == SetupState.SHOT
                    || setup.getValue().state() == SetupState.SIGNED_OFF)
        .filter(setup -> setup.getValue().since().isPresent())
        .map(setup -> Map.entry(setup.getKey(), earlier(setup, left)))
        .sorted(Comparator.comparing(Map.Entry<String, Instant>::getValue))
        .forEach(one -> finished.put(one.getKey(), one.getValue()));
    return Collections.unmodifiableSequencedMap(finished);
  }

  private static Instant earlier(Map.Entry<String, SetupStatus> setup, Map<String, Instant> left) {
    var status = setup.getValue();
    // A sign-off may come a day later.
    var ticked = status.shotAt().or(status::since).orElseThrow();
    var next = left.getOrDefault(setup.getKey(), ticked);
    return next.isBefore(ticked) ? next : ticked;
  }
}
