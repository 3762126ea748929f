package org.framewright.sample;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.framewright.base.Durations;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.day.DayDescription;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.day.OrderOfWork;
import org.framewright.day.Supplies;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffDescription;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.Returns;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.job.FramesDescription;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Reserved;
import org.framewright.ready.Answer;
import org.framewright.ready.Asked;
import org.framewright.ready.Checklists;
import org.framewright.ready.ReadyDescription;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.Plan;
import org.framewright.renaming.PlannedRename;
import org.framewright.renaming.RenameDescription;
import org.framewright.renaming.Renamer;
import org.framewright.renaming.Status;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListDescription;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/** The invented fashion job, played over four days. */
public final class SampleDay {
  /** The convention that the job is started from. */
  static final String TEMPLATE = "fashion-days.yaml";

  static final String LIST = "shot-list.csv";
  private static final String NOON_LIST = "shot-list-noon.csv";

  /** Where a command prints more than the story shows. */
  private static final String MORE = "...";

  private static final String ASIDE = "settings of an old export";

  private final SampleFiles files;
  private final Path into;
  private final Duration shift;
  private final SampleCamera.Size size;
  private final Narration narration;
  private SampleSet set;
  private SampleClock clock;

  private SampleDay(
      SampleFiles files, Path into, Duration shift, SampleCamera.Size size, Narration narration) {
    this.files = files;
    this.into = into;
    this.shift = shift;
    this.size = size;
    this.narration = narration;
  }

  /**
   * Plays all four days.
   *
   * @param into where the job folder is made; the hand-off goes beside it
   * @return the job folder
   */
  public static Path play(SampleFiles files, Path into, SampleCamera.Size size, Narration narration)
      throws IOException, JobException {
    var day = new SampleDay(files, into, Duration.ZERO, size, narration);
    day.begin();
    day.ready();
    day.firstDay();
    day.secondMorning();
    day.secondAfternoon();
    day.thirdDay();
    day.fourthDay();
    day.count();
    day.rename();
    var package1 = day.handOff();
    day.comesBack(package1);
    SlateDay.play(convention(files.templates().resolve(TEMPLATE)), into, day.shift, narration);
    day.summary();
    return day.set.job().folder();
  }

  /**
   * Plays the first day and the second until just before noon, and stops there with a garment on
   * set and frames on the disk.
   *
   * @param now that moment; all times of the job are moved to it
   * @return the job folder
   */
  public static Path untilNoonOfTheSecondDay(
      SampleFiles files, Path into, SampleCamera.Size size, Instant now)
      throws IOException, JobException {
    var noon = SampleSet.moment(2, 11, 40, Duration.ZERO);
    var day = new SampleDay(files, into, Duration.between(noon, now), size, Narration.SILENT);
    day.begin();
    day.firstDay();
    day.secondMorning();
    var next = day.set.setup(15);
    day.clock.set(now.minus(Duration.ofMinutes(9)));
    day.set.mark(next.code(), SetupState.ON_SET, MarkDetails.by("Timo").andView("F"));
    day.clock.set(now.minus(Duration.ofMinutes(2)));
    day.set.burst(next, "F", 3);
    return day.set.job().folder();
  }

  // ---- The story

