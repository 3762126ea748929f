package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.framewright.Templates;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.copies.Compared;
import org.framewright.copies.Comparison;
import org.framewright.copies.Copier;
import org.framewright.copies.CopiesException;
import org.framewright.copies.CopiesRequest;
import org.framewright.copies.CopyOutcome;
import org.framewright.copies.CopyPlan;
import org.framewright.disk.CutDisk;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.job.Asked;
import org.framewright.job.Device;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Numbered;
import org.framewright.job.Receipt;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.naming.Convention;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.PlannedRename;
import org.framewright.renaming.Recovery;
import org.framewright.renaming.Renamer;
import org.framewright.renaming.Status;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.SetupState;

/** A job that is worked on by a script, and what it should be after each step. */
final class World implements AutoCloseable {
  private static final Instant MORNING = Instant.parse("2026-03-02T08:00:00Z");
  private static final String PHONE = "page-0a1b2c3d";
  private static final List<Convention> CONVENTIONS =
      List.of(
          Templates.fashionDays(),
          Templates.read(Path.of("templates/food.yaml")),
          Templates.read(Path.of("templates/editorial.yaml")));

  /** What a step came to. */
  private enum End {
    DONE,
    REFUSED,
    FAILED,
    DIED
  }

  private interface Action {
    void run(Job job) throws IOException, JobException, CopiesException;
  }

  private final Path scratch;
  private final Path base;
  private final Counts counts;
  private final Lists lists = new Lists();
  private final Contents contents = new Contents();
  private final LogReader logReader = new LogReader();
  private final Map<Seat, Desk> desks = new EnumMap<>(Seat.class);
  private final Map<LogLine.Id, Model.Fact> facts = new HashMap<>();
  private final Map<String, Set<LogLine.Id>> visible = new HashMap<>();
  private final List<Shot> shots = new ArrayList<>();
  private final Map<String, Shot> byContent = new HashMap<>();
  private final Set<String> harmed = new HashSet<>();
  private final List<Half> halves = new ArrayList<>();
  private final List<Waiting> phone = new ArrayList<>();
  private final Map<String, Map<String, String>> packages = new LinkedHashMap<>();
  private final Body[] bodies = new Body[2];
  private Step.Start start = new Step.Start(0, 0, false, true, false);
  private WorldVolumes volumes;
  private Instant now = MORNING;
  private String main = "";
  private String office = "";
  private Trouble trouble;
  private int at;
  private boolean gone;

  /** While names may be half old and half new, until the recovery. */
  private boolean amidRenames;

  /** Whether an earlier batch may not have come to its end. */
  private boolean openBatch;

  private int places;
  private long phoneKept;
  private int handOffs;
  private int newer;

  /**
   * A frame that was taken.
   *
   * @param captured what its body's clock showed
   * @param files the SHA-256 of each of its files, the first one that of the frame
   */
  private record Shot(
      int id, Body body, boolean odd, Instant at, Instant captured, List<String> files) {}

  private record Half(Shot shot, String folder, Map<String, byte[]> files) {}

  private record Waiting(Instant at, Asked asked, Said said) {}

  private final class Desk {
    private final Seat seat;
    private final WorldClock clock = new WorldClock(() -> now);
    private final Set<Integer> present = new HashSet<>();
    private Recording disk;
    private Job job;

    Desk(Seat seat) {
      this.seat = seat;
    }

    String folder() {
      return seat == Seat.AWAY ? office : main;
    }

    Job open() throws IOException, JobException {
      if (job == null) {
        disk = recording();
        job = Job.open(disk.root().resolve(folder()), clock, new Station(seat.station()));
      }
      return job;
    }

    void die() {
      job = null;
      disk = null;
      present.clear();
    }
  }

  World(Path scratch, Counts counts) throws IOException {
    this.scratch = scratch.toRealPath();
    this.base = Files.createDirectory(this.scratch.resolve("world"));
    this.counts = counts;
    for (var seat : Seat.values()) {
      desks.put(seat, new Desk(seat));
    }
    for (var folder :
        List.of(
            "laptop",
            "office",
            "cardA/DCIM",
            "cardB/DCIM",
            "backup1",
            "backup2",
            "lists",
            "packages")) {
      Files.createDirectories(base.resolve(folder));
    }
  }

  @Override
  public void close() throws IOException {
    Contents.delete(scratch);
  }

  private Recording recording() throws IOException {
    var disk = Recording.on(base);
    if (!start.locks()) {
      disk.withoutLocks();
    }
    if (start.coarse()) {
      disk.withTimesInSteps(Duration.ofSeconds(2));
    }
    return disk;
  }

  /** Does one step, and compares. */
  void play(Step step) throws IOException, JobException {
    now = now.plusMillis(211);
    counts.step(step);
    take(step);
  }

  private void take(Step step) throws IOException, JobException {
    switch (step) {
      case Step.Start begin -> start(begin);
      case Step.Pass(var seconds) -> now = now.plusSeconds(seconds);
      case Step.Disturbed(var inner, var what, var change) -> {
        trouble = what;
        at = change;
        try {
          take(inner);
        } finally {
          trouble = null;
        }
      }
      case Step.FolderGone(_, var meanwhile) -> folderGone(meanwhile);
      case Step.ImportList(var seat, var edition) -> importList(desks.get(seat), edition);
      case Step.Tick tick -> tick(tick);
      case Step.SignOffByNobody(var seat, var setup) -> {
        var code = code(seat, setup);
        act(
            desks.get(seat),
            List.of(),
            true,
            job -> job.mark(code, SetupState.SIGNED_OFF, MarkDetails.NONE));
      }
      case Step.TickUnknown(var seat) ->
          act(
              desks.get(seat),
              List.of(),
              true,
              job -> job.mark("9998", SetupState.SHOT, MarkDetails.by("Timo")));
      case Step.TakeBack(var seat) -> takeBack(desks.get(seat), Said.Ticked.class);
      case Step.TakeMoveBack(var seat) -> takeBack(desks.get(seat), Said.Moved.class);
      case Step.Comment(var seat, var setup) -> comment(desks.get(seat), setup);
      case Step.PhoneTick(var setup, var state, var clock) -> phoneTick(setup, state, clock);
      case Step.PhoneComment(var setup) -> phoneComment(setup);
      case Step.PhoneTakeBack(var which) -> phoneTakeBack(which);
      case Step.PhoneSend(var seat, var network) -> phoneSend(desks.get(seat), network);
      case Step.Shoot shoot -> shoot(shoot);
      case Step.Finish _ -> finish();
      case Step.ResetNumber(var body, var number) -> bodies[body].countFrom(number);
      case Step.ClockJump(var body, var seconds) -> bodies[body].jump(seconds);
      case Step.Look(var seat) -> look(desks.get(seat));
      case Step.CardIn(var body) -> cardIn(body);
      case Step.Move move -> move(move);
      case Step.Choose choose -> choose(choose);
      case Step.Rate rate -> rate(rate);
      case Step.Rename(var seat) -> rename(desks.get(seat), Renaming.FORWARD);
      case Step.Undo(var seat) -> rename(desks.get(seat), Renaming.UNDO);
      case Step.Redo(var seat) -> rename(desks.get(seat), Renaming.REDO);
      case Step.HandOff(var seat) -> handOff(desks.get(seat));
      case Step.CopyCard copy -> copyCard(copy);
      case Step.Ask(var seat, var body) -> ask(desks.get(seat), body);
      case Step.Damage damage -> damage(damage);
      case Step.Restart(var seat, var present) -> restart(desks.get(seat), present);
      case Step.ClockSet(var seat, var seconds) -> desks.get(seat).clock.setAhead(seconds);
      case Step.FolderCopied _ -> folderCopied();
      case Step.Synchronise sync -> synchronise(sync);
      case Step.ConflictCopy(var away, var writer) -> conflictCopy(away, writer);
      case Step.NewerVersion _ -> newerVersion();
      case Step.Night _ -> night();
    }
  }

