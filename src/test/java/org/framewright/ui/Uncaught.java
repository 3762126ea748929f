package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Collects what no thread caught while it is open; the handler of before comes back after it. */
final class Uncaught implements AutoCloseable {
  private final Thread.UncaughtExceptionHandler before =
      Thread.getDefaultUncaughtExceptionHandler();
  private final List<Throwable> failures = new CopyOnWriteArrayList<>();

  Uncaught() {
    Thread.setDefaultUncaughtExceptionHandler((_, failure) -> failures.add(failure));
  }

  void assertNone() {
    assertThat(failures).isEmpty();
  }

  @Override
  public void close() {
    Thread.setDefaultUncaughtExceptionHandler(before);
  }
}
