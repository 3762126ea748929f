package org.framewright.base;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RealPathsTest {
  @TempDir private Path root;
  private Path frames;

  @BeforeEach
  void aFolder() throws IOException {
    frames = Files.createDirectories(root.resolve("job/frames"));
  }

  @Test
  void knowsWhatLiesInAFolderAtAnyDepth() throws IOException {
    var deep = Files.createDirectories(frames.resolve("card/one"));
    assertThat(RealPaths.isInside(frames, frames)).isTrue();
    assertThat(RealPaths.isInside(frames.resolve("new"), frames)).isTrue();
    assertThat(RealPaths.isInside(deep.resolve("new"), frames)).isTrue();
    assertThat(RealPaths.isInside(deep.resolve("../.."), frames)).isTrue();
    assertThat(RealPaths.isInside(deep.resolve("../../../new"), frames)).isFalse();
    assertThat(RealPaths.isInside(root.resolve("job/frames2"), frames)).isFalse();
    assertThat(RealPaths.isInside(root.resolve("job/new"), frames)).isFalse();
    assertThat(RealPaths.isInside(root.getRoot(), frames)).isFalse();
  }

  @Test
  void followsLinksOnTheWayButNotTheFileItself() throws IOException {
    var link = SymbolicLinks.make(root.resolve("link"), root.resolve("job"));
    assertThat(RealPaths.isInside(link.resolve("frames/new"), frames)).isTrue();
    assertThat(RealPaths.isInside(frames.resolve("new"), link.resolve("frames"))).isTrue();
    var file = SymbolicLinks.make(root.resolve("file"), frames.resolve("new"));
    assertThat(RealPaths.isInside(file, frames)).isFalse();
  }

  @Test
  void knowsTheNameOfAFolderThatIsNotThereYetInAnyCase() throws IOException {
    var folder = root.resolve("job/Später");
    assertThat(RealPaths.isInside(folder, folder)).isTrue();
    assertThat(RealPaths.isInside(root.resolve("job/SPA\u0308TER"), folder)).isTrue();
    assertThat(RealPaths.isInside(root.resolve("job/other"), folder)).isFalse();
    assertThat(RealPaths.isInside(root.resolve("Später"), folder)).isFalse();
  }

  @Test
  void needsTheFolderThatAFileIsToBeIn() {
    assertThatThrownBy(() -> RealPaths.isInside(root.resolve("none/new"), frames))
        .isInstanceOf(NoSuchFileException.class);
  }
}
