package org.framewright.naming;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** A proposed convention in words, as the command line prints it and the app shows it. */
public final class ProposalDescription {
  private static final int VALUES_SHOWN = 5;

  private ProposalDescription() {}

  /** There is nothing to propose from. */
  public static Problem noNames() {
    return new Problem(
        "there is no name of a frame among what is given",
        "Give names as they are now, such as 20260301_ABC_012_F_0001.");
  }

  /** The pieces, a line each, and below it what a person has to say of it. */
  public static List<String> pieces(Proposal proposal) {
    var lines = new ArrayList<String>();
    for (var piece : proposal.pieces()) {
      lines.add(
          "%2d  %-8s %s%s"
              .formatted(
                  piece.number(),
                  piece.role().word(),
                  values(piece),
                  piece.optional() ? "  (not in all of them)" : ""));
      piece.question().ifPresent(question -> lines.add("    ? " + question));
    }
    return List.copyOf(lines);
  }

  /** The first of a piece's texts. */
  public static String values(Proposal.Piece piece) {
    return piece.values().stream()
            .limit(VALUES_SHOWN)
            .map(PlainText::line)
            .collect(Collectors.joining(", "))
        + (piece.values().size() > VALUES_SHOWN ? " ..." : "");
  }

  /** The pieces, the convention's text, what is so about it, and which names it reads back. */
  public static List<String> of(Proposal proposal) {
    var lines = new ArrayList<>(pieces(proposal));
    lines.add("");
    proposal.yaml().lines().map(PlainText::line).forEach(lines::add);
    lines.add("");
    for (var finding : proposal.findings()) {
      lines.add(finding.severity().word() + ": " + PlainText.line(finding.message()));
      finding.remedy().ifPresent(remedy -> lines.add("  Remedy: " + PlainText.line(remedy)));
    }
    for (var unread : proposal.unread()) {
      lines.add("does not fit: " + PlainText.line(unread.example()));
      lines.add("  " + PlainText.line(unread.why()));
    }
    lines.add(proof(proposal).english());
    return List.copyOf(lines);
  }

  /** How many of the examples are read back. */
  public static Text proof(Proposal proposal) {
    long read = proposal.examples().stream().filter(one -> one.unread().isEmpty()).count();
    return Text.of("{0} of {1} names are read back as they are.", read, proposal.examples().size());
  }

  /** What can be said of a piece instead, such as {@code client, title or other}. */
  public static String choices(Proposal.Piece piece) {
    var words = piece.choices().stream().map(Proposal.Role::word).toList();
    int last = words.size() - 1;
    return String.join(", ", words.subList(0, last)) + " or " + words.get(last);
  }
}