  private void begin() throws IOException, JobException {
    clock = new SampleClock(SampleSet.moment(1, 8, 30, shift), SampleSet.ZONE);
    narration.heading("The job folder");
    narration.line(
        "Everything here is invented: the label, the people, the garments and the cameras.");
    var template = files.templates().resolve(TEMPLATE);
    var convention = convention(template);
    var values = new LinkedHashMap<String, String>();
    // Where a convention has a first day of its own, frames are named by the day they are taken.
    values.put(
        convention.fields().containsKey("start") ? "start" : "day",
        LocalDate.ofInstant(clock.instant(), SampleSet.ZONE).toString());
    values.put("client", "KVÖ");
    values.put("title", "AW look book");
    var job = start(convention, values);
    set = new SampleSet(job, clock, shift, size);
    command(
        "start --by templates/"
            + TEMPLATE
            + " --in "
            + into
            + values.entrySet().stream()
                .map(value -> " " + value.getKey() + "=" + quoted(value.getValue()))
                .collect(Collectors.joining()));
    if (convention.build(Reserved.JOB, values) instanceof Built.Name name) {
      name.steps().forEach(step -> narration.line(step.description()));
    }
    narration.line(job.folder().toString());
    narration.line("It holds a folder for each kind of file:");
    for (var role : convention.folders().keySet()) {
      narration.line("  " + job.folder().relativize(job.folder(role)) + "   for the " + role);
    }

    narration.heading("The shot list");
    show(job.importList(list(LIST)));
    var list = job.shotList().setups();
    narration.line(
        "In all "
            + list.stream().mapToInt(setup -> setup.views().size()).sum()
            + " views and "
            + list.stream().mapToInt(setup -> setup.wanted().orElse(0)).sum()
            + " frames are wanted.");
  }

  private Job start(Convention convention, Map<String, String> values)
      throws IOException, JobException {
    Files.createDirectories(into);
    return switch (Job.start(convention, into, values, clock)) {
      case Started.Opened opened -> opened.job();
      case Started.Refused refused ->
          throw new JobException(
              told(refused.findings()), TEMPLATE, Text.of("Fix the template, then play again."));
    };
  }

  private static Convention convention(Path template) throws IOException, JobException {
    return switch (Convention.read(template)) {
      case Convention.Parsed.Sound sound -> sound.convention();
      case Convention.Parsed.Faulty faulty ->
          throw new JobException(
              told(faulty.findings()),
              template.toString(),
              Text.of("Fix the template, then play again."));
    };
  }

  /** Why a convention or a name was refused, in a line. */
  static Text told(List<Finding> findings) {
    return findings.stream()
        .map(Finding::said)
        .reduce((one, next) -> Text.of("{0}; {1}", one, next))
        .orElse(Text.NONE);
  }

  /** The sample's list, its days moved like everything else. */
  private ShotList list(String name) throws IOException, JobException {
    var file = files.samples().resolve(name);
    var understood =
        switch (ListReader.read(file)) {
          case ListReading.Understood read -> read;
          case ListReading.Refused refused ->
              throw new JobException(refused.problems().getFirst().problem());
        };
    command("list JOB --import samples/" + name);
    ListDescription.understood(understood).forEach(narration::line);
    var noon = SampleSet.moment(2, 11, 40, shift);
    long days =
        ChronoUnit.DAYS.between(
            SampleSet.FIRST_DAY.plusDays(1), LocalDate.ofInstant(noon, SampleSet.ZONE));
    return new ShotList(
        understood.list().setups().stream().map(setup -> moved(setup, days)).toList());
  }

  private static Setup moved(Setup setup, long days) {
    var day = setup.day();
    if (day.isEmpty() || days == 0) {
      return setup;
    }
    var columns = new LinkedHashMap<>(setup.columns());
    columns.replaceAll(
        (heading, text) ->
            text.equals(day.get()) ? LocalDate.parse(text).plusDays(days).toString() : text);
    return new Setup(setup.code(), setup.title(), setup.views(), setup.framesWanted(), columns);
  }

  /** Before the first frame: what is measured is told, and people tick what they looked after. */
  private void ready() throws IOException, JobException {
    narration.heading("Ready before the first frame");
    var job = set.job();
    var lists = new Checklists(files.templates().resolve("checklists"));
    lists.choose(job, "studio");
    command("ready JOB --quick --checklist studio");
    var asked = new Asked(Asked.USUAL_BURST, List.of(), true);
    var around = new SampleSurroundings(clock);
    var first = Answer.morning(job, job.scan(), asked, around, Progress.NONE);
    job.record(first.record());
    ReadyDescription.lines(first, SampleSet.ZONE).forEach(narration::line);

    var list = Checklists.sound(Checklists.of(job).orElseThrow());
    clock.pass(Duration.ofMinutes(12));
    for (var item : list.morning().entrySet()) {
      job.tickItem(item.getKey(), true, item.getValue().caution() ? "Ines" : "Timo");
    }
    narration.line(
        set.time() + "  Timo looked after the kit, Ines after what may hurt somebody; they tick");
    narration.line("       the items, such as:");
    command("ready JOB --quick --tick cables --tick stands --by Ines");
    var now = Answer.morning(job, job.scan(), asked, around, Progress.NONE);
    job.record(now.record());
    var lines = ReadyDescription.lines(now, SampleSet.ZONE);
    lines.stream().limit(1 + 2L * now.missing().size()).forEach(narration::line);
    narration.line(MORE);
    lines.stream()
        .filter(line -> line.contains("[x] cables") || line.contains("[x] stands"))
        .forEach(narration::line);
    narration.line("       The disk for copies comes with the courier, at noon.");
  }

