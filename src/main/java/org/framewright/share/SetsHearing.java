package org.framewright.share;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.framewright.base.Text;

/** All sets as one device hears them: all at first, then those that changed, and the order. */
final class SetsHearing implements Hearing {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  private record Told(SequencedMap<String, ObjectNode> sets, Optional<Instant> lost) {
    List<String> order() {
      return List.copyOf(sets.keySet());
    }
  }

  private final LiveSets sets;
  private final Role role;
  private final Function<Text, String> say;
  private final Clock clock;
  private Optional<Told> told = Optional.empty();
  private long number;

  SetsHearing(LiveSets sets, Role role, Function<Text, String> say, Clock clock) {
    this.sets = sets;
    this.role = role;
    this.say = say;
    this.clock = clock;
  }

  @Override
  public Optional<String> next(Duration most, BooleanSupplier over) throws InterruptedException {
    var moment = sets.after(number, most, over);
    if (over.getAsBoolean()) {
      return Optional.empty();
    }
    number = moment.number();
    var lines = new LinkedHashMap<String, ObjectNode>();
    moment.overview().sets().forEach(row -> lines.put(row.job().toString(), SetJson.of(row, say)));
    var now = new Told(lines, moment.lost());
    var before = told;
    told = Optional.of(now);
    // That the order changed is news too, which the equality of maps does not see.
    boolean same =
        before.filter(now::equals).filter(it -> it.order().equals(now.order())).isPresent();
    return same
        ? Optional.empty()
        : Optional.of("id: " + number + "\nevent: state\ndata: " + data(before, now) + "\n\n");
  }

  private ObjectNode data(Optional<Told> before, Told now) {
    var data = JSON.objectNode();
    data.put("full", before.isEmpty());
    data.put("time", clock.millis());
    data.put("last", 0);
    data.put("role", role.word());
    data.put("job", sets.name());
    data.put("lost", now.lost().isPresent() ? "store" : null);
    data.put("lostSince", now.lost().map(Instant::toEpochMilli).orElse(null));
    if (before.filter(it -> it.order().equals(now.order())).isEmpty()) {
      now.order().forEach(data.putArray("order")::add);
    }
    var changed = data.putArray("sets");
    now.sets()
        .forEach(
            (id, set) -> {
              if (before.filter(it -> set.equals(it.sets().get(id))).isEmpty()) {
                changed.add(set);
              }
            });
    return data;
  }
}
