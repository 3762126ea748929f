package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.framewright.base.ByteSizes;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.handoff.ClientDelivery;
import org.framewright.handoff.ClientNames;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.Extent;
import org.framewright.handoff.ExtraPaper;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffDescription;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Returns;
import org.framewright.handoff.Select;
import org.framewright.handoff.Withheld;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.SetupRange;
import org.framewright.report.ReportForm;
import org.framewright.report.SelectPaper;
import org.framewright.report.Stationery;
import org.framewright.shotlist.Setup;
import org.framewright.ui.settings.Places;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the package for the retoucher, or that for the client. */
@Command(
    name = "deliver",
    description =
        "Copies the selects into a package with checksums for the retoucher, or what came back from"
            + " there into one for the client. The frames stay as they are.",
    addMethodSubcommands = false)
final class DeliverCommand implements Callable<Integer> {
  private static final int SHOWN = 20;

  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(
      names = "--to",
      paramLabel = "DIR",
      required = true,
      description = "The package's folder; it must not exist.")
  private Path target;

  @ArgGroup(exclusive = true, multiplicity = "0..1")
  private Chosen chosen = new Chosen();

  @Option(
      names = "--setups",
      paramLabel = "CODES",
      description =
          "Only frames of these setups: 001, 001..040, or several with commas between them; may be"
              + " given more than once. Without --rating, --names, --selects or --label: all their"
              + " frames.")
  private List<String> setups = List.of();

  @Option(
      names = "--pictures",
      paramLabel = "KIND",
      defaultValue = "all",
      description =
          "raw or jpeg: only these pictures of each frame, with the files that describe them; all.")
  private Extent.Pictures pictures;

  @Option(
      names = "--spec",
      paramLabel = "FILE",
      description = "With --returned: another delivery specification in place of the job's own.")
  private Path specification;

  @Option(
      names = "--with-findings",
      description =
          "With --returned: deliver also what is not as the delivery specification asks; without"
              + " it, such pictures are left out and told.")
  private boolean withFindings;

  @Option(
      names = "--new",
      description =
          "Only selects that no earlier hand-off had; with --returned, only files that no earlier"
              + " delivery had.")
  private boolean onlyNew;

  @Option(
      names = "--slates",
      description =
          "Also the slates of the setups of which frames go, under the names that they have in the"
              + " job; the package says that they are slates. Without it, none goes.")
  private boolean slates;

  @Option(
      names = "--split",
      paramLabel = "SIZE",
      converter = SizeConverter.class,
      description =
          "Several packages, DIR-1, DIR-2 and so on, none with more than SIZE of pictures: 20GB,"
              + " 500MB. The same command again goes on where one was interrupted.")
  private Long most;

  @Option(names = "--preview", description = "Shows what would be handed off and writes nothing.")
  private boolean preview;

  @Option(
      names = "--skip-unclear",
      description =
          "With --names: hand off what is clear, without the parts of lines that fit no frame or"
              + " several; they are told all the same, and the exit status is 1.")
  private boolean skipUnclear;

  @Option(
      names = "--metadata",
      paramLabel = "WHERE",
      description = {
        "Where the package says what the job knows of the selects (IPTC Photo Metadata as XMP):"
            + " sidecar, a file beside each; embed, inside the copies of JPEG, TIFF and DNG, too;"
            + " none. Without it: sidecar, and none with --returned, since the retoucher's files"
            + " have their own.",
        "Names and rights come from the app's page of settings. A sidecar of the frame goes along"
            + " with all that it says. The frames stay as they are."
      })
  private MetadataMode metadata;

  @Option(
      names = "--overwrite-metadata",
      description =
          "What the job and the settings say prevails over what somebody wrote in a sidecar or a"
              + " picture; without it, only the job's id, the title, the instructions and the"
              + " supplier's image id do.")
  private boolean overwriteMetadata;

  @Option(
      names = "--contact-sheet",
      description =
          "Also a contact sheet, contact-sheet.pdf: each picture of the package small, by setup,"
              + " under its name there. With --split, each package has its own.")
  private boolean contactSheet;

  @Option(
      names = "--list",
      paramLabel = "FORM",
      description =
          "Also a list of the package's pictures for a spreadsheet: xlsx or csv, as list.xlsx or"
              + " list.csv, with the numbers of the contact sheet.")
  private ListForm list;

  /** What lies beside the index besides. */
  private List<ExtraPaper> papers = List.of();

