package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.framewright.base.FileProblemException;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;
import org.framewright.disk.SymbolicLinks;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Logs that nobody's program wrote, in folders that are not what they were. */
class HostileLogTest {
  private static final Station DESK = new Station("desk");

  @TempDir private Path root;
  private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");

  @BeforeEach
  void aLogFolder() throws Exception {
    folder = Files.createDirectories(root.resolve("job/log"));
  }

  private FileEventLog log() {
    return new FileEventLog(folder, DESK, clock);
  }

  private static Event mark(String setup) {
    return new Event.Marked(setup, SetupState.SHOT, MarkDetails.NONE);
  }

  private Path file() {
    return folder.resolve("desk.jsonl");
  }

  private static List<Event> events(FileEventLog log) throws IOException {
    return log.news().stream().map(Entry::event).toList();
  }

  // The folder

  @Test
  void failsLoudlyOnceTheJobWasMovedAway() throws Exception {
    var log = log();
    log.append(mark("1"));
    Files.move(root.resolve("job"), root.resolve("moved"));
    for (var attempt : List.<Attempt>of(() -> log.append(mark("2")), log::news)) {
      assertThatThrownBy(attempt::make)
          .isInstanceOfSatisfying(
              FileProblemException.class,
              gone -> {
                assertThat(gone.problem().what()).contains("not there any more");
                assertThat(gone.problem().where()).startsWith(root.resolve("job").toString());
                assertThat(gone.problem().remedy()).contains("plugged in");
                assertThat(FileProblems.of(gone)).isEqualTo(gone.problem());
              });
    }
    assertThat(root.resolve("job")).doesNotExist();
    Files.move(root.resolve("moved"), root.resolve("job"));
    log.append(mark("2"));
    assertThat(events(log())).containsExactly(mark("1"), mark("2"));
  }

  @Test
  void neverMakesTheFolderOfALog() throws Exception {
    Files.delete(folder);
    assertThatThrownBy(() -> log().append(mark("1"))).isInstanceOf(IOException.class);
    assertThat(folder).doesNotExist();
  }

  private interface Attempt {
    void make() throws Exception;
  }

