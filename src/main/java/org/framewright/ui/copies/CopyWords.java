package org.framewright.ui.copies;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.Problem;
import org.framewright.copies.CopyDescription;
import org.framewright.copies.CopyOutcome;
import org.framewright.copies.CopyPlan;
import org.framewright.copies.CopyReport;
import org.framewright.ui.look.Texts;

/** What became of a copy, in words. */
final class CopyWords {
  private final Texts texts;

  CopyWords(Texts texts) {
    this.texts = texts;
  }

  Outcome of(CopyPlan plan, CopyOutcome outcome) {
    return switch (outcome) {
      case CopyOutcome.Done(var report) -> done(plan, report);
      case CopyOutcome.Stopped stopped -> stopped(plan, stopped);
      case CopyOutcome.Refused(var problem) ->
          new Outcome.Copied(
              false, false, texts.sentence(problem), texts.remedy(problem), List.of(), List.of());
    };
  }

  private Outcome done(CopyPlan plan, CopyReport report) {
    var problems = problems(plan, report);
    boolean whole = report.isWhole() && plan.leftOut().isEmpty();
    return new Outcome.Copied(
        false,
        whole,
        whole
            ? texts.get("copies.copied.whole", report.files(), report.targets().size())
            : texts.get("copies.copied.part"),
        texts.get(whole ? "copies.copied.next" : "copies.copied.again"),
        targets(report),
        problems);
  }

  private Outcome stopped(CopyPlan plan, CopyOutcome.Stopped stopped) {
    var problem = stopped.problem();
    boolean fails = stopped.sourceFails();
    return new Outcome.Copied(
        fails,
        false,
        fails ? texts.get("copies.copied.stopUsing") : texts.sentence(problem),
        fails
            ? texts.get("copies.copied.stopUsing.why", stopped.report().unreadable().size())
            : texts.remedy(problem),
        targets(stopped.report()),
        problems(plan, stopped.report()));
  }

  private List<String> targets(CopyReport report) {
    var lines = new ArrayList<String>();
    for (var target : report.targets()) {
      lines.add(line(target, report.files()));
      target
          .mhl()
          .map(list -> texts.get("copies.copied.mhl", list.toString()))
          .ifPresent(lines::add);
    }
    return List.copyOf(lines);
  }

  private String line(CopyReport.Target target, int files) {
    double speed = CopyDescription.bytesPerSecond(target);
    return texts.apart(
        texts.get(
            "copies.copied.target",
            target.folder().toString(),
            target.verified(),
            files,
            target.alreadyThere()),
        target.copied() > 0 && speed >= 1e6 ? speed(texts, speed) : "",
        target.unsure() > 0 ? texts.get("copies.copied.unsure", target.unsure()) : "");
  }

  /** {@code 410 MB/s}. */
  static String speed(Texts texts, double bytesPerSecond) {
    return texts.get("copies.speed", texts.formats().size(Math.round(bytesPerSecond)));
  }

  /** What cannot be read first, then what could not be written, then what should be known. */
  private static List<Problem> problems(CopyPlan plan, CopyReport report) {
    var all = new ArrayList<>(report.unreadable());
    report.targets().forEach(target -> all.addAll(target.failed()));
    report.targets().forEach(target -> all.addAll(target.blocked()));
    all.addAll(plan.leftOut());
    all.addAll(report.remarks());
    return List.copyOf(all);
  }
}
