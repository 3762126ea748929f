package org.framewright.base;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.function.Function;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Whole files or none, at every step of the disk. */
@DisabledOnOs(OS.WINDOWS)
class DurableFilesTest {
  private static final byte[] OLD = "old".getBytes(UTF_8);
  private static final byte[] NEW = "new and longer".getBytes(UTF_8);

  @TempDir private Path folder;

  enum Way {
    CREATE,
    REPLACE,
    REPLACE_NOTHING;

    void write(Path file) throws IOException {
      if (this == CREATE) {
        DurableFiles.create(file, NEW);
      } else {
        DurableFiles.replace(file, NEW);
      }
    }
  }

  @Test
  void aFileThatIsWrittenInPiecesIsWholeOrNotThere() throws IOException {
    var file = folder.resolve("pieces");
    DurableFiles.create(
        file,
        out -> {
          out.write('a');
          out.write(NEW);
        });
    assertThat(file).hasContent("a" + new String(NEW, UTF_8));
    for (var failure : List.of(new IllegalStateException("stop"), new OutOfMemoryError("stop"))) {
      assertThatThrownBy(
              () ->
                  DurableFiles.replace(
                      file,
                      out -> {
                        out.write(OLD);
                        if (failure instanceof Error error) {
                          throw error;
                        }
                        throw (RuntimeException) failure;
                      }))
          .isSameAs(failure);
      assertThat(file).hasContent("a" + new String(NEW, UTF_8));
      assertThat(names(folder)).containsExactly(file);
    }
  }

  private static List<Path> names(Path folder) throws IOException {
    try (var names = Files.list(folder)) {
      return names.toList();
    }
  }

  private static List<String> kinds(Recording disk) {
    return disk.ops().stream()
        .filter(op -> !(op instanceof DiskOp.Lock))
        .map(
            op ->
                switch (op) {
                  case DiskOp.Force force -> force.isFolder() ? "flush folder" : "flush file";
                  default -> op.getClass().getSimpleName();
                })
        .toList();
  }

  @Test
  void aNewFileIsFlushedBeforeItGetsItsNameAndItsFolderAfterwards() throws IOException {
    var disk = Recording.on(folder);

    DurableFiles.create(disk.root().resolve("list.csv"), NEW);

    assertThat(kinds(disk))
        .containsExactly("Create", "Write", "flush file", "Link", "Delete", "flush folder");
    assertThat(folder.resolve("list.csv")).hasBinaryContent(NEW);
    assertThat(names(folder)).hasSize(1);
  }

  @Test
  void aReplacementIsFlushedBeforeItTakesTheNameInOneStepAndItsFolderAfterwards()
      throws IOException {
    Files.write(folder.resolve("list.csv"), OLD);
    var disk = Recording.on(folder);

    DurableFiles.replace(disk.root().resolve("list.csv"), NEW);

    assertThat(kinds(disk))
        .containsExactly("Create", "Write", "flush file", "SetPermissions", "Move", "flush folder");
    assertThat(folder.resolve("list.csv")).hasBinaryContent(NEW);
  }

  @Test
  void aFileThatIsThereIsNotReplacedUnasked() throws IOException {
    var file = Files.write(folder.resolve("list.csv"), OLD);

    assertThatThrownBy(() -> DurableFiles.create(file, NEW))
        .isInstanceOf(FileAlreadyExistsException.class);

    assertThat(file).hasBinaryContent(OLD);
    assertThat(names(folder)).hasSize(1);
  }

  @Test
  void aFileThatCameMeanwhileIsNotReplacedEither() throws IOException {
    var disk = Recording.on(folder);
    disk.fail(
        (op, _) -> {
          if (op instanceof DiskOp.Link) {
            put(folder.resolve("list.csv"), OLD);
          }
          return java.util.Optional.empty();
        });

    assertThatThrownBy(() -> DurableFiles.create(disk.root().resolve("list.csv"), NEW))
        .isInstanceOf(FileAlreadyExistsException.class);

    assertThat(folder.resolve("list.csv")).hasBinaryContent(OLD);
    assertThat(names(folder)).hasSize(1);
  }

