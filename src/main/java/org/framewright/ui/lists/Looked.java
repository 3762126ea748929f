package org.framewright.ui.lists;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;

/**
 * A list as it is looked at.
 *
 * @param file none where no list is looked at
 * @param options what is said about how to read it
 * @param reading what came of reading it last; it may be older than the options while it is read
 *     again
 * @param change what it changes, if it was understood
 * @param differences the same, setup by setup
 * @param isRead whether the reading is that of these options
 */
record Looked(
    Optional<Path> file,
    ListOptions options,
    Optional<ListReading> reading,
    Optional<ListChange> change,
    List<ResultLine.Difference> differences,
    boolean isRead) {
  static final Looked NOTHING =
      new Looked(
          Optional.empty(), ListOptions.NONE, Optional.empty(), Optional.empty(), List.of(), false);

  /** So many columns of a new setup are told. */
  private static final int COLUMNS_TOLD = 3;

  /** A file that was not read yet. */
  static Looked at(Path file) {
    return new Looked(
        Optional.of(file), ListOptions.NONE, Optional.empty(), Optional.empty(), List.of(), false);
  }

  /** The same while it is read by other options. */
  Looked asking(ListOptions other) {
    return new Looked(file, other, reading, change, differences, false);
  }

  /** The same where reading it failed. */
  Looked failed() {
    return new Looked(file, options, Optional.empty(), Optional.empty(), List.of(), true);
  }

  /** The same, read. */
  Looked read(ListReading now, Optional<ListChange> changes, List<ResultLine.Difference> lines) {
    return new Looked(file, now.options(), Optional.of(now), changes, List.copyOf(lines), true);
  }

  /** The list, where it was understood. */
  Optional<ListReading.Understood> understood() {
    return reading
        .filter(ListReading.Understood.class::isInstance)
        .map(ListReading.Understood.class::cast);
  }

  Optional<ListReading.Refused> refused() {
    return reading
        .filter(ListReading.Refused.class::isInstance)
        .map(ListReading.Refused.class::cast);
  }

  /** The numbers of the lines that are shown of each column. */
  List<Integer> lineNumbers() {
    return reading.stream()
        .flatMap(one -> one.as().table().lines().stream())
        .map(line -> line.number())
        .toList();
  }

  /** The setups that stand in both lists and are the same. */
  int asBefore() {
    return understood().map(one -> one.list().setups().size()).orElse(0)
        - change.map(one -> one.added().size() + one.changed().size()).orElse(0);
  }

  /** Ways to read it and what stops it, or what it changes and what is told. */
  List<ResultLine> results() {
    var lines = new ArrayList<ResultLine>();
    refused()
        .ifPresent(
            refused -> {
              refused.waysOn().forEach(way -> lines.add(new ResultLine.Way(way)));
              refused.problems().forEach(problem -> lines.add(new ResultLine.Found(problem, true)));
            });
    lines.addAll(differences);
    understood()
        .ifPresent(
            understood ->
                understood
                    .remarks()
                    .forEach(remark -> lines.add(new ResultLine.Found(remark, false))));
    return lines;
  }

  /** What differs, setup by setup; away from the interface, a list may be long. */
  static List<ResultLine.Difference> differences(ListChange now) {
    var lines = new ArrayList<ResultLine.Difference>();
    now.added()
        .forEach(setup -> lines.add(line(ResultLine.Kind.ADDED, setup, Text.of(said(setup)))));
    now.changed()
        .forEach(
            one ->
                lines.add(
                    line(
                        ResultLine.Kind.CHANGED,
                        one.after(),
                        one.descriptions().stream()
                            .reduce((before, next) -> Text.of("{0}; {1}", before, next))
                            .orElse(Text.NONE))));
    now.removed().forEach(setup -> lines.add(line(ResultLine.Kind.REMOVED, setup, Text.NONE)));
    now.kept().forEach(setup -> lines.add(line(ResultLine.Kind.KEPT, setup, Text.NONE)));
    return lines;
  }

  private static ResultLine.Difference line(ResultLine.Kind kind, Setup setup, Text detail) {
    return new ResultLine.Difference(kind, setup.code(), PlainText.line(setup.title()), detail);
  }

  /** {@code F, B · 4 · A1}. */
  private static String said(Setup setup) {
    var said = new ArrayList<String>();
    said.add(setup.viewsText());
    setup.framesWanted().ifPresent(frames -> said.add(String.valueOf(frames)));
    setup.columns().values().stream()
        .filter(text -> !text.isBlank())
        .limit(COLUMNS_TOLD)
        .map(PlainText::line)
        .forEach(said::add);
    said.removeIf(String::isBlank);
    return String.join(" · ", said);
  }
}
