package org.framewright.copies;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.PlainText;

/** Copies in words, a line each. */
public final class CopyDescription {
  private CopyDescription() {}

  /** What became of each target. */
  public static List<String> of(CopyReport report) {
    var lines = new ArrayList<String>();
    for (var target : report.targets()) {
      lines.add(
          target.folder()
              + " on "
              + target.device()
              + ": "
              + PlainText.counted(target.copied(), "file")
              + " copied"
              + speed(target)
              + ", "
              + target.alreadyThere()
              + " there already, of "
              + report.files());
      if (target.unsure() > 0) {
        lines.add(
            "  "
                + target.unsure()
                + " of these compared equal, but the bytes may have come from memory: whether the"
                + " disk holds them shows after it was taken out and put in again.");
      }
      target.list().ifPresent(list -> lines.add("  checksums: " + list));
      target.mhl().ifPresent(list -> lines.add("  ASC MHL: " + list));
    }
    if (report.isWhole()) {
      lines.add("Every file is on every one of these places, read back and compared.");
    }
    return List.copyOf(lines);
  }

  /** What was left out without a word of the person; nothing where nothing was. */
  public static Optional<String> litter(CopyPlan plan) {
    return plan.litter().isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Not copied, made by computers: "
                + PlainText.counted(plan.litter().size(), "file or folder"));
  }

  private static String speed(CopyReport.Target target) {
    double rate = bytesPerSecond(target) / 1e6;
    return target.copied() == 0 || rate < 1
        ? ""
        : String.format(Locale.ROOT, " at %.0f MB/s", rate);
  }

  /** How fast a target took its files and gave them back. */
  public static double bytesPerSecond(CopyReport.Target target) {
    return target.seconds() > 0 ? target.bytes() / target.seconds() : 0;
  }
}
