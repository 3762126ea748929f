package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import org.framewright.job.FrameLine;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * The times between the last frame of a setup and the first of the next, as the frames tell them.
 * Where a break or a night lies between them, they say nothing.
 */
final class Gaps {
  /** Who takes longer did something else. Common practice, no source. */
  private static final Duration LONGEST = Duration.ofHours(2);

  private Gaps() {}

  /**
   * @param lines in the order in which the frames were taken
   */
  static List<ChangeTimes.Gap> of(
      List<FrameLine> lines, ShotList list, Traits traits, DayHours hours) {
    var byCode = new HashMap<String, Setup>();
    list.setups().forEach(setup -> byCode.put(setup.code(), setup));
    var gaps = new ArrayList<ChangeTimes.Gap>();
    var before = Optional.<Setup>empty();
    var last = Instant.MIN;
    for (var line : lines) {
      var setup = line.place().map(place -> byCode.get(place.setup()));
      if (setup.isEmpty() || line.taken().isEmpty()) {
        continue;
      }
      var taken = line.taken().get().atZone(hours.zone()).toInstant();
      if (before.isPresent() && !before.get().code().equals(setup.get().code())) {
        var time = Duration.between(last, taken);
        if (!time.isNegative()
            && time.compareTo(LONGEST) <= 0
            && hours.between(last, taken).equals(time)) {
          gaps.add(new ChangeTimes.Gap(time, traits.between(before.get(), setup.get())));
        }
      }
      before = setup;
      last = taken;
    }
    return List.copyOf(gaps);
  }
}