  private void firstDay() throws IOException, JobException {
    narration.heading("Monday");
    set.goTo(1, 9, 5);
    var first = set.setup(1);
    narration.line(set.time() + "  Timo puts " + ListDescription.named(first) + " on set.");
    command("mark JOB 001 on-set --view F --by Timo");
    set.shoot(first);
    narration.line(
        "       Frames arrive from two bodies: "
            + files(set.tripodFolder())
            + " from body A, "
            + files(set.handFolder())
            + " from body B.");
    narration.line("       A raw file and its JPEG are one frame:");
    command("frames JOB");
    FramesDescription.lines(set.job(), set.job().standing()).forEach(narration::line);
    set.signOff(first);
    narration.line(set.time() + "  Odette signs it off for the client.");
    command("mark JOB 001 signed-off --by Odette");
    set.next(first);
    for (int i = 2; i <= 4; i++) {
      set.shootAndSignOff(set.setup(i));
    }
    narration.line(
        "       002 to 004 go the same way. Both counters went from 9999 to 0001, and there are two"
            + " IMG_0001:");
    narration.line("       they come from two bodies, so they are two frames.");

    var forgotten = set.setup(5);
    set.burst(forgotten, "F", SampleSet.wanted(forgotten, 0));
    narration.line(
        set.time()
            + "  Timo forgot to put "
            + forgotten.code()
            + " on set: its first frames count for 004, which shows");
    narration.line(
        "       \"changed since sign-off\": "
            + (set.job().standing().state().of("004").changedSinceSignOff() ? "yes." : "no."));
    moveLast(forgotten, "F", SampleSet.wanted(forgotten, 0));
    narration.line(
        "       He moves them to "
            + forgotten.code()
            + ", and 004 is as it was: "
            + (set.job().standing().state().of("004").changedSinceSignOff() ? "no." : "yes."));
    set.shoot(forgotten, 1);
    set.signOff(forgotten);
    set.next(forgotten);
    for (int i = 6; i <= 10; i++) {
      lunch();
      set.shootAndSignOff(set.setup(i));
    }
    stand("Monday evening");
  }

  private void moveLast(Setup to, String view, int count) throws IOException, JobException {
    var scan = set.job().scan();
    set.job().moveFrames(latest(scan, count), to.code(), Optional.of(view), "Timo");
    set.job().tally(scan);
  }

  /** The frames that were taken last with body A. */
  private static List<FrameId> latest(FrameScan scan, int count) {
    return scan.frames().stream()
        .filter(frame -> frame.folder().endsWith("A"))
        .sorted(
            Comparator.comparing(
                frame -> frame.capture().time().orElseThrow(), Comparator.reverseOrder()))
        .limit(count)
        .map(Frame::id)
        .toList();
  }

  private void lunch() {
    var time = LocalTime.ofInstant(clock.instant().minus(shift), SampleSet.ZONE);
    if (time.getHour() == 13) {
      clock.pass(Duration.ofMinutes(60 - time.getMinute()));
    }
  }

  private void secondMorning() throws IOException, JobException {
    narration.heading("Tuesday");
    set.goTo(2, 9, 0);
    set.tetherHand(false);
    narration.line(
        set.time() + "  The cable of body B is broken: its details stay on its card today.");
    for (int i = 11; i <= 14; i++) {
      set.shootAndSignOff(set.setup(i));
    }
    narration.line(set.time() + "  011 to 014 are shot and signed off.");
  }

