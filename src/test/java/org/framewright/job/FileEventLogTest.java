package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Executors;
import java.util.stream.LongStream;
import org.framewright.frames.FrameId;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileEventLogTest {
  private static final Station DESK = new Station("desk");

  @TempDir private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");

  private static Event mark(String setup) {
    return new Event.Marked(setup, SetupState.SHOT, MarkDetails.NONE);
  }

  private FileEventLog log() {
    return new FileEventLog(folder, DESK, clock);
  }

  private Path file() {
    return folder.resolve("desk.jsonl");
  }

  private List<String> setups(FileEventLog log) throws Exception {
    return log.news().stream()
        .sorted((one, other) -> one.stamp().compareTo(other.stamp()))
        .map(entry -> ((Event.Marked) entry.event()).setup())
        .toList();
  }

  private void append(String... codes) throws Exception {
    var log = log();
    for (var code : codes) {
      log.append(mark(code));
      clock.pass(Duration.ofSeconds(1));
    }
  }

  /** What another program appended since is read under the lock, before the number is looked at. */
  @Test
  void theNextEventOfADeviceIsAppendedOnceHoweverManyProgramsTry() throws Exception {
    var here = log();
    var there = log();
    var first = new Entry(1, new Stamp(1, 0, "page-00000001"), clock.instant(), mark("1"));
    var second = new Entry(2, new Stamp(2, 0, "page-00000001"), clock.instant(), mark("2"));
    assertThat(here.append(second)).isFalse();
    assertThat(here.append(first)).isTrue();
    assertThat(there.last("page-00000001")).isZero();
    assertThat(there.append(first)).isFalse();
    assertThat(there.last("page-00000001")).isEqualTo(1);
    assertThat(there.append(second)).isTrue();
    assertThat(here.append(second)).isFalse();
    assertThat(setups(log())).containsExactly("1", "2");
  }

  @Test
  void readsEveryKindOfEventBackAsItWasWritten() throws Exception {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Größe", "34\n\"S\"");
    var values = new LinkedHashMap<String, String>();
    values.put("client", "Æther & 帽子");
    var frames = List.of(new FrameId("0a"), new FrameId("0b"));
    var events =
        List.<Event>of(
            new Event.Began(values),
            new Event.SlatesKeyed(new JobKey("00Z0")),
            new Event.Commented("1", frames, "collar \"lower\"", "Ada"),
            new Event.ListChanged(
                List.of(
                    new Setup(
                        "A-1",
                        "Coat",
                        List.of(new View("F", OptionalInt.of(8)), new View("B")),
                        OptionalInt.of(12),
                        columns),
                    new Setup("B", "")),
                List.of("C"),
                List.of("A-1", "B")),
            new Event.Marked(
                "A-1",
                SetupState.DROPPED,
                MarkDetails.by("Ana").andView("F").andReason("line\nbreak")),
            new Event.TakenBack(new Stamp(1_764_000_000_123L, 7, "other")),
            new Event.Arrived(frames),
            new Event.Moved(frames, "A-1", Optional.of("B"), "Ana"),
            new Event.Moved(frames, "A-1", Optional.empty(), ""),
            new Event.Selected(frames, false, "Ana"),
            new Event.Rated(frames, 5, "Ana"),
            new Event.ItemTicked("cables", true, "Ana"),
            new Event.ItemTicked("lamps", false, "Ana"),
            new Event.ReadyAsked(
                new ReadyRecord(false, "ready-but-for", List.of("the battery"), values)),
            new Event.ReadyAsked(new ReadyRecord(true, "ready", List.of(), values)),
            new Event.Compared(
                new ComparedCopies(
                    "20261123T180400Z-0a1b2c3d.sha256",
                    "ab".repeat(32),
                    "Ana",
                    List.of("/media/A1", "/media/SSD 1"),
                    new FramesCompared(212, 3),
                    List.of(
                        new ComparedCopies.Card(
                            "/media/A1",
                            "A1",
                            "may-be-cleared",
                            412,
                            5_100_000_000L,
                            "cd".repeat(32),
                            List.of("/media/SSD 1"))))));
    var log = log();
    for (var event : events) {
      log.append(event);
    }
    assertThat(log().news()).extracting(Entry::event).containsExactlyElementsOf(events);
    assertThat(log.news()).hasSameSizeAs(events);
    assertThat(log.news()).isEmpty();
    assertThat(log.warnings()).isEmpty();
  }

  @Test
  void ordersEventsOfOneMillisecondAndOfAClockThatIsSetBack() throws Exception {
    var log = log();
    log.append(mark("1"));
    log.append(mark("2"));
    clock.set("2026-11-23T08:00:00Z");
    log.append(mark("3"));
    assertThat(setups(log())).containsExactly("1", "2", "3");
    var later = log();
    later.news();
    assertThat(later.now()).isEqualTo("2026-11-23T09:00:00Z");
    assertThat(later.warnings()).singleElement().asString().contains("set back by 60 min");
  }

  /** A crash may leave any prefix of what was being written. */
  @Test
  void survivesALastLineTornAnywhereAndGluesNothingToIt() throws Exception {
    append("1", "2");
    long whole = Files.size(file());
    append("3");
    var bytes = Files.readAllBytes(file());
    for (int length = (int) whole + 1; length < bytes.length; length++) {
      Files.write(file(), Arrays.copyOf(bytes, length));
      // Only its line feed is missing from the longest one.
      boolean torn = length < bytes.length - 1;

      var read = log();
      assertThat(setups(read))
          .containsExactlyElementsOf(torn ? List.of("1", "2") : List.of("1", "2", "3"));
      if (torn) {
        assertThat(read.warnings())
            .singleElement()
            .asString()
            .contains(file() + ", line 3", "the last line is torn");
      } else {
        assertThat(read.warnings()).isEmpty();
      }

      log().append(mark("4"));
      var fixed = log();
      assertThat(setups(fixed))
          .containsExactlyElementsOf(torn ? List.of("1", "2", "4") : List.of("1", "2", "3", "4"));
      if (torn) {
        assertThat(fixed.warnings())
            .singleElement()
            .asString()
            .contains(file() + ", line 3", "was torn when a computer stopped");
      } else {
        assertThat(fixed.warnings()).isEmpty();
      }
      assertThat(setups(read))
          .as("a reader that saw the torn line goes on from there")
          .containsExactly("4");
    }
  }

  @Test
  void saysEveryByteThatWasChanged() throws Exception {
    append("1", "2", "3");
    var bytes = Files.readAllBytes(file());
    int second = 1 + new String(bytes, StandardCharsets.UTF_8).indexOf('\n');
    int third = 1 + new String(bytes, StandardCharsets.UTF_8).indexOf('\n', second);
    for (int i = second; i < third - 1; i++) {
      var changed = bytes.clone();
      changed[i] ^= 0x01;
      if (changed[i] == '\n') {
        continue;
      }
      Files.write(file(), changed);
      var read = log();
      assertThat(setups(read)).containsExactly("1", "3");
      assertThat(read.warnings())
          .singleElement()
          .asString()
          .contains(file() + ", line 2", "changed or damaged");
    }
  }

  @Test
  void saysLinesThatWereTakenOut() throws Exception {
    append("1", "2", "3", "4");
    var lines = Files.readAllLines(file());
    Files.write(file(), List.of(lines.get(0), lines.get(3)));
    var read = log();
    assertThat(setups(read)).containsExactly("1", "4");
    assertThat(read.warnings()).singleElement().asString().contains("line 2: events 2 to 3 are");
  }

  @Test
  void readsACopyOfALogThatASynchronisedDriveLeftOnlyOnce() throws Exception {
    append("1", "2");
    Files.copy(file(), folder.resolve("desk (conflicted copy).jsonl"));
    assertThat(setups(log())).containsExactly("1", "2");
  }

  @Test
  void keepsEventsOfANewerVersion() throws Exception {
    append("1");
    var line = Files.readAllLines(file()).getFirst().replaceFirst(",\"crc32c.*", "");
    for (var newer :
        List.of(
            line.replace("\"marked\"", "\"weather\""), line.replace("\"shot\"", "\"on-hold\""))) {
      var sealed =
          newer
              .replace("\"count\":0", "\"count\":" + newer.length())
              .replace("\"number\":1", "\"number\":2");
      Files.writeString(
          file(),
          sealed + ",\"crc32c\":\"" + crc32c(sealed.getBytes(StandardCharsets.UTF_8)) + "\"}\n",
          StandardOpenOption.APPEND);
    }
    var read = log();
    assertThat(read.news())
        .extracting(Entry::event)
        .containsExactly(mark("1"), new Event.Unknown("weather"), new Event.Unknown("marked"));
    assertThat(read.warnings()).isEmpty();
    var before = Files.readString(file());
    log().append(mark("2"));
    assertThat(Files.readString(file())).startsWith(before);
  }

  /** RFC 3720, appendix B.4: CRC32C of 32 bytes of zeros, of ones, and of 0 to 31. */
  @Test
  void sealsEveryLineWithTheChecksumOfRfc3720() throws Exception {
    assertThat(crc32c(new byte[32])).isEqualTo("8a9136aa");
    var ones = new byte[32];
    Arrays.fill(ones, (byte) 0xFF);
    assertThat(crc32c(ones)).isEqualTo("62a8ab43");
    var rising = new byte[32];
    for (int i = 0; i < rising.length; i++) {
      rising[i] = (byte) i;
    }
    assertThat(crc32c(rising)).isEqualTo("46dd794e");

    append("1", "2");
    for (var line : Files.readAllLines(file())) {
      int seal = line.lastIndexOf(",\"crc32c\":\"");
      assertThat(line.substring(seal))
          .isEqualTo(
              ",\"crc32c\":\""
                  + crc32c(line.substring(0, seal).getBytes(StandardCharsets.UTF_8))
                  + "\"}");
    }
  }

  /** Bit by bit, as the polynomial is written. */
  private static String crc32c(byte[] bytes) {
    int crc = -1;
    for (var b : bytes) {
      crc ^= b & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc >>> 1) ^ ((crc & 1) == 0 ? 0 : 0x82F63B78);
      }
    }
    return HexFormat.of().toHexDigits(~crc);
  }

  @Test
  void losesNothingWhenThreadsWriteOneLogAtTheSameTime() throws Exception {
    try (var threads = Executors.newFixedThreadPool(4)) {
      var done = new ArrayList<java.util.concurrent.Future<?>>();
      for (int i = 0; i < 4; i++) {
        var own = log();
        done.add(
            threads.submit(
                () -> {
                  for (int n = 0; n < 25; n++) {
                    own.append(mark("1"));
                  }
                  return null;
                }));
      }
      for (var one : done) {
        one.get();
      }
    }
    whole(100);
  }

  @Tag("slow")
  @Test
  void losesNothingWhenProcessesWriteOneLogAtTheSameTime() throws Exception {
    var processes = new ArrayList<Process>();
    for (int i = 0; i < 3; i++) {
      processes.add(
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-cp",
                  System.getProperty("java.class.path"),
                  Writer.class.getName(),
                  folder.toString())
              .inheritIO()
              .start());
    }
    for (var process : processes) {
      assertThat(process.waitFor()).isZero();
    }
    whole(3 * Writer.EVENTS);
  }

  private void whole(int events) throws Exception {
    var read = log();
    assertThat(read.news())
        .extracting(Entry::number)
        .containsExactlyElementsOf(LongStream.rangeClosed(1, events).boxed().toList());
    assertThat(Files.readAllLines(file())).hasSize(events);
    assertThat(read.warnings()).noneMatch(warning -> warning.contains("line"));
  }

  /** A process that writes. */
  static final class Writer {
    static final int EVENTS = 40;

    private Writer() {}

    public static void main(String[] args) throws Exception {
      var log = new FileEventLog(Path.of(args[0]), DESK, Clock.systemUTC());
      for (int i = 0; i < EVENTS; i++) {
        log.append(mark("1"));
      }
    }
  }

  @Test
  void refusesStationsWhoseNameIsNoFileName() {
    assertThatThrownBy(() -> new Station("../desk")).isInstanceOf(IllegalArgumentException.class);
    assertThat(Station.legal("Büro-Mac.local")).isEqualTo("B-ro-Mac");
    assertThat(Station.legal("...")).isEqualTo("station");
  }

  @Test
  void keepsAStationsNameFromOneRunToTheNext() {
    var settings = folder.resolve("settings/station");
    var first = Station.kept(settings);
    assertThat(Station.kept(settings)).isEqualTo(first);
    assertThat(first.name()).matches(".+-[0-9a-f]{8}");
  }
}
