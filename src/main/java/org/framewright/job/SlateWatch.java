package org.framewright.job;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameScan;
import org.framewright.frames.SlateQueue;
import org.framewright.frames.slate.SlateReading;

/**
 * Follows the slates among frames that come in: new frames are searched out of the way of whoever
 * watches for them, what is found is kept in the job, and a slate that comes where no person put
 * anything on set puts its setup there. Safe for several threads.
 */
public final class SlateWatch implements AutoCloseable {
  /** Hears of slates. */
  public interface Listener {
    /** Slates were read and kept, so frames may have come to other setups. */
    void read();

    /** What was found could not be kept; it is tried again with what is found next. */
    void failed(IOException failure);
  }

  /** So many pictures without a slate are kept together. */
  private static final int PORTION = 50;

  private final Job job;
  private final Executor executor;
  private final Listener listener;
  private final SlateQueue queue;
  private final ReentrantLock lock = new ReentrantLock();

  /** Touched under the lock only. */
  private final Map<Frame, Optional<String>> found = new LinkedHashMap<>();

  private volatile FrameScan scan = new FrameScan(List.of(), 0, List.of());

  private SlateWatch(
      Job job, Executor executor, Listener listener, Function<SlateQueue.Taker, SlateQueue> queue) {
    this.job = job;
    this.executor = executor;
    this.listener = listener;
    this.queue = queue.apply(this::take);
  }

  /**
   * One that searches in a thread of its own.
   *
   * @param executor where what was found is kept, and the listener is called
   */
  public static SlateWatch inBackground(Job job, Executor executor, Listener listener) {
    return new SlateWatch(job, executor, listener, SlateQueue::inBackground);
  }

  /** One that has searched once {@link #look} returns, for tests. */
  static SlateWatch atOnce(Job job, Function<Frame, SlateReading> search, Listener listener) {
    return new SlateWatch(job, Runnable::run, listener, taker -> SlateQueue.atOnce(search, taker));
  }

  /** Has the frames of a scan searched that were not searched yet. Returns at once. */
  public void look(FrameScan next) {
    scan = next;
    queue.add(job.notLookedAt(next));
  }

  private void take(Frame frame, SlateReading reading) {
    if (reading instanceof SlateReading.NoPicture && mayGetPicture(frame)) {
      return;
    }
    var text = SlateLooks.text(reading);
    boolean due;
    lock.lock();
    try {
      found.put(frame, text);
      due = text.isPresent() || found.size() >= PORTION || queue.waiting() <= 1;
    } finally {
      lock.unlock();
    }
    if (due) {
      executor.execute(this::keep);
    }
  }

  /** Whether a picture may still come for a raw in which there is none. */
  private static boolean mayGetPicture(Frame frame) {
    return !frame.isClip() && frame.files().stream().noneMatch(SlateWatch::isDecodable);
  }

  private static boolean isDecodable(FrameFile file) {
    return file.role().isPicture() && file.role() != FileRole.RAW;
  }

  private void keep() {
    Map<Frame, Optional<String>> news;
    lock.lock();
    try {
      news = new LinkedHashMap<>(found);
      found.clear();
    } finally {
      lock.unlock();
    }
    if (news.isEmpty()) {
      return;
    }
    try {
      var slates = job.recordLooks(news);
      if (!slates.isEmpty()) {
        job.putOnSetBySlate(slates, scan);
        listener.read();
      }
    } catch (IOException e) {
      lock.lock();
      try {
        news.forEach(found::putIfAbsent);
      } finally {
        lock.unlock();
      }
      listener.failed(e);
    }
  }

  /** Searches no more; what was found until now is kept. */
  @Override
  public void close() {
    queue.close();
    keep();
  }
}