  // ---- doing something

  private Path real(String folder) {
    return base.resolve(folder);
  }

  private Path frames() {
    return real(main).resolve("01_frames");
  }

  /**
   * Has a program do something, as the disk lets it.
   *
   * @param wanted what its log is to say afterwards, in this order
   * @param refusal whether it must be refused
   */
  private End act(Desk desk, List<? extends Said> wanted, boolean refusal, Action action)
      throws IOException, JobException {
    CutDisk cut = null;
    End end;
    try {
      if (trouble == Trouble.POWER_LOST || trouble == Trouble.POWER_KEPT) {
        var present = Set.copyOf(desk.present);
        desk.die();
        var job = desk.open();
        if (!present.isEmpty()) {
          job.foundPresent(job.scan());
          desk.present.addAll(complete().keySet());
        }
        cut = desk.disk.cutDisk();
      }
      var job = desk.open();
      desk.disk.clear();
      disturb(desk.disk);
      action.run(job);
      end = End.DONE;
    } catch (Killed e) {
      end = End.DIED;
    } catch (JobException e) {
      told(e.problem());
      end = gone ? End.FAILED : End.REFUSED;
    } catch (CopiesException e) {
      told(e.problem());
      end = End.REFUSED;
    } catch (IOException e) {
      if (trouble == null && !gone) {
        throw new Wrong("the program failed: " + e);
      }
      end = End.FAILED;
    }
    counts.end(trouble, end.name());
    if (end == End.DIED) {
      desk.die();
      if (cut != null) {
        cutPower(cut);
      }
    } else if (desk.disk != null) {
      desk.disk.heal();
      if (trouble != null && trouble.ends()) {
        // It did not come to the change at which it was to die: it does now that all is done.
        desk.die();
        if (cut != null) {
          cutPower(cut);
        }
      }
    }
    if (gone) {
      Wrong.unless(end == End.FAILED, "the folder is not there, and the program did not say so");
      return end;
    }
    if (end == End.REFUSED) {
      Wrong.unless(refusal, "it was refused");
    } else if (refusal && trouble == null) {
      throw new Wrong("it should have been refused");
    }
    hear(desk, wanted, end);
    if (!amidRenames) {
      check(desk);
    }
    return end;
  }

  private void disturb(Recording disk) {
    if (trouble == null) {
      return;
    }
    switch (trouble) {
      case KILLED, POWER_LOST, POWER_KEPT -> disk.killWithin(at);
      case FULL -> disk.fail(Fault.fromOn(at, Fault::noSpace).afterHalfTheBytes());
      case READ_ONLY -> disk.fail(Fault.fromOn(at, Fault::readOnly));
      case ERROR -> disk.fail(Fault.onceAt(at, Fault::inputOutput).afterHalfTheBytes());
    }
  }

  private static void told(Problem problem) {
    Wrong.unless(!problem.what().isBlank(), "a refusal does not say what is wrong");
    Wrong.unless(!problem.remedy().isBlank(), "no remedy is told for: " + problem.what());
  }

  private void cutPower(CutDisk cut) throws IOException {
    var times = new HashMap<String, FileTime>();
    for (var path : Contents.all(base)) {
      if (Files.isRegularFile(path)) {
        times.put(Contents.sha256(Files.readAllBytes(path)), Files.getLastModifiedTime(path));
      }
    }
    var left = scratch.resolve("left");
    cut.afterPowerCut(
        left, trouble == Trouble.POWER_LOST ? CutDisk.Names.LOST : CutDisk.Names.KEPT);
    Contents.become(base, left);
    Contents.delete(left);
    for (var path : Contents.all(base)) {
      if (Files.isRegularFile(path)) {
        var time = times.get(Contents.sha256(Files.readAllBytes(path)));
        if (time != null) {
          Files.setLastModifiedTime(path, time);
        }
      }
    }
    desks.values().forEach(Desk::die);
    contents.forget();
  }

  // ---- hearing

  private Path logs(String folder) {
    return real(folder).resolve(".framewright/log");
  }

  private Map<LogLine.Id, LogLine> lines(String folder) throws IOException {
    var found = new LinkedHashMap<LogLine.Id, LogLine>();
    try (var files = Files.newDirectoryStream(logs(folder), "*.jsonl")) {
      for (var file : files) {
        for (var line : logReader.lines(file)) {
          found.putIfAbsent(line.id(), line);
        }
      }
    }
    return found;
  }

  /** Reads what a program wrote, and keeps it as what was said. */
  private void hear(Desk desk, List<? extends Said> wanted, End end) throws IOException {
    var lines = lines(desk.folder());
    var before = visible.computeIfAbsent(desk.folder(), _ -> new HashSet<>());
    Wrong.unless(
        lines.keySet().containsAll(before), "something that was said is gone from the log");
    var fresh =
        lines.values().stream()
            .filter(line -> !facts.containsKey(line.id()))
            .sorted(
                java.util.Comparator.comparingLong(LogLine::millis)
                    .thenComparingInt(LogLine::count))
            .toList();
    if (end == End.DONE) {
      Wrong.unlessSame(
          fresh.size(),
          wanted.size(),
          "lines in the log " + fresh.stream().map(LogLine::text).toList());
    } else {
      Wrong.unless(fresh.size() <= wanted.size(), "the log says more than was asked for");
    }
    for (int i = 0; i < fresh.size(); i++) {
      keep(desk, fresh.get(i), wanted.get(i), before);
    }
    before.addAll(lines.keySet());
  }

  private void keep(Desk desk, LogLine line, Said said, Set<LogLine.Id> seen) {
    Wrong.unlessSame(line.type(), said.type(), "type of line");
    boolean own = line.station().startsWith(desk.seat.station());
    long last = 0;
    for (var id : seen) {
      var fact = facts.get(id);
      if (id.station().equals(line.station())) {
        last = Math.max(last, id.number());
      }
      if (own || id.station().equals(line.station())) {
        Wrong.unless(
            fact.millis() < line.millis()
                || (fact.millis() == line.millis() && fact.count() <= line.count()),
            "an event is dated before one that was seen: " + line.text());
      }
    }
    Wrong.unlessSame(line.number(), last + 1, "number of the line");
    if (own) {
      Wrong.unlessSame(line.clock(), desk.clock.instant(), "the computer's clock in the line");
    }
    var kept = said;
    switch (said) {
      case Said.Ticked ticked -> {
        Wrong.unlessSame(line.member("setup").orElse(""), ticked.setup(), "setup ticked");
        Wrong.unlessSame(line.member("state").orElse(""), ticked.state().word(), "state ticked");
        Wrong.unlessSame(line.member("by").orElse(""), ticked.by(), "who ticked");
        Wrong.unlessSame(line.member("view").orElse(""), ticked.view(), "view ticked");
      }
      case Said.Listed(var put, _, _) ->
          kept = new Said.Listed(put, codes(line.member("removed")), codes(line.member("order")));
      default -> {}
    }
    facts.put(line.id(), new Model.Fact(line.id(), line.millis(), line.count(), kept));
    seen.add(line.id());
  }

  private static List<String> codes(Optional<String> array) {
    var codes = new ArrayList<String>();
    for (var code : array.orElse("[]").replaceAll("[\\[\\]\"]", "").split(",")) {
      if (!code.isBlank()) {
        codes.add(code);
      }
    }
    return codes;
  }

