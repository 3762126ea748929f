package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.copies.Compared;
import org.framewright.copies.Comparison;
import org.framewright.copies.CopiesDescription;
import org.framewright.copies.CopiesException;
import org.framewright.copies.CopiesRequest;
import org.framewright.copies.FramesOnce;
import org.framewright.copies.Reason;
import org.framewright.copies.WaivedFile;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Compares cards, the job and backups, and says whether a card may be cleared. */
@Command(
    name = "copies",
    description =
        "Compares cards, the job and backups by content, and says with evidence whether a card may"
            + " be cleared. Nothing is ever written on a card. Without folders: the last answers.",
    addMethodSubcommands = false)
final class CopiesCommand implements Callable<Integer> {
  @ParentCommand private Framewright framewright;

  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Parameters(
      index = "1..*",
      arity = "0..*",
      paramLabel = "FOLDER",
      description = "Cards and backups; a folder with DCIM at its top is a card.")
  private List<Path> folders = new ArrayList<>();

  @Option(
      names = "--card",
      paramLabel = "FOLDER",
      description = "A card that has no DCIM at its top; may be given several times.")
  private List<Path> cards = new ArrayList<>();

  @Option(
      names = "--backup",
      paramLabel = "FOLDER",
      description =
          "A backup that has DCIM at its top, such as a copied card; may be given several times.")
  private List<Path> backups = new ArrayList<>();

  @Option(
      names = "--needed",
      paramLabel = "N",
      defaultValue = "2",
      description =
          "On how many disks besides the card each file has to be, 1 to 9; ${DEFAULT-VALUE} where"
              + " not given.")
  private int needed;

  @Option(
      names = "--waive",
      paramLabel = "FILE",
      description = "A file of a card that need not be kept; may be given several times.")
  private List<Path> waived = new ArrayList<>();

  @Option(
      names = "--by",
      paramLabel = "PERSON",
      description = "Who asks; needed with --waive, else the name of the computer's user.")
  private String by;

  @Option(
      names = "--mhl",
      description =
          "Read each backup whole, and add a generation to the ASC MHL (media hash list) at its"
              + " top.")
  private boolean mhl;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (!waived.isEmpty() && (by == null || by.isBlank())) {
      throw CommandFailure.badInput("--waive needs a person's word", "Say who: --by PERSON.");
    }
    var job = JobFolder.open(folder, output);
    if (folders.isEmpty() && cards.isEmpty() && backups.isEmpty()) {
      return last(job).code();
    }
    var request =
        new CopiesRequest(
            folders,
            cards,
            backups,
            needed,
            waived.stream().map(file -> WaivedFile.byName(file, by)).toList(),
            by == null ? System.getProperty("user.name", "") : by,
            mhl);
    try (var interruption = new Interruption()) {
      var compared = new Comparison(job, framewright.volumes()).run(request, interruption);
      if (compared.isEmpty()) {
        throw new CommandFailure(
            ExitStatus.FAILED,
            "the comparison was stopped; nothing is known, and nothing was written",
            "Ask again.");
      }
      if (output.json()) {
        output.write(json(compared.get()));
      } else {
        CopiesDescription.lines(compared.get(), ZoneId.systemDefault())
            .forEach(output.out()::println);
      }
      return (compared.get().allIsWell() ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
    } catch (CopiesException e) {
      throw new CommandFailure(
          e.isRefused() ? ExitStatus.REFUSED : ExitStatus.BAD_INPUT, e.problem());
    }
  }

