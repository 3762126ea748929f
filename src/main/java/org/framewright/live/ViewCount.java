package org.framewright.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.frames.SetupTally;
import org.framewright.shotlist.Setup;

/**
 * The frames of one view of a setup.
 *
 * @param code the view's; empty for frames of no view
 * @param frames counted
 * @param wanted by the list, if it says
 * @param before whether it is before the camera now
 */
public record ViewCount(String code, int frames, OptionalInt wanted, boolean before) {
  /** Whether it has what is wanted: the number, or one frame where the list gives none. */
  public boolean complete() {
    return frames >= wanted.orElse(1);
  }

  /**
   * The wanted views of a setup, then views that nobody wanted but that have frames.
   *
   * @param inFront the view that is before the camera, if this setup is on set and somebody said it
   */
  public static List<ViewCount> of(
      Setup setup, Optional<SetupTally> counted, Optional<String> inFront) {
    var counts = new TreeMap<String, Integer>(String.CASE_INSENSITIVE_ORDER);
    counted.ifPresent(tally -> counts.putAll(tally.byView()));
    var views = new ArrayList<ViewCount>();
    for (var view : setup.views()) {
      var frames = counts.remove(view.code());
      views.add(
          new ViewCount(
              view.code(),
              frames == null ? 0 : frames,
              view.frames(),
              inFront.filter(view.code()::equalsIgnoreCase).isPresent()));
    }
    counts.forEach(
        (code, frames) -> views.add(new ViewCount(code, frames, OptionalInt.of(0), false)));
    return List.copyOf(views);
  }

  /** The wanted views of a setup that have no frame. */
  public static List<String> without(Setup setup, List<ViewCount> views) {
    return views.stream()
        .filter(count -> setup.view(count.code()).isPresent())
        .filter(count -> count.frames() == 0)
        .map(ViewCount::code)
        .toList();
  }
}