  private Model model(String folder) {
    return Model.of(visible.getOrDefault(folder, Set.of()).stream().map(facts::get).toList());
  }

  private String code(Seat seat, int which) {
    var list = List.copyOf(model(desks.get(seat).folder()).list().values());
    return list.isEmpty() ? "7" : list.get(which % list.size()).code();
  }

  // ---- the job

  private void start(Step.Start begin) throws IOException, JobException {
    start = begin;
    volumes = new WorldVolumes(base, begin.oneDisk());
    bodies[0] = new Body("A", SampleCamera.Writes.RAW_AND_JPEG, 0, 9996);
    bodies[1] = new Body("B", SampleCamera.Writes.JPEG, begin.ahead(), 1);
    var desk = desks.get(Seat.LAPTOP);
    var values = Map.of("day", "2026-03-02", "client", "KVO", "title", "Wool");
    var disk = recording();
    var started =
        Job.start(
            CONVENTIONS.get(begin.template()),
            disk.root().resolve("laptop"),
            values,
            desk.clock,
            new Station("laptop"));
    Wrong.unless(started instanceof Started.Opened, "the job was not started: " + started);
    var folder = disk.real(((Started.Opened) started).job().folder());
    main = base.relativize(folder).toString();
    office = "office/" + folder.getFileName();
    hear(desk, List.of(new Said.Other("began")), End.DONE);
    Contents.copy(real(main), real(office));
    hear(desks.get(Seat.AWAY), List.of(), End.DONE);
  }

  private void importList(Desk desk, int edition) throws IOException, JobException {
    var incoming = lists.edition(start.template(), edition);
    var file = real("lists").resolve("list-" + edition + ".csv");
    Files.write(file, lists.csv(incoming));
    var before = model(desk.folder());
    var put = new ArrayList<Said.Line>();
    var keys = new LinkedHashSet<String>();
    for (var line : incoming) {
      keys.add(Model.key(line.code()));
      var was = before.list().get(Model.key(line.code()));
      if (was == null || !was.equals(line)) {
        put.add(line);
      }
    }
    var framed = framed(before);
    var missing = new TreeSet<>(before.list().keySet());
    missing.removeAll(keys);
    missing.removeIf(before::isWorkedOn);
    var certain = new TreeSet<>(missing);
    if (desk.seat != Seat.AWAY) {
      certain.removeAll(framed.maybe());
      missing.removeAll(framed.surely());
    }
    boolean sure = certain.equals(missing);
    var ordered = new ArrayList<>(before.list().keySet());
    ordered.retainAll(keys);
    boolean event = !put.isEmpty() || !missing.isEmpty() || !ordered.equals(List.copyOf(keys));
    var wanted = event ? List.of(new Said.Listed(put, List.of(), List.of())) : List.<Said>of();
    if (!sure && put.isEmpty()) {
      return; // Whether anything changes hangs on frames of which the model does not know enough.
    }
    var end =
        act(
            desk,
            wanted,
            false,
            job -> {
              var reading =
                  job.readList(
                      desk.disk.root().resolve("lists").resolve(file.getFileName().toString()),
                      ListOptions.NONE);
              if (!(reading instanceof ListReading.Understood understood)) {
                throw new Wrong("the list was not understood: " + reading);
              }
              job.importList(understood);
            });
    if (end == End.DONE && event) {
      var said =
          model(desk.folder())
              .last(desk.job == null ? desk.seat.station() : desk.job.station(), Said.Listed.class);
      if (said.isPresent()) {
        var removed =
            ((Said.Listed) said.get().said())
                .removed().stream().map(Model::key).collect(Collectors.toCollection(TreeSet::new));
        Wrong.unless(
            removed.containsAll(certain) && missing.containsAll(removed),
            "setups taken out: " + removed + ", should be " + missing);
      }
    }
  }

  private record Framed(Set<String> surely, Set<String> maybe) {}

  private Framed framed(Model model) throws IOException {
    var surely = new HashSet<String>();
    boolean unclear = false;
    for (var place : places(model).values()) {
      if (place.clear()) {
        place.key().ifPresent(surely::add);
      } else {
        unclear = true;
      }
    }
    return new Framed(surely, unclear ? model.list().keySet() : surely);
  }

  private void tick(Step.Tick tick) throws IOException, JobException {
    var desk = desks.get(tick.seat());
    var all = List.copyOf(model(desk.folder()).list().values());
    if (all.isEmpty()) {
      act(desk, List.of(), true, job -> job.mark("7", tick.state(), MarkDetails.by("Timo")));
      return;
    }
    var by = tick.state() == SetupState.SIGNED_OFF ? "Odette" : "Timo";
    var details = MarkDetails.by(by);
    var codes = new ArrayList<String>();
    var listed = new ArrayList<String>();
    for (int i = 0; i < Math.min(tick.several(), all.size()); i++) {
      var line = all.get((tick.setup() + i) % all.size());
      listed.add(line.code());
      codes.add(tick.loosely() ? Model.key(line.code()) : line.code());
    }
    var views = all.get(tick.setup() % all.size()).views();
    var view = tick.view() < 0 || views.isEmpty() ? "" : views.get(tick.view() % views.size());
    var said = view.isEmpty() ? details : details.andView(view);
    act(
        desk,
        listed.stream().map(code -> new Said.Ticked(code, tick.state(), by, view, "")).toList(),
        false,
        job -> job.mark(codes, tick.state(), said));
  }

  private String station(Desk desk) throws IOException, JobException {
    // What comes under a trouble may begin with another opening.
    return trouble == Trouble.POWER_LOST || trouble == Trouble.POWER_KEPT || gone
        ? desk.seat.station()
        : desk.open().station();
  }

  private void takeBack(Desk desk, Class<? extends Said> kind) throws IOException, JobException {
    var last = model(desk.folder()).last(station(desk), kind);
    act(
        desk,
        last.map(fact -> new Said.TakenBack(fact.id())).stream().toList(),
        last.isEmpty(),
        job -> {
          if (kind == Said.Moved.class) {
            job.takeBackMove();
          } else {
            job.takeBack();
          }
        });
  }

  private void comment(Desk desk, int setup) throws IOException, JobException {
    var code = code(desk.seat, setup);
    var text = "Said at " + now;
    boolean none = model(desk.folder()).list().isEmpty();
    act(
        desk,
        none ? List.of() : List.of(new Said.Commented(code, text)),
        none,
        job -> job.comment(code, List.of(), text, "Timo"));
  }

  private void restart(Desk desk, boolean present) throws IOException, JobException {
    desk.die();
    var job = desk.open();
    if (present && desk.seat != Seat.AWAY) {
      job.foundPresent(job.scan());
      desk.present.addAll(complete().keySet());
    }
    check(desk);
  }

  // ---- the phone

  private Instant phoneClock(int ahead) {
    return Instant.ofEpochMilli(now.plusSeconds(ahead).toEpochMilli());
  }

  private void pair() {
    if (phone.isEmpty() && phoneKept == 0) {
      phone.add(
          new Waiting(phoneClock(0), new Asked.Named("Ines’ phone"), new Said.Other("named")));
    }
  }

  private void phoneTick(int setup, SetupState state, int clock) {
    pair();
    var code = code(Seat.LAPTOP, setup);
    var by = state == SetupState.SIGNED_OFF ? "Odette" : "Ines";
    phone.add(
        new Waiting(
            phoneClock(clock),
            new Asked.Ticked(code, state, MarkDetails.by(by)),
            new Said.Ticked(code, state, by, "", "")));
  }

