package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.job.Job;
import org.framewright.shotlist.Column;
import org.framewright.shotlist.Heading;
import org.framewright.shotlist.ListDescription;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListProblem;
import org.framewright.shotlist.ListReading;
import picocli.CommandLine.Option;

/** A client's list on its way into a job, and what a person says about how to read it. */
final class ListImport {
  private static final int PROBLEMS_SHOWN = 20;

  @Option(
      names = "--import",
      paramLabel = "FILE",
      description = "The client's list: .csv in any common form, or .xlsx.")
  private Optional<Path> file = Optional.empty();

  @Option(
      names = "--preview",
      description = "With --import: show what would change; change nothing.")
  private boolean preview;

  @Option(
      names = "--column",
      paramLabel = "FIELD=HEADING",
      description =
          "With --import: the column that holds a field: setup, title, views, frames, day, rack,"
              + " model, note, or one of the convention's; or what it is instead: one-view, kept,"
              + " unused. A column without a heading is \"column 3\". May be repeated.")
  private List<String> columns = new ArrayList<>();

  @Option(
      names = "--sheet",
      paramLabel = "NAME",
      description = "With --import: the sheet of the workbook.")
  private Optional<String> sheet = Optional.empty();

  @Option(
      names = "--encoding",
      paramLabel = "NAME",
      description = "With --import: the encoding of the text, such as windows-1250 or Shift_JIS.")
  private Optional<String> encoding = Optional.empty();

  @Option(
      names = "--one-setup-per",
      paramLabel = "HEADING",
      description =
          "With --import: lines that have the same in this column are one setup, such as the sizes"
              + " of a garment.")
  private Optional<String> oneSetupPer = Optional.empty();

  @Option(
      names = "--fresh",
      description =
          "With --import: read it without what was chosen for an earlier list with the same"
              + " headings.")
  private boolean fresh;

  boolean isAsked() {
    return file.isPresent();
  }

  boolean isPreview() {
    return preview;
  }

  /** Refuses what says nothing without a list. */
  ListOptions options() throws CommandFailure {
    if (preview && file.isEmpty()) {
      throw CommandFailure.badInput("--preview shows an import", "Give --import FILE with it.");
    }
    var options =
        columnOptions(new ListOptions(new LinkedHashMap<>(), sheet, encoding, oneSetupPer));
    if (file.isEmpty() && (fresh || !options.isNone())) {
      throw CommandFailure.badInput(
          (fresh ? "--fresh" : options.words().split(" ", 2)[0]) + " says how to read a list",
          "Give --import FILE with it.");
    }
    return options;
  }

  /** These, with the columns that were given. */
  private ListOptions columnOptions(ListOptions others) throws CommandFailure {
    var options = others;
    var fields = new HashSet<String>();
    for (var column : columns) {
      int sign = column.indexOf('=');
      if (sign < 1 || sign == column.length() - 1) {
        throw CommandFailure.badInput(
            "\"" + column + "\" names no column for a field",
            "Write --column FIELD=HEADING, as in --column setup=\"Art. No.\".");
      }
      var field = column.substring(0, sign).strip();
      var heading = column.substring(sign + 1);
      var use = Heading.ofUse(field);
      if (use.isPresent()) {
        options = options.withUse(use.get(), heading);
        continue;
      }
      if (!fields.add(field)) {
        throw CommandFailure.badInput(
            "a column is given twice for \"" + field + "\"", "Give it once.");
      }
      options = options.withColumn(field, heading);
    }
    return options;
  }

  /**
   * Reads the list and takes it in, or shows what that would change.
   *
   * @throws CommandFailure if it is no list that this job can use; nothing was changed
   */
  void take(Job job, ListOptions options, Output output) throws IOException, CommandFailure {
    var reading = fresh ? job.readListAnew(file.get(), options) : job.readList(file.get(), options);
    switch (reading) {
      case ListReading.Refused refused -> throw refused(refused, output);
      case ListReading.Understood understood -> {
        ListDescription.understood(understood).forEach(output.err()::println);
        var change = preview ? job.previewImport(understood.list()) : job.importList(understood);
        if (!output.json()) {
          ListDescription.changes(change, preview).forEach(output.out()::println);
        } else if (preview) {
          output.write(document(job, understood));
        }
      }
    }
  }

  /** All that is wrong but the last goes to standard error, the last is the failure. */
  private static CommandFailure refused(ListReading.Refused refused, Output output) {
    var problems = refused.problems().stream().map(ListProblem::onCommandLine).toList();
    refused
        .as()
        .before()
        .ifPresent(before -> output.err().println(before.onCommandLine().sentences()));
    int last = Math.min(problems.size(), PROBLEMS_SHOWN) - 1;
    problems
        .subList(0, last)
        .forEach(
            problem -> {
              output.err().println("framewright: " + problem.sentence());
              output.err().println(problem.remedy());
            });
    if (problems.size() > PROBLEMS_SHOWN) {
      output.err().println((problems.size() - PROBLEMS_SHOWN) + " more like these follow.");
    }
    ListDescription.waysOn(refused).forEach(output.err()::println);
    var problem = problems.get(last);
    return new CommandFailure(
        ExitStatus.BAD_INPUT,
        new Problem(
            problem.what(),
            problem.where(),
            (problem.remedy() + " Nothing was imported.").strip()));
  }

  /** The contract's document of a preview. */
  private static SequencedMap<String, Object> document(Job job, ListReading.Understood reading) {
    var document = new LinkedHashMap<String, Object>();
    document.put("columns", columns(reading.columns()));
    document.put("encoding", reading.source().encoding().orElse(null));
    document.put("sheet", reading.source().sheet().orElse(null));
    document.put("sheets", reading.source().sheets());
    document.put("setups", reading.list().setups().size());
    document.put("leftOut", reading.leftOut().stream().map(ListImport::document).toList());
    document.put("remarks", reading.told().stream().map(ListImport::document).toList());
    document.put(
        "list",
        reading.list().setups().stream()
            .map(setup -> SetupDescription.document(job, setup, Optional.empty()))
            .toList());
    return document;
  }

  /** By field, the heading; of views in several columns, all of theirs. */
  private static SequencedMap<String, Object> columns(List<Column> columns) {
    var byField = new LinkedHashMap<String, Object>();
    for (var column : columns) {
      if (column.field().isPresent()) {
        byField.put(column.field().get(), column.heading());
      } else if (column.taken().isChosen()) {
        byField.put(column.taken().word(), column.heading());
      }
    }
    var views =
        columns.stream()
            .filter(column -> column.taken() == Heading.VIEW)
            .map(Column::heading)
            .toList();
    if (!views.isEmpty()) {
      byField.put("views", views);
    }
    return byField;
  }

  private static SequencedMap<String, Object> document(ListProblem problem) {
    var document = new LinkedHashMap<String, Object>();
    document.put("line", problem.line() > 0 ? problem.line() : null);
    document.put("why", PlainText.line(problem.problem().what()));
    if (!problem.problem().remedy().isEmpty()) {
      document.put("remedy", PlainText.line(problem.onCommandLine().remedy()));
    }
    return document;
  }
}
