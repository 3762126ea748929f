package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Folders held open, on the system that has the calls for it. */
@EnabledOnOs(OS.LINUX)
class OpenFoldersTest {
  @TempDir Path scratch;
  private Path root;
  private Path day;

  @BeforeEach
  void make() throws IOException {
    root = scratch.toRealPath().resolve("job");
    day = Files.createDirectories(root.resolve("frames/day 1"));
    Files.writeString(day.resolve("a"), "file");
  }

  private HeldFolders held(Path... folders) throws IOException {
    return NativeMover.find().orElseThrow().hold(root, List.of(folders)).orElseThrow();
  }

  private static Path name(String name) {
    return Path.of(name);
  }

  @Test
  void renamesWithinAndBetweenFoldersAndNeverReplaces() throws IOException {
    Files.writeString(root.resolve("taken"), "another");
    try (var held = held(root, day)) {
      assertThat(held.move(1, name("a"), 1, name("b"))).isEqualTo(MoveResult.MOVED);
      assertThat(held.move(1, name("b"), 0, name("taken"))).isEqualTo(MoveResult.TAKEN);
      assertThat(held.move(1, name("a"), 0, name("c"))).isEqualTo(MoveResult.GONE);
      assertThat(held.move(1, name("b"), 0, name("c"))).isEqualTo(MoveResult.MOVED);
      held.sync(0);
      held.sync(1);
    }
    assertThat(root.resolve("c")).hasContent("file");
    assertThat(root.resolve("taken")).hasContent("another");
    assertThat(day).isEmptyDirectory();
  }

  @Test
  void staysInAFolderThatIsMovedAwayAndReplacedByALink() throws IOException {
    var other = Files.createDirectory(scratch.resolve("other"));
    Files.writeString(other.resolve("a"), "not ours");
    try (var held = held(day)) {
      var moved = Files.move(day, root.resolve("moved"));
      SymbolicLinks.make(day, other);
      assertThat(held.move(0, name("a"), 0, name("b"))).isEqualTo(MoveResult.MOVED);
      assertThat(moved.resolve("b")).hasContent("file");
    }
    assertThat(other.resolve("a")).hasContent("not ours");
  }

  @Test
  void opensNoFolderThatALinkLeadsTo() throws IOException {
    Files.move(root.resolve("frames"), scratch.resolve("elsewhere"));
    SymbolicLinks.make(root.resolve("frames"), scratch.resolve("elsewhere"));
    assertThatThrownBy(() -> held(root, day))
        .isInstanceOf(MoveFailure.class)
        .hasMessageContaining("a link");
    assertThatThrownBy(() -> held(root.resolve("frames"))).hasMessageContaining("a link");
    assertThatThrownBy(() -> held(root.resolve("none"))).hasMessageContaining("has vanished");
  }

  @Test
  void letsGoOfEveryFolderAlsoWhenOneCannotBeOpened() throws IOException {
    held(root, day).close();
    assertThatThrownBy(() -> held(root, day, root.resolve("none"))).isInstanceOf(MoveFailure.class);
    assertThat(openBelowRoot()).isEmpty();
    try (var _ = held(root, day)) {
      assertThat(openBelowRoot()).containsExactlyInAnyOrder(root, day);
    }
  }

  /** What this process holds open below the root, see proc_pid_fd(5). */
  private List<Path> openBelowRoot() throws IOException {
    try (var descriptors = Files.list(Path.of("/proc/self/fd"))) {
      return descriptors
          .flatMap(
              descriptor -> {
                try {
                  return Stream.of(Files.readSymbolicLink(descriptor));
                } catch (IOException e) {
                  return Stream.empty(); // Closed meanwhile.
                }
              })
          .filter(path -> path.startsWith(root))
          .toList();
    }
  }
}
