package org.framewright.base;

import static org.assertj.core.api.Assertions.catchThrowable;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeldFileTest {
  @TempDir private Path folder;

  @Test
  void aHeldFileIsHeldOnceAndFreeAfterwards() throws Exception {
    var file = folder.resolve("held");
    try (var held = HeldFile.hold(file, StandardOpenOption.CREATE).orElseThrow()) {
      assertThat(held.isCertain()).isTrue();
      assertThat(HeldFile.hold(file)).isEmpty();
      SymbolicLinks.make(folder.resolve("link"), folder);
      assertThat(HeldFile.hold(folder.resolve("link/held"))).isEmpty();
    }
    try (var again = HeldFile.hold(file).orElseThrow()) {
      assertThat(again.channel().isOpen()).isTrue();
    }
    assertThat(catchThrowable(() -> HeldFile.hold(folder.resolve("none"))))
        .isInstanceOf(IOException.class);
    assertThat(HeldFile.hold(folder.resolve("none"), StandardOpenOption.CREATE)).isPresent();
  }
}
