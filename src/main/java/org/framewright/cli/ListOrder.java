package org.framewright.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;
import org.framewright.day.OrderOfWork;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.SetupRange;
import org.framewright.shotlist.Setup;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What of {@code list} is about the order of what is left. */
final class ListOrder {
  @Option(
      names = "--propose-order",
      description =
          "Shows an order of what is left in which model, set, rack and views are changed less, and"
              + " changes nothing.")
  private boolean proposed;

  @Option(names = "--apply", description = "With --propose-order: puts the list in that order.")
  private boolean apply;

  @Option(
      names = "--stay",
      paramLabel = "SETUP",
      description =
          "With --propose-order: this one stays in its place; a range such as 010..012 too. May be"
              + " repeated.")
  private List<String> stay = new ArrayList<>();

  @Option(
      names = "--take-back-order",
      description =
          "Takes back the last order that was given on this computer, if the list was not changed"
              + " in another way since.")
  private boolean takeBack;

  @Mixin private HoursOptions hours;

  boolean isAsked() {
    return proposed || takeBack;
  }

  /** Refuses what cannot be meant, before anything is done. */
  void check(boolean other) throws CommandFailure {
    if (!proposed && (apply || !stay.isEmpty() || hours.isGiven())) {
      throw CommandFailure.badInput(
          "--apply, --stay, --hours and --break are about a proposed order",
          "Give --propose-order with them.");
    }
    if (isAsked() && (other || (proposed && takeBack))) {
      throw CommandFailure.badInput(
          (proposed ? "--propose-order" : "--take-back-order") + " is given alone",
          "Give one, then the other.");
    }
  }

  void take(Job job, Output output) throws IOException, JobException, CommandFailure {
    if (takeBack) {
      takeBack(job, output);
    } else {
      propose(job, output);
    }
  }

  private void propose(Job job, Output output) throws IOException, JobException, CommandFailure {
    var worked = hours.hours(output);
    var scan = job.scan();
    var order = OrderOfWork.of(job, scan, job.standing(scan).state(), worked, staying(job));
    boolean changed = apply && order.isBetter() && job.reorder(order.list()).isPresent();
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("applied", changed);
      document.putAll(DayFacts.json(order));
      output.write(document);
      return;
    }
    tell(order, output);
    if (changed) {
      output
          .out()
          .println(
              "The list is in this order now. Taken back with: framewright list JOB"
                  + " --take-back-order");
    } else if (order.isBetter()) {
      output.out().println("Nothing was changed. With --apply the list gets this order.");
    }
  }

  private Set<String> staying(Job job) throws JobException {
    return stay.isEmpty()
        ? Set.of()
        : SetupRange.setups(job, stay).stream()
            .map(Setup::code)
            .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static void tell(OrderOfWork order, Output output) {
    var out = output.out();
    if (order.given().isEmpty()) {
      out.println("Nothing is left to shoot.");
      return;
    }
    out.println("Now: " + order.said(order.given()).english());
    if (order.isBetter()) {
      out.println("Then: " + order.said(order.proposed()).english());
      order.saves().ifPresent(time -> out.println("Saves about " + Durations.words(time) + "."));
      int codes =
          order.proposed().stream()
              .mapToInt(line -> PlainText.line(line.setup().code()).length())
              .max()
              .orElse(1);
      var form = "  %-" + Math.min(codes, 48) + "s  %s";
      for (var line : order.proposed()) {
        var changes =
            line.changes().stream()
                .map(change -> change.said().english())
                .collect(Collectors.joining(", "));
        var title = PlainText.line(line.setup().title());
        out.println(
            form.formatted(
                    PlainText.line(line.setup().code()),
                    title
                        + (changes.isEmpty()
                            ? ""
                            : (title.isEmpty() ? "" : "  ") + "<- " + changes))
                .stripTrailing());
      }
    }
    order.reasons().forEach(reason -> out.println(reason.english()));
  }

  private static void takeBack(Job job, Output output) throws IOException, JobException {
    job.takeBackOrder();
    if (output.json()) {
      output.write(job.shotList().codes());
    } else {
      output.out().println("The list is in the order that it had before.");
    }
  }
}
