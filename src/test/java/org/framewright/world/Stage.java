package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.framewright.base.Problem;
import org.framewright.copies.CopiesException;
import org.framewright.disk.CutDisk;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/** Where a script is played: the folders, the computers at work, and what was said so far. */
final class Stage {
  private static final Instant MORNING = Instant.parse("2026-03-02T08:00:00Z");

  /** What a step came to. */
  enum End {
    DONE,
    REFUSED,
    FAILED,
    DIED
  }

  /** Something that a program does. */
  interface Action {
    void run(Job job) throws IOException, JobException, CopiesException;
  }

  /**
   * A frame that was taken.
   *
   * @param odd whether its body's clock had been set meanwhile
   * @param captured what its body's clock showed
   * @param files the SHA-256 of each of its files, the first one that of the frame
   */
  record Shot(int id, Body body, boolean odd, Instant at, Instant captured, List<String> files) {}

  final Path scratch;
  final Path base;
  final Counts counts;
  final Contents contents = new Contents();
  final Map<Seat, Desk> desks = new EnumMap<>(Seat.class);
  final Map<LogLine.Id, Model.Fact> facts = new HashMap<>();

  /** By folder, the events that its logs say. */
  final Map<String, Set<LogLine.Id>> visible = new HashMap<>();

  final List<Shot> shots = new ArrayList<>();
  final Map<String, Shot> byContent = new HashMap<>();

  /** The SHA-256 of what somebody harmed, before and after. */
  final Set<String> harmed = new HashSet<>();

  /** The frames of which a file is only half written. */
  final Set<Shot> halves = new HashSet<>();

  final Body[] bodies = new Body[2];
  final Places places = new Places(this);
  final Comparing comparing = new Comparing(this);
  private final LogReader logReader = new LogReader();
  Step.Start start = new Step.Start(0, 0, false, true, false);
  WorldVolumes volumes;
  Instant now = MORNING;

  /** The job's folder on set, and its copy in the office, below {@link #base}. */
  String main = "";

  String office = "";

  /** What goes wrong in the step that is done, and at which change; nothing if all goes well. */
  Trouble trouble;

  int at;

  /** Whether the job's folder is not there. */
  boolean gone;

  /** While names may be half old and half new, until the recovery. */
  boolean amidRenames;

  Stage(Path scratch, Counts counts) throws IOException {
    this.scratch = scratch.toRealPath();
    this.base = Files.createDirectory(this.scratch.resolve("world"));
    this.counts = counts;
    for (var seat : Seat.values()) {
      desks.put(seat, new Desk(this, seat));
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

  Recording recording() throws IOException {
    var disk = Recording.on(base);
    if (!start.locks()) {
      disk.withoutLocks();
    }
    if (start.coarse()) {
      disk.withTimesInSteps(Duration.ofSeconds(2));
    }
    return disk;
  }

  Path real(String folder) {
    return base.resolve(folder);
  }

  Path framesFolder() {
    return real(main).resolve("01_frames");
  }

  /**
   * Has a program do something, as the disk lets it.
   *
   * @param wanted what its log is to say afterwards, in this order
   * @param refusal whether it must be refused
   */
  End act(Desk desk, List<? extends Said> wanted, boolean refusal, Action action)
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
      comparing.check(desk);
    }
    return end;
  }

  void disturb(Recording disk) {
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

  static void told(Problem problem) {
    Wrong.unless(!problem.what().isBlank(), "a refusal does not say what is wrong");
    Wrong.unless(!problem.remedy().isBlank(), "no remedy is told for: " + problem.what());
  }

  void cutPower(CutDisk cut) throws IOException {
    var times = new HashMap<String, FileTime>();
    for (var path : Contents.all(base)) {
      if (Files.isRegularFile(path)) {
        times.put(placed(path), Files.getLastModifiedTime(path));
      }
    }
    var left = scratch.resolve("left");
    cut.afterPowerCut(
        left, trouble == Trouble.POWER_LOST ? CutDisk.Names.LOST : CutDisk.Names.KEPT);
    Contents.become(base, left);
    Contents.delete(left);
    for (var path : Contents.all(base)) {
      if (Files.isRegularFile(path)) {
        var time = times.get(placed(path));
        if (time != null) {
          Files.setLastModifiedTime(path, time);
        }
      }
    }
    desks.values().forEach(Desk::die);
    contents.forget();
  }

  /** What tells a file from others: a copy of it in another folder may have another time. */
  private static String placed(Path file) throws IOException {
    return file.getParent() + " " + Contents.sha256(Files.readAllBytes(file));
  }

  Path logs(String folder) {
    return real(folder).resolve(".framewright/log");
  }

  Map<LogLine.Id, LogLine> lines(String folder) throws IOException {
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
  void hear(Desk desk, List<? extends Said> wanted, End end) throws IOException {
    var lines = lines(desk.folder());
    var before = visible.computeIfAbsent(desk.folder(), _ -> new HashSet<>());
    Wrong.unless(
        lines.keySet().containsAll(before), "something that was said is gone from the log");
    var fresh =
        lines.values().stream()
            .filter(line -> !facts.containsKey(line.id()))
            .sorted(Comparator.comparingLong(LogLine::millis).thenComparingInt(LogLine::count))
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

  void keep(Desk desk, LogLine line, Said said, Set<LogLine.Id> seen) {
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

  static List<String> codes(Optional<String> array) {
    var codes = new ArrayList<String>();
    for (var code : array.orElse("[]").replaceAll("[\\[\\]\"]", "").split(",", -1)) {
      if (!code.isBlank()) {
        codes.add(code);
      }
    }
    return codes;
  }

  Model model(String folder) {
    return Model.of(visible.getOrDefault(folder, Set.of()).stream().map(facts::get).toList());
  }

  String code(Seat seat, int which) {
    var list = List.copyOf(model(desks.get(seat).folder()).list().values());
    return list.isEmpty() ? "7" : list.get(which % list.size()).code();
  }

  /** The frames that lie whole among those of the job, each with the paths of its first file. */
  SortedMap<Integer, List<String>> complete() throws IOException {
    var found = new TreeMap<Integer, List<String>>();
    contents
        .of(framesFolder())
        .forEach(
            (path, sha256) -> {
              var shot = byContent.get(sha256);
              if (shot != null && shot.files().getFirst().equals(sha256)) {
                found.computeIfAbsent(shot.id(), _ -> new ArrayList<>()).add(path);
              }
            });
    return found;
  }

  /** The frames of a scan, each once, by what they are. */
  Map<Integer, Frame> byShot(Desk desk, FrameScan scan) throws IOException {
    var paths = new HashMap<Path, Integer>();
    complete()
        .forEach((id, names) -> names.forEach(name -> paths.put(framesFolder().resolve(name), id)));
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

  Path card(int body) {
    return real("card" + bodies[body].name());
  }

  String station(Desk desk) throws IOException, JobException {
    // What comes under a trouble may begin with another opening.
    return trouble == Trouble.POWER_LOST || trouble == Trouble.POWER_KEPT || gone
        ? desk.seat.station()
        : desk.open().station();
  }
}
