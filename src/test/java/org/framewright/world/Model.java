package org.framewright.world;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.framewright.shotlist.SetupState;

/**
 * What a job must say, in plain maps, written from the README and docs/formats.md: all that was
 * said is put in the order of its stamps and told again from the beginning.
 */
final class Model {
  /** How long frames still fall to a setup that was ticked shot; the page On set of the guide. */
  private static final long LINGERS = Duration.ofHours(1).toMillis();

  /** A thing said, with its stamp. */
  record Fact(LogLine.Id id, long millis, int count, Said said) {
    private static final Comparator<Fact> ORDER =
        Comparator.comparingLong(Fact::millis)
            .thenComparingInt(Fact::count)
            .thenComparing(fact -> fact.id.station());
  }

  /** Where a setup stands. */
  record Standing(SetupState state, long since, String signedOffBy) {}

  /** A time on set; {@code until} is the largest number while it lasts. */
  record Span(String key, String view, long from, long until) {}

  private final List<Fact> facts = new ArrayList<>();
  private final Set<LogLine.Id> gone = new HashSet<>();
  private final Map<String, Said.Line> lines = new LinkedHashMap<>();
  private final Set<String> removed = new HashSet<>();
  private final Map<String, String> worked = new LinkedHashMap<>();
  private final Map<String, Standing> standings = new HashMap<>();
  private final List<Span> spans = new ArrayList<>();
  private final Map<Integer, Long> arrivals = new HashMap<>();
  private final Map<Integer, String> moves = new HashMap<>();
  private final Set<Integer> chosen = new HashSet<>();
  private final Map<Integer, Integer> ratings = new HashMap<>();
  private final List<String> comments = new ArrayList<>();
  private List<String> order = List.of();
  private boolean onSet;

  private Model(Collection<Fact> all) {
    facts.addAll(all);
    facts.sort(Fact.ORDER);
    for (var fact : facts) {
      if (fact.said instanceof Said.TakenBack(var what)) {
        gone.add(what);
      }
    }
    for (var fact : facts) {
      if (!gone.contains(fact.id)) {
        tell(fact.said, fact.millis);
      }
    }
  }

  static Model of(Collection<Fact> all) {
    return new Model(all);
  }

  /** What codes have in common that people cannot tell apart: case, and zeros before a number. */
  static String key(String code) {
    return code.strip().toUpperCase(Locale.ROOT).replaceAll("(?<![0-9])0+(?=[0-9])", "");
  }

  private void tell(Said said, long at) {
    switch (said) {
      case Said.Listed(var put, var out, var codes) -> {
        for (var line : put) {
          lines.put(key(line.code()), line);
          removed.remove(key(line.code()));
        }
        out.forEach(code -> removed.add(key(code)));
        order = codes.stream().map(Model::key).toList();
      }
      case Said.Ticked ticked -> tick(ticked, at);
      case Said.Arrived(var frames) -> frames.forEach(frame -> arrivals.putIfAbsent(frame, at));
      case Said.Moved(var frames, var setup) -> {
        worked.putIfAbsent(key(setup), setup);
        frames.forEach(frame -> moves.put(frame, key(setup)));
      }
      case Said.Chosen(var frames, var yes) -> {
        if (yes) {
          chosen.addAll(frames);
        } else {
          chosen.removeAll(frames);
        }
      }
      case Said.Rated(var frames, var rating) -> frames.forEach(one -> ratings.put(one, rating));
      case Said.Commented(var setup, var text) -> comments.add(key(setup) + ": " + text);
      case Said.TakenBack _, Said.Other _ -> {}
    }
  }

