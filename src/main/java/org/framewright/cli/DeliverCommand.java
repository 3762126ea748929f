package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffDescription;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Select;
import org.framewright.handoff.Withheld;
import org.framewright.job.FramesDescription;
import org.framewright.job.JobException;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the package for the retoucher. */
@Command(
    name = "deliver",
    description =
        "Copies the selects into a package with checksums for the retoucher. The frames stay as"
            + " they are.",
    mixinStandardHelpOptions = true)
final class DeliverCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(
      names = "--to",
      paramLabel = "DIR",
      required = true,
      description = "The package's folder; it must not exist.")
  private Path target;

  @ArgGroup(exclusive = true, multiplicity = "1")
  private Chosen chosen;

  @Option(names = "--preview", description = "Shows what would be handed off and writes nothing.")
  private boolean preview;

  private static final class Chosen {
    @Option(names = "--rating", paramLabel = "N", description = "Frames rated N or higher, 1 to 5.")
    private Integer rating;

    @Option(
        names = "--picks",
        paramLabel = "FILE",
        description = "Frames named in a text file, a name a line, with or without ending.")
    private Path picks;

    @Option(names = "--chosen", description = "Frames that were chosen in the app.")
    private boolean inTheApp;
  }

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (chosen.rating != null && (chosen.rating < 1 || chosen.rating > 5)) {
      throw CommandFailure.badInput(
          "--rating is " + chosen.rating, "Ratings go from 1 to 5; 0 means unrated.");
    }
    var job = JobFolder.open(folder, output);
    var scan = job.scan();
    FramesDescription.notUnderstood(scan)
        .ifPresent(
            problem ->
                output
                    .err()
                    .println(
                        problem.what()
                            + ". They are not handed off; framewright frames JOB says why."));
    var handOff = HandOff.of(job, scan, job.tally(scan));
    var plan = plan(handOff);
    if (preview) {
      report(plan, null);
      return status(plan);
    }
    return switch (handOff.deliver(plan, target, progress())) {
      case Delivery.Delivered done -> {
        report(plan, done);
        yield status(plan);
      }
      case Delivery.Refused refused -> {
        plan.withheld().forEach(this::warn);
        refused.remarks().forEach(this::note);
        throw new CommandFailure(ExitStatus.REFUSED, refused.problem());
      }
      case Delivery.Failed failed -> {
        failed.remarks().forEach(this::note);
        throw new CommandFailure(ExitStatus.FAILED, failed.problem());
      }
      case Delivery.Cancelled cancelled -> {
        cancelled.remarks().forEach(this::note);
        throw new CommandFailure(ExitStatus.FAILED, new Problem("cancelled", ""));
      }
    };
  }

  private HandOffPlan plan(HandOff handOff) throws IOException, JobException {
    if (chosen.picks != null) {
      return handOff.picked(chosen.picks);
    }
    return chosen.inTheApp ? handOff.chosen() : handOff.rated(chosen.rating);
  }

  private static int status(HandOffPlan plan) {
    return (plan.withheld().isEmpty() ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
  }

  private Progress progress() {
    return (done, total) -> {
      if (done == total || done % 500 == 0) {
        output.err().println(done + " of " + total + " files copied");
      }
    };
  }

  private void report(HandOffPlan plan, Delivery.Delivered done) {
    if (done != null) {
      done.remarks().forEach(this::note);
    }
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("delivered", done != null);
      if (done != null) {
        document.put("handOff", done.number());
        document.put("folder", done.folder().toString());
        document.put("remarks", done.remarks().stream().map(DeliverCommand::json).toList());
      }
      document.put("files", plan.files());
      document.put("bytes", plan.bytes());
      document.put("selects", plan.selects().stream().map(DeliverCommand::json).toList());
      document.put("withheld", plan.withheld().stream().map(DeliverCommand::json).toList());
      output.write(document);
      return;
    }
    plan.withheld().forEach(this::warn);
    var lines =
        done == null ? HandOffDescription.planned(plan) : HandOffDescription.delivered(done);
    lines.forEach(output.out()::println);
  }

  private void warn(Withheld withheld) {
    output.err().println("withheld: " + withheld.problem().sentence());
    if (!withheld.problem().remedy().isEmpty()) {
      output.err().println("  " + remedy(withheld));
    }
  }

  private void note(Problem remark) {
    output.err().println("Note: " + remark.sentence());
    if (!remark.remedy().isEmpty()) {
      output.err().println("  " + remark.remedy());
    }
  }

  private static String remedy(Withheld withheld) {
    return withheld.problem().remedy()
        + switch (withheld.tool()) {
          case NONE -> "";
          case RENAMING -> " See: framewright rename JOB";
          case CHECKING -> " See: framewright check";
        };
  }

  private static Map<String, Object> json(Select select) {
    var one = new LinkedHashMap<String, Object>();
    one.put("setup", select.place().setup());
    one.put("view", select.place().view().orElse(null));
    one.put("original", select.original());
    one.put("select", select.name());
    one.put(
        "rating",
        select.frame().capture().rating().isPresent()
            ? select.frame().capture().rating().getAsInt()
            : null);
    one.put("files", List.copyOf(select.files()));
    return one;
  }

  private static Map<String, Object> json(Withheld withheld) {
    return Map.of(
        "what", withheld.problem().where(),
        "why", withheld.problem().what(),
        "remedy", remedy(withheld));
  }

  private static Map<String, Object> json(Problem remark) {
    return Map.of("what", remark.what(), "where", remark.where(), "remedy", remark.remedy());
  }
}
