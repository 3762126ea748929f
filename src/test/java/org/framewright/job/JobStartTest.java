package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import org.framewright.disk.CutDisk;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Recording;
import org.framewright.disk.SymbolicLinks;
import org.framewright.naming.Convention;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A job's folder appears whole or not at all. */
class JobStartTest {
  static final Station DESK = new Station("desk");
  static final Map<String, String> VALUES =
      Map.of("day", "2026-11-23", "client", "Kvo", "title", "Wool");
  static final String NAME = "2026-11-23_KVO_wool";

  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");

  static Convention convention() {
    // Small, so that it is read and checked many times.
    return sound(
        """
        convention: Small
        fields:
          day: {type: date, pattern: uuuu-MM-dd}
          client: {type: code, letters: upper, length: 3}
          title: {type: words, separator: "-", length: 1-9}
          setup: {type: number, digits: 3}
          take: {type: counter, digits: 4, restarts: setup}
        names:
          job: "{day}_{client}_{title}"
          frame: "{client}_{setup}_{take}"
        folders:
          frames: 01_frames
          selects: 02/selects
        """);
  }

  static Convention sound(String yaml) {
    return switch (Convention.parse(yaml, "test.yaml")) {
      case Convention.Parsed.Sound sound -> sound.convention();
      case Convention.Parsed.Faulty faulty -> throw new AssertionError(faulty.findings());
    };
  }

  private Job start(Path in) throws IOException, JobException {
    return ((Started.Opened) Job.start(convention(), in, VALUES, clock, DESK)).job();
  }

