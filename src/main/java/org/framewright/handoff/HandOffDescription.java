package org.framewright.handoff;

import java.util.ArrayList;
import java.util.List;

/**
 * Hand-offs and what came back in words, a line each, as the command line and the demo print them.
 */
public final class HandOffDescription {
  private HandOffDescription() {}

  /** What would go, under which names. */
  public static List<String> planned(HandOffPlan plan) {
    var lines = new ArrayList<String>();
    plan.selects().forEach(select -> lines.add(select.original() + "  ->  " + select.name()));
    lines.add(plan.selects().size() + " selects in " + plan.files() + " files");
    return List.copyOf(lines);
  }

  /** What went, and where it lies. */
  public static List<String> delivered(Delivery.Delivered done) {
    return List.of(
        done.selects()
            + " selects in "
            + done.files()
            + " files, each copied and read again: hand-off "
            + done.number(),
        done.folder().toString());
  }

  /** What came back, and what is wrong with it. */
  public static List<String> returned(Returns returns) {
    var lines = new ArrayList<String>();
    lines.add(
        returns.count(Returns.State.ANSWERED)
            + " of "
            + returns.answers().size()
            + " selects came back under a name of the convention");
    returns.answers().stream()
        .filter(answer -> answer.state() != Returns.State.ANSWERED)
        .forEach(answer -> lines.add(answer.select() + " " + answer.state().words()));
    returns.extras().forEach(extra -> lines.add("extra: " + extra.file() + ": " + extra.why()));
    returns
        .bag()
        .ifPresent(
            bag -> {
              bag.faults().forEach(fault -> lines.add("in its manifest: " + fault.sentence()));
              bag.different().forEach(file -> lines.add("not what its manifest says: " + file));
              bag.missing().forEach(file -> lines.add("in its manifest, not there: " + file));
              bag.unlisted().forEach(file -> lines.add("there, not in its manifest: " + file));
            });
    return List.copyOf(lines);
  }
}
