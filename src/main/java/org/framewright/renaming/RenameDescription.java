package org.framewright.renaming;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;

/**
 * Plans and what came of them in words, a line each, as the command line and the demo print them.
 */
public final class RenameDescription {
  private static final int WIDEST = 60;
  private static final int STATUS = 9;

  private RenameDescription() {}

  /**
   * Renames as a table of status, name and new name; below each that is not done stand the reason
   * and the remedy.
   */
  public static List<String> table(List<PlannedRename> renames) {
    int from = width(renames.stream().map(rename -> shown(rename.from())).toList());
    var form = "%-" + STATUS + "s  %-" + from + "s  %s";
    var lines = new ArrayList<String>();
    for (var rename : renames) {
      lines.add(form.formatted(rename.status().word(), shown(rename.from()), shown(rename.to())));
      if (!rename.why().isEmpty()) {
        lines.add(" ".repeat(STATUS + 2) + (rename.why() + ". " + rename.remedy()).strip());
      }
    }
    return List.copyOf(lines);
  }

  /** A plan in numbers. */
  public static String counts(Plan plan) {
    return PlainText.counted(plan.ready(), "file")
        + " can be renamed, "
        + plan.unchanged()
        + " unchanged, "
        + plan.blocked()
        + " blocked.";
  }

  /** What a batch did. */
  public static String applied(Outcome.Applied applied) {
    return "Renamed "
        + PlainText.counted(applied.done(), "file")
        + " as batch "
        + applied.batch()
        + ".";
  }

  /** A name as it is printed, so that the columns fit. */
  private static String shown(Path name) {
    return PlainText.line(name.toString());
  }

  private static int width(List<String> texts) {
    return Math.clamp(texts.stream().mapToInt(String::length).max().orElse(1), 1, WIDEST);
  }
}