  private static List<String> names(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private static String name(DiskOp op) {
    var draft = "\\.framewright-[0-9a-f]{12}";
    var words =
        switch (op) {
          case DiskOp.Create create -> "create " + create.path();
          case DiskOp.CreateFolder create -> "folder " + create.path();
          case DiskOp.Write write -> "write " + write.path();
          case DiskOp.Force force -> "flush " + force.path();
          case DiskOp.Lock lock -> "lock " + lock.path();
          case DiskOp.Move move -> "move " + move.from() + " to " + move.to();
          case DiskOp.Delete delete -> "delete " + delete.path();
          default -> op.toString();
        };
    return words.replaceAll(draft, "DRAFT");
  }

  @Test
  void flushesFilesThenFoldersThenTheNameOfTheWhole() throws Exception {
    var disk = Recording.on(parent);
    start(disk.root());
    assertThat(disk.ops().stream().map(JobStartTest::name))
        .containsExactly(
            "create DRAFT.lock",
            "lock DRAFT.lock",
            "folder DRAFT",
            "folder DRAFT/01_frames",
            "folder DRAFT/02",
            "folder DRAFT/02/selects",
            "folder DRAFT/.framewright",
            "folder DRAFT/.framewright/log",
            "create DRAFT/.framewright/convention.yaml",
            "write DRAFT/.framewright/convention.yaml",
            "flush DRAFT/.framewright/convention.yaml",
            "create DRAFT/.framewright/log/desk.lock",
            "lock DRAFT/.framewright/log/desk.lock",
            "create DRAFT/.framewright/log/desk.jsonl",
            "write DRAFT/.framewright/log/desk.jsonl",
            "flush DRAFT/.framewright/log/desk.jsonl",
            "flush DRAFT/.framewright/log",
            "flush DRAFT/02/selects",
            "flush DRAFT/02",
            "flush DRAFT/01_frames",
            "flush DRAFT/.framewright/log",
            "flush DRAFT/.framewright",
            "flush DRAFT",
            "move DRAFT to " + NAME,
            "flush .",
            "delete DRAFT.lock");
  }

  /** What a disk may hold after a start that ended somehow, and that it can be done again. */
  private void isAllOrNothing(Path in) throws IOException, JobException {
    var visible = names(in).stream().filter(name -> !name.startsWith(".")).toList();
    assertThat(visible).isSubsetOf(NAME);
    if (visible.isEmpty()) {
      start(in);
      assertThat(names(in)).as("no draft is left").containsExactly(NAME);
    } else {
      assertThatThrownBy(() -> start(in))
          .isInstanceOfSatisfying(
              JobException.class, there -> assertThat(there.what()).contains("exists already"));
    }
    var job = Job.open(in.resolve(NAME), clock, DESK);
    assertThat(job.values()).isEqualTo(VALUES);
    assertThat(job.warnings()).isEmpty();
    assertThat(job.framesFolder()).isDirectory();
    assertThat(job.folder("selects")).isDirectory();
  }

  @Tag("slow")
  @Test
  void leavesNoJobOrAWholeOneWhereverItIsKilledOrThePowerGoes() throws Exception {
    var dry = Recording.on(Files.createDirectory(parent.resolve("dry")));
    start(dry.root());
    int points = 0;
    for (int n = 0; n < dry.ops().size(); n++) {
      for (boolean within : new boolean[] {false, true}) {
        if (within && !(dry.ops().get(n) instanceof DiskOp.Write)) {
          continue;
        }
        var folder = Files.createDirectory(parent.resolve("killed-%d-%b".formatted(n, within)));
        var disk = Recording.on(folder);
        var cut = disk.cutDisk();
        if (within) {
          disk.killWithin(n);
        } else {
          disk.killAt(n);
        }
        assertThatThrownBy(() -> start(disk.root())).isInstanceOf(Error.class);
        var after = Files.createDirectory(parent.resolve("cut-%d-%b".formatted(n, within)));
        isAllOrNothing(folder);
        isAllOrNothing(cut.afterPowerCut(after, CutDisk.Names.LOST));
        points += 2;
      }
    }
    var cut = Recording.on(Files.createDirectory(parent.resolve("done")));
    var done = cut.cutDisk();
    start(cut.root());
    isAllOrNothing(
        done.afterPowerCut(Files.createDirectory(parent.resolve("kept")), CutDisk.Names.LOST));
    assertThat(names(parent.resolve("kept"))).as("once it returned").contains(NAME);
    System.out.println("start: " + points + " kills and power cuts, no job or a whole one");
  }

  @Tag("slow")
  @Test
  void leavesNoJobOrAWholeOneWhateverTheDiskRefuses() throws Exception {
    var dry = Recording.on(Files.createDirectory(parent.resolve("dry")));
    start(dry.root());
    int points = 0;
    for (int n = 0; n < dry.ops().size(); n++) {
      for (var failing : FailingDisk.modes(n)) {
        var folder = Files.createDirectory(parent.resolve("failed-" + points));
        var disk = Recording.on(folder);
        disk.fail(failing.fault());
        try {
          start(disk.root());
        } catch (IOException e) {
          // Said to the person; what matters is what is left.
        }
        isAllOrNothing(folder);
        points++;
      }
    }
    System.out.println("start: " + points + " failures, no job or a whole one");
  }

  @Test
  void takesNobodysPlace() throws Exception {
    Files.createDirectory(parent.resolve(NAME));
    assertThatThrownBy(() -> start(parent))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("is no job");
    Files.delete(parent.resolve(NAME));
    Files.writeString(parent.resolve(NAME), "mine");
    assertThatThrownBy(() -> start(parent)).isInstanceOf(JobException.class);
    assertThat(parent.resolve(NAME)).hasContent("mine");
    assertThat(names(parent)).containsExactly(NAME);
    assertThatThrownBy(() -> start(parent.resolve("nowhere")))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no such folder");
  }

  @Test
  void startsOneJobWhenManyStartItAtOnce() throws Exception {
    var attempts = new ArrayList<Callable<Boolean>>();
    for (int i = 0; i < 8; i++) {
      var station = new Station("desk" + i);
      attempts.add(
          () -> {
            try {
              Job.start(convention(), parent, VALUES, clock, station);
              return true;
            } catch (JobException e) {
              assertThat(e.what()).contains("exists already");
              return false;
            }
          });
    }
    int started = 0;
    try (var threads = Executors.newFixedThreadPool(8)) {
      for (var done : threads.invokeAll(attempts)) {
        started += done.get() ? 1 : 0;
      }
    }
    assertThat(started).isEqualTo(1);
    assertThat(names(parent)).containsExactly(NAME);
    assertThat(Job.open(parent.resolve(NAME), clock, DESK).warnings()).isEmpty();
  }

  @Test
  void removesOnlyDraftsThatNobodyHolds() throws Exception {
    var held = Files.createDirectory(parent.resolve(".framewright-0123456789ab"));
    var lock = Files.createFile(parent.resolve(".framewright-0123456789ab.lock"));
    var left = Files.createDirectories(parent.resolve(".framewright-ffffffffffff/01_frames"));
    Files.createFile(parent.resolve(".framewright-ffffffffffff.lock"));
    var foreign = Files.createFile(parent.resolve(".framewright-notes.lock"));
    var outside = Files.createDirectories(parent.resolve("outside/inner"));
    SymbolicLinks.make(left.resolve("link"), outside);
    try (var channel = FileChannel.open(lock, StandardOpenOption.WRITE)) {
      assertThat(channel.tryLock()).isNotNull();
      start(parent);
    }
    assertThat(held).isDirectory();
    assertThat(lock).exists();
    assertThat(foreign).exists();
    assertThat(outside).isDirectory();
    assertThat(parent.resolve(".framewright-ffffffffffff")).doesNotExist();
    assertThat(parent.resolve(".framewright-ffffffffffff.lock")).doesNotExist();
  }

  @Test
  void refusesFoldersOfTheConventionThatLieOutsideOrAmongOurOwn() {
    for (var folder : List.of("../out", ".FrameWright/log", "01/../../out", "/")) {
      var yaml = convention().yaml().replace("02/selects", '"' + folder + '"');
      if (Convention.parse(yaml, "x") instanceof Convention.Parsed.Sound odd) {
        assertThat(odd.convention().check(0))
            .satisfiesAnyOf(
                findings -> assertThat(findings).isNotEmpty(),
                findings ->
                    assertThatThrownBy(
                            () -> Job.start(odd.convention(), parent, VALUES, clock, DESK))
                        .isInstanceOf(JobException.class));
      }
    }
    assertThat(parent).isEmptyDirectory();
  }
}
