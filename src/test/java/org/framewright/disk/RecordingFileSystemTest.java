package org.framewright.disk;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.ProviderMismatchException;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.framewright.disk.DiskOp.Create;
import org.framewright.disk.DiskOp.CreateFolder;
import org.framewright.disk.DiskOp.Delete;
import org.framewright.disk.DiskOp.Force;
import org.framewright.disk.DiskOp.Link;
import org.framewright.disk.DiskOp.Lock;
import org.framewright.disk.DiskOp.Move;
import org.framewright.disk.DiskOp.SetPermissions;
import org.framewright.disk.DiskOp.SetTimes;
import org.framewright.disk.DiskOp.SymbolicLink;
import org.framewright.disk.DiskOp.Truncate;
import org.framewright.disk.DiskOp.Write;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The disk for tests does what the real one does, tells it, and fails and stops where asked. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "a folder cannot be opened and flushed there")
class RecordingFileSystemTest {
  @TempDir Path folder;
  @TempDir Path elsewhere;
  private Recording recording;
  private Path root;

  @BeforeEach
  void record() throws IOException {
    recording = Recording.on(folder);
    root = recording.root();
  }

  /** A careful program: a file is written beside, flushed, given its name, and the name flushed. */
  private static void publish(Path file, String text) throws IOException {
    var draft = file.resolveSibling(file.getFileName() + ".tmp");
    try {
      try (var channel =
          FileChannel.open(draft, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        channel.write(ByteBuffer.wrap(text.getBytes(UTF_8)));
        channel.force(true);
      }
      Files.move(draft, file);
      flush(file.getParent());
    } finally {
      Files.deleteIfExists(draft);
    }
  }

  private static void flush(Path file) throws IOException {
    try (var channel = FileChannel.open(file, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }

  private List<String> namesIn(Path real) throws IOException {
    try (var names = Files.list(real)) {
      return names.map(name -> name.getFileName().toString()).sorted().toList();
    }
  }

  // ---- recording

  @Test
  void recordsWriteFlushRenameAndFolderFlushInTheirOrder() throws IOException {
    publish(root.resolve("list.csv"), "view,state");

    assertThat(recording.ops())
        .containsExactly(
            new Create("list.csv.tmp"),
            new Write("list.csv.tmp", 0, 10),
            new Force("list.csv.tmp", false),
            new Move("list.csv.tmp", "list.csv", false),
            new Force(".", true));
    assertThat(folder.resolve("list.csv")).hasContent("view,state");
  }

  @Test
  void recordsAFlushOfAFolder() throws IOException {
    Files.createDirectories(root.resolve("day 1/card"));
    flush(root.resolve("day 1"));

    assertThat(recording.ops())
        .containsExactly(
            new CreateFolder("day 1"), new CreateFolder("day 1/card"), new Force("day 1", true));
  }

  @Test
  void recordsEveryKindOfChange() throws IOException {
    var file = root.resolve("a");
    Files.writeString(file, "one");
    Files.writeString(file, "again");
    Files.writeString(file, "!", StandardOpenOption.APPEND);
    Files.createLink(root.resolve("b"), file);
    Files.createSymbolicLink(root.resolve("c"), root.getFileSystem().getPath("a"));
    Files.setLastModifiedTime(file, FileTime.from(Instant.EPOCH));
    Files.setAttribute(file, "lastModifiedTime", FileTime.from(Instant.EPOCH));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    try (var channel = FileChannel.open(file, StandardOpenOption.WRITE);
        var lock = channel.tryLock()) {
      assertThat(lock.acquiredBy()).isSameAs(channel);
      channel.write(ByteBuffer.wrap(new byte[4]), 8);
      channel.truncate(2);
    }
    Files.createFile(root.resolve("e"));
    Files.move(file, root.resolve("e"), StandardCopyOption.REPLACE_EXISTING);
    Files.move(root.resolve("c"), root.resolve("d"), StandardCopyOption.ATOMIC_MOVE);
    Files.delete(root.resolve("d"));

    assertThat(recording.ops())
        .containsExactly(
            new Create("a"),
            new Write("a", 0, 3),
            new Truncate("a", 0),
            new Write("a", 0, 5),
            new Write("a", 5, 1),
            new Link("b", "a"),
            new SymbolicLink("c", "a"),
            new SetTimes("a"),
            new SetTimes("a"),
            new SetPermissions("a"),
            new Lock("a", false),
            new Write("a", 8, 4),
            new Truncate("a", 2),
            new Create("e"),
            new Move("a", "e", true),
            new Move("c", "d", true),
            new Delete("d"));
    assertThat(Files.getLastModifiedTime(folder.resolve("b")).toInstant()).isAfter(Instant.EPOCH);
    assertThat(namesIn(folder)).containsExactly("b", "e");
  }

  @Test
  void doesNotRecordARenameOntoAnotherNameOfTheSameFile() throws IOException {
    Files.createFile(folder.resolve("a"));
    Files.createLink(folder.resolve("b"), folder.resolve("a"));
    Files.move(root.resolve("a"), root.resolve("b"), StandardCopyOption.ATOMIC_MOVE);

    assertThat(recording.ops()).isEmpty();
    assertThat(namesIn(folder)).containsExactly("a", "b");
  }

  @Test
  void recordsACopyAsTheChangesItIsMadeOf() throws IOException {
    Files.writeString(folder.resolve("a"), "bytes");
    Files.setLastModifiedTime(folder.resolve("a"), FileTime.from(Instant.EPOCH));
    Files.copy(root.resolve("a"), root.resolve("b"), StandardCopyOption.COPY_ATTRIBUTES);
    Files.copy(elsewhere, root.resolve("c"));

    assertThat(recording.ops())
        .containsExactly(
            new Create("b"), new Write("b", 0, 5), new SetTimes("b"), new CreateFolder("c"));
    assertThat(folder.resolve("b")).hasContent("bytes");
    assertThat(Files.getLastModifiedTime(folder.resolve("b"))).hasToString("1970-01-01T00:00:00Z");
  }

  @Test
  void recordsWhatIsTransferredBetweenOpenFiles() throws IOException {
    Files.writeString(folder.resolve("a"), "0123456789");
    try (var in = FileChannel.open(root.resolve("a"));
        var out =
            FileChannel.open(
                root.resolve("b"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      in.transferTo(0, 4, out);
      out.transferFrom(in.position(4), 4, 6);
    }

    assertThat(recording.ops())
        .containsExactly(new Create("b"), new Write("b", 0, 4), new Write("b", 4, 6));
    assertThat(folder.resolve("b")).hasContent("0123456789");
  }

  @Test
  void namesAnOpenFileByItsPresentName() throws IOException {
    try (var channel =
        FileChannel.open(
            root.resolve("a"), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      Files.move(root.resolve("a"), root.resolve("b"));
      channel.force(true);
      Files.delete(root.resolve("b"));
      channel.force(true);
    }

    assertThat(recording.ops())
        .containsSubsequence(new Force("b", false), new Force("b (deleted)", false));
  }

  @Test
  void recordsTheDeletionOfAFileThatLivesWhileItIsOpen() throws IOException {
    try (var out =
        Files.newOutputStream(
            root.resolve("a"),
            StandardOpenOption.CREATE_NEW,
            StandardOpenOption.WRITE,
            StandardOpenOption.DELETE_ON_CLOSE)) {
      out.write(1);
    }

    assertThat(recording.ops())
        .containsExactly(new Create("a"), new Write("a", 0, 1), new Delete("a"));
  }

  @Test
  void doesNotCountWhatTheDiskRefuses() throws IOException {
    Files.createDirectory(folder.resolve("a"));
    Files.createFile(folder.resolve("a/b"));
    recording.failAt(0, Fault::noSpace);

    assertThatThrownBy(() -> Files.createDirectory(root.resolve("a")))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThatThrownBy(() -> Files.createFile(root.resolve("a/b")))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThatThrownBy(() -> Files.move(root.resolve("a/b"), root.resolve("a")))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThatThrownBy(() -> Files.createFile(root.resolve("c/d")))
        .isInstanceOf(NoSuchFileException.class);
    assertThatThrownBy(() -> Files.delete(root.resolve("a")))
        .isInstanceOf(FileSystemException.class);
    assertThat(Files.deleteIfExists(root.resolve("c"))).isFalse();
    assertThat(recording.ops()).isEmpty();
    assertThatThrownBy(() -> Files.delete(root.resolve("a/b")))
        .hasMessage("a/b: No space left on device");
  }

  @Test
  void keepsTheOrderOfManyThreads() throws Exception {
    try (var threads = Executors.newFixedThreadPool(4)) {
      var tasks =
          IntStream.range(0, 40)
              .mapToObj(n -> threads.submit(() -> Files.writeString(root.resolve("f" + n), "x")))
              .toList();
      for (var task : tasks) {
        task.get();
      }
    }

    assertThat(recording.ops()).hasSize(80);
    for (int n = 0; n < 40; n++) {
      assertThat(recording.ops())
          .containsSubsequence(new Create("f" + n), new Write("f" + n, 0, 1));
    }
  }

  // ---- looking

  @Test
  void looksLikeTheRealFolder() throws IOException {
    Files.createDirectories(folder.resolve("day/card"));
    Files.writeString(folder.resolve("day/card/a.txt"), "one\ntwo\n");
    var file = root.resolve("day").resolve("card/a.txt");

    assertThat(Files.readAllLines(file)).containsExactly("one", "two");
    assertThat(Files.size(file)).isEqualTo(8);
    assertThat(file.toRealPath())
        .isEqualTo(file)
        .hasToString(folder.toRealPath() + "/day/card/a.txt");
    assertThat(file.toFile().exists()).isTrue();
    assertThat(recording.real(file)).isEqualTo(folder.toRealPath().resolve("day/card/a.txt"));
    assertThat(root.relativize(file)).hasToString("day/card/a.txt");
    assertThat(Files.getAttribute(file, "unix:dev"))
        .isEqualTo(Files.getAttribute(folder, "unix:dev"));
    assertThat(Files.getFileStore(file)).isEqualTo(Files.getFileStore(folder));
    assertThat(Files.isSameFile(file, root.resolve("day/../day/card/a.txt"))).isTrue();
    try (var walk = Files.walk(root);
        var globbed = Files.newDirectoryStream(root.resolve("day/card"), "*.txt")) {
      assertThat(walk.map(root::relativize).map(Path::toString))
          .containsExactlyInAnyOrder("", "day", "day/card", "day/card/a.txt");
      assertThat(globbed).containsExactly(file);
    }
    assertThat(recording.ops()).isEmpty();
  }

  @Test
  void itsPathsAreEqualOnlyAmongThemselves() throws IOException {
    var path = root.resolve("a/b");

    assertThat(path).isEqualTo(root.resolve("a").resolve("./b").normalize());
    assertThat(new HashSet<>(List.of(path))).contains(root.resolve("a/b"));
    assertThat(path).isNotEqualTo(recording.real(path));
    assertThat(path).isNotEqualTo(Recording.on(folder).root().resolve("a/b"));
    assertThat(path.startsWith(root)).isTrue();
    assertThat(path.endsWith("a/b")).isTrue();
    assertThat(Stream.of(root.resolve("b"), path).sorted(Comparator.naturalOrder()))
        .containsExactly(path, root.resolve("b"));
    assertThat(path.getParent().getFileName()).hasToString("a");
    assertThatThrownBy(() -> root.resolve(Path.of("a")))
        .isInstanceOf(ProviderMismatchException.class);
  }

  // ---- failing

  @Test
  void failsTheNthChange() throws IOException {
    recording.failAt(2, Fault::inputOutput);

    assertThatThrownBy(() -> publish(root.resolve("list.csv"), "view"))
        .isInstanceOf(IOException.class)
        .hasMessage("Input/output error");
    assertThat(recording.ops())
        .containsExactly(
            new Create("list.csv.tmp"),
            new Write("list.csv.tmp", 0, 4),
            new Delete("list.csv.tmp"));
    assertThat(namesIn(folder)).isEmpty();
  }

  @Test
  void failsFromTheNthChangeOn() throws IOException {
    recording.failFrom(3, Fault::readOnly);

    assertThatThrownBy(() -> publish(root.resolve("list.csv"), "view"))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("Read-only file system");
    assertThat(namesIn(folder)).containsExactly("list.csv.tmp");

    recording.heal();
    Files.delete(root.resolve("list.csv.tmp"));
    assertThat(namesIn(folder)).isEmpty();
  }

  @Test
  void writesHalfBeforeItFails() throws IOException {
    recording.fail(Fault.onceAt(1, Fault::noSpace).afterHalfTheBytes());

    assertThatThrownBy(() -> Files.writeString(root.resolve("a"), "0123456789"))
        .hasMessage("No space left on device");
    assertThat(folder.resolve("a")).hasContent("01234");
    assertThat(recording.ops()).containsExactly(new Create("a"), new Write("a", 0, 5));
  }

  @Test
  void failsAllChangesOfAKind() throws IOException {
    recording.fail(Fault.ofEach(Move.class, Fault::inputOutput));
    Files.createFile(root.resolve("a"));

    assertThatThrownBy(() -> Files.move(root.resolve("a"), root.resolve("b")))
        .hasMessage("a -> b: Input/output error");
    assertThat(namesIn(folder)).containsExactly("a");
  }

  @Test
  void aLockThatFailsIsNotHeld() throws IOException {
    Files.createFile(folder.resolve("a"));
    recording.failAt(0, Fault::inputOutput);
    try (var channel = FileChannel.open(root.resolve("a"), StandardOpenOption.WRITE)) {
      assertThatThrownBy(channel::tryLock).hasMessage("Input/output error");
      try (var lock = channel.tryLock()) {
        assertThat(lock.isValid()).isTrue();
      }
    }
  }

  @Test
  void countsAnewAfterClear() throws IOException {
    Files.createFile(root.resolve("a"));
    recording.clear();
    recording.failAt(1, Fault::noSpace);

    Files.createFile(root.resolve("b"));
    assertThatThrownBy(() -> Files.createFile(root.resolve("c")))
        .hasMessage("c: No space left on device");
    assertThat(recording.ops()).containsExactly(new Create("b"));
  }

  // ---- stopping

  @Test
  void afterAKillNothingChangesAnyMore() throws IOException {
    recording.killAt(3);

    assertThatThrownBy(() -> publish(root.resolve("list.csv"), "view")).isInstanceOf(Killed.class);
    assertThat(recording.isKilled()).isTrue();
    assertThat(namesIn(folder)).containsExactly("list.csv.tmp");
    assertThatThrownBy(() -> Files.createFile(root.resolve("a"))).isInstanceOf(Killed.class);
    assertThatThrownBy(() -> Files.deleteIfExists(root.resolve("b"))).isInstanceOf(Killed.class);
    assertThat(Files.readString(root.resolve("list.csv.tmp"))).isEqualTo("view");

    var next = Recording.on(folder);
    Files.delete(next.root().resolve("list.csv.tmp"));
    publish(next.root().resolve("list.csv"), "again");
    assertThat(folder.resolve("list.csv")).hasContent("again");
  }

  @Test
  void diesAtEachChangeOfARun() throws IOException {
    publish(root.resolve("list.csv"), "view");
    var seen = new HashSet<List<String>>();
    for (int n = 0; n < recording.ops().size(); n++) {
      var disk = Recording.on(Files.createDirectory(elsewhere.resolve("run " + n)));
      disk.killAt(n);
      assertThatThrownBy(() -> publish(disk.root().resolve("list.csv"), "view"))
          .isInstanceOf(Killed.class)
          .hasMessageContaining(recording.ops().get(n).toString());
      assertThat(disk.ops()).isEqualTo(recording.ops().subList(0, n));
      seen.add(namesIn(disk.real(disk.root())));
    }
    assertThat(seen)
        .containsExactlyInAnyOrder(List.of(), List.of("list.csv.tmp"), List.of("list.csv"));
  }

  @Test
  void diesWithinAWrite() throws IOException {
    recording.killWithin(1);

    assertThatThrownBy(() -> publish(root.resolve("list.csv"), "0123456789"))
        .isInstanceOf(Killed.class);
    assertThat(folder.resolve("list.csv.tmp")).hasContent("01234");
  }

  @Test
  void theLocksOfTheDeadAreFree() throws IOException {
    var file = Files.createFile(root.resolve("a"));
    try (var held = FileChannel.open(file, StandardOpenOption.WRITE)) {
      held.lock();
      recording.killAt(2);
      assertThatThrownBy(() -> held.write(ByteBuffer.wrap(new byte[1]))).isInstanceOf(Killed.class);

      var next = Recording.on(folder).root().resolve("a");
      try (var channel = FileChannel.open(next, StandardOpenOption.WRITE);
          var lock = channel.tryLock()) {
        assertThat(lock.isValid()).isTrue();
      }
    }
  }

  // ---- power cuts

  private String afterCut(CutDisk cut, String name, CutDisk.Names names) throws IOException {
    var copy = cut.afterPowerCut(elsewhere.resolve(name), names);
    try (var files = Files.walk(copy)) {
      return files
          .filter(Files::isRegularFile)
          .sorted()
          .map(file -> copy.relativize(file) + "=" + text(file))
          .collect(Collectors.joining(" "));
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void aPowerCutLeavesWhatWasFlushed() throws IOException {
    Files.writeString(folder.resolve("old"), "old");
    var cut = recording.cutDisk();
    publish(root.resolve("list.csv"), "view");
    Files.delete(root.resolve("old"));

    assertThat(afterCut(cut, "lost", CutDisk.Names.LOST)).isEqualTo("list.csv=view old=old");
    assertThat(afterCut(cut, "kept", CutDisk.Names.KEPT)).isEqualTo("list.csv=view");
  }

  @Test
  void aPowerCutLosesTheBytesOfAFileThatWasOnlyRenamed() throws IOException {
    var cut = recording.cutDisk();
    Files.writeString(root.resolve("a.tmp"), "bytes");
    Files.move(root.resolve("a.tmp"), root.resolve("a"));

    assertThat(afterCut(cut, "lost", CutDisk.Names.LOST)).isEmpty();
    assertThat(afterCut(cut, "kept", CutDisk.Names.KEPT)).isEqualTo("a=");
    flush(root);
    assertThat(afterCut(cut, "flushed names", CutDisk.Names.LOST)).isEqualTo("a=");
    flush(root.resolve("a"));
    assertThat(afterCut(cut, "flushed bytes", CutDisk.Names.LOST)).isEqualTo("a=bytes");
  }

  // ---- other kinds of volumes

  @Test
  void playsAVolumeWithoutLinks() throws IOException {
    var file = Files.writeString(root.resolve("a"), "a");
    recording.withoutLinks();
    assertThatThrownBy(() -> Files.createLink(root.resolve("b"), file))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("not supported");
    assertThatThrownBy(() -> Files.createSymbolicLink(root.resolve("b"), file))
        .isInstanceOf(FileSystemException.class);
    assertThat(namesIn(folder)).containsExactly("a");
  }

  @Test
  void playsAVolumeWithTimesInSteps() throws IOException {
    var file = Files.writeString(root.resolve("a"), "a");
    Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2026-11-02T09:00:03.7Z")));
    recording.withTimesInSteps(Duration.ofSeconds(2));
    var coarse = FileTime.from(Instant.parse("2026-11-02T09:00:02Z"));
    assertThat(Files.getLastModifiedTime(file)).isEqualTo(coarse);
    assertThat(Files.readAttributes(file, BasicFileAttributes.class).lastModifiedTime())
        .isEqualTo(coarse);
    assertThat(Files.getAttribute(file, "lastModifiedTime")).isEqualTo(coarse);
    assertThat(
            Files.getFileAttributeView(file, BasicFileAttributeView.class)
                .readAttributes()
                .lastModifiedTime())
        .isEqualTo(coarse);
  }

  @Test
  void playsAVolumeThatListsNamesDecomposedAndFoldsCase() throws IOException {
    recording.withMacNames();
    Files.createDirectory(root.resolve("\u00c9t\u00e9"));
    var file = Files.writeString(root.resolve("\u00e9t\u00e9/Caf\u00e9.jpg"), "a");

    assertThat(namesIn(folder)).containsExactly("E\u0301te\u0301");
    assertThat(namesIn(folder.resolve("E\u0301te\u0301"))).containsExactly("Cafe\u0301.jpg");
    assertThat(root.resolve("E\u0301T\u00c9/CAFE\u0301.JPG")).hasContent("a");
    try (var listed = Files.list(file.getParent())) {
      assertThat(listed).containsExactly(file.resolveSibling("Cafe\u0301.jpg"));
    }
    assertThat(file.toRealPath()).isEqualTo(root.resolve("E\u0301te\u0301/Cafe\u0301.jpg"));
    assertThatThrownBy(() -> Files.createFile(file.resolveSibling("caf\u00e9.JPG")))
        .isInstanceOf(FileAlreadyExistsException.class);
    Files.move(file, file.resolveSibling("caf\u00e9.jpg"));
    assertThat(namesIn(folder.resolve("E\u0301te\u0301"))).containsExactly("cafe\u0301.jpg");
  }

  @Test
  void saysWhatKindOfVolumeItPlays() throws IOException {
    recording.ofType("msdos");
    assertThat(Files.getFileStore(root).type()).isEqualTo("msdos");
    assertThat(Files.getFileStore(root).getUsableSpace()).isPositive();
  }
}
