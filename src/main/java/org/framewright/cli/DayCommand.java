package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.framewright.base.Text;
import org.framewright.copies.CopiesDescription;
import org.framewright.copies.FramesOnce;
import org.framewright.day.DayDescription;
import org.framewright.day.DaySummary;
import org.framewright.day.Forecast;
import org.framewright.day.KindPace;
import org.framewright.day.OrderOfWork;
import org.framewright.job.JobException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** How the day stands. */
@Command(
    name = "day",
    description = "Says how the job stands: setups by state, pace, when it will be done, space.",
    addMethodSubcommands = false)
final class DayCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Mixin private HoursOptions hours;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var worked = hours.hours(output);
    var job = JobFolder.open(folder, output);
    var scan = job.scan();
    var standing = job.standing(scan);
    var summary = DaySummary.of(job, scan, standing, worked);
    var once = FramesOnce.of(job, scan);
    var supplies = DayFacts.supplies(job, scan, worked.zone());
    var order = OrderOfWork.of(job, scan, standing.state(), worked, Set.of());
    if (output.json()) {
      var document = json(summary);
      document.put("speed", DayFacts.json(supplies));
      document.put("battery", DayFacts.battery(supplies));
      document.put("order", DayFacts.gain(order));
      document.put("inOnePlace", once.map(CopiesCommand::json).orElse(null));
      document.put("comments", job.comments().stream().map(CommentDescription::document).toList());
      output.write(document);
    } else {
      DayDescription.lines(summary, supplies, order).forEach(output.out()::println);
      once.ifPresent(frames -> output.out().println(CopiesDescription.line(frames, worked.zone())));
      var zone = worked.zone();
      CommentDescription.lines(job.comments(), scan, LocalDate.ofInstant(summary.at(), zone), zone)
          .forEach(output.out()::println);
    }
    return (summary.space().enough() ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
  }

  private static Map<String, Object> json(DaySummary summary) {
    var document = new LinkedHashMap<String, Object>();
    document.put("at", summary.at().toString());
    var setups = new LinkedHashMap<String, Object>();
    summary.setups().forEach((state, count) -> setups.put(state.word(), count));
    document.put("setups", setups);
    document.put("frames", summary.frames());
    document.put("unassigned", summary.unassigned());
    var pace = new LinkedHashMap<String, Object>();
    pace.put("setupsShot", summary.pace().times().size());
    pace.put("meanMinutes", summary.pace().mean().map(DayCommand::minutes).orElse(null));
    pace.put("recentMinutes", summary.pace().recent().map(DayCommand::minutes).orElse(null));
    document.put("pace", pace);
    document.put("left", summary.all().setups());
    document.put("likely", likely(summary.all()));
    document.put("whyNoRange", whyNoRange(summary.all()));
    document.put("kinds", summary.kinds().stream().map(DayCommand::json).toList());
    document.put("today", summary.today().map(DayCommand::json).orElse(null));
    document.put("all", json(summary.all()));
    var space = new LinkedHashMap<String, Object>();
    space.put("usedBytes", summary.space().used());
    space.put("bytesPerFrame", summary.space().bytesPerFrame());
    space.put(
        "framesPlanned",
        summary.space().planned().isPresent() ? summary.space().planned().getAsLong() : null);
    space.put(
        "neededBytes",
        summary.space().needed().isPresent() ? summary.space().needed().getAsLong() : null);
    space.put("freeBytes", summary.space().free());
    space.put("enough", summary.space().enough());
    document.put("space", space);
    document.put("attention", summary.attention().stream().map(Text::english).toList());
    return document;
  }

  private static Map<String, Object> likely(Forecast forecast) {
    if (forecast.earliest().isEmpty()) {
      return null;
    }
    var likely = new LinkedHashMap<String, Object>();
    likely.put("finish", forecast.finish().map(Object::toString).orElse(null));
    likely.put("earliest", forecast.earliest().map(Object::toString).orElse(null));
    likely.put("latest", forecast.latest().map(Object::toString).orElse(null));
    return likely;
  }

  private static String whyNoRange(Forecast forecast) {
    return forecast.noForecast().or(() -> forecast.whyNoRange().map(Text::english)).orElse(null);
  }

  private static Map<String, Object> json(KindPace kind) {
    var document = new LinkedHashMap<String, Object>();
    document.put("kind", kind.kind());
    document.put("shot", kind.shot());
    document.put("meanMinutes", kind.mean().map(DayCommand::minutes).orElse(null));
    document.put("left", kind.left());
    return document;
  }

  private static Map<String, Object> json(Forecast forecast) {
    var document = new LinkedHashMap<String, Object>();
    document.put("setups", forecast.setups());
    document.put("minutes", forecast.work().map(DayCommand::minutes).orElse(null));
    document.put("finish", forecast.finish().map(Object::toString).orElse(null));
    document.put("earliest", forecast.earliest().map(Object::toString).orElse(null));
    document.put("latest", forecast.latest().map(Object::toString).orElse(null));
    document.put("noForecast", forecast.noForecast().orElse(null));
    document.put("whyNoRange", forecast.whyNoRange().map(Text::english).orElse(null));
    document.put("taktMinutes", forecast.takt().map(DayCommand::minutes).orElse(null));
    return document;
  }

  static double minutes(Duration time) {
    return Math.round(time.toMillis() / 600.0) / 100.0;
  }
}