  private void phoneComment(int setup) {
    pair();
    var code = code(Seat.LAPTOP, setup);
    var text = "From the phone at " + now;
    phone.add(
        new Waiting(
            phoneClock(0),
            new Asked.Commented(code, List.of(), text, "Ines"),
            new Said.Commented(code, text)));
  }

  private void phoneTakeBack(int which) {
    var own =
        facts.values().stream()
            .filter(fact -> fact.id().station().equals(PHONE))
            .filter(
                fact -> fact.said() instanceof Said.Ticked || fact.said() instanceof Said.Commented)
            .sorted(java.util.Comparator.comparingLong(fact -> fact.id().number()))
            .toList();
    if (!own.isEmpty()) {
      var id = own.get(which % own.size()).id();
      phone.add(
          new Waiting(phoneClock(0), new Asked.TakenBack(id.number()), new Said.TakenBack(id)));
    }
  }

  private boolean isRefused(Model model, Said said) {
    return switch (said) {
      case Said.Ticked ticked -> !model.list().containsKey(Model.key(ticked.setup()));
      case Said.Commented(var setup, _) -> !model.list().containsKey(Model.key(setup));
      case Said.TakenBack(var what) -> model.isGone(what);
      default -> false;
    };
  }

  private void phoneSend(Desk desk, Step.Network network) throws IOException, JobException {
    boolean first = true;
    while (!phone.isEmpty()) {
      if (network == Step.Network.REQUEST_LOST) {
        return;
      }
      if (first && network == Step.Network.OUT_OF_ORDER && phone.size() > 1) {
        var later = phone.get(1);
        if (!facts.containsKey(new LogLine.Id(PHONE, phoneKept + 1))) {
          send(desk, later, phoneKept + 2, List.of(), Receipt.Gap.class);
        }
      }
      first = false;
      var waiting = phone.getFirst();
      long number = phoneKept + 1;
      boolean had = facts.containsKey(new LogLine.Id(PHONE, number));
      boolean refused = !had && isRefused(model(desk.folder()), waiting.said());
      var wanted = had || refused ? List.<Said>of() : List.of(waiting.said());
      var expected = had ? Receipt.Had.class : refused ? Receipt.Refused.class : Receipt.Kept.class;
      var receipt = send(desk, waiting, number, wanted, expected);
      if (receipt.isEmpty() || network == Step.Network.REPLY_LOST) {
        return;
      }
      if (network == Step.Network.SENT_TWICE && !refused) {
        send(desk, waiting, number, List.of(), Receipt.Had.class);
      }
      phone.removeFirst();
      if (!refused) {
        phoneKept = number;
      }
    }
  }

  private Optional<Receipt> send(
      Desk desk, Waiting what, long number, List<? extends Said> wanted, Class<?> expected)
      throws IOException, JobException {
    var receipt = new Receipt[1];
    var end =
        act(
            desk,
            wanted,
            false,
            job -> {
              receipt[0] =
                  job.receive(new Device(PHONE), new Numbered(number, what.at(), what.asked()));
            });
    if (end != End.DONE) {
      return Optional.empty();
    }
    Wrong.unless(
        expected.isInstance(receipt[0]),
        "the phone’s number "
            + number
            + " was answered "
            + receipt[0]
            + ", not "
            + expected.getSimpleName());
    if (receipt[0] instanceof Receipt.Refused(_, var why)) {
      told(why);
    }
    return Optional.of(receipt[0]);
  }

  // ---- frames

  private Path card(int body) {
    return real("card" + bodies[body].name());
  }

  private void shoot(Step.Shoot shoot) throws IOException {
    var body = bodies[shoot.body()];
    for (int i = 0; i < shoot.frames(); i++) {
      now = now.plusMillis(900);
      var frame = body.take(now);
      var files = frame.files();
      var shot =
          new Shot(
              shots.size(),
              body,
              body.jumped(),
              now,
              now.plus(body.ahead()),
              files.values().stream().map(Contents::sha256).toList());
      shots.add(shot);
      shot.files().forEach(file -> byContent.put(file, shot));
      boolean half = shoot.half() && i + 1 == shoot.frames();
      if (shoot.writes() != Step.Writes.CARD) {
        var folder = Body.free(frames(), body.name(), frame);
        Body.write(folder, files, now, half);
        if (half) {
          halves.add(new Half(shot, frames().relativize(folder).toString(), files));
        }
      }
      if (shoot.writes() != Step.Writes.CABLE) {
        Body.write(
            Body.free(card(shoot.body()).resolve("DCIM"), "100STUDI", frame), files, now, false);
      }
    }
  }

  private void finish() throws IOException {
    for (var half : halves) {
      Body.write(frames().resolve(half.folder()), half.files(), now, false);
    }
    halves.clear();
  }

  /** The frames that lie whole among those of the job, each with the paths of its first file. */
  private TreeMap<Integer, List<String>> complete() throws IOException {
    var found = new TreeMap<Integer, List<String>>();
    contents
        .of(frames())
        .forEach(
            (path, sha256) -> {
              var shot = byContent.get(sha256);
              if (shot != null && shot.files().getFirst().equals(sha256)) {
                found.computeIfAbsent(shot.id(), _ -> new ArrayList<>()).add(path);
              }
            });
    return found;
  }

  private void look(Desk desk) throws IOException, JobException {
    var model = model(desk.folder());
    var arrived = new TreeSet<>(complete().keySet());
    boolean dies = trouble == Trouble.POWER_LOST || trouble == Trouble.POWER_KEPT;
    arrived.removeIf(id -> model.arrival(id).isPresent() || desk.present.contains(id));
    if (dies && !desk.present.isEmpty()) {
      arrived.clear();
    }
    act(
        desk,
        arrived.isEmpty() ? List.of() : List.of(new Said.Arrived(arrived)),
        false,
        job -> job.recordArrivals(job.scan()));
  }

  private void cardIn(int body) throws IOException {
    if (!contents.of(card(body)).isEmpty()) {
      Contents.copy(
          card(body).resolve("DCIM"),
          frames().resolve("card-" + bodies[body].name() + "-" + ++places));
    }
  }

  /** The frames of a scan, each once, by what they are. */
  private Map<Integer, Frame> byShot(Desk desk, FrameScan scan) throws IOException {
    var paths = new HashMap<Path, Integer>();
    complete().forEach((id, names) -> names.forEach(name -> paths.put(frames().resolve(name), id)));
    var found = new TreeMap<Integer, Frame>();
    for (var frame : scan.distinct()) {
      var id = paths.get(desk.disk.real(frame.primary().path()));
      if (frame.complete()) {
        Wrong.unless(id != null, "a frame is called whole that is not: " + frame.stem());
        found.put(id, frame);
      }
    }
    return found;
  }

  private interface OnFrames {
    void act(Job job, List<FrameId> frames) throws IOException, JobException;
  }

  private Set<Integer> some(int from, int count) throws IOException {
    var all = List.copyOf(complete().keySet());
    var some = new TreeSet<Integer>();
    for (int i = 0; i < count && !all.isEmpty(); i++) {
      some.add(all.get((from + i) % all.size()));
    }
    return some;
  }

  private void onFrames(Desk desk, Set<Integer> some, Said said, boolean refusal, OnFrames what)
      throws IOException, JobException {
    act(
        desk,
        some.isEmpty() || refusal ? List.of() : List.of(said),
        refusal,
        job -> {
          var known = byShot(desk, job.scan());
          var ids = some.stream().flatMap(id -> known.get(id).knownAs().stream()).toList();
          what.act(job, ids);
        });
  }

