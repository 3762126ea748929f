package org.framewright.frames;

import java.nio.file.Path;
import java.time.Clock;
import java.util.function.Consumer;

/** Watches a folder and hands on each scan that differs from the one before. */
public final class FrameWatcher implements AutoCloseable {
  /** A watcher of one folder and all below it; {@code listener} is called on its own thread. */
  public FrameWatcher(Path root, Clock clock, Consumer<FrameScan> listener) {}

  /** Begins to watch; the first scan is handed on in any case. */
  public void start() {}

  @Override
  public void close() {}
}
