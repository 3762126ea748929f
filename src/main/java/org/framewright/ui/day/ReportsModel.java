package org.framewright.ui.day;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.day.DayHours;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.report.Letterhead;
import org.framewright.report.Paper;
import org.framewright.report.ReportFiles;
import org.framewright.report.ReportForm;
import org.framewright.report.ReportKind;
import org.framewright.report.ReportOptions;
import org.framewright.report.Stationery;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Steps;
import org.framewright.ui.task.Tasks;

/** Writes reports, one piece of work at a time. */
final class ReportsModel {
  private final Job job;
  private final Supplier<FrameScan> scan;
  private final Supplier<DayHours> hours;
  private final Supplier<Letterhead.Reading> letterhead;
  private final Tasks tasks;
  private final Texts texts;
  private final Consumer<Throwable> trouble;
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<ReportFiles.Outcome>> ended =
      new ReadOnlyObjectWrapper<>(Optional.empty());

  /** What is written once it is known how a report of a kind is made. */
  @FunctionalInterface
  private interface Writing {
    ReportFiles.Outcome with(Function<ReportKind, ReportOptions> options, Steps steps);
  }

  /**
   * @param scan the frames as they are shown
   * @param hours the hours of work; asked in the background
   * @param letterhead who sends reports; asked in the background
   */
  ReportsModel(
      Job job,
      Supplier<FrameScan> scan,
      Supplier<DayHours> hours,
      Supplier<Letterhead.Reading> letterhead,
      Tasks tasks,
      Texts texts,
      Consumer<Throwable> trouble) {
    this.job = job;
    this.scan = scan;
    this.hours = hours;
    this.letterhead = letterhead;
    this.tasks = tasks;
    this.texts = texts;
    this.trouble = trouble;
  }

  /** What is being written. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return running.getReadOnlyProperty();
  }

  /** What came of the last writing. */
  ReadOnlyObjectProperty<Optional<ReportFiles.Outcome>> ended() {
    return ended.getReadOnlyProperty();
  }

  /** What a report's file is called if nobody says otherwise. */
  String nameFor(ReportKind kind) {
    return ReportFiles.name(job, kind);
  }

  /** Where reports go that nobody named a place for: the job's folder for paper, if it has one. */
  Optional<Path> usualFolder() {
    return job.convention().folders().containsKey("paper")
        ? Optional.of(job.folder("paper")).filter(Files::isDirectory)
        : Optional.empty();
  }

  /** A file that a person named; whether it may be replaced, since that was agreed to. */
  private record Named(Path file, boolean agreed) {
    static Named of(Path chosen, boolean told) {
      return told
          ? new Named(chosen, Files.exists(chosen, LinkOption.NOFOLLOW_LINKS))
          : new Named(chosen.resolveSibling(chosen.getFileName() + ".pdf"), false);
    }
  }

  /**
   * Writes one report where a person said; a file that is there was agreed to. A name whose ending
   * says nothing becomes that of a PDF, of which nobody was asked.
   */
  void write(ReportKind kind, Path chosen) {
    var named = Named.of(chosen, ReportForm.of(chosen).isPresent());
    var frames = scan.get();
    begin(
        texts.get("day.writing." + kind.word()),
        (options, steps) ->
            ReportFiles.write(
                job,
                frames,
                List.of(new ReportFiles.Sheet(options.apply(kind), named.file(), named.agreed())),
                steps));
  }

  /** What the file of the slates is called if nobody says otherwise. */
  String nameForSlates() {
    return ReportFiles.slatesName(job);
  }

  /** Writes the slates where a person said; a file that is there was agreed to. */
  void writeSlates(Path chosen) {
    var named = Named.of(chosen, ReportForm.of(chosen).equals(Optional.of(ReportForm.PDF)));
    begin(
        texts.get("day.writing.slates"),
        steps ->
            ReportFiles.slates(
                job,
                named.file(),
                named.agreed(),
                Stationery.usual(texts.locale(), Letterhead.NONE),
                steps));
  }

  /** Writes the day report and the next day into the evening's folder. */
  void evening() {
    var folder = ReportFiles.eveningFolder(job);
    var frames = scan.get();
    begin(
        texts.get("day.writing.evening"),
        (options, steps) ->
            ReportFiles.evening(
                job,
                frames,
                folder,
                Stream.of(ReportKind.DAY, ReportKind.NEXT).map(options).toList(),
                steps));
  }

  /** Stops; a report that is not whole is no file. */
  void stop() {
    running.get().ifPresent(Running::cancel);
  }

  private void begin(String title, Writing writing) {
    begin(title, steps -> write(writing, steps));
  }

  private void begin(String title, Function<Steps, ReportFiles.Outcome> writing) {
    if (running.get().isPresent()) {
      return;
    }
    ended.set(Optional.empty());
    var started =
        tasks.run(
            title,
            writing::apply,
            outcome -> over(Optional.of(outcome)),
            failure -> {
              over(Optional.empty());
              trouble.accept(failure);
            });
    if (!started.finished().get()) {
      running.set(Optional.of(started));
    }
  }

  private ReportFiles.Outcome write(Writing writing, Steps steps) {
    return switch (letterhead.get()) {
      case Letterhead.Reading.Faulty(var problem) -> ReportFiles.Outcome.refused(problem);
      case Letterhead.Reading.Sound(var head) -> {
        var worked = hours.get();
        yield writing.with(
            kind ->
                new ReportOptions(kind, Paper.usual(texts.locale()), texts.locale(), worked, head),
            steps);
      }
    };
  }

  private void over(Optional<ReportFiles.Outcome> outcome) {
    running.set(Optional.empty());
    ended.set(outcome);
  }
}
