package org.framewright.ready;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.FrameScan;
import org.framewright.job.ItemTick;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.ReadyRecord;

/**
 * Whether the day can begin, or end.
 *
 * @param wrap whether it is of the evening
 * @param measured what was measured
 * @param checklist what people look after; none where no checklist was chosen
 * @param items its items with today's ticks
 * @param restsOn what it rests on
 */
public record Answer(
    boolean wrap,
    List<Measured> measured,
    Optional<Checklist> checklist,
    List<Ticked> items,
    SequencedMap<String, String> restsOn) {
  public Answer {
    measured = List.copyOf(measured);
    items = List.copyOf(items);
  }

  /** The answer in one word. */
  public enum Kind {
    READY,
    BUT_FOR,
    NOT_READY;

    /** Its word in documents and in the log. */
    public String word() {
      return switch (this) {
        case READY -> "ready";
        case BUT_FOR -> "ready-but-for";
        case NOT_READY -> "not-ready";
      };
    }
  }

  /**
   * Something that keeps the answer from being a plain one.
   *
   * @param stops whether the day cannot begin, or end, so
   */
  public record Missing(boolean stops, Text what, Text remedy) {}

  /** Asks before the first frame. */
  public static Answer morning(
      Job job, FrameScan scan, Asked asked, Surroundings around, Progress progress)
      throws IOException, JobException {
    var places = asked.places().isEmpty() ? Rests.places(job) : asked.places();
    return of(
        job,
        false,
        Checks.of(new Gathering(job, scan, around).facts(asked, progress)),
        Rests.of(job, scan, places, around.volumes()));
  }

  /** Asks after the last one. */
  public static Answer evening(Job job, FrameScan scan, Surroundings around)
      throws IOException, JobException {
    return of(
        job,
        true,
        WrapChecks.of(WrapFacts.of(job, scan)),
        Rests.of(job, scan, List.of(), around.volumes()));
  }

  private static Answer of(
      Job job, boolean wrap, List<Measured> measured, SequencedMap<String, String> rests)
      throws JobException {
    var parsed = Checklists.of(job);
    if (parsed.isEmpty()) {
      var all = new ArrayList<>(measured);
      all.add(
          new Measured(
              Topic.CHECKLIST,
              new Outcome.Remark(
                  Text.of("no checklist was chosen, so nobody is asked what only people can see"),
                  Text.of("Choose one: framewright ready JOB --checklist studio."))));
      return new Answer(wrap, all, Optional.empty(), List.of(), rests);
    }
    var list = Checklists.sound(parsed.get());
    return new Answer(wrap, measured, Optional.of(list), ticked(job, list, wrap), rests);
  }

  /** The items of a list with the ticks of today. */
  private static List<Ticked> ticked(Job job, Checklist list, boolean wrap) {
    var ticks = job.readiness().ticks();
    var today = LocalDate.ofInstant(job.now(), job.zone());
    var items = new ArrayList<Ticked>();
    list.items(wrap)
        .forEach(
            (id, item) -> {
              Optional<ItemTick> tick =
                  Optional.ofNullable(ticks.get(id))
                      .filter(one -> LocalDate.ofInstant(one.at(), job.zone()).equals(today));
              items.add(new Ticked(id, item, tick));
            });
    return List.copyOf(items);
  }

  /** The answer in one word. */
  public Kind kind() {
    var missing = missing();
    return missing.isEmpty()
        ? Kind.READY
        : missing.stream().anyMatch(Missing::stops) ? Kind.NOT_READY : Kind.BUT_FOR;
  }

  /** What keeps it from being a plain one; what stops the day first. */
  public List<Missing> missing() {
    var stops = new ArrayList<Missing>();
    var more = new ArrayList<Missing>();
    for (var one : measured) {
      switch (one.outcome()) {
        case Outcome.Stops(Text said, Text remedy) -> stops.add(new Missing(true, said, remedy));
        case Outcome.Remark(Text said, Text remedy) -> more.add(new Missing(false, said, remedy));
        case Outcome.Fine _, Outcome.CannotTell _ -> {}
      }
    }
    long open = items.stream().filter(item -> item.tick().isEmpty()).count();
    if (open > 0) {
      more.add(
          new Missing(
              false,
              Text.counted(
                  "{0} of {1} items of the checklist is not ticked",
                  "{0} of {1} items of the checklist are not ticked", open, items.size()),
              Text.of("Look after them, and tick what is so.")));
    }
    stops.addAll(more);
    return List.copyOf(stops);
  }

  /** This as the log keeps it. */
  public ReadyRecord record() {
    return new ReadyRecord(
        wrap,
        kind().word(),
        missing().stream().map(missing -> missing.what().english()).toList(),
        new LinkedHashMap<>(restsOn));
  }

  /**
   * What changed since the last answer of a job; empty where that still holds, or there is none.
   */
  public List<Text> changedSince(Job job) {
    return job.readiness()
        .said(wrap)
        .map(last -> Lapse.of(last.said().restsOn(), restsOn))
        .orElseGet(List::of);
  }
}