  private void move(Step.Move move) throws IOException, JobException {
    var desk = desks.get(move.seat());
    var some = some(move.frame(), move.frames());
    var code = code(move.seat(), move.setup());
    onFrames(
        desk,
        some,
        new Said.Moved(some, code),
        model(desk.folder()).list().isEmpty(),
        (job, ids) -> job.moveFrames(ids, code, Optional.empty(), "Ines"));
  }

  private void choose(Step.Choose choose) throws IOException, JobException {
    var some = some(choose.frame(), choose.frames());
    onFrames(
        desks.get(choose.seat()),
        some,
        new Said.Chosen(some, choose.chosen()),
        false,
        (job, ids) -> job.select(ids, choose.chosen(), "Ines"));
  }

  private void rate(Step.Rate rate) throws IOException, JobException {
    var some = some(rate.frame(), rate.frames());
    onFrames(
        desks.get(rate.seat()),
        some,
        new Said.Rated(some, rate.rating()),
        false,
        (job, ids) -> job.rate(ids, rate.rating(), "Ines"));
  }

  // ---- where frames belong

  /**
   * Where a frame belongs.
   *
   * @param key the setup's; none if it belongs to none
   * @param clear whether the model knows; where clocks were set in the middle it does not
   */
  private record Belongs(Optional<String> key, String view, boolean clear) {
    static final Belongs UNCLEAR = new Belongs(Optional.empty(), "", false);
  }

  private Map<Integer, Belongs> places(Model model) throws IOException {
    var complete = complete();
    var clocks = new HashMap<Body, BodyTimes>();
    for (var body : bodies) {
      clocks.put(body, times(model, body, complete.keySet()));
    }
    var found = new TreeMap<Integer, Belongs>();
    complete.forEach(
        (id, paths) -> {
          var belongs = place(model, shots.get(id), paths, clocks.get(shots.get(id).body()));
          found.put(id, withView(model, belongs));
        });
    return found;
  }

  private static Belongs withView(Model model, Belongs belongs) {
    var views = belongs.key().map(model.list()::get).map(Said.Line::views).orElse(List.of());
    return belongs.view().isEmpty() && views.size() == 1
        ? new Belongs(belongs.key(), views.getFirst(), belongs.clear())
        : belongs;
  }

  /** What can be known of a body's clock: whether its frames arrived as they were taken. */
  private record BodyTimes(boolean known, boolean anyArrived) {}

  private static final long AT_ONCE = 9_000;

  private BodyTimes times(Model model, Body body, Set<Integer> complete) {
    var atOnce = new ArrayList<Long>();
    var late = new ArrayList<Long>();
    boolean odd = false;
    for (var id : complete) {
      var shot = shots.get(id);
      var arrival = model.arrival(id);
      if (shot.body() != body) {
        continue;
      }
      odd |= shot.odd();
      if (arrival.isPresent()) {
        long way = arrival.get() - shot.at().toEpochMilli();
        if (way >= 0 && way <= AT_ONCE) {
          atOnce.add(way);
        } else {
          late.add(way);
        }
      }
    }
    boolean scattered = late.stream().anyMatch(way -> Math.abs(way) <= 140_000);
    int together = 0;
    for (var from : late) {
      together =
          Math.max(
              together,
              (int) late.stream().filter(way -> way >= from && way <= from + 10_000).count());
    }
    boolean clear =
        !odd
            && !scattered
            && (late.isEmpty() || (together < atOnce.size() && late.size() <= atOnce.size()));
    return new BodyTimes(clear, !atOnce.isEmpty());
  }

  private Belongs place(Model model, Shot shot, List<String> paths, BodyTimes times) {
    var moved = model.moved(shot.id());
    if (moved.isPresent()) {
      return new Belongs(moved, "", true);
    }
    var named = Names.read(start.template(), paths.getFirst());
    if (named.isPresent() && model.list().containsKey(named.get().key())) {
      return new Belongs(Optional.of(named.get().key()), named.get().view(), true);
    }
    if (!times.known()) {
      return Belongs.UNCLEAR;
    }
    var arrival = model.arrival(shot.id());
    long taken = shot.at().toEpochMilli();
    if (arrival.isPresent() && Math.abs(arrival.get() - taken) <= AT_ONCE) {
      return on(model, arrival.get());
    }
    long when = times.anyArrived() ? taken : shot.captured().toEpochMilli();
    return model.changesNear(when, times.anyArrived() ? 2 * AT_ONCE : 0)
        ? Belongs.UNCLEAR
        : on(model, when);
  }

  private static Belongs on(Model model, long millis) {
    var span = model.onSetAt(millis);
    return new Belongs(span.map(Model.Span::key), span.map(Model.Span::view).orElse(""), true);
  }

  // ---- comparing

  private void check(Desk desk) throws IOException, JobException {
    if (gone) {
      return;
    }
    var job = desk.open();
    job.refresh();
    var model = model(desk.folder());
    compare(job, model, desk.seat.station());
    if (desk.seat != Seat.AWAY) {
      compareFrames(desk, job, model);
    }
    nothingLost();
  }

  private static void compare(Job job, Model model, String who) {
    var list = new LinkedHashMap<String, Said.Line>();
    job.shotList().setups().forEach(setup -> list.put(Model.key(setup.code()), Lists.line(setup)));
    Wrong.unlessSame(list, model.list(), who + ": the list");
    Wrong.unlessSame(
        List.copyOf(list.keySet()),
        List.copyOf(model.list().keySet()),
        who + ": order of the list");
    var state = job.state();
    state
        .setups()
        .forEach(
            (code, status) -> {
              var should = model.standing(Model.key(code));
              Wrong.unlessSame(status.state(), should.state(), who + ": " + code);
              Wrong.unlessSame(
                  status.since().map(Instant::toEpochMilli).orElse(-1L),
                  should.since(),
                  who + ": " + code + " since");
              Wrong.unlessSame(
                  status.signedOffBy().orElse(""),
                  should.signedOffBy(),
                  who + ": " + code + " signed off by");
            });
    Wrong.unlessSame(
        state.onSet().map(on -> Model.key(on.setup()) + on.view().orElse("")),
        model.onSet().map(span -> span.key() + span.view()),
        who + ": on set");
    var pickups = state.pickups().stream().map(Model::key).toList();
    Wrong.unlessSame(Set.copyOf(pickups), Set.copyOf(model.pickups()), who + ": pickups");
    Wrong.unlessSame(
        pickups.stream().map(key -> model.pickedUp(key)).toList(),
        model.pickups().stream().map(key -> model.pickedUp(key)).toList(),
        who + ": order of pickups");
    Wrong.unlessSame(
        job.comments().stream().map(one -> Model.key(one.setup()) + ": " + one.text()).toList(),
        model.comments(),
        who + ": comments");
  }

  private void compareFrames(Desk desk, Job job, Model model) throws IOException {
    var scan = job.scan();
    var tally = job.tally(scan);
    var frames = byShot(desk, scan);
    var places = places(model);
    Wrong.unlessSame(frames.keySet(), places.keySet(), "the frames that are there");
    Wrong.unlessSame(tally.frames(), places.size(), "the number of frames");
    var state = job.state();
    var chosen = model.chosen();
    var ratings = model.ratings();
    frames.forEach(
        (id, frame) -> {
          Wrong.unlessSame(state.isSelect(frame), chosen.contains(id), frame.stem() + " is chosen");
          Wrong.unlessSame(
              state.ratingHere(frame).orElse(-1),
              ratings.getOrDefault(id, -1),
              frame.stem() + " is rated");
          var should = places.get(id);
          counts.placed(should.clear());
          if (should.clear()) {
            var place = tally.place(frame);
            Wrong.unlessSame(
                place.map(one -> Model.key(one.setup())),
                should.key(),
                frame.stem() + " belongs to");
            Wrong.unlessSame(
                place.flatMap(one -> one.view()).orElse(""),
                should.view(),
                frame.stem() + " shows");
          }
        });
  }

