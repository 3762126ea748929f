package org.framewright.world;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Where frames belong by what the README says, and where that cannot be known. */
final class Places {
  private final Stage stage;

  Places(Stage stage) {
    this.stage = stage;
  }

  /**
   * Where a frame belongs.
   *
   * @param key the setup's; none if it belongs to none
   * @param clear whether the model knows; where clocks were set in the middle it does not
   */
  record Belongs(Optional<String> key, String view, boolean clear) {
    static final Belongs UNCLEAR = new Belongs(Optional.empty(), "", false);
  }

  Map<Integer, Belongs> places(Model model) throws IOException {
    var complete = stage.complete();
    var clocks = new HashMap<Body, BodyTimes>();
    for (var body : stage.bodies) {
      clocks.put(body, times(model, body, complete.keySet()));
    }
    var found = new TreeMap<Integer, Belongs>();
    complete.forEach(
        (id, paths) -> {
          var belongs =
              place(model, stage.shots.get(id), paths, clocks.get(stage.shots.get(id).body()));
          found.put(id, withView(model, belongs));
        });
    return found;
  }

  private static Belongs withView(Model model, Belongs belongs) {
    var views = belongs.key().map(model.list()::get).map(Said.Line::views).orElse(List.of());
    return belongs.view().isEmpty() && views.size() == 1
        ? new Belongs(belongs.key(), views.getFirst(), belongs.clear())
        : belongs;
  }

  /** What can be known of a body's clock: whether its frames arrived as they were taken. */
  private record BodyTimes(boolean known, boolean anyArrived) {}

  private static final long AT_ONCE = 9_000;

  private BodyTimes times(Model model, Body body, Set<Integer> complete) {
    var atOnce = new ArrayList<Long>();
    var late = new ArrayList<Long>();
    boolean odd = false;
    for (var id : complete) {
      var shot = stage.shots.get(id);
      var arrival = model.arrival(id);
      if (shot.body() != body) {
        continue;
      }
      odd |= shot.odd();
      if (arrival.isPresent()) {
        long way = arrival.get() - shot.at().toEpochMilli();
        if (way >= 0 && way <= AT_ONCE) {
          atOnce.add(way);
        } else {
          late.add(way);
        }
      }
    }
    boolean scattered = late.stream().anyMatch(way -> Math.abs(way) <= 140_000);
    int together = 0;
    for (var from : late) {
      together =
          Math.max(
              together,
              (int) late.stream().filter(way -> way >= from && way <= from + 10_000).count());
    }
    boolean clear =
        !odd
            && !scattered
            && (late.isEmpty() || (together < atOnce.size() && late.size() <= atOnce.size()));
    return new BodyTimes(clear, !atOnce.isEmpty());
  }

  private Belongs place(Model model, Stage.Shot shot, List<String> paths, BodyTimes times) {
    var moved = model.moved(shot.id());
    if (moved.isPresent()) {
      return new Belongs(moved, "", true);
    }
    var named = Names.read(stage.start.template(), paths.getFirst());
    if (named.isPresent() && model.list().containsKey(named.get().key())) {
      return new Belongs(Optional.of(named.get().key()), named.get().view(), true);
    }
    if (!times.known()) {
      return Belongs.UNCLEAR;
    }
    var arrival = model.arrival(shot.id());
    long taken = shot.at().toEpochMilli();
    if (arrival.isPresent() && Math.abs(arrival.get() - taken) <= AT_ONCE) {
      return on(model, arrival.get());
    }
    long when = times.anyArrived() ? taken : shot.captured().toEpochMilli();
    return model.changesNear(when, times.anyArrived() ? 2 * AT_ONCE : 0)
        ? Belongs.UNCLEAR
        : on(model, when);
  }

  private static Belongs on(Model model, long millis) {
    var span = model.onSetAt(millis);
    return new Belongs(span.map(Model.Span::key), span.map(Model.Span::view).orElse(""), true);
  }
}
