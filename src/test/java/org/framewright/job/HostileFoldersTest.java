package org.framewright.job;

import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
@DisabledOnOs(OS.WINDOWS)
class HostileFoldersTest {
  private static final int FEW = 50;
  private static final int MANY = 10_000;

  @TempDir private Path root;

  @Test
  void someFoldersDoNoHarm() {
    assertTimeoutPreemptively(
        Duration.ofMinutes(10), () -> new HostileFolders(root).areHarmless(0, FEW));
  }

  @Test
  @Tag("slow")
  void tenThousandFoldersDoNoHarm() {
    assertTimeoutPreemptively(
        Duration.ofMinutes(60), () -> new HostileFolders(root).areHarmless(FEW, MANY - FEW));
    System.out.println("hostile job folders: " + MANY + ", no harm done");
  }
}