  private enum ListForm {
    XLSX,
    CSV
  }

  private static final class Chosen {
    @Option(names = "--rating", paramLabel = "N", description = "Frames rated N or higher, 1 to 5.")
    private Integer rating;

    @Option(
        names = "--names",
        paramLabel = "FILE",
        description = {
          "Frames that a client's list names: a text, the text of a mail, or a CSV.",
          "It may say IMG 1234, 1236-1240, or 001_F_0003.jpg, or what stood on a screenshot;"
              + " parts of names and names from before a rename count, if they fit one frame only."
              + " Each line is told with what it was taken for. Where one fits several frames or"
              + " none, nothing is handed off: settle it in the list, or see --skip-unclear."
        })
    private Path names;

    @Option(names = "--selects", description = "Frames that were marked as selects in the app.")
    private boolean selects;

    @Option(
        names = "--label",
        paramLabel = "TEXT",
        description = "Frames with this label in a sidecar or in the picture, letter by letter.")
    private String label;

    @Option(
        names = "--returned",
        paramLabel = "FOLDER",
        description =
            "For the client: the newest version of each select that came back in FOLDER, whole and"
                + " as the delivery specification asks, under the convention's name for"
                + " deliveries.")
    private Path returned;

    private boolean isMade() {
      return rating != null || names != null || selects || label != null || returned != null;
    }
  }

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (skipUnclear && chosen.names == null) {
      throw CommandFailure.badInput("--skip-unclear is for a list", "Use it with --names FILE.");
    }
    if (chosen.rating != null && (chosen.rating < 1 || chosen.rating > 5)) {
      throw CommandFailure.badInput(
          "--rating is " + chosen.rating, "Ratings go from 1 to 5; 0 means unrated.");
    }
    if (!chosen.isMade() && setups.isEmpty()) {
      throw CommandFailure.badInput(
          "nothing says which frames are handed off",
          "Give --rating N, --names FILE, --selects, --label TEXT or --setups CODES; or, for the"
              + " client, --returned FOLDER.");
    }
    requireOfReturned();
    var options = metadata();
    var job = JobFolder.open(folder, output);
    papers = papers(job);
    var scan = job.scan();
    if (chosen.returned != null) {
      var returns = returned(job);
      var client = ClientDelivery.of(job, scan, job.tally(scan), returns);
      var plan = client.plan(setups(job), onlyNew, withFindings);
      remarkOnMissing(returns);
      client.enclose(papers);
      return end(plan, null, parts -> client.deliver(parts, target, options, progress()));
    }
    FramesReport.remarkOnNotUnderstood(scan, "They are not handed off", output);
    var handOff =
        HandOff.of(job, scan, job.tally(scan))
            .within(new Extent(setups(job), pictures, onlyNew, slates))
            .enclosing(papers);
    var names = chosen.names == null ? null : handOff.names(chosen.names);
    return end(
        plan(handOff, names), names, parts -> handOff.deliver(parts, target, options, progress()));
  }

  private List<ExtraPaper> papers(Job job) throws CommandFailure {
    if (!contactSheet && list == null) {
      return List.of();
    }
    var stationery = Stationery.usual(ReportSettings.language(), ReportSettings.letterhead());
    var papers = new ArrayList<ExtraPaper>();
    if (contactSheet) {
      papers.add(new SelectPaper(job, ReportForm.PDF, stationery));
    }
    if (list != null) {
      var form = list == ListForm.XLSX ? ReportForm.XLSX : ReportForm.CSV;
      papers.add(new SelectPaper(job, form, stationery));
    }
    return papers;
  }

  private void requireOfReturned() throws CommandFailure {
    if (chosen.returned == null && (specification != null || withFindings)) {
      throw CommandFailure.badInput(
          (withFindings ? "--with-findings" : "--spec") + " is for what came back",
          "Use it with --returned FOLDER.");
    }
    if (chosen.returned == null) {
      return;
    }
    if (pictures != Extent.Pictures.ALL) {
      throw CommandFailure.badInput(
          "--pictures is for the frames of the job", "Leave it out with --returned.");
    }
    if (slates) {
      throw CommandFailure.badInput(
          "--slates is for the frames of the job", "Leave it out with --returned.");
    }
    if (!Files.isDirectory(chosen.returned)) {
      throw CommandFailure.badInput(
          "there is no folder " + chosen.returned, "Check the path; nothing was changed.");
    }
  }

  private void remarkOnMissing(Returns returns) {
    long missing = returns.count(Returns.State.MISSING);
    if (missing > 0) {
      output
          .err()
          .println(
              "Note: "
                  + PlainText.counted((int) missing, "select")
                  + " did not come back; see: framewright returns JOB FOLDER");
    }
  }

  /** What came back; what could not be used of the job's records and specification is told. */
  private Returns returned(Job job) throws IOException, JobException, CommandFailure {
    var returns =
        ReturnsCommand.read(job, chosen.returned, OptionalInt.empty(), specification, output);
    if (!returns.problems().isEmpty()) {
      throw new CommandFailure(ExitStatus.BAD_INPUT, returns.problems().getFirst());
    }
    return returns;
  }

  /** Writes the packages of a plan. */
  @FunctionalInterface
  private interface Deliveries {
    List<Delivery> of(List<HandOffPlan> parts) throws IOException;
  }

  private int end(HandOffPlan plan, ClientNames names, Deliveries deliveries)
      throws IOException, CommandFailure {
    if (preview || (names != null && !goesOn(names))) {
      report(plan, names, List.of());
      if (names != null) {
        unsettled(names);
      }
      return status(plan, names);
    }
    var parts = most == null ? List.of(plan) : plan.parts(most);
    requireFitting(parts);
    var ended = deliveries.of(parts);
    var done =
        ended.stream()
            .filter(Delivery.Delivered.class::isInstance)
            .map(Delivery.Delivered.class::cast)
            .toList();
    return switch (ended.getLast()) {
      case Delivery.Delivered _ -> {
        report(plan, names, done);
        yield status(plan, names);
      }
      case Delivery.Refused refused -> {
        plan.withheld().forEach(this::warn);
        throw stopped(ended.getLast(), done, ExitStatus.REFUSED, refused.problem());
      }
      case Delivery.Failed failed ->
          throw stopped(ended.getLast(), done, ExitStatus.FAILED, failed.problem());
      case Delivery.Cancelled _ ->
          throw stopped(ended.getLast(), done, ExitStatus.FAILED, new Problem("cancelled", ""));
    };
  }

  /** Says what is in its place all the same. */
  private CommandFailure stopped(
      Delivery last, List<Delivery.Delivered> done, ExitStatus status, Problem why) {
    for (var one : done) {
      one.remarks().forEach(this::note);
      output.err().println("hand-off " + one.number() + " is delivered: " + one.folder());
    }
    last.remarks().forEach(this::note);
    return new CommandFailure(done.isEmpty() ? status : ExitStatus.FAILED, why);
  }

  private void requireFitting(List<HandOffPlan> parts) throws CommandFailure {
    for (var part : parts) {
      if (most != null && part.bytes() > most) {
        throw CommandFailure.badInput(
            part.selects().getFirst().original()
                + " alone has "
                + ByteSizes.words(part.bytes())
                + ", more than --split allows",
            "Give a larger size, or --pictures raw or jpeg.");
      }
    }
  }

  private List<String> setups(Job job) throws JobException {
    var words = new ArrayList<String>();
    for (var given : setups) {
      words.addAll(SetupRange.words(job, given));
    }
    return SetupRange.setups(job, words).stream().map(Setup::code).toList();
  }

  private MetadataOptions metadata() throws CommandFailure {
    var where =
        metadata != null
            ? metadata
            : chosen.returned == null ? MetadataMode.SIDECAR : MetadataMode.NONE;
    if (where == MetadataMode.NONE) {
      if (overwriteMetadata) {
        throw CommandFailure.badInput(
            "--overwrite-metadata is for metadata that are written",
            "Leave it out, or --metadata none.");
      }
      return MetadataOptions.NONE;
    }
    return switch (Studio.read(Places.usual().preferences())) {
      case Studio.Reading.Sound sound ->
          new MetadataOptions(where, overwriteMetadata, sound.studio());
      case Studio.Reading.Faulty faulty ->
          throw new CommandFailure(ExitStatus.BAD_INPUT, faulty.problem());
    };
  }

  private HandOffPlan plan(HandOff handOff, ClientNames names) throws IOException {
    if (names != null) {
      return handOff.named(names);
    }
    if (chosen.selects) {
      return handOff.selects();
    }
    if (chosen.label != null) {
      return handOff.labelled(chosen.label);
    }
    return chosen.rating == null ? handOff.every() : handOff.rated(chosen.rating);
  }

  /** Whether a list names frames, and nothing in it has to be settled first. */
  private boolean goesOn(ClientNames names) {
    return !names.frames().isEmpty() && (skipUnclear || names.unclear().isEmpty());
  }

  private static int status(HandOffPlan plan, ClientNames names) {
    boolean settled = names == null || (names.unclear().isEmpty() && !names.frames().isEmpty());
    boolean clear = plan.withheld().isEmpty() && settled;
    return (clear ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
  }

  private Progress progress() {
    return (done, total) -> {
      if (done == total || done % 500 == 0) {
        output.err().println(done + " of " + total + steps());
      }
    };
  }

  private String steps() {
    return contactSheet ? " files copied and pictures printed" : " files copied";
  }

  private void report(HandOffPlan plan, ClientNames names, List<Delivery.Delivered> done) {
    if (names != null) {
      names.remarks().forEach(this::note);
    }
    done.forEach(one -> one.remarks().forEach(this::note));
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("delivered", !done.isEmpty());
      if (!done.isEmpty()) {
        document.putAll(json(done.getFirst()));
        document.put("packages", done.stream().map(this::json).toList());
      }
      if (names != null) {
        document.putAll(NamesReport.of(names));
      }
      document.put("files", plan.files());
      document.put("bytes", plan.bytes());
      document.put("selects", plan.selects().stream().map(this::json).toList());
      document.put("wentBefore", plan.before());
      document.put("withheld", plan.withheld().stream().map(DeliverCommand::json).toList());
      output.write(document);
      return;
    }
    if (names != null) {
      HandOffDescription.names(names).forEach(output.out()::println);
    }
    plan.withheld().forEach(this::warn);
    if (done.isEmpty()) {
      (chosen.returned == null
              ? HandOffDescription.planned(plan)
              : HandOffDescription.plannedForClient(plan))
          .forEach(output.out()::println);
      parts(plan).forEach(output.out()::println);
    } else {
      done.forEach(one -> HandOffDescription.delivered(one).forEach(output.out()::println));
      HandOffDescription.before(plan).forEach(output.out()::println);
    }
  }

  private List<String> parts(HandOffPlan plan) {
    var parts = most == null ? List.<HandOffPlan>of() : plan.parts(most);
    return parts.size() < 2
        ? List.of()
        : parts.stream()
            .map(
                part ->
                    "  a package of "
                        + PlainText.counted(part.selects().size(), "select")
                        + ", "
                        + ByteSizes.words(part.bytes()))
            .toList();
  }

  private Map<String, Object> json(Delivery.Delivered done) {
    var one = new LinkedHashMap<String, Object>();
    one.put("handOff", done.number());
    one.put("folder", done.folder().toString());
    one.put("sidecars", done.described().sidecars());
    one.put("embedded", done.described().embedded());
    one.put("papers", papers.stream().map(ExtraPaper::name).toList());
    one.put("remarks", done.remarks().stream().map(DeliverCommand::json).toList());
    return one;
  }

  private void unsettled(ClientNames names) {
    if (names.frames().isEmpty()) {
      output.err().println("No line of " + names.file() + " names a frame; nothing is handed off.");
    } else if (!names.unclear().isEmpty() && !skipUnclear) {
      output
          .err()
          .println(
              "Nothing is handed off before these lines of "
                  + names.file()
                  + " are settled: "
                  + numbers(names));
      output.err().println("  Correct them there, or leave them out with --skip-unclear.");
    }
  }

  private static String numbers(ClientNames names) {
    var numbers =
        names.unclear().stream().map(line -> String.valueOf(line.number())).limit(SHOWN).toList();
    int more = names.unclear().size() - numbers.size();
    return String.join(", ", numbers) + (more > 0 ? " and " + more + " more" : "");
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

  private Map<String, Object> json(Select select) {
    var one = new LinkedHashMap<String, Object>();
    one.put("setup", select.place().setup());
    one.put("view", select.place().view().orElse(null));
    one.put("original", select.original());
    one.put("select", select.name());
    one.put("rating", select.rating().isPresent() ? select.rating().getAsInt() : null);
    one.put("files", List.copyOf(select.files()));
    one.put("slate", select.slate());
    if (chosen.returned != null) {
      one.put(
          "returned",
          select.frame().files().stream()
              .map(file -> file.path().getFileName().toString())
              .toList());
    }
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