  /** Every file that was ever whole is somewhere, unless somebody harmed it. */
  private void nothingLost() throws IOException {
    var there = new HashSet<String>();
    there.addAll(contents.of(frames()).values());
    for (int i = 0; i < 2; i++) {
      there.addAll(contents.of(card(i)).values());
      there.addAll(contents.of(real("backup" + (i + 1))).values());
    }
    for (var shot : shots) {
      if (halves.stream().anyMatch(half -> half.shot() == shot)) {
        continue;
      }
      for (var file : shot.files()) {
        Wrong.unless(
            there.contains(file) || harmed.contains(file),
            "a file of frame #" + shot.id() + " is nowhere any more");
      }
    }
  }

  // ---- names

  private enum Renaming {
    FORWARD,
    UNDO,
    REDO
  }

  private void rename(Desk desk, Renaming kind) throws IOException, JobException {
    var before = contents.of(frames());
    var planned = new TreeMap<String, String>();
    var outcome = new Outcome[1];
    if (openBatch && trouble == null) {
      recover(desk);
      openBatch = false;
    }
    amidRenames = true;
    var end =
        act(
            desk,
            List.of(),
            false,
            job -> {
              job.refresh();
              var renamer = Renamer.in(job.folder(), desk.clock);
              if (kind == Renaming.FORWARD) {
                var names = job.frameNames(job.scan());
                names.leftOut().forEach(left -> told(new Problem(left.why(), left.remedy())));
                var plan = renamer.plan(names.requests());
                for (var one : plan.renames()) {
                  if (one.status() == Status.READY) {
                    planned.put(inFrames(one.from()), inFrames(one.to()));
                  }
                }
                outcome[0] = renamer.apply(plan, Progress.NONE);
              } else {
                var batch = kind == Renaming.UNDO ? renamer.nextUndo() : renamer.nextRedo();
                if (batch.isPresent()) {
                  for (var one : renamer.renames(batch.get().id())) {
                    planned.put(inFrames(one.to()), inFrames(one.from()));
                  }
                  outcome[0] = renamer.undo(batch.get().id(), Progress.NONE);
                }
              }
            });
    amidRenames = false;
    openBatch |= trouble != null;
    var after = contents.of(frames());
    boolean halted = outcome[0] instanceof Outcome.Halted;
    if (end == End.DIED || end == End.FAILED || halted) {
      recover(desk);
      after = contents.of(frames());
      var whole = renamed(before, planned);
      if (kind == Renaming.FORWARD) {
        Wrong.unless(
            after.equals(before) || after.equals(whole),
            "after the recovery the names are neither old nor new: "
                + differences(before, whole, after));
      } else {
        Wrong.unlessSame(sorted(after), sorted(before), "what is in the frames");
      }
      check(desk);
      return;
    }
    check(desk);
    switch (outcome[0]) {
      case null -> Wrong.unlessSame(after, before, "the names");
      case Outcome.Applied applied -> {
        var done = new TreeMap<String, String>();
        for (var one : applied.renames()) {
          if (one.status() == Status.DONE) {
            done.put(inFrames(one.from()), inFrames(one.to()));
          }
          told(one);
        }
        Wrong.unlessSame(after, renamed(before, done), "the names after " + kind);
        if (kind == Renaming.FORWARD) {
          Wrong.unlessSame(done, planned, "what was renamed");
          named(desk);
        }
      }
      case Outcome.Refused(var problem) -> {
        told(problem);
        Wrong.unlessSame(after, before, "the names after a refusal");
        Wrong.unless(trouble != null, "the renames were refused: " + problem.sentences());
      }
      case Outcome.RolledBack back -> {
        told(back.problem());
        Wrong.unlessSame(after, before, "the names after it was rolled back");
        Wrong.unless(trouble != null, "the renames were rolled back: " + back.why());
      }
      case Outcome.Nothing _, Outcome.Cancelled _ ->
          Wrong.unlessSame(after, before, "the names after nothing");
      case Outcome.Halted _ -> throw new AssertionError();
    }
  }

  private static void told(PlannedRename one) {
    if (one.status() == Status.BLOCKED || one.status() == Status.SKIPPED) {
      told(new Problem(one.said(), one.fix()));
    }
  }

  private static String inFrames(Path path) {
    return path.subpath(1, path.getNameCount()).toString();
  }

  private static Map<String, String> renamed(
      Map<String, String> before, Map<String, String> names) {
    var after = new TreeMap<String, String>();
    before.forEach((path, sha256) -> after.put(names.getOrDefault(path, path), sha256));
    return after;
  }

  private static List<String> sorted(Map<String, String> contents) {
    return contents.values().stream().sorted().toList();
  }

  private static String differences(
      Map<String, String> before, Map<String, String> whole, Map<String, String> after) {
    var odd = new ArrayList<String>();
    after.forEach(
        (path, sha256) -> {
          if (!sha256.equals(whole.get(path)) || !sha256.equals(before.get(path))) {
            odd.add(
                path
                    + (sha256.equals(whole.get(path))
                        ? " new"
                        : sha256.equals(before.get(path)) ? " old" : " neither"));
          }
        });
    return odd.toString();
  }

  private void recover(Desk desk) throws IOException, JobException {
    var job = desk.open();
    var renamer = Renamer.in(job.folder(), desk.clock);
    for (int i = 0; i < 10; i++) {
      switch (renamer.recover()) {
        case Recovery.Nothing _ -> {
          return;
        }
        case Recovery.RolledBack _, Recovery.Finished _ -> {}
        case Recovery.Stuck(var batch, var files) ->
            throw new Wrong("the recovery of " + batch + " is stuck: " + files);
        case Recovery.Refused(var problem)
            when Files.deleteIfExists(real(main).resolve(".framewright/renames/lock.owner")) ->
            told(problem);
        case Recovery.Refused(var problem) ->
            throw new Wrong("the recovery was refused: " + problem.sentences());
      }
    }
    throw new Wrong("the recovery does not end");
  }

  /** After a rename each frame that has a place has a name that says so, and no two share one. */
  private void named(Desk desk) throws IOException, JobException {
    var model = model(desk.folder());
    var stems = new HashMap<String, String>();
    var paths = complete();
    places(model)
        .forEach(
            (id, belongs) -> {
              var path = paths.get(id).getFirst();
              var read = Names.read(start.template(), path);
              if (!belongs.clear() || belongs.key().isEmpty()) {
                return;
              }
              Wrong.unless(read.isPresent(), path + " has no name by the convention");
              Wrong.unlessSame(read.get().key(), belongs.key().get(), path + " says");
              if (start.template() != 2) {
                Wrong.unlessSame(read.get().view(), belongs.view(), path + " says the view");
              }
              var other = stems.put(Names.stem(path).toLowerCase(java.util.Locale.ROOT), path);
              Wrong.unless(other == null, path + " has the name of " + other);
            });
  }

  // ---- handing off