  // Links, pipes, devices

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void writesThroughNoLink() throws Exception {
    var outside = Files.writeString(root.resolve("outside"), "as it was");
    var away = Files.createDirectory(root.resolve("away"));
    for (var name : List.of("desk.jsonl", "desk.lock")) {
      for (var target : List.of(outside, root.resolve("new"))) {
        var link = SymbolicLinks.make(folder.resolve(name), target);
        assertThatThrownBy(() -> log().append(mark("1")))
            .isInstanceOf(FileProblemException.class)
            .hasMessageContaining(name)
            .hasMessageContaining("this is a link");
        Files.delete(link);
      }
    }
    for (var part : List.of("job", "job/log")) {
      var real = root.resolve(part);
      var elsewhere = Files.move(real, away.resolve("real"));
      SymbolicLinks.make(real, elsewhere);
      assertThatThrownBy(() -> log().append(mark("1")))
          .isInstanceOf(FileProblemException.class)
          .hasMessageContaining("a link, and the job needs a folder here");
      assertThatThrownBy(() -> log().news()).isInstanceOf(FileProblemException.class);
      Files.delete(real);
      Files.move(elsewhere, real);
    }
    assertThat(outside).hasContent("as it was");
    assertThat(root.resolve("new")).doesNotExist();
    assertThat(folder).isEmptyDirectory();
    assertThat(away).isEmptyDirectory();
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void leavesOutLogsThatAreNoPlainFilesAndSaysSo() throws Exception {
    var other = Files.createDirectory(root.resolve("other"));
    Lines.append(
        other.resolve("x"),
        Lines.event(
            "set", 1, "2026-11-23T08:00:00Z", "\"marked\",\"setup\":\"9\",\"state\":\"shot\""));
    SymbolicLinks.make(folder.resolve("linked.jsonl"), other.resolve("x"));
    Files.createDirectory(folder.resolve("folder.jsonl"));
    var log = log();
    log.append(mark("1"));
    assertThat(events(log)).containsExactly(mark("1"));
    assertThat(log.warnings())
        .hasSize(2)
        .anyMatch(line -> line.contains("linked.jsonl: this is a link"))
        .anyMatch(line -> line.contains("folder.jsonl: this is a folder"));
    Files.delete(folder.resolve("linked.jsonl"));
    log.news();
    assertThat(log.warnings()).as("a link that is gone").hasSize(1);
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void doesNotWaitAtAPipe() throws Exception {
    for (var name : List.of("desk.jsonl", "desk.lock", "set.jsonl")) {
      var pipe = folder.resolve(name);
      assumeTrue(new ProcessBuilder("mkfifo", "" + pipe).start().waitFor() == 0);
      assertTimeoutPreemptively(
          Duration.ofMinutes(1),
          () -> {
            var log = log();
            log.news();
            if (!name.startsWith("set")) {
              assertThatThrownBy(() -> log.append(mark("1")))
                  .isInstanceOf(FileProblemException.class)
                  .hasMessageContaining("a device or a pipe");
            }
          });
      Files.delete(pipe);
    }
  }

  // Sizes

  private LogTail tail(int longest) {
    return new LogTail(file(), false, longest);
  }

  private List<Entry> read(LogTail tail) throws IOException {
    var entries = new ArrayList<Entry>();
    try (SeekableByteChannel channel = Files.newByteChannel(file())) {
      tail.read(
          channel,
          Files.readAttributes(file(), BasicFileAttributes.class),
          (entry, _) -> entries.add(entry));
    }
    return entries;
  }

  private static List<String> warnings(LogTail tail) {
    var warnings = new ArrayList<Text>();
    tail.describe(warnings);
    return warnings.stream().map(Text::english).toList();
  }

  @Test
  void leavesOutALineThatIsTooLongWhereverAReadingEnds() throws Exception {
    log().append(mark("1"));
    int longest = (int) Files.size(file()) - 1;
    var before = Files.readString(file());
    log().append(mark("2"));
    var after = Files.readString(file()).substring(before.length());
    var junk = "x".repeat(longest + 1);

    Files.writeString(file(), before + junk);
    var tail = tail(longest);
    assertThat(read(tail)).hasSize(1);
    assertThat(warnings(tail)).singleElement().asString().contains("line 2: the last line is torn");
    assertThat(tail.open()).isTrue();
    Files.writeString(file(), "x".repeat(200_000), StandardOpenOption.APPEND);
    assertThat(read(tail)).isEmpty();
    Files.writeString(file(), "\n" + after, StandardOpenOption.APPEND);
    assertThat(read(tail)).extracting(Entry::number).containsExactly(2L);
    assertThat(warnings(tail))
        .singleElement()
        .asString()
        .contains("line 2: this line is left out, it is longer than any event");

    var once = tail(longest);
    assertThat(read(once)).hasSize(2);
    assertThat(warnings(once)).isEqualTo(warnings(tail));
    assertThat(once.lastNumber()).isEqualTo(2);
    assertThat(once.open()).isFalse();
  }

  @Test
  void readsALineOfTheGreatestLengthAndNoLongerOne() throws Exception {
    log().append(mark("1"));
    int length = (int) Files.size(file()) - 1;
    assertThat(read(tail(length))).hasSize(1);
    assertThat(read(tail(length - 1))).isEmpty();
  }

  @Test
  void namesTheFirstOfVeryManyBadLinesAndCountsTheRest() throws Exception {
    Files.writeString(file(), "\n".repeat(10_000));
    log().append(mark("1"));
    var log = log();
    assertThat(events(log)).containsExactly(mark("1"));
    assertThat(log.warnings()).hasSize(51);
    assertThat(log.warnings().getFirst()).contains("line 1: this line is left out");
    assertThat(log.warnings().getLast()).contains("9950 more lines are left out");
  }

  @Test
  void namesTheFirstOfVeryManyGapsAndCountsTheRest() throws Exception {
    for (int i = 1; i <= 60; i++) {
      Lines.append(
          file(), Lines.event("desk", 2L * i, "2026-11-23T08:00:%02dZ".formatted(i % 60), "\"x\""));
    }
    var log = log();
    log.news();
    assertThat(log.warnings()).hasSize(51);
    assertThat(log.warnings().getFirst()).contains("line 1: events 1 to 1 are missing");
    assertThat(log.warnings().getLast()).contains("missing in 10 more places");
  }

  @Test
  void leavesOutALogOfMoreThanAGigabyteWithoutReadingIt() throws Exception {
    log().append(mark("1"));
    try (var channel =
        Files.newByteChannel(
            folder.resolve("set.jsonl"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      channel.position(LogFolder.LARGEST);
      channel.write(ByteBuffer.wrap(new byte[1]));
    }
    var log = log();
    assertTimeoutPreemptively(
        Duration.ofMinutes(1), () -> assertThat(events(log)).containsExactly(mark("1")));
    assertThat(log.warnings()).singleElement().asString().contains("set.jsonl", "larger than 1 GB");
    Files.move(folder.resolve("set.jsonl"), file(), StandardCopyOption.REPLACE_EXISTING);
    assertThatThrownBy(() -> log().append(mark("2")))
        .isInstanceOfSatisfying(
            FileProblemException.class,
            large -> {
              assertThat(large.problem().what()).contains("larger than 1 GB");
              assertThat(large.problem().remedy()).contains("Move it away");
            });
  }

  @Tag("slow")
  @Test
  void refusesAnEventThatNobodyCouldReadAgain() throws Exception {
    var log = log();
    log.append(mark("1"));
    long before = Files.size(file());
    var huge = "x".repeat(LogTail.LONGEST_LINE);
    assertThatThrownBy(() -> log.append(mark(huge)))
        .isInstanceOf(FileProblemException.class)
        .hasMessageContaining("more than 64 MB");
    assertThat(file()).hasSize(before);
  }

  // Contents

  @Test
  void namesThePlaceOfBytesThatAreNoText() throws Exception {
    log().append(mark("1"));
    Files.write(file(), new byte[100], StandardOpenOption.APPEND);
    var log = log();
    assertThat(events(log)).containsExactly(mark("1"));
    assertThat(log.warnings()).singleElement().asString().contains("line 2: the last line is torn");
    log.append(mark("2"));
    assertThat(events(log())).containsExactly(mark("1"), mark("2"));
    Files.write(file(), new byte[] {0, 1, (byte) 0xFF, '\n'}, StandardOpenOption.APPEND);
    log.news();
    assertThat(log.warnings())
        .anyMatch(line -> line.contains(file() + ", line 4: this line is left out"));
    assertThat(log.warnings()).anyMatch(line -> line.contains("line 2: this line was torn"));
  }

  @Test
  void readsALogThatAnotherCopyReplacedFromItsBegin() throws Exception {
    var log = log();
    log.append(mark("1"));
    log.news();
    var other = new FileEventLog(Files.createDirectories(root.resolve("b/log")), DESK, clock);
    other.append(mark("1"));
    clock.pass(Duration.ofSeconds(1));
    other.append(mark("2"));
    Files.move(root.resolve("b/log/desk.jsonl"), folder.resolve("new"));
    Files.move(folder.resolve("new"), file(), StandardCopyOption.REPLACE_EXISTING);
    assertThat(events(log)).containsExactly(mark("2"));
    assertThat(log.warnings()).as("it is longer, and nothing is lost").isEmpty();
    Files.writeString(file(), "");
    assertThat(events(log)).isEmpty();
    assertThat(log.warnings()).singleElement().asString().contains("became shorter");
  }

  // Times

  private void eventOf(String station, String time) throws IOException {
    Lines.append(
        folder.resolve(station + ".jsonl"),
        Lines.event(station, 1, time, "\"marked\",\"setup\":\"7\",\"state\":\"shot\""));
  }

  @Test
  void keepsAnEventThatIsDatedFarAheadAndLetsNoTimeFollowIt() throws Exception {
    for (var time :
        List.of("2026-12-24T09:00:00Z", "2300-01-01T00:00:00Z", "9999-12-31T23:59:59.999Z")) {
      eventOf("far", time);
      var log = log();
      assertThat(events(log)).contains(new Event.Marked("7", SetupState.SHOT, MarkDetails.NONE));
      assertThat(log.now()).isEqualTo("2026-11-23T09:00:00Z");
      assertThat(log.warnings())
          .singleElement()
          .asString()
          .contains("clock of far is", "ahead", "does not follow more than 30 days", "Let all");
      log.append(mark("1"));
      var read = log();
      assertThat(read.news())
          .filteredOn(entry -> entry.event().equals(mark("1")))
          .singleElement()
          .satisfies(entry -> assertThat(entry.time()).isEqualTo("2026-11-23T09:00:00Z"));
      Files.delete(folder.resolve("far.jsonl"));
      Files.delete(file());
    }
  }

  @Test
  void goesByAClockThatIsAMonthAhead() throws Exception {
    eventOf("ahead", "2026-12-23T09:00:00Z");
    var log = log();
    log.news();
    assertThat(log.now()).isEqualTo("2026-12-23T09:00:00Z");
    assertThat(log.warnings())
        .singleElement()
        .asString()
        .contains("The clock of ahead is 30 days ahead", "goes by the later one");
  }

  @Test
  void mentionsNoDifferenceOfClocksUpToFiveSeconds() throws Exception {
    eventOf("ahead", "2026-11-23T09:00:05Z");
    var log = log();
    log.news();
    assertThat(log.warnings()).isEmpty();
    eventOf("more", "2026-11-23T09:00:06Z");
    log.news();
    assertThat(log.warnings()).singleElement().asString().contains("more is 6 s ahead");
  }

  @Test
  void leavesOutEventsOfTimesThatNoClockShows() throws Exception {
    for (var time :
        List.of(
            "+1000000000-12-31T23:59:59.999999999Z",
            "-1000000000-01-01T00:00:00Z",
            "+10000-01-01T00:00:00Z",
            "1969-12-31T23:59:59.999Z",
            "soon",
            "")) {
      eventOf("odd", time);
    }
    var log = log();
    assertThat(events(log)).isEmpty();
    assertThat(log.warnings()).hasSize(6).allMatch(line -> line.contains("it is no event"));
    log.append(mark("1"));
    assertThat(events(log())).containsExactly(mark("1"));
  }

  @Test
  void mentionsTheFirstOfVeryManyClocks() throws Exception {
    for (int i = 0; i < 25; i++) {
      eventOf("station%02d".formatted(i), "2026-11-23T10:00:00Z");
    }
    var log = log();
    log.news();
    assertThat(log.warnings()).hasSize(21);
    assertThat(log.warnings().getLast()).contains("5 more stations");
  }
}