  private void secondAfternoon() throws IOException, JobException {
    set.shootAndSignOff(set.setup(15));
    narration.heading("Tuesday noon: the client sends another list");
    var list = list(NOON_LIST);
    show(set.job().importList(list));
    long done =
        set.job().state().setups().values().stream()
            .filter(status -> status.state() == SetupState.SIGNED_OFF)
            .count();
    narration.line("What is done stays done: " + done + " garments are signed off.");

    narration.heading("Tuesday afternoon");
    for (int i = 16; i <= 20; i++) {
      lunch();
      if (set.job().shotList().setup(String.format(Locale.ROOT, "%03d", i)).isPresent()) {
        set.shootAndSignOff(set.setup(i));
      }
    }
    clock.pass(Duration.ofMinutes(20));
    int copied = set.copyCard();
    var standing = set.job().standing();
    narration.line(
        set.time()
            + "  The card of body B is copied into the job: "
            + copied
            + " frames that nobody saw arrive.");
    narration.line("       They go by the time they were taken, and body B's clock is wrong:");
    FramesDescription.clocks(standing).forEach(narration::line);
    narration.line(
        "       With that put right, "
            + standing.tally().unassigned().size()
            + " frames belong to no setup.");
  }

  private void show(ListChange change) {
    var lines = ListDescription.changes(change, false);
    excerpt(lines, 6).forEach(narration::line);
  }

  private void thirdDay() throws IOException, JobException {
    narration.heading("Wednesday");
    set.goTo(3, 9, 0);
    set.tetherHand(true);
    narration.line(set.time() + "  Body B has a new cable.");
    set.shootAndSignOff(set.setup(21));
    var gown = set.setup(22);
    set.shoot(gown);
    set.mark(
        gown.code(),
        SetupState.PICKUP,
        MarkDetails.by("Odette").andReason("the train was creased"));
    narration.line(
        set.time()
            + "  "
            + ListDescription.named(gown)
            + " is shot, but the train was creased: a pickup for later.");
    command("mark JOB 022 pickup --reason \"the train was creased\" --by Odette");
    set.next(gown);
    for (int i = 23; i <= 27; i++) {
      lunch();
      set.shootAndSignOff(set.setup(i));
    }
    var late = set.setup(28);
    set.mark(
        late.code(),
        SetupState.DROPPED,
        MarkDetails.by("Timo").andReason("the courier did not come"));
    narration.line(
        set.time() + "  " + ListDescription.named(late) + " is dropped: the courier did not come.");
    set.shootAndSignOff(set.setup(29));
    set.shootAndSignOff(set.setup(30));
    stand("Wednesday evening");
  }

  private void fourthDay() throws IOException, JobException {
    narration.heading("Thursday");
    set.goTo(4, 9, 0);
    var late = set.setup(28);
    set.mark(late.code(), SetupState.TO_SHOOT, MarkDetails.by("Timo"));
    narration.line(set.time() + "  The courier has come: " + late.code() + " is to shoot again.");
    for (int i = 31; i <= 35; i++) {
      lunch();
      set.shootAndSignOff(set.setup(i));
    }
    lunch();
    var signedOff = set.setup(36);
    set.shoot(signedOff);
    set.signOff(signedOff);
    set.oneMore(signedOff, "F");
    narration.line(
        set.time()
            + "  Ines takes one more frame of "
            + signedOff.code()
            + " after its sign-off. It shows as changed: "
            + (set.job().standing().state().of(signedOff.code()).changedSinceSignOff()
                ? "yes."
                : "no."));
    set.next(signedOff);
    for (int number : new int[] {37, 28, 22, 38, 41}) {
      lunch();
      set.shootAndSignOff(set.setup(number));
    }
    var belt = set.setup(40);
    set.mark(belt.code(), SetupState.DROPPED, MarkDetails.by("Odette").andReason("sold out"));
    narration.line(
        set.time()
            + "  028 and the pickup 022 are done. "
            + ListDescription.named(belt)
            + " is dropped: sold out.");
    narration.line("       039 and 042 are left for the evening.");
  }