  private static void put(Path file, byte[] bytes) {
    try {
      Files.write(file, bytes);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  @Test
  void whereAVolumeHasNoLinksAFileIsStillWrittenWhole() throws IOException {
    var disk = Recording.on(folder);
    disk.fail(
        Fault.ofEach(
            DiskOp.Link.class,
            op -> new FileSystemException("list.csv", null, "Operation not permitted")));

    DurableFiles.create(disk.root().resolve("list.csv"), NEW);

    assertThat(folder.resolve("list.csv")).hasBinaryContent(NEW);
    assertThat(names(folder)).hasSize(1);
  }

  @Test
  void aReplacementKeepsWhoMayReadTheFile() throws IOException {
    var file = Files.write(folder.resolve("list.csv"), OLD);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));

    DurableFiles.replace(file, NEW);

    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-rw-r--");
  }

  @Test
  void aNewFileMayBeReadByWhomTheSystemSays() throws IOException {
    var usual = Files.write(folder.resolve("usual"), OLD);

    DurableFiles.create(folder.resolve("list.csv"), NEW);

    assertThat(Files.getPosixFilePermissions(folder.resolve("list.csv")))
        .isEqualTo(Files.getPosixFilePermissions(usual));
  }

  @Test
  void neitherALinkNorAFolderIsReplaced() throws IOException {
    var elsewhere = Files.write(folder.resolve("elsewhere"), OLD);
    var link = SymbolicLinks.make(folder.resolve("link"), elsewhere);
    var below = Files.createDirectory(folder.resolve("folder"));

    assertThatThrownBy(() -> DurableFiles.replace(link, NEW))
        .isInstanceOf(FileSystemException.class);
    assertThatThrownBy(() -> DurableFiles.replace(below, NEW))
        .isInstanceOf(FileSystemException.class);
    assertThatThrownBy(() -> DurableFiles.create(link, NEW))
        .isInstanceOf(FileAlreadyExistsException.class);

    assertThat(elsewhere).hasBinaryContent(OLD);
  }

  @ParameterizedTest
  @EnumSource
  void afterAKillAtAnyStepTheOldFileIsThereOrTheNewOneAndTheNextWriteLeavesNoTrace(
      Way way, TestReporter reporter) throws IOException {
    int points = 0;
    for (boolean killed = true; killed; points++) {
      var place = Files.createDirectory(folder.resolve(way + "-" + points));
      var file = place.resolve("list.csv");
      if (way == Way.REPLACE) {
        Files.write(file, OLD);
      }
      var disk = Recording.on(place);
      disk.killWithin(points);
      killed = false;
      try {
        way.write(disk.root().resolve("list.csv"));
      } catch (Killed e) {
        killed = true;
      }
      whole(way, file);

      if (way == Way.CREATE && Files.exists(file)) {
        DurableFiles.replace(file, NEW);
      } else {
        way.write(file);
      }
      assertThat(file).hasBinaryContent(NEW);
      assertThat(names(place)).as("after a kill at change " + points).hasSize(1);
    }
    reporter.publishEntry(way + ": kill points", "" + (points - 1));
    assertThat(points).isGreaterThan(5);
  }

  @ParameterizedTest
  @EnumSource
  void whenAnyStepFailsTheOldFileIsThereOrTheNewOneAndTheNextWriteSucceeds(Way way)
      throws IOException {
    for (var failure :
        List.<Function<DiskOp, IOException>>of(
            Fault::noSpace, Fault::inputOutput, Fault::readOnly)) {
      for (int point = 0; point < steps(way); point++) {
        var place = place(way);
        var disk = Recording.on(place);
        disk.fail(Fault.onceAt(point, failure).afterHalfTheBytes());
        try {
          way.write(disk.root().resolve("list.csv"));
          assertThat(place.resolve("list.csv")).hasBinaryContent(NEW);
        } catch (IOException e) {
          whole(way, place.resolve("list.csv"));
        }
        DurableFiles.replace(place.resolve("list.csv"), NEW);
        assertThat(names(place)).as("after a failure of change " + point).hasSize(1);
      }
    }
  }

