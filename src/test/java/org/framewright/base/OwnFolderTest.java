package org.framewright.base;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

/** On a file system as that of Windows; jimfs plays one. */
class OwnFolderTest {
  private static final Configuration WINDOWS =
      Configuration.windows().toBuilder().setAttributeViews("basic", "dos").build();

  @Test
  void aFolderWithADotIsHiddenOnWindows() throws IOException {
    try (var system = Jimfs.newFileSystem(WINDOWS)) {
      var folder = Files.createDirectory(system.getPath("C:\\work\\.framewright"));
      OwnFolder.hide(folder);
      assertThat(Files.getAttribute(folder, "dos:hidden")).isEqualTo(true);
      var frames = Files.createDirectory(system.getPath("C:\\work\\frames"));
      OwnFolder.hide(frames);
      assertThat(Files.getAttribute(frames, "dos:hidden")).isEqualTo(false);
    }
  }

  @Test
  void theFoldersOfAJobAreMadeHidden() throws IOException {
    try (var system = Jimfs.newFileSystem(WINDOWS)) {
      var folder = system.getPath("C:\\work\\.framewright");
      // jimfs opens no folders, so the flush that follows fails.
      assertThatThrownBy(() -> DurableFiles.createFolder(folder)).isInstanceOf(IOException.class);
      assertThat(Files.getAttribute(folder, "dos:hidden")).isEqualTo(true);
    }
  }

  @Test
  void elsewhereTheDotHidesIt() throws IOException {
    var unix = Configuration.unix().toBuilder().setAttributeViews("basic", "dos").build();
    try (var system = Jimfs.newFileSystem(unix)) {
      var folder = Files.createDirectory(system.getPath("/work/.framewright"));
      OwnFolder.hide(folder);
      assertThat(Files.getAttribute(folder, "dos:hidden")).isEqualTo(false);
    }
  }
}
