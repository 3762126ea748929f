package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.framewright.frames.FrameId;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever the disk does while a job is written: the state is the old one or the new one. */
class JobOnFailingDiskTest {
  private static final Station SET = new Station("set");
  private static final Device PHONE = new Device("page-00000001");
  private static final Numbered TICK =
      new Numbered(
          1,
          Instant.parse("2026-11-23T09:00:00Z"),
          new Asked.Ticked("1", SetupState.SHOT, MarkDetails.NONE));
  private static final List<FrameId> FRAMES = List.of(new FrameId("a"), new FrameId("b"));

  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Path template;
  private int copies;

  /** Something a person does to a job. */
  private interface Command {
    void on(Job job) throws IOException, JobException;
  }

  private static ShotList list(String... codes) {
    return new ShotList(List.of(codes).stream().map(code -> new Setup(code, "T")).toList());
  }

  private static Map<String, Command> commands() {
    var commands = new LinkedHashMap<String, Command>();
    commands.put("mark", job -> job.mark("1", SetupState.SHOT, MarkDetails.NONE));
    commands.put("list --import", job -> job.importList(list("1", "3", "4")));
    commands.put("frames --move", job -> job.moveFrames(FRAMES, "2", Optional.empty(), "Ana"));
    commands.put("mark --take-back", Job::takeBack);
    commands.put("a device's tick", job -> job.receive(PHONE, TICK));
    return commands;
  }

  @BeforeEach
  void aJob() throws Exception {
    var job =
        ((Started.Opened)
                Job.start(
                    JobStartTest.convention(),
                    Files.createDirectory(root.resolve("template")),
                    JobStartTest.VALUES,
                    clock,
                    JobStartTest.DESK))
            .job();
    job.importList(list("1", "2", "3"));
    for (var setup : List.of("2", "3", "2")) {
      job.mark(setup, SetupState.PICKUP, MarkDetails.NONE);
    }
    // The station of the tests has ticks to take back, too.
    var other = Job.open(job.folder(), clock, SET);
    other.mark("3", SetupState.DROPPED, MarkDetails.NONE);
    other.mark("2", SetupState.DROPPED, MarkDetails.NONE);
    template = job.folder();
  }

  private Path copy() throws IOException {
    var to = root.resolve("copy" + copies++);
    try (var files = Files.walk(template)) {
      for (var file : files.toList()) {
        Files.copy(file, to.resolve(template.relativize(file)));
      }
    }
    return to;
  }

  private Job open(Path folder, Station station) throws IOException, JobException {
    return Job.open(folder, clock, station);
  }

  private static boolean endsBadly(Job job, Command command) throws JobException {
    try {
      command.on(job);
      return false;
    } catch (IOException | Killed e) {
      return true;
    }
  }

  private int tried(Command command, Station station) throws Exception {
    var dry = Recording.on(copy());
    var job = open(dry.root(), station);
    var before = job.state();
    dry.clear();
    command.on(job);
    var after = job.state();
    assertThat(after).isNotEqualTo(before);
    int points = 0;
    for (int n = 0; n < dry.ops().size(); n++) {
      var ends = new ArrayList<Ending>();
      int at = n;
      ends.add(disk -> disk.killAt(at));
      ends.add(disk -> disk.killWithin(at));
      FailingDisk.modes(n).forEach(mode -> ends.add(disk -> disk.fail(mode.fault())));
      for (var end : ends) {
        var folder = copy();
        var disk = Recording.on(folder);
        var damaged = open(disk.root(), station);
        disk.clear();
        end.on(disk);
        boolean bad = endsBadly(damaged, command);
        var found = open(folder, station);
        assertThat(found.state()).isIn(before, after);
        if (!bad) {
          assertThat(found.state()).as("what was confirmed is there").isEqualTo(after);
        }
        assertThat(found.warnings()).allMatch(line -> line.contains("torn"));
        boolean done = found.state().equals(after);
        command.on(found);
        if (!done) {
          assertThat(found.state()).as("done again").isEqualTo(after);
        }
        assertThat(open(folder, SET).state()).isEqualTo(found.state());
        points++;
      }
    }
    return points;
  }

