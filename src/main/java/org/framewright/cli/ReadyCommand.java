package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.ready.Answer;
import org.framewright.ready.Asked;
import org.framewright.ready.Checklist;
import org.framewright.ready.Checklists;
import org.framewright.ready.Measured;
import org.framewright.ready.ReadyDescription;
import org.framewright.ready.Surroundings;
import org.framewright.ready.Ticked;
import org.framewright.sample.SampleFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Whether the day can begin, or end. */
@Command(
    name = "ready",
    description =
        "Says whether the day can begin: what can be measured is measured, what people look after"
            + " is ticked. With --wrap: whether it can end. The job keeps the answer.",
    addMethodSubcommands = false)
final class ReadyCommand implements Callable<Integer> {
  @ParentCommand private Framewright framewright;

  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(names = "--wrap", description = "Ask after the last frame.")
  private boolean wrap;

  @Option(
      names = "--quick",
      description = "Leave out how fast the disk is, which takes some seconds of writing.")
  private boolean quick;

  @Option(
      names = "--copies",
      paramLabel = "FOLDER",
      description =
          "A place for copies; may be given several times. Where none is given, those of the last"
              + " answer.")
  private List<Path> places = new ArrayList<>();

  @Option(
      names = "--burst",
      paramLabel = "N",
      description =
          "How many frames follow each other at once, 1 to 1000; "
              + Asked.USUAL_BURST
              + " where not given.")
  private int burst = Asked.USUAL_BURST;

  @Option(
      names = "--checklist",
      paramLabel = "NAME",
      description =
          "Put a checklist into the job, as checklist.yaml, to be changed there: interiors,"
              + " outdoors, products or studio.")
  private String checklist;

  @Option(
      names = "--tick",
      paramLabel = "ITEM",
      description = "Tick an item of the checklist for today; may be given several times.")
  private List<String> ticks = new ArrayList<>();

  @Option(
      names = "--untick",
      paramLabel = "ITEM",
      description = "Take a tick back; may be given several times.")
  private List<String> unticks = new ArrayList<>();

  @Option(names = "--by", paramLabel = "PERSON", description = "Who looked; needed with --tick.")
  private String by = "";

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (burst < 1 || burst > 1000) {
      throw CommandFailure.badInput("--burst takes 1 to 1000 frames", "Such as --burst 20.");
    }
    if (!(ticks.isEmpty() && unticks.isEmpty()) && by.isBlank()) {
      throw CommandFailure.badInput("a tick needs the name of who looked", "Say who: --by PERSON.");
    }
    var job = JobFolder.open(folder, output);
    if (checklist != null) {
      new Checklists(SampleFiles.find().templates().resolve("checklists")).choose(job, checklist);
    }
    tick(job);
    var answer = answer(job);
    var noLonger = answer.changedSince(job);
    var lines = new ArrayList<>(ReadyDescription.last(job, answer));
    job.record(answer.record());
    if (output.json()) {
      output.write(json(answer, noLonger));
    } else {
      lines.addAll(ReadyDescription.lines(answer, job.zone()));
      lines.forEach(output.out()::println);
    }
    return (answer.kind() == Answer.Kind.READY ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON)
        .code();
  }

  private void tick(Job job) throws IOException, JobException, CommandFailure {
    if (ticks.isEmpty() && unticks.isEmpty()) {
      return;
    }
    var parsed = Checklists.of(job);
    if (parsed.isEmpty()) {
      throw CommandFailure.badInput(
          "the job has no checklist, so nothing can be ticked", "Choose one: --checklist studio.");
    }
    var list = Checklists.sound(parsed.get());
    var items = new ArrayList<>(ticks);
    items.addAll(unticks);
    for (var item : items) {
      if (!list.morning().containsKey(item) && !list.evening().containsKey(item)) {
        throw CommandFailure.badInput(
            "the checklist has no item " + PlainText.line(item), known(list));
      }
    }
    for (var item : ticks) {
      job.tickItem(item, true, by);
    }
    for (var item : unticks) {
      job.tickItem(item, false, by);
    }
  }

  private static String known(Checklist list) {
    return "In the morning it has "
        + String.join(", ", list.morning().keySet())
        + "; in the evening "
        + String.join(", ", list.evening().keySet())
        + ".";
  }

  private Answer answer(Job job) throws IOException, JobException, CommandFailure {
    var around = Surroundings.ofThisComputer(framewright.volumes());
    if (wrap) {
      return Answer.evening(job, job.scan(), around);
    }
    if (!quick) {
      output.err().println("The disk is measured, which takes some seconds ...");
    }
    try (var interruption = new Interruption()) {
      var asked = new Asked(burst, places, quick);
      var answer = Answer.morning(job, job.scan(), asked, around, interruption);
      if (interruption.cancelled()) {
        throw new CommandFailure(
            ExitStatus.FAILED, "it was stopped; nothing was written down", "Ask again.");
      }
      return answer;
    }
  }

  private static Map<String, Object> json(Answer answer, List<Text> noLonger) {
    var document = new LinkedHashMap<String, Object>();
    document.put("of", answer.wrap() ? "evening" : "morning");
    document.put("answer", answer.kind().word());
    document.put("missing", answer.missing().stream().map(ReadyCommand::json).toList());
    document.put("measured", answer.measured().stream().map(ReadyCommand::json).toList());
    document.put("checklist", answer.checklist().map(Checklist::title).orElse(null));
    document.put("items", answer.items().stream().map(ReadyCommand::json).toList());
    document.put("noLonger", noLonger.stream().map(Text::english).toList());
    document.put("restsOn", answer.restsOn());
    return document;
  }

  private static Map<String, Object> json(Answer.Missing missing) {
    var document = new LinkedHashMap<String, Object>();
    document.put("stops", missing.stops());
    document.put("what", missing.what().english());
    document.put("remedy", missing.remedy().english());
    return document;
  }

  private static Map<String, Object> json(Measured one) {
    var document = new LinkedHashMap<String, Object>();
    document.put("check", one.topic().word());
    document.put("outcome", one.outcome().word());
    document.put("said", one.outcome().said().english());
    document.put("remedy", one.outcome().remedy().english());
    return document;
  }

  private static Map<String, Object> json(Ticked item) {
    var document = new LinkedHashMap<String, Object>();
    document.put("item", item.id());
    document.put("text", item.item().text());
    document.put("caution", item.item().caution());
    document.put("tickedBy", item.tick().map(tick -> tick.by()).orElse(null));
    document.put("tickedAt", item.tick().map(tick -> tick.at().toString()).orElse(null));
    return document;
  }
}