  private ExitStatus last(Job job) throws IOException {
    var once = FramesOnce.of(job, job.scan());
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("files", 0);
      document.put("places", List.of());
      document.put("cards", List.of());
      document.put(
          "last", CopiesDescription.lastAnswers(job).stream().map(CopiesCommand::json).toList());
      document.put("inOnePlace", once.map(CopiesCommand::json).orElse(null));
      output.write(document);
      return ExitStatus.DONE;
    }
    CopiesDescription.last(job, ZoneId.systemDefault()).forEach(output.out()::println);
    once.ifPresent(
        frames -> output.out().println(CopiesDescription.line(frames, ZoneId.systemDefault())));
    return ExitStatus.DONE;
  }

  /** How many frames are in one place only, as other commands say it too. */
  static Map<String, Object> json(FramesOnce once) {
    var document = new LinkedHashMap<String, Object>();
    document.put("at", once.at().toString());
    document.put("frames", once.frames());
    document.put("once", once.once());
    document.put("notCompared", once.notCompared());
    return document;
  }

  private static Map<String, Object> json(CopiesDescription.LastAnswer answer) {
    var document = new LinkedHashMap<String, Object>();
    document.put("folder", answer.card().folder());
    document.put("answer", answer.card().answer());
    document.put("at", answer.at().at().toString());
    document.put("by", answer.at().found().by());
    document.put("files", answer.card().files());
    document.put("bytes", answer.card().bytes());
    document.put("digest", answer.card().digest());
    document.put("on", answer.card().on());
    document.put("evidence", answer.at().found().evidence());
    return document;
  }

  static Map<String, Object> json(Compared compared) {
    var document = new LinkedHashMap<String, Object>();
    document.put("files", compared.files());
    document.put("at", compared.at().toString());
    document.put("by", compared.by());
    document.put("places", compared.places().stream().map(CopiesCommand::json).toList());
    document.put("cards", compared.cards().stream().map(card -> json(card, compared)).toList());
    document.put("frames", compared.frames().frames());
    document.put("framesInOnePlace", compared.frames().once());
    document.put("sidecarsInOnePlace", compared.sidecarsOnce());
    document.put("evidence", compared.evidence().map(Path::toString).orElse(null));
    return document;
  }

  private static Map<String, Object> json(Compared.PlaceCompared place) {
    var one = new LinkedHashMap<String, Object>();
    one.put("folder", place.folder().toString());
    one.put("device", place.device());
    one.put("job", place.isJob());
    one.put("identical", place.identical());
    one.put("missing", place.missing().stream().map(Path::toString).toList());
    one.put("different", place.different().stream().map(CopiesCommand::json).toList());
    one.put("samePicture", place.samePicture().stream().map(CopiesCommand::json).toList());
    one.put("extra", place.extra());
    one.put("mhl", place.mhl().map(Path::toString).orElse(null));
    one.put("troubles", place.troubles().stream().map(Problem::sentence).toList());
    return one;
  }

  private static Map<String, Object> json(Compared.Pair pair) {
    return Map.of("file", pair.file().toString(), "here", pair.here(), "why", pair.why());
  }

  private static Map<String, Object> json(Compared.CardCompared card, Compared compared) {
    var one = new LinkedHashMap<String, Object>();
    one.put("folder", card.folder().toString());
    one.put("device", card.device());
    one.put("answer", card.verdict().word());
    one.put("mayClear", card.mayClear());
    one.put("why", card.verdict().why().stream().map(CopiesCommand::json).toList());
    var state = new LinkedHashMap<String, Object>();
    state.put("files", card.state().files());
    state.put("bytes", card.state().bytes());
    state.put("digest", card.state().digest());
    one.put("state", state);
    one.put(
        "sentence",
        PlainText.line(CopiesDescription.sentence(card, compared.at(), ZoneId.systemDefault())));
    one.put("afterClearing", CopiesDescription.afterClearing(card.verdict()).orElse(null));
    one.put("litter", card.litter());
    return one;
  }

  private static Map<String, Object> json(Reason reason) {
    var one = new LinkedHashMap<String, Object>();
    one.put("rule", reason.rule().word());
    one.put("message", reason.message());
    one.put("remedy", reason.remedy());
    one.put("files", reason.files());
    one.put("count", reason.count());
    return one;
  }
}