  private void count() throws IOException {
    narration.heading("Counting");
    command("frames JOB");
    excerpt(FramesDescription.lines(set.job(), set.job().standing()), 6).forEach(narration::line);
  }

  private void rename() throws IOException, JobException {
    narration.heading("Names that say what the frames are");
    var job = set.job();
    var renamer = Renamer.in(job.folder(), clock);
    var plan = renamer.plan(job.frameNames(job.scan()).requests());
    // Somebody's raw converter left a settings file under a name that a sidecar is about to get.
    var stray = sidecar(plan);
    Files.writeString(job.folder().resolve(stray), SampleCamera.xmp(0));
    plan = renamer.plan(job.frameNames(job.scan()).requests());
    command("rename JOB --preview");
    preview(plan, stray);
    var put = job.folder().resolve(ASIDE);
    Files.createDirectories(put);
    Files.move(job.folder().resolve(stray), put.resolve(stray.getFileName()));
    narration.line("Ines moves that file to \"" + ASIDE + "\" and renames.");
    plan = renamer.plan(job.frameNames(job.scan()).requests());
    command("rename JOB");
    var first = applied(renamer.apply(plan, Progress.NONE));
    narration.line(RenameDescription.applied(first));
    narration.line("She takes them back, looks once more, and renames again.");
    command("undo JOB");
    narration.line(RenameDescription.applied(applied(renamer.undo(first.batch(), Progress.NONE))));
    plan = renamer.plan(job.frameNames(job.scan()).requests());
    command("rename JOB");
    narration.line(RenameDescription.applied(applied(renamer.apply(plan, Progress.NONE))));
    var tally = set.job().tally();
    narration.line(
        "The count is the same: "
            + tally.frames()
            + " frames in "
            + tally.bySetup().size()
            + " setups.");
  }

  private static Path sidecar(Plan plan) {
    return plan.renames().stream()
        .filter(rename -> rename.status() == Status.READY)
        .map(PlannedRename::to)
        .filter(to -> to.toString().endsWith(".xmp"))
        .findFirst()
        .orElseThrow();
  }

  /** Some that are ready, and all that are not, as the command shows them. */
  private void preview(Plan plan, Path taken) {
    var shown = new ArrayList<PlannedRename>();
    plan.renames().stream()
        .filter(rename -> rename.status() == Status.READY)
        .limit(4)
        .forEach(shown::add);
    plan.renames().stream()
        .filter(rename -> rename.status() == Status.BLOCKED)
        .sorted(Comparator.comparingInt(rename -> rename.to().equals(taken) ? 0 : 1))
        .forEach(shown::add);
    RenameDescription.table(shown).forEach(narration::line);
    narration.line(MORE);
    narration.line(RenameDescription.counts(plan));
  }

  private static Outcome.Applied applied(Outcome outcome) throws JobException {
    if (outcome instanceof Outcome.Applied applied) {
      return applied;
    }
    throw new JobException(
        Text.of("the sample's frames could not be renamed: {0}", outcome),
        "",
        Text.of("Play it in another folder."));
  }

  private record Delivered(HandOff handOff, HandOffPlan plan, Path folder) {}

