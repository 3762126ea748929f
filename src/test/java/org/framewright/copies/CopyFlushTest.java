package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.framewright.base.Progress;
import org.framewright.disk.CutDisk;
import org.framewright.disk.Recording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What a copy calls whole outlasts a power cut. */
@DisabledOnOs(OS.WINDOWS)
class CopyFlushTest {
  @Test
  void copiesAreThereAfterAPowerCutAlsoInAFolderThatTheCopyMade(@TempDir Path temp)
      throws Exception {
    var scene =
        new CopyScene(Files.createDirectory(temp.resolve("before")))
            .file("DCIM/100STUDI/A_0001.RAW", "raw");
    var disk = Recording.on(scene.root);
    var cut = disk.cutDisk();
    var plan = CopyPlan.of(disk.root().resolve("card"), List.of(disk.root().resolve("first")));
    var outcome =
        new Copier(new CopyScene.Disturbed()).copy(scene.job(disk.root()), plan, Progress.NONE);
    assertThat(CopyScene.done(outcome).isWhole()).isTrue();
    var left = cut.afterPowerCut(temp.resolve("after"), CutDisk.Names.LOST);
    assertThat(CopyScene.copies(left.resolve("first")))
        .isEqualTo(CopyScene.contents(left.resolve("card")));
  }
}