  /** How the disk ends a command. */
  private interface Ending {
    void on(Recording disk);
  }

  @Tag("slow")
  @Test
  void keepsTheOldStateOrTheNewOneAndDoesTheSameAgain() throws Exception {
    for (var command : commands().entrySet()) {
      System.out.println(
          command.getKey()
              + ": "
              + tried(command.getValue(), SET)
              + " kills and failures, the old state or the new one");
    }
  }

  @Tag("slow")
  @Test
  void keepsTheOldStateOrTheNewOneAtTheFirstEventOfAStation() throws Exception {
    int points = tried(commands().get("mark"), new Station("laptop"));
    System.out.println("first mark: " + points + " kills and failures");
  }

  @Test
  void writesThenFlushesAndFlushesTheFolderOfANewLog() throws Exception {
    var disk = Recording.on(template);
    var job = open(disk.root(), new Station("laptop"));
    disk.clear();
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    var log = ".framewright/log/";
    long size = Files.size(template.resolve(log + "laptop.jsonl"));
    assertThat(disk.ops())
        .containsExactly(
            new DiskOp.Create(log + "laptop.lock"),
            new DiskOp.Lock(log + "laptop.lock", false),
            new DiskOp.Create(log + "laptop.jsonl"),
            new DiskOp.Write(log + "laptop.jsonl", 0, size),
            new DiskOp.Force(log + "laptop.jsonl", false),
            new DiskOp.Force(".framewright/log", true));
    disk.clear();
    job.mark("2", SetupState.SHOT, MarkDetails.NONE);
    assertThat(disk.ops())
        .containsExactly(
            new DiskOp.Lock(log + "laptop.lock", false),
            new DiskOp.Write(
                log + "laptop.jsonl",
                size,
                Files.size(template.resolve(log + "laptop.jsonl")) - size),
            new DiskOp.Force(log + "laptop.jsonl", false));
  }

  @Test
  void takesAFailedEventOutOfTheLogAgain() throws Exception {
    var disk = Recording.on(template);
    var job = open(disk.root(), SET);
    var log = ".framewright/log/set.jsonl";
    var before = Files.readString(template.resolve(log));
    disk.clear();
    disk.fail(Fault.ofEach(DiskOp.Force.class, Fault::inputOutput));
    assertThat(endsBadly(job, commands().get("mark"))).isTrue();
    assertThat(template.resolve(log)).hasContent(before);
    assertThat(disk.ops().getLast()).isEqualTo(new DiskOp.Truncate(log, before.length()));
    disk.heal();
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    assertThat(open(template, SET).state()).isEqualTo(job.state());
    assertThat(open(template, SET).warnings()).isEmpty();
  }

  @Test
  void flushesTheFolderAgainWhenTheFirstEventOfALogFailed() throws Exception {
    var disk = Recording.on(template);
    var job = open(disk.root(), new Station("laptop"));
    disk.fail(Fault.ofEach(DiskOp.Write.class, Fault::noSpace));
    assertThat(endsBadly(job, commands().get("mark"))).isTrue();
    disk.heal();
    disk.clear();
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    assertThat(disk.ops().getLast()).isEqualTo(new DiskOp.Force(".framewright/log", true));
  }

  @Test
  void writesALogOfItsOwnWhereTheVolumeHasNoLocks() throws Exception {
    var disk = Recording.on(template);
    var job = open(disk.root(), SET);
    disk.fail(Fault.ofEach(DiskOp.Lock.class, Fault::inputOutput));
    for (var code : List.of("1", "2", "3")) {
      job.mark(code, SetupState.SHOT, MarkDetails.NONE);
    }
    try (var logs = Files.newDirectoryStream(template.resolve(".framewright/log"), "set-*.jsonl")) {
      var found = new ArrayList<Path>();
      logs.forEach(found::add);
      assertThat(found).hasSize(1);
      assertThat(Files.readAllLines(found.getFirst())).hasSize(3);
    }
    assertThat(open(template, SET).state()).isEqualTo(job.state());
    assertThat(job.takeBack().of("3").state()).isEqualTo(SetupState.DROPPED);
  }
}