  private void handOff(Desk desk) throws IOException, JobException {
    var target = "packages/hand-off-" + ++handOffs;
    var delivery = new Delivery[1];
    var plan = new HandOffPlan[1];
    var wanted = new TreeSet<Integer>();
    var model = model(desk.folder());
    var paths = complete();
    places(model)
        .forEach(
            (id, belongs) -> {
              var read = Names.read(start.template(), paths.get(id).getFirst());
              if (model.chosen().contains(id)
                  && belongs.clear()
                  && belongs.key().isPresent()
                  && read.isPresent()
                  && read.get().key().equals(belongs.key().get())
                  && (start.template() == 2 || read.get().view().equals(belongs.view()))) {
                wanted.add(id);
              }
            });
    var planned = new TreeSet<Integer>();
    var end =
        act(
            desk,
            List.of(),
            false,
            job -> {
              job.refresh();
              var scan = job.scan();
              var shots = byShot(desk, scan);
              var handOff = HandOff.of(job, scan, job.tally(scan));
              plan[0] = handOff.selects();
              plan[0].withheld().forEach(one -> told(one.problem()));
              plan[0]
                  .selects()
                  .forEach(
                      select ->
                          shots.forEach(
                              (id, frame) -> {
                                if (frame.id().equals(select.frame().id())) {
                                  planned.add(id);
                                }
                              }));
              delivery[0] =
                  handOff.deliver(
                      plan[0],
                      desk.disk.root().resolve(target),
                      MetadataOptions.NONE,
                      Progress.NONE);
            });
    if (plan[0] != null) {
      Wrong.unless(
          planned.containsAll(wanted) && model.chosen().containsAll(planned),
          "the selects that go: "
              + planned
              + ", should be "
              + wanted
              + "; withheld: "
              + plan[0].withheld().stream().map(one -> one.problem().sentences()).toList());
    }
    switch (delivery[0]) {
      case Delivery.Delivered done -> {
        Wrong.unlessSame(done.selects(), planned.size(), "selects handed off");
        var files = verify(real(target));
        packages.put(target, contents.of(real(target)));
        var should = new ArrayList<String>();
        planned.forEach(id -> should.addAll(shots.get(id).files()));
        Wrong.unlessSame(files, should.stream().sorted().toList(), "the files of the package");
      }
      case Delivery.Refused refused -> {
        told(refused.problem());
        Wrong.unless(!Files.exists(real(target)), "a package that was refused is there");
        Wrong.unless(
            planned.isEmpty() || trouble != null, "refused: " + refused.problem().sentences());
      }
      case Delivery.Failed failed -> {
        told(failed.problem());
        Wrong.unless(trouble != null, "failed: " + failed.problem().sentences());
        Wrong.unless(!Files.exists(real(target)), "a package that failed is there");
      }
      case Delivery.Cancelled _ -> throw new Wrong("nobody cancelled");
      case null -> {
        if (Files.exists(real(target))) {
          verify(real(target));
        }
      }
    }
    if (end == End.DONE && trouble == null) {
      records(target, delivery[0] instanceof Delivery.Delivered);
    }
  }

  /** What a package says it has is there; the checksums of the frames' files in it. */
  private static List<String> verify(Path folder) throws IOException {
    var found = new ArrayList<String>();
    for (var line : Files.readAllLines(folder.resolve("SHA256SUMS"))) {
      var sha256 = line.substring(0, 64);
      var file = folder.resolve(line.substring(66));
      Wrong.unless(Files.exists(file), file.getFileName() + " is missing in the package");
      Wrong.unlessSame(
          Contents.sha256(Files.readAllBytes(file)),
          sha256,
          file.getFileName() + " in the package");
      found.add(sha256);
    }
    found.sort(null);
    return found;
  }

  private void records(String target, boolean delivered) throws IOException {
    var numbers = new TreeSet<Integer>();
    boolean recorded = false;
    var folder = real(main).resolve(".framewright/handoffs");
    if (Files.exists(folder)) {
      try (var files = Files.newDirectoryStream(folder, "*.json")) {
        for (var file : files) {
          var text = Files.readString(file);
          numbers.add(Integer.parseInt(file.getFileName().toString().replace(".json", "")));
          boolean done = text.replaceAll("\\s", "").contains("\"state\":\"delivered\"");
          for (var known : packages.keySet()) {
            if (text.contains("/" + known + "\"")) {
              Wrong.unless(done, "the hand-off to " + known + " is not recorded as delivered");
            }
          }
          recorded |= done && text.contains("/" + target + "\"");
        }
      }
    }
    Wrong.unlessSame(recorded, delivered, "the hand-off is recorded");
  }

  // ---- copies

  private void copyCard(Step.CopyCard copy) throws IOException, JobException {
    var desk = desks.get(copy.seat());
    var card = card(copy.body());
    var before = contents.of(card);
    if (before.isEmpty()) {
      return;
    }
    var targets = new ArrayList<String>();
    for (int i = 0; i < 2; i++) {
      if ((copy.places() >> i & 1) == 1) {
        targets.add("backup" + (i + 1) + "/" + card.getFileName());
      }
    }
    var outcome = new CopyOutcome[1];
    var wanted = new ArrayList<Said>();
    wanted.add(new Said.Other("copied"));
    copies(
        desk,
        wanted,
        job -> {
          var root = desk.disk.root();
          var plan =
              CopyPlan.of(
                  root.resolve(card.getFileName().toString()),
                  targets.stream().map(root::resolve).toList());
          outcome[0] = new Copier(volumes).copy(job, plan, Progress.NONE);
        });
    Wrong.unlessSame(contents.of(card), before, "what is on the card");
    if (outcome[0] instanceof CopyOutcome.Done(var report) && report.isWhole()) {
      for (var target : targets) {
        var there = contents.of(real(target));
        before.forEach(
            (path, sha256) ->
                Wrong.unlessSame(
                    there.getOrDefault(path, "nothing"), sha256, path + " on " + target));
      }
    }
    for (var target : targets) {
      contents
          .of(real(target))
          .forEach(
              (path, sha256) ->
                  Wrong.unless(
                      byContent.containsKey(sha256)
                          || harmed.contains(sha256)
                          || path.startsWith("copied-"),
                      path + " on " + target + " is only half there"));
    }
  }

  /** As {@link #act}, where the event may be left out if nothing was done. */
  private End copies(Desk desk, List<Said> wanted, Action action) throws IOException, JobException {
    var before = lines(desk.folder()).size();
    return act(
        desk,
        wanted,
        false,
        job -> {
          action.run(job);
          if (lines(desk.folder()).size() == before) {
            wanted.clear();
          }
        });
  }

  private void ask(Desk desk, int body) throws IOException, JobException {
    var card = card(body);
    var onCard = contents.of(card);
    if (onCard.isEmpty()) {
      return;
    }
    var compared = new Compared[1];
    copies(
        desk,
        new ArrayList<>(List.of(new Said.Other("compared"))),
        job -> {
          var root = desk.disk.root();
          var folders = new ArrayList<Path>();
          folders.add(root.resolve(card.getFileName().toString()));
          folders.add(root.resolve("backup1"));
          folders.add(root.resolve("backup2"));
          compared[0] =
              new Comparison(job, volumes)
                  .run(CopiesRequest.of(folders, "Ines"), Progress.NONE)
                  .orElseThrow();
        });
    if (compared[0] == null) {
      return;
    }
    contents.forget();
    var disks = new HashMap<String, Set<String>>();
    kept(main, "job", disks);
    kept("backup1", start.oneDisk() ? "backups" : "backup1", disks);
    kept("backup2", start.oneDisk() ? "backups" : "backup2", disks);
    boolean may = true;
    for (var file : onCard.entrySet()) {
      may &=
          volumes.canRead(card.resolve(file.getKey()))
              && disks.getOrDefault(file.getValue(), Set.of()).size() >= 2;
    }
    boolean said = compared[0].cards().getFirst().mayClear();
    compared[0]
        .cards()
        .getFirst()
        .verdict()
        .why()
        .forEach(why -> Wrong.unless(!why.toString().isBlank(), "no reason"));
    Wrong.unlessSame(
        said, may, "the card may be cleared (" + compared[0].cards().getFirst().verdict() + ")");
    counts.asked(said);
    if (said) {
      for (var path : Contents.all(card).reversed()) {
        if (!path.equals(card) && !path.equals(card.resolve("DCIM"))) {
          Files.delete(path);
        }
      }
      nothingLost();
    }
  }

