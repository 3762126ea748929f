package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Room;

/**
 * What would be handed off, as far as it could be planned; nothing was written.
 *
 * @param of what was asked
 * @param parts the packages; none where it could not be planned
 * @param lines what needs a person first
 * @param usualName what the package is called where nobody says otherwise
 * @param labels those that frames have, for a person to choose from
 * @param problem what is in the way of it
 */
record Looked(
    Asked of,
    List<HandOffPlan> parts,
    List<GoingLine> lines,
    String usualName,
    Optional<Path> target,
    Optional<Room> room,
    List<String> labels,
    Optional<Remark> problem) {

  Looked {
    parts = List.copyOf(parts);
    lines = List.copyOf(lines);
    labels = List.copyOf(labels);
  }

  int selects() {
    return parts.stream().mapToInt(HandOffPlan::pictures).sum();
  }

  int slates() {
    return parts.stream().mapToInt(HandOffPlan::slates).sum();
  }

  int files() {
    return parts.stream().mapToInt(HandOffPlan::files).sum();
  }

  long bytes() {
    return parts.stream().mapToLong(HandOffPlan::bytes).sum();
  }

  int withheld() {
    return parts.stream().mapToInt(part -> part.withheld().size()).sum();
  }

  /** How many of those that go went before. */
  int again() {
    return (int) parts.stream().mapToLong(HandOffPlan::again).sum();
  }

  /** How many stay because they went before. */
  int stay() {
    return (int) parts.stream().mapToLong(HandOffPlan::left).sum();
  }

  boolean isSound() {
    return problem.isEmpty() && selects() + slates() > 0;
  }
}
