package org.framewright.ui.handoff;

import java.util.Comparator;
import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.renaming.Plan;
import org.framewright.renaming.PlannedRename;
import org.framewright.renaming.Status;
import org.framewright.ui.look.Texts;

/** The renames that would give what came back its right names. */
record RenameQuestion(Plan plan, List<Line> lines) {
  /**
   * One file.
   *
   * @param why why it keeps its name; empty where it gets the other
   */
  record Line(String from, String to, String why) {}

  static RenameQuestion of(Plan plan, Texts texts) {
    return new RenameQuestion(
        plan,
        plan.renames().stream()
            .filter(one -> one.status() != Status.UNCHANGED)
            .sorted(Comparator.comparing(one -> one.status() == Status.READY))
            .map(
                one ->
                    new Line(
                        PlainText.line(one.from().toString()),
                        PlainText.line(String.valueOf(one.to().getFileName())),
                        why(one, texts)))
            .toList());
  }

  private static String why(PlannedRename one, Texts texts) {
    return one.status() == Status.READY
        ? ""
        : PlainText.line(texts.apart(texts.say(one.said()), texts.say(one.fix())));
  }
}
