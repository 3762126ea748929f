package org.framewright.handoff;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Set;
import org.framewright.base.Progress;

/**
 * A paper on the selects of a package that lies in it beside the index, such as a contact sheet;
 * made by whoever knows how.
 */
public interface ExtraPaper {
  /** The names that such papers have, so that nobody takes one that came back for a picture. */
  Set<String> NAMES = Set.of("contact-sheet.pdf", "list.xlsx", "list.csv");

  /** The file's name in the package. */
  String name();

  /** What it is, as a sentence for those who open the package, in a line. */
  String said();

  /** The bytes that it takes at the most. */
  long room(int selects);

  /** How many steps of progress its making takes. */
  int steps(HandOffPlan plan);

  /**
   * Writes it.
   *
   * @param plan what is in this package
   * @throws java.util.concurrent.CancellationException once the progress says that it is to stop
   */
  void write(HandOffPlan plan, OutputStream out, Progress progress) throws IOException;

  /** The room of several. */
  static long room(List<ExtraPaper> papers, HandOffPlan plan) {
    return papers.stream().mapToLong(paper -> paper.room(plan.selects().size())).sum();
  }

  /** The steps that a package takes: one a file, and those of its papers. */
  static int steps(List<ExtraPaper> papers, HandOffPlan plan) {
    return plan.files() + papers.stream().mapToInt(paper -> paper.steps(plan)).sum();
  }
}