  /** Adds on which disk each content lies, as far as it can be proved. */
  private void kept(String folder, String disk, Map<String, Set<String>> disks) throws IOException {
    if (volumes.isFromMemory(folder)) {
      return;
    }
    for (var sha256 : contents.of(real(folder)).values()) {
      disks.computeIfAbsent(sha256, _ -> new HashSet<>()).add(disk);
    }
  }

  private void damage(Step.Damage damage) throws IOException {
    var place = "backup" + (damage.place() + 1);
    if (damage.harm() == Step.Harm.FROM_MEMORY) {
      volumes.turnMemory(place);
      return;
    }
    var folder = damage.harm() == Step.Harm.CARD_UNREADABLE ? card(damage.place()) : real(place);
    var files =
        contents.of(folder).keySet().stream().filter(path -> !path.contains("copied-")).toList();
    if (files.isEmpty()) {
      return;
    }
    var file = folder.resolve(files.get(damage.file() % files.size()));
    var bytes = Files.readAllBytes(file);
    switch (damage.harm()) {
      case CARD_UNREADABLE -> volumes.cannotRead(file);
      case FILE_GONE -> {
        harmed.add(Contents.sha256(bytes));
        Files.delete(file);
      }
      default -> {
        harmed.add(Contents.sha256(bytes));
        var time = Files.getLastModifiedTime(file);
        bytes[bytes.length / 2] ^= 4;
        harmed.add(Contents.sha256(bytes));
        Files.write(file, bytes);
        Files.setLastModifiedTime(file, time);
        contents.forget();
      }
    }
  }

  // ---- folders

  private void folderGone(Step meanwhile) throws IOException, JobException {
    var folder = real(main);
    var away = folder.resolveSibling("unplugged");
    Files.move(folder, away);
    gone = true;
    try {
      take(meanwhile);
      Wrong.unless(!Files.exists(folder), "something was made where the job’s folder was");
    } finally {
      gone = false;
      if (!Files.exists(folder)) {
        Files.move(away, folder);
      }
    }
    for (var desk : desks.values()) {
      if (desk.job != null) {
        check(desk);
      }
    }
  }

  private void folderCopied() throws IOException {
    var copy = "disk" + ++places + "/" + real(main).getFileName();
    Contents.copy(real(main), real(copy));
    Contents.delete(real(main));
    visible.put(copy, visible.remove(main));
    main = copy;
    contents.forget();
    desks.get(Seat.LAPTOP).die();
    desks.get(Seat.CART).die();
  }

  private List<Path> plainLogs(String folder, boolean ofOffice) throws IOException {
    try (var files = Files.list(logs(folder))) {
      return files
          .filter(file -> file.toString().endsWith(".jsonl") && !file.toString().contains(" "))
          .filter(file -> file.getFileName().toString().startsWith("away") == ofOffice)
          .sorted()
          .toList();
    }
  }

  private void synchronise(Step.Synchronise sync) throws IOException, JobException {
    var from = sync.back() ? office : main;
    var to = sync.back() ? main : office;
    var files = plainLogs(from, sync.back());
    if (files.isEmpty()) {
      return;
    }
    var file = files.get(sync.writer() % files.size());
    var copy = logs(to).resolve(file.getFileName().toString());
    var bytes = Files.readAllBytes(file);
    int had = Files.exists(copy) ? (int) Files.size(copy) : 0;
    int length = had + (int) ((bytes.length - had) * (long) sync.percent() / 100);
    var part = copy.resolveSibling("." + file.getFileName() + ".sync");
    Files.write(part, java.util.Arrays.copyOf(bytes, length));
    Files.move(part, copy, StandardCopyOption.REPLACE_EXISTING);
    visible.get(to).addAll(lines(to).keySet());
    for (var desk : desks.values()) {
      if (desk.folder().equals(to)) {
        check(desk);
      }
    }
  }

  private void conflictCopy(boolean away, int writer) throws IOException, JobException {
    var folder = away ? office : main;
    var files = new ArrayList<>(plainLogs(folder, false));
    files.addAll(plainLogs(folder, true));
    var file = files.get(writer % files.size());
    var name = file.getFileName().toString().replace(".jsonl", " (conflicted copy).jsonl");
    Files.copy(file, file.resolveSibling(name), StandardCopyOption.REPLACE_EXISTING);
    for (var desk : desks.values()) {
      if (desk.folder().equals(folder)) {
        check(desk);
      }
    }
  }

  private void newerVersion() throws IOException, JobException {
    var file = logs(main).resolve("newer-1.jsonl");
    var line =
        "{\"station\":\"newer-1\",\"number\":%d,\"time\":\"%s\",\"count\":0,\"clock\":\"%s\",\"type\":\"hovered\",\"over\":\"x\""
            .formatted(++newer, now, now);
    Files.writeString(
        file, (Files.exists(file) ? Files.readString(file) : "") + LogLine.sealed(line));
    for (var one : lines(main).values()) {
      facts.computeIfAbsent(
          one.id(), id -> new Model.Fact(id, one.millis(), one.count(), new Said.Other("hovered")));
      visible.get(main).add(one.id());
    }
    check(desks.get(Seat.LAPTOP));
  }

  private void night() throws IOException, JobException {
    for (var desk : desks.values()) {
      check(desk);
    }
    var model = model(main);
    var disk = recording();
    var newcomer =
        Job.open(disk.root().resolve(main), desks.get(Seat.LAPTOP).clock, new Station("newcomer"));
    compare(newcomer, model, "a newcomer");
    inAnyOrder(model);
    packages.forEach(
        (folder, was) -> {
          try {
            Wrong.unlessSame(contents.of(real(folder)), was, "the package " + folder);
          } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
          }
        });
    now = now.plus(Duration.ofHours(13));
  }

  /** Logs that come in pieces and in any order make one state. */
  private void inAnyOrder(Model model) throws IOException, JobException {
    var random = new Random(facts.size());
    var folder = scratch.resolve("order").resolve(real(main).getFileName().toString());
    Files.createDirectories(folder.resolve(".framewright/log"));
    Files.createDirectories(folder.resolve("01_frames"));
    Files.copy(
        real(main).resolve(".framewright/convention.yaml"),
        folder.resolve(".framewright/convention.yaml"));
    var job = Job.open(folder, desks.get(Seat.LAPTOP).clock, new Station("newcomer"));
    var files =
        Contents.all(logs(main)).stream()
            .filter(file -> file.toString().endsWith(".jsonl"))
            .toList();
    var had = new HashMap<Path, Integer>();
    for (int i = 0; i < 3 * files.size(); i++) {
      var file = files.get(random.nextInt(files.size()));
      int size = (int) Files.size(file);
      int length = Math.max(had.getOrDefault(file, 0), random.nextInt(size + 1));
      piece(folder, file, length);
      had.put(file, length);
      job.refresh();
    }
    for (var file : files) {
      piece(folder, file, (int) Files.size(file));
      job.refresh();
    }
    compare(job, model, "whoever hears it in another order");
    Contents.delete(scratch.resolve("order"));
  }

  private static void piece(Path folder, Path log, int length) throws IOException {
    Files.write(
        folder.resolve(".framewright/log").resolve(log.getFileName().toString()),
        java.util.Arrays.copyOf(Files.readAllBytes(log), length));
  }
}
