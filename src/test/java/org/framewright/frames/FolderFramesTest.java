package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class FolderFramesTest {
  private static final Instant NOW = Instant.parse("2026-11-25T12:00:00Z");
  private static final Path FOLDER = Path.of("/frames");

  private static final Instant HOUR_AGO = NOW.minusSeconds(3600);
  private static final Optional<FrameId> ID = Optional.of(new FrameId("one"));
  private static final Problem LOCKED = new Problem("it is locked", "Wait.");

  private FileReading reading;
  private final FolderFrames folder = new FolderFrames(FOLDER);

  /** What grows with the square of the files takes hours for so many. */
  @Tag("slow")
  @Test
  void aHundredThousandFilesOfOneStemAreGatheredAndForgotten() {
    assertTimeoutPreemptively(
        Duration.ofMinutes(5),
        () -> {
          look(spellings("abcdefghijklmnopq", ".jpg", 100_000), NOW);
          assertThat(folder.frames()).hasSize(100_000).allMatch(Frame::complete);
          assertThat(folder.frameFiles()).isEqualTo(100_000);
          look(List.of("abcdefghijklmnopq.jpg"), NOW);
          assertThat(folder.frames()).hasSize(1);
          assertThat(folder.frameFiles()).isEqualTo(1);
        });
  }

  @Test
  void aFrameHasAllPicturesAndSidecarsOfItsStemRawFirst() {
    look(List.of("a.xmp", "a.jpg", "A.CR2.xmp", "a.cr2", "a.jpg.XMP", "b.xmp"), NOW);
    assertThat(folder.frames())
        .singleElement()
        .returns("a", Frame::stem)
        .returns(5, frame -> frame.files().size())
        .returns(FOLDER.resolve("a.cr2"), frame -> frame.primary().path())
        .returns(2, frame -> frame.knownAs().size());
  }

  @Test
  void aChangedFileIsReadAnewAndAnUnchangedOneIsNot() {
    look(List.of("a.jpg", "b.jpg"), NOW);
    folder.beginListing();
    folder.see(FOLDER.resolve("a.jpg"), attributes("a.jpg", 11), NOW);
    folder.see(FOLDER.resolve("b.jpg"), attributes("b.jpg", 10), NOW);
    folder.endListing();
    var due = new ArrayList<Known>();
    folder.sort(NOW, due, new ArrayList<>());
    assertThat(due).hasSize(1);
    assertThat(folder.isChanged()).isTrue();
  }

  @Test
  void aFileCountsAsChangedBySizeByTimeAndByWhatLiesBehindItsName() {
    look(List.of("a.jpg"), NOW);
    assertThat(dueAfter(attributes("a.jpg", 10, HOUR_AGO), NOW)).isZero();
    assertThat(dueAfter(attributes("a.jpg", 9, HOUR_AGO), NOW)).isEqualTo(1);
    assertThat(dueAfter(attributes("a.jpg", 9, HOUR_AGO.plusMillis(1)), NOW)).isEqualTo(1);
    assertThat(dueAfter(attributes("other", 9, HOUR_AGO.plusMillis(1)), NOW)).isEqualTo(1);
    assertThat(dueAfter(attributes("other", 9, HOUR_AGO.plusMillis(1)), NOW)).isZero();
  }

  @Test
  void aFileOfTwoSecondsAgoNeedsOneLookAndAYoungerOneNeedsTwo() {
    assertThat(dueAfter(attributes("a.jpg", 10, NOW.minus(FrameScanner.OLD)), NOW)).isEqualTo(1);
    var young = attributes("b.jpg", 10, NOW.minus(FrameScanner.OLD).plusMillis(1));
    assertThat(dueAfter(young, NOW, "b.jpg")).isZero();
    assertThat(dueAfter(young, NOW.plusMillis(1), "b.jpg")).isEqualTo(1);
    // A file that seems to come from the future is never old enough, and waits for a second look.
    var soon = NOW.plus(FrameScanner.SETTLE);
    var future = attributes("c.jpg", 10, NOW.plusSeconds(60));
    assertThat(dueAfter(future, NOW, "c.jpg")).isZero();
    assertThat(dueAfter(future, soon.minusMillis(1), "c.jpg")).isZero();
    assertThat(dueAfter(future, soon, "c.jpg")).isEqualTo(1);
  }

  @Test
  void aClockThatIsSetBackBeginsTheWaitAnew() {
    var future = attributes("c.jpg", 10, NOW.plusSeconds(60));
    assertThat(dueAfter(future, NOW, "c.jpg")).isZero();
    var before = NOW.minusSeconds(10);
    assertThat(dueAfter(future, before, "c.jpg")).isZero();
    assertThat(dueAfter(future, before.plus(FrameScanner.SETTLE).minusMillis(1), "c.jpg")).isZero();
    assertThat(dueAfter(future, before.plus(FrameScanner.SETTLE), "c.jpg")).isEqualTo(1);
  }

  @Test
  void aHollowFileIsCompleteAfterFiveSecondsAndNotBefore() {
    reading = new FileReading(true, true, Capture.UNKNOWN, ID, Optional.empty(), false);
    var future = attributes("a.jpg", 10, NOW.plusSeconds(60));
    dueAfter(future, NOW, "a.jpg");
    dueAfter(future, NOW.plusSeconds(1), "a.jpg");
    assertThat(folder.frames()).singleElement().returns(false, Frame::complete);
    dueAfter(future, NOW.plus(FrameScanner.HOLLOW).minusMillis(1), "a.jpg");
    assertThat(folder.frames()).singleElement().returns(false, Frame::complete);
    dueAfter(future, NOW.plus(FrameScanner.HOLLOW), "a.jpg");
    assertThat(folder.frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void aHollowFileThatIsFiveSecondsOldIsComplete() {
    reading = new FileReading(true, true, Capture.UNKNOWN, ID, Optional.empty(), false);
    dueAfter(attributes("a.jpg", 10, NOW.minus(FrameScanner.HOLLOW)), NOW);
    assertThat(folder.frames()).singleElement().returns(true, Frame::complete);
  }

  @Test
  void aFileThatCouldNotBeReadIsTriedAgainAfterTwoSeconds() {
    reading =
        new FileReading(false, false, Capture.UNKNOWN, Optional.empty(), Optional.of(LOCKED), true);
    var old = attributes("a.jpg", 10, HOUR_AGO);
    assertThat(dueAfter(old, NOW)).isEqualTo(1);
    assertThat(folder.problems())
        .containsExactly(new Problem("it is locked", FOLDER.resolve("a.jpg").toString(), "Wait."));
    assertThat(dueAfter(old, NOW.plus(FrameScanner.OLD).minusMillis(1))).isZero();
    reading = new FileReading(true, false, Capture.UNKNOWN, ID, Optional.empty(), false);
    assertThat(dueAfter(old, NOW.plus(FrameScanner.OLD))).isEqualTo(1);
    assertThat(folder.frames()).singleElement().returns(true, Frame::complete);
    assertThat(folder.problems()).isEmpty();
  }

  private int dueAfter(BasicFileAttributes attributes, Instant now) {
    return dueAfter(attributes, now, "a.jpg");
  }

  /** Looks at one file, reads what is due, and answers how many that was. */
  private int dueAfter(BasicFileAttributes attributes, Instant now, String name) {
    folder.see(FOLDER.resolve(name), attributes, now);
    var due = new ArrayList<Known>();
    folder.sort(now, due, new ArrayList<>());
    due.forEach(known -> known.read(now, this::read, new HashMap<>(), null));
    folder.gather();
    return due.size();
  }

  @Test
  void aFileThatIsKeptOutlivesAListingThatCouldNotLookAtIt() {
    look(List.of("a.jpg", "b.jpg"), NOW);
    folder.beginListing();
    folder.keep(FOLDER.resolve("a.jpg"));
    folder.keep(FOLDER.resolve("unknown.jpg"));
    folder.endListing();
    folder.gather();
    assertThat(folder.frames()).extracting(Frame::stem).containsExactly("a");
  }

  private void look(List<String> names, Instant now) {
    folder.beginListing();
    for (var name : names) {
      folder.see(FOLDER.resolve(name), attributes(name, 10), now);
    }
    folder.endListing();
    var due = new ArrayList<Known>();
    folder.sort(now, due, new ArrayList<>());
    due.forEach(known -> known.read(now, this::read, new HashMap<>(), null));
    folder.gather();
  }

  private Optional<FileReading> read(Path path, FileRole role, Bytes.Room room) {
    if (reading != null) {
      return Optional.of(reading);
    }
    return Optional.of(
        new FileReading(
            true,
            false,
            Capture.UNKNOWN,
            role.isPicture() ? Optional.of(new FrameId(path.toString())) : Optional.empty(),
            Optional.empty(),
            false));
  }

  /** Names that differ in letter case only. */
  private static List<String> spellings(String stem, String ending, int count) {
    var names = new ArrayList<String>(count);
    for (int i = 0; i < count; i++) {
      var name = new StringBuilder(stem);
      for (int k = 0; k < stem.length(); k++) {
        if ((i >> k & 1) == 1) {
          name.setCharAt(k, Character.toUpperCase(stem.charAt(k)));
        }
      }
      names.add(name + ending);
    }
    return names;
  }

  private static BasicFileAttributes attributes(String key, long size) {
    return attributes(key, size, HOUR_AGO);
  }

  private static BasicFileAttributes attributes(String key, long size, Instant modified) {
    var old = FileTime.from(modified);
    return new BasicFileAttributes() {
      @Override
      public FileTime lastModifiedTime() {
        return old;
      }

      @Override
      public FileTime lastAccessTime() {
        return old;
      }

      @Override
      public FileTime creationTime() {
        return old;
      }

      @Override
      public boolean isRegularFile() {
        return true;
      }

      @Override
      public boolean isDirectory() {
        return false;
      }

      @Override
      public boolean isSymbolicLink() {
        return false;
      }

      @Override
      public boolean isOther() {
        return false;
      }

      @Override
      public long size() {
        return size;
      }

      @Override
      public Object fileKey() {
        return key;
      }
    };
  }
}
