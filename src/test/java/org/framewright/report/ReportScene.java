package org.framewright.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Progress;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.job.TestClock;
import org.framewright.naming.Convention;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** A small job, in the middle of its day, whose titles are in many scripts. */
final class ReportScene {
  /** Invented; the last ones try to be more than text. */
  static final List<String> TITLES =
      List.of(
          "Évasé skirt, “früh” Łagodny",
          "معطف صوفي طويل 12",
          "מעיל צמר ארוך",
          "羊毛のコート、ダブルボタン",
          "真丝衬衫，立领",
          "양모 재킷",
          "เสื้อคลุมผ้าไหม",
          "Шерстяное пальто",
          "Παλτό με κουμπιά",
          "<script>alert(1)</script> & 'more' \"of\" ]]> --> </style>",
          "turned \u202Egnirts\u202C and \u0007 bell \u001b[31m",
          "W".repeat(10_000));

  private final Path folder;
  private final TestClock clock = new TestClock("2026-11-23T08:50:00Z");
  private final Job job;

  ReportScene(Path folder) throws Exception {
    this.folder = folder;
    var text = Files.readString(Path.of("templates/fashion-days.yaml"));
    var convention = ((Convention.Parsed.Sound) Convention.parse(text, "test.yaml")).convention();
    job =
        ((Started.Opened)
                Job.start(
                    convention,
                    folder,
                    Map.of("day", "2026-11-23", "client", "KVO", "title", "Winter wool"),
                    clock))
            .job();
    var setups = new ArrayList<Setup>();
    for (int i = 0; i < TITLES.size(); i++) {
      setups.add(setup(i + 1, TITLES.get(i)));
    }
    job.importList(new ShotList(setups));
    var frames = job.framesFolder();
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG_RATED_INSIDE, 1);
    clock.set("2026-11-23T09:00:00Z");
    for (int i = 1; i <= 8; i++) {
      var code = code(i);
      job.mark(code, SetupState.ON_SET, MarkDetails.by("Timo").andView("F"));
      for (int shot = 0; shot < 3; shot++) {
        clock.pass(Duration.ofMinutes(5));
        var exposure = Exposure.of(clock.instant(), code, "F");
        camera.take(shot == 0 ? exposure.rated(5) : exposure.heldUpright()).writeTo(frames);
        job.recordArrivals(job.scan());
      }
      clock.pass(Duration.ofMinutes(5));
      job.mark(code, SetupState.SHOT, MarkDetails.by("Timo"));
      if (i != 3) {
        clock.pass(Duration.ofMinutes(2));
        job.mark(code, SetupState.SIGNED_OFF, MarkDetails.by(i == 2 ? "أوديت" : "Odette"));
      }
    }
    job.comment(code(2), List.of(), "collar lower", "Ada");
    job.comment(code(1), List.of(job.scan().frames().getFirst().id()), "<b>belt</b>", "");
    job.select(List.of(job.scan().frames().getFirst().id()), true, "Timo");
    job.mark(code(10), SetupState.PICKUP, new MarkDetails(some("Odette"), none(), some("<b>")));
    job.mark(code(11), SetupState.DROPPED, new MarkDetails(some("Odette"), none(), none()));
    clock.pass(Duration.ofMinutes(10));
  }

  private static Optional<String> some(String text) {
    return Optional.of(text);
  }

  private static Optional<String> none() {
    return Optional.empty();
  }

  static String code(int number) {
    return String.format(Locale.ROOT, "%03d", number);
  }

  static Setup setup(int number, String title) {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Rack", "A" + number);
    columns.put("Model", number % 2 == 0 ? "Jonna" : "Þórdís Anna-Sofía");
    columns.put("Note", number == 12 ? "羊毛, then \u202Eback" : "");
    return new Setup(
        code(number), title, List.of(new View("F"), new View("B")), OptionalInt.of(3), columns);
  }

  Job job() {
    return job;
  }

  TestClock clock() {
    return clock;
  }

  ReportOptions options(ReportKind kind, String language) {
    return new ReportOptions(
        kind,
        Paper.A4,
        Locale.of(language),
        DayHours.usual(ZoneOffset.UTC),
        new Letterhead("Studio Növa", "hello@nova.example", Optional.empty()));
  }

  Report report(ReportKind kind, String language) throws IOException {
    return Report.of(job, job.scan(), options(kind, language));
  }

  /** A report of that kind and form. */
  Path written(ReportKind kind, ReportForm form, String language) throws IOException {
    var file = folder.resolve(kind.word() + "-" + language + "." + form.word());
    var ended = report(kind, language).write(file, form, true, Progress.NONE);
    if (!(ended instanceof Report.Written.Done)) {
      throw new AssertionError(ended);
    }
    return file;
  }

  String html(ReportKind kind) throws IOException {
    return Files.readString(written(kind, ReportForm.HTML, "en"));
  }

  JobFacts facts() throws IOException {
    return JobFacts.of(job, job.scan(), DayHours.usual(ZoneOffset.UTC));
  }

  Instant now() {
    return clock.instant();
  }
}