  private Path place(Way way) throws IOException {
    var place = Files.createTempDirectory(folder, way.name());
    if (way == Way.REPLACE) {
      Files.write(place.resolve("list.csv"), OLD);
    }
    return place;
  }

  private int steps(Way way) throws IOException {
    var disk = Recording.on(place(way));
    way.write(disk.root().resolve("list.csv"));
    return disk.ops().size();
  }

  @Test
  void aWriteThatFailsLeavesNothingBehind() throws IOException {
    var disk = Recording.on(folder);
    disk.fail(Fault.ofEach(DiskOp.Write.class, Fault::noSpace).afterHalfTheBytes());

    assertThatThrownBy(() -> DurableFiles.create(disk.root().resolve("list.csv"), NEW))
        .hasMessageContaining("No space left");

    assertThat(folder).isEmptyDirectory();
  }

  private static void whole(Way way, Path file) throws IOException {
    if (Files.exists(file)) {
      assertThat(Files.readAllBytes(file)).isIn(OLD, NEW);
    } else {
      assertThat(way).isNotEqualTo(Way.REPLACE);
    }
  }

  @Test
  void whatAWriterStillHoldsIsNotTakenForALeftover() throws IOException {
    var held = folder.resolve(".list.csv.0123456789ab.part");
    try (var channel =
        FileChannel.open(held, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      channel.lock();

      DurableFiles.create(folder.resolve("list.csv"), NEW);

      assertThat(held).exists();
    }
    DurableFiles.replace(folder.resolve("list.csv"), NEW);
    assertThat(held).doesNotExist();
  }

  /** Files of which no two ever have one name leave what no write of theirs meets. */
  @Test
  void leftoversOfManyNamesAreRemovedTogetherAndNoOthers() throws IOException {
    Files.write(folder.resolve(".1.sha256.0123456789ab.part"), OLD);
    Files.write(folder.resolve(".2.sha256.0123456789ab.part"), OLD);
    Files.write(folder.resolve(".list.csv.0123456789ab.part"), OLD);
    Files.write(folder.resolve("3.sha256"), OLD);

    DurableFiles.clearLeftovers(folder, name -> name.endsWith(".sha256"));

    assertThat(names(folder)).hasSize(2);
    assertThat(folder.resolve(".list.csv.0123456789ab.part")).exists();
    assertThat(folder.resolve("3.sha256")).exists();
  }

  @Test
  void filesThatOnlyLookLikeALeftoverStay() throws IOException {
    var others =
        List.of(".list.csv.part", ".list.csv.0123456789ab", ".list.csv.0123456789abc.part");
    for (var other : others) {
      Files.write(folder.resolve(other), OLD);
    }
    Files.createDirectory(folder.resolve(".list.csv.0123456789ab.part"));

    DurableFiles.create(folder.resolve("list.csv"), NEW);

    assertThat(names(folder)).hasSize(5);
  }

  @Test
  void aFolderIsMadeOnceAndItsNameFlushed() throws IOException {
    var disk = Recording.on(folder);

    DurableFiles.createFolder(disk.root().resolve("log"));
    DurableFiles.createFolder(disk.root().resolve("log"));

    assertThat(disk.ops())
        .containsExactly(new DiskOp.CreateFolder("log"), new DiskOp.Force(".", true));
  }

  @Test
  void aFolderThatIsNotThereIsNotMadeForAFile() {
    var file = folder.resolve("gone").resolve("list.csv");

    assertThatThrownBy(() -> DurableFiles.create(file, NEW))
        .isInstanceOf(NoSuchFileException.class);

    assertThat(folder.resolve("gone")).doesNotExist();
  }

  @Test
  void flushesWhatItWritesToANewFile() throws IOException {
    var disk = Recording.on(folder);

    DurableFiles.writeFlushed(disk.root().resolve("index.csv"), NEW);

    assertThat(kinds(disk)).containsExactly("Create", "Write", "flush file");
  }
}
