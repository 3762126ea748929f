package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThat;
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
import org.junit.jupiter.api.Test;

class FolderFramesTest {
  private static final Instant NOW = Instant.parse("2026-11-25T12:00:00Z");
  private static final Path FOLDER = Path.of("/frames");

  private final FolderFrames folder = new FolderFrames(FOLDER);

  /** What grows with the square of the files takes hours for so many. */
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
    var due = new ArrayList<FolderFrames.Known>();
    folder.sort(NOW, due, new ArrayList<>());
    assertThat(due).hasSize(1);
    assertThat(folder.isChanged()).isTrue();
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
    var due = new ArrayList<FolderFrames.Known>();
    folder.sort(now, due, new ArrayList<>());
    due.forEach(known -> known.read(now, FolderFramesTest::read, new HashMap<>(), null));
    folder.gather();
  }

  private static Optional<FileReading> read(Path path, FileRole role, Bytes.Room room) {
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

  private static BasicFileAttributes attributes(String name, long size) {
    var old = FileTime.from(NOW.minusSeconds(3600));
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
        return name;
      }
    };
  }
}
