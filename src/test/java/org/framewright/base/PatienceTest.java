package org.framewright.base;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A moment's sharing violation fails nothing, and what stays is told after two seconds. */
class PatienceTest {
  private final FileSystemException inUse =
      new FileSystemException(
          "a.jpg",
          null,
          "The process cannot access the file because it is being used by another process");

  private final List<Long> pauses = new ArrayList<>();
  private int attempts;

  private int failing(int times, IOException failure) throws IOException {
    return new Patience(pauses::add)
        .with(
            e -> Patience.mayPass(OperatingSystem.WINDOWS, e),
            () -> {
              if (attempts++ < times) {
                throw failure;
              }
              return attempts;
            });
  }

  @Test
  void whatPassesIsTriedUntilItDoes() throws IOException {
    assertThat(failing(2, inUse)).isEqualTo(3);
    assertThat(pauses).containsExactly(10L, 20L);
  }

  @Test
  void whatStaysIsToldAfterTwoSeconds() {
    assertThatThrownBy(() -> failing(100, inUse)).isSameAs(inUse);
    assertThat(pauses).isSorted();
    assertThat(pauses.stream().mapToLong(Long::longValue).sum()).isEqualTo(2_000);
  }

  @Test
  void whatCannotPassIsToldAtOnce() {
    var gone = new NoSuchFileException("a.jpg");
    assertThatThrownBy(() -> failing(1, gone)).isSameAs(gone);
    assertThat(pauses).isEmpty();
  }

  @Test
  void onlyOnWindowsANoMayBecomeAYes() {
    var denied = new AccessDeniedException("a.jpg");
    assertThat(Patience.mayPass(OperatingSystem.WINDOWS, denied)).isTrue();
    assertThat(Patience.mayPass(OperatingSystem.LINUX, denied)).isFalse();
    assertThat(Patience.mayPass(OperatingSystem.MACOS, inUse)).isFalse();
    assertThat(Patience.mayPass(OperatingSystem.WINDOWS, new IOException("no"))).isFalse();
  }

  @Test
  void whoeverIsInterruptedStopsWaiting() {
    var patience =
        new Patience(
            _ -> {
              throw new InterruptedException();
            });
    assertThatThrownBy(
            () ->
                patience.with(
                    _ -> true,
                    () -> {
                      throw inUse;
                    }))
        .isInstanceOf(InterruptedIOException.class)
        .hasCause(inUse);
    assertThat(Thread.interrupted()).isTrue();
  }
}
