package org.framewright.job;

import java.util.ArrayList;
import java.util.List;
import java.util.SequencedMap;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.shotlist.ListFile;
import org.framewright.shotlist.ListFit;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListProblem;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;

/**
 * Reads a list as the last one with its headings was read: what a person chose then need not be
 * said again.
 */
final class FamiliarList {
  /** A job has lists of two or three forms; of more the latest are tried. */
  private static final int TRIED = 4;

  private final ListFile.Content file;
  private final ListOptions given;
  private final ListFit fit;

  private FamiliarList(ListFile.Content file, ListOptions given, ListFit fit) {
    this.file = file;
    this.given = given;
    this.fit = fit;
  }

  /**
   * Reads a list.
   *
   * @param given what a person says now, which comes first
   * @param kept what was said before, by the form of the lists
   */
  static ListReading read(
      ListFile.Content file,
      ListOptions given,
      ListFit fit,
      SequencedMap<ListForm, KeptOptions> kept) {
    return new FamiliarList(file, given, fit).read(kept);
  }

  private ListReading read(SequencedMap<ListForm, KeptOptions> kept) {
    var plain = read(given);
    if (kept.isEmpty()) {
      return plain;
    }
    var same = kept.get(ListForm.of(plain.headings()));
    if (same != null) {
      return told(same, read(given.over(same.options())));
    }
    // Without the column, sheet or encoding that was chosen its headings may not be found.
    var others = new ArrayList<>(kept.reversed().entrySet());
    for (var other : others.subList(0, Math.min(TRIED, others.size()))) {
      var reading = read(given.over(other.getValue().options()));
      if (ListForm.of(reading.headings()).equals(other.getKey())) {
        return told(other.getValue(), reading);
      }
    }
    return plain;
  }

  private ListReading read(ListOptions options) {
    return ListReader.read(file.bytes(), file.name(), options, fit);
  }

  /** Says what was taken over, unless it was said anew. */
  private ListReading told(KeptOptions kept, ListReading reading) {
    var told = new ArrayList<>(reading.options().phrases());
    told.removeAll(given.phrases());
    if (told.isEmpty()) {
      return reading;
    }
    var earlier =
        kept.list().isEmpty() || kept.list().equals(file.name())
            ? Text.of("an earlier list")
            : Text.of("the earlier list {0}", kept.list());
    return reading.asBefore(
        new ListProblem(
            new Problem(
                Text.of(
                    "it has the headings of {0} and was read like that one: {1}",
                    earlier,
                    told.stream()
                        .reduce((one, next) -> Text.of("{0}, {1}", one, next))
                        .orElseThrow()),
                file.name(),
                "Say otherwise, or read it afresh."),
            0,
            0,
            "--fresh"));
  }

  /** What is to be kept of a list that was imported; empty if nothing new. */
  static List<Event> event(
      ListReading.Understood reading, SequencedMap<ListForm, KeptOptions> kept) {
    var before = kept.get(ListForm.of(reading.headings()));
    var options = before == null ? ListOptions.NONE : before.options();
    return reading.headings().isEmpty() || options.equals(reading.options())
        ? List.of()
        : List.of(
            new Event.ListRead(reading.headings(), reading.options(), reading.source().name()));
  }
}