  private void tick(Said.Ticked ticked, long at) {
    var key = key(ticked.setup());
    worked.putIfAbsent(key, ticked.setup());
    var last = spans.isEmpty() ? null : spans.getLast();
    if (ticked.state() == SetupState.ON_SET) {
      if (onSet && last.key.equals(key) && last.view.equals(ticked.view())) {
        return;
      }
      if (last != null && last.until > at) {
        end(Math.max(at, last.from));
      }
      spans.add(new Span(key, ticked.view(), at, Long.MAX_VALUE));
      onSet = true;
      return;
    }
    var by = ticked.state() == SetupState.SIGNED_OFF ? ticked.by() : "";
    standings.put(key, new Standing(ticked.state(), at, by));
    if (last != null && last.key.equals(key)) {
      if (last.until > at) {
        boolean leaves =
            ticked.state() == SetupState.TO_SHOOT || ticked.state() == SetupState.DROPPED;
        end(Math.max(leaves ? at : at + LINGERS, last.from));
      }
      onSet = false;
    }
  }

  private void end(long until) {
    var last = spans.removeLast();
    spans.add(new Span(last.key, last.view, last.from, until));
  }

  /** The setups by their keys, in the list's order: those of it, and those that were worked on. */
  Map<String, Said.Line> list() {
    var all = new LinkedHashMap<String, Said.Line>();
    var keys = new LinkedHashSet<>(order);
    keys.addAll(lines.keySet());
    keys.addAll(worked.keySet());
    for (var key : keys) {
      if (worked.containsKey(key) || (lines.containsKey(key) && !removed.contains(key))) {
        all.put(key, lines.getOrDefault(key, new Said.Line(worked.get(key), "", List.of(), -1)));
      }
    }
    return all;
  }

  boolean isWorkedOn(String key) {
    return worked.containsKey(key);
  }

  Standing standing(String key) {
    var standing = standings.getOrDefault(key, new Standing(SetupState.TO_SHOOT, -1, ""));
    return onSet && spans.getLast().key.equals(key)
        ? new Standing(SetupState.ON_SET, spans.getLast().from, standing.signedOffBy)
        : standing;
  }

  Optional<Span> onSet() {
    return onSet ? Optional.of(spans.getLast()) : Optional.empty();
  }

  /** What was on set at a time; of several the one that began last. */
  Optional<Span> onSetAt(long millis) {
    return spans.stream()
        .filter(span -> span.from <= millis && millis < span.until)
        .reduce((one, other) -> other.from >= one.from ? other : one);
  }

  /** Whether something came on set or left it this near to a time. */
  boolean changesNear(long millis, long within) {
    return spans.stream()
        .anyMatch(
            span ->
                Math.abs(span.from - millis) <= within
                    || (span.until != Long.MAX_VALUE && Math.abs(span.until - millis) <= within));
  }

  Optional<Long> arrival(int exposure) {
    return Optional.ofNullable(arrivals.get(exposure));
  }

  Optional<String> moved(int exposure) {
    return Optional.ofNullable(moves.get(exposure));
  }

  Set<Integer> chosen() {
    return Set.copyOf(chosen);
  }

  Map<Integer, Integer> ratings() {
    return Map.copyOf(ratings);
  }

  /** The setups to be shot again, in the order in which they were ticked. */
  List<String> pickups() {
    var list = list();
    return standings.entrySet().stream()
        .filter(one -> one.getValue().state == SetupState.PICKUP && list.containsKey(one.getKey()))
        .sorted(Comparator.comparingLong(one -> one.getValue().since))
        .map(Map.Entry::getKey)
        .toList();
  }

  /** When a setup became a pickup. */
  long pickedUp(String key) {
    return standings.get(key).since;
  }

  boolean isGone(LogLine.Id id) {
    return gone.contains(id);
  }

  List<String> comments() {
    return List.copyOf(comments);
  }

  /** The last thing of a kind that somebody said and did not take back. */
  Optional<Fact> last(String station, Class<? extends Said> kind) {
    return facts.stream()
        .filter(fact -> fact.id.station().equals(station) && kind.isInstance(fact.said))
        .filter(fact -> !gone.contains(fact.id))
        .reduce((_, later) -> later);
  }
}
