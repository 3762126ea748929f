package org.framewright.cli;

import java.io.IOException;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.framewright.copies.KnownDisks;
import org.framewright.copies.device.MountedVolumes;
import org.framewright.day.Change;
import org.framewright.day.ChangeTimes;
import org.framewright.day.OrderOfWork;
import org.framewright.day.PowerSource;
import org.framewright.day.Supplies;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;

/** What commands tell of disks, battery and the order of work, as documents. */
final class DayFacts {
  private DayFacts() {}

  static Supplies supplies(Job job, FrameScan scan, ZoneId zone) throws IOException {
    var disks =
        KnownDisks.of(job, MountedVolumes.ofThisSystem()).stream()
            .map(disk -> Supplies.Disk.beside(disk.card(), disk.name(), disk.free()))
            .toList();
    return Supplies.of(job, scan, zone, disks, PowerSource.ofThisSystem());
  }

  static SequencedMap<String, Object> json(Supplies supplies) {
    var document = new LinkedHashMap<String, Object>();
    document.put("bytes", supplies.filling().map(pace -> pace.bytes()).orElse(null));
    document.put(
        "overMinutes",
        supplies.filling().map(pace -> DayCommand.minutes(pace.over())).orElse(null));
    document.put("until", supplies.filling().map(pace -> pace.until().toString()).orElse(null));
    document.put("disks", supplies.disks().stream().map(disk -> json(disk, supplies)).toList());
    return document;
  }

  private static Map<String, Object> json(Supplies.Disk disk, Supplies supplies) {
    var document = new LinkedHashMap<String, Object>();
    document.put("use", disk.use().word());
    document.put("name", disk.name().isEmpty() ? null : disk.name());
    document.put("freeBytes", disk.free());
    document.put(
        "hoursLeft",
        supplies.lasts(disk).map(time -> Math.round(time.toMinutes() / 6.0) / 10.0).orElse(null));
    return document;
  }

  static Map<String, Object> battery(Supplies supplies) {
    if (supplies.battery().isEmpty()) {
      return null;
    }
    var battery = supplies.battery().get();
    var document = new LinkedHashMap<String, Object>();
    document.put("percent", battery.percent());
    document.put("minutesLeft", battery.left().map(time -> time.toMinutes()).orElse(null));
    return document;
  }

  /** What another order saves; null where there is no better one. */
  static Map<String, Object> gain(OrderOfWork order) {
    if (!order.isBetter()) {
      return null;
    }
    var document = new LinkedHashMap<String, Object>();
    document.put("changesNow", order.count(order.given()));
    document.put("changesThen", order.count(order.proposed()));
    document.put("savesMinutes", order.saves().map(DayCommand::minutes).orElse(null));
    return document;
  }

  static SequencedMap<String, Object> json(OrderOfWork order) {
    var document = new LinkedHashMap<String, Object>();
    document.put("better", order.isBetter());
    document.put("exact", order.exact());
    document.put("savesMinutes", order.saves().map(DayCommand::minutes).orElse(null));
    document.put("whyNoMinutes", order.times().whyNone().map(text -> text.english()).orElse(null));
    document.put("before", order.before().map(setup -> setup.code()).orElse(null));
    document.put("changesNow", counts(order.changes(order.given())));
    document.put("changesThen", counts(order.changes(order.proposed())));
    document.put("times", times(order.times()));
    document.put("given", lines(order.given()));
    document.put("proposed", lines(order.proposed()));
    document.put("stay", order.stay().stream().sorted().toList());
    return document;
  }

  private static List<Map<String, Object>> lines(List<OrderOfWork.Line> lines) {
    Function<OrderOfWork.Line, Map<String, Object>> json =
        line -> {
          var document = new LinkedHashMap<String, Object>();
          document.put("setup", line.setup().code());
          document.put("changes", words(line.changes()));
          return document;
        };
    return lines.stream().map(json).toList();
  }

  private static List<String> words(Set<Change> changes) {
    return changes.stream().map(Change::word).toList();
  }

  private static Map<String, Integer> counts(SortedMap<Change, Integer> changes) {
    var counts = new LinkedHashMap<String, Integer>();
    changes.forEach((change, count) -> counts.put(change.word(), count));
    return counts;
  }

  private static Map<String, Object> times(ChangeTimes times) {
    var document = new LinkedHashMap<String, Object>();
    new TreeMap<>(times.learned())
        .forEach(
            (change, one) -> {
              var its = new LinkedHashMap<String, Object>();
              its.put("minutes", DayCommand.minutes(one.time()));
              its.put("seen", one.seen());
              its.put("shared", one.shared());
              document.put(change.word(), its);
            });
    return document;
  }
}