  private Optional<Delivered> handOff() throws IOException, JobException {
    narration.heading("Selects for the retoucher");
    var job = set.job();
    var scan = job.scan();
    var handOff = HandOff.of(job, scan, job.tally(scan));
    var plan = handOff.rated(4);
    var target = into.resolve(job.name() + "_hand-off-1");
    narration.line(
        "Ines rated "
            + (plan.selects().size() + plan.withheld().size())
            + " frames 4 or higher; body B wrote its ratings into the JPEG, for body A they lie in"
            + " sidecars.");
    command("deliver JOB --to " + target + " --rating 4 --preview");
    excerpt(HandOffDescription.planned(plan), 3).forEach(narration::line);
    command("deliver JOB --to " + target + " --rating 4");
    var metadata = new MetadataOptions(MetadataMode.SIDECAR, false, Studio.NOTHING);
    return switch (handOff.deliver(plan, target, metadata, Progress.NONE)) {
      case Delivery.Delivered done -> {
        HandOffDescription.delivered(done).forEach(narration::line);
        var check = OpenPackage.check(done.folder()).orElseThrow();
        narration.line(
            "The package's own checksums: "
                + check.files()
                + " files compared, "
                + (check.whole() ? "all as they should be." : "not clean: " + check));
        narration.line("Anybody can check it with:  cd PACKAGE && sha256sum -c SHA256SUMS");
        yield Optional.of(new Delivered(handOff, plan, done.folder()));
      }
      case Delivery.Refused refused -> {
        narration.line("It was refused: " + refused.problem().sentences());
        yield Optional.empty();
      }
      case Delivery.Failed failed -> {
        narration.line("It failed: " + failed.problem().sentences());
        yield Optional.empty();
      }
      case Delivery.Cancelled _ -> Optional.empty();
    };
  }

  /** Bram sends them back: all under the right name but one, which he calls as he likes. */
  private void comesBack(Optional<Delivered> delivered) throws IOException, JobException {
    if (delivered.isEmpty()) {
      return;
    }
    narration.heading("What comes back");
    var selects = delivered.get().plan().selects();
    var folder = Files.createDirectories(into.resolve("from-bram"));
    var retoucher = new SampleCamera(SampleBody.studioA(), size, SampleCamera.Writes.JPEG, 1);
    for (var select : selects) {
      var name =
          select.equals(selects.getFirst())
              ? select.name() + " final FINAL"
              : delivered.get().handOff().retouchedName(select).orElse(select.name());
      var exposure =
          Exposure.of(clock.instant(), select.place().setup(), select.place().view().orElse("F"));
      Files.write(
          folder.resolve(name + ".jpg"),
          retoucher.take(exposure).files().sequencedValues().getFirst());
    }
    var returns = Returns.of(set.job(), folder, OptionalInt.empty());
    command("returns JOB " + folder);
    HandOffDescription.returned(returns).forEach(narration::line);
  }

  private void summary() throws IOException {
    narration.heading("How the job stands");
    var job = set.job();
    var scan = job.scan();
    command("day JOB");
    var standing = job.standing(scan);
    DayDescription.lines(
            DaySummary.of(job, scan, standing, hours()),
            Supplies.of(job, scan, hours().zone(), List.of(), Optional::empty),
            OrderOfWork.of(job, scan, standing.state(), hours(), Set.of()))
        .forEach(narration::line);
    narration.line("");
    narration.line("The job folder: " + job.folder());
  }

  private void stand(String when) throws IOException {
    var job = set.job();
    var scan = job.scan();
    var summary = DaySummary.of(job, scan, job.standing(scan), hours());
    narration.line(
        when
            + ": "
            + DayDescription.states(summary)
            + summary
                .pace()
                .mean()
                .map(mean -> "; " + Durations.workingTime(mean) + " a garment")
                .orElse("")
            + ".");
  }

  private static DayHours hours() {
    return DayHours.usual(SampleSet.ZONE);
  }

  // ---- Words

  /** A command as people type it; what it prints follows. */
  private void command(String words) {
    narration.line("$ framewright " + words);
  }

  private static String quoted(String text) {
    return text.contains(" ") ? '"' + text + '"' : text;
  }

  /** The first lines of what a command prints, and the last. */
  private static List<String> excerpt(List<String> lines, int first) {
    if (lines.size() <= first + 2) {
      return lines;
    }
    var excerpt = new ArrayList<>(lines.subList(0, first));
    excerpt.add(MORE);
    excerpt.add(lines.getLast());
    return excerpt;
  }

  private static String files(Path folder) throws IOException {
    try (var list = Files.list(folder)) {
      var stems =
          list.map(file -> file.getFileName().toString().replaceFirst("\\..*", ""))
              .filter(Predicate.not(String::isEmpty))
              .distinct()
              .collect(Collectors.toCollection(ArrayList::new));
      return stems.size() + " frames";
    }
  }
}
