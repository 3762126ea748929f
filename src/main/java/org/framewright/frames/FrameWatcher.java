package org.framewright.frames;

import io.methvin.watcher.DirectoryChangeEvent;
import io.methvin.watcher.DirectoryWatcher;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;

/**
 * Watches a folder and hands on each scan that differs from the one before.
 *
 * <p>Events of the file system say where to look at once; they are never believed. All is looked at
 * every second on places that send no events, such as network drives, but so seldom that it takes
 * no more than a twentieth of the time; on places that send them every five to thirty seconds, so
 * that an idle laptop keeps its battery, and there the folder itself is looked for every five. A
 * folder that vanishes, as when its drive is unplugged, keeps its frames and gains a {@link
 * Problem}; when it is back, it is looked at anew. On Windows, where whoever listens to a folder
 * keeps its parents from being renamed and its drive from being ejected, see {@link Listening},
 * nobody listens while nothing changes. A look that fails, for whatever reason, is reported in the
 * same way and tried again: only {@link #close} ends the watching.
 */
public final class FrameWatcher implements AutoCloseable {
  private static final Duration SELDOM = Duration.ofSeconds(5);
  private static final Duration VERY_SELDOM = Duration.ofSeconds(30);
  private static final Duration OFTEN = Duration.ofSeconds(1);
  private static final int SHARE_WITHOUT_EVENTS = 20;
  private static final int SHARE_BESIDE_EVENTS = 200;

  /** Between two looks, so that a burst of events is one look. */
  private static final Duration BREATH = Duration.ofMillis(20);

  /** Between two looks at files that have not settled. */
  private static final Duration UNSETTLED = Duration.ofMillis(50);

  private final Path root;
  private final FrameScanner scanner;
  private final Consumer<FrameScan> listener;
  private final Listening rule;
  private final Thread thread;

  private final Progress untilClosed = Progress.until(this::isClosed);

  private final ReentrantLock lock = new ReentrantLock();
  private final Condition stirred = lock.newCondition();
  private final Set<Path> hints = new HashSet<>();
  private boolean lookAtAll;
  private boolean closed;

  private Optional<DirectoryWatcher> events = Optional.empty();
  private CompletableFuture<Void> listening = CompletableFuture.completedFuture(null);
  private Object rootKey;
  private boolean isOwnDisk;
  private boolean eventsCome;
  private FrameScan last;
  private long changedAt;

  /**
   * A watcher of one folder and all below it.
   *
   * @param clock the times at which files were looked at
   * @param listener is called on the watcher's own thread, one scan after the other
   */
  public FrameWatcher(Path root, Clock clock, Consumer<FrameScan> listener) {
    this(new FrameScanner(root, clock), listener);
  }

  /** A watcher that looks by a scanner which others may scan with too: what it read is read. */
  public FrameWatcher(FrameScanner scanner, Consumer<FrameScan> listener) {
    this(scanner, listener, Listening.ofThisSystem());
  }

  FrameWatcher(FrameScanner scanner, Consumer<FrameScan> listener, Listening rule) {
    this.rule = rule;
    this.root = scanner.root();
    this.scanner = scanner;
    this.listener = listener;
    this.thread =
        Thread.ofPlatform().daemon().name("frames of " + root.getFileName()).unstarted(this::run);
  }

  /** Begins to watch; the first scan is handed on in any case. */
  public void start() {
    thread.start();
  }

  /**
   * Ends watching, and stops a look that is under way; the listener is not called any more once
   * this has returned.
   */
  @Override
  public void close() {
    lock.lock();
    try {
      closed = true;
      stirred.signalAll();
    } finally {
      lock.unlock();
    }
    if (Thread.currentThread() == thread) {
      return;
    }
    boolean interrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      watch();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      stopListening();
    }
  }

  private void watch() throws InterruptedException {
    long fullAt = System.nanoTime();
    changedAt = fullAt;
    List<Path> unsettled = List.of();
    while (true) {
      var pause = unsettled.isEmpty() ? SELDOM : UNSETTLED;
      var hinted = new HashSet<Path>();
      boolean full = await(Math.min(fullAt, System.nanoTime() + pause.toNanos()), hinted);
      if (isClosed()) {
        return;
      }
      long began = System.nanoTime();
      full |= began - fullAt >= 0;
      if (!full && hinted.isEmpty() && unsettled.isEmpty()) {
        if (!isListening() || isSameFolder()) {
          continue;
        }
        full = true;
      }
      try {
        FrameScanner.Look look;
        if (full) {
          listenAgain();
          boolean unheard = last != null && hinted.isEmpty() && unsettled.isEmpty();
          look = scanner.look(untilClosed);
          if (unheard) {
            boolean missed = !look.scan().frames().equals(last.frames());
            eventsCome = !missed && (eventsCome || (isOwnDisk && isListening()));
          }
        } else {
          var at = new ArrayList<>(unsettled);
          at.addAll(hinted);
          look = scanner.look(at);
        }
        if (isClosed()) {
          return;
        }
        unsettled = look.unsettled();
        handOn(look.scan());
      } catch (IOException | RuntimeException | Error e) {
        // An error too: a watch that ends unseen loses the arrivals of a whole day.
        unsettled = List.of();
        stopListening();
        eventsCome = false;
        full = true;
        handOn(without(e));
      }
      if (full) {
        fullAt = System.nanoTime() + untilNextFull(System.nanoTime() - began);
      }
      Thread.sleep(BREATH);
    }
  }

  private long untilNextFull(long took) {
    return eventsCome
        ? Math.max(
            Math.clamp(took * SHARE_BESIDE_EVENTS, SELDOM.toNanos(), VERY_SELDOM.toNanos()),
            took * SHARE_WITHOUT_EVENTS)
        : Math.max(OFTEN.toNanos(), took * SHARE_WITHOUT_EVENTS);
  }

  /** Waits for a hint or a time; answers whether everything is to be looked at. */
  private boolean await(long until, Set<Path> hinted) throws InterruptedException {
    lock.lock();
    try {
      while (!closed && !lookAtAll && hints.isEmpty()) {
        long left = until - System.nanoTime();
        if (left <= 0) {
          break;
        }
        if (stirred.awaitNanos(left) <= 0) {
          break;
        }
      }
      boolean all = lookAtAll;
      lookAtAll = false;
      hinted.addAll(hints);
      hints.clear();
      return all;
    } finally {
      lock.unlock();
    }
  }

  private boolean isClosed() {
    lock.lock();
    try {
      return closed;
    } finally {
      lock.unlock();
    }
  }

  private FrameScan without(Throwable failure) {
    var problems = List.of(problem(failure));
    return last == null
        ? new FrameScan(List.of(), 0, problems)
        : new FrameScan(last.frames(), last.files(), problems, last.notUnderstood());
  }

  private Problem problem(Throwable failure) {
    var where = SpelledName.shown(root);
    return switch (failure) {
      case NoSuchFileException _ ->
          new Problem(
              "the folder is gone; what is shown is from before",
              where,
              "Plug its drive in again, or put the folder back.");
      case IOException e -> FrameProblems.notNow(root, e);
      case UncheckedIOException e -> FrameProblems.notNow(root, e.getCause());
      default -> {
        log(System.Logger.Level.WARNING, "a look at " + root + " failed", failure);
        yield new Problem(
            Text.of(
                "the folder could not be looked at ({0}); what is shown is from before", failure),
            where,
            "It is tried again; if this line stays, close other programs or start this one anew.");
      }
    };
  }

  private void handOn(FrameScan scan) {
    if (Objects.equals(scan, last)) {
      return;
    }
    last = scan;
    changedAt = System.nanoTime();
    try {
      listener.accept(scan);
    } catch (RuntimeException | Error e) {
      log(System.Logger.Level.WARNING, "a scan of " + root + " could not be used", e);
    }
  }

  private static void log(System.Logger.Level level, String what, Throwable why) {
    System.getLogger(FrameWatcher.class.getName()).log(level, what + ": " + why);
  }

  /** Listens for events, anew where the folder is another one than before or listening ended. */
  private void listenAgain() throws IOException {
    if (!rule.listens(Duration.ofNanos(System.nanoTime() - changedAt))) {
      stopListening();
      eventsCome = false;
      return;
    }
    var key = Files.readAttributes(root, BasicFileAttributes.class).fileKey();
    if (isListening() && Objects.equals(key, rootKey)) {
      return;
    }
    stopListening();
    rootKey = key;
    isOwnDisk = rule.comeFrom(Files.getFileStore(root).type());
    try {
      var watcher =
          DirectoryWatcher.builder().path(root).fileHashing(false).listener(this::heard).build();
      events = Optional.of(watcher);
      listening =
          watcher.watchAsync(
              task -> Thread.ofPlatform().daemon().name("events of " + root).start(task));
    } catch (IOException | RuntimeException | LinkageError e) {
      log(System.Logger.Level.DEBUG, "no events from " + root, e);
    }
  }

  /** Whether the folder is there, and not another one under its name. */
  private boolean isSameFolder() {
    try {
      return Objects.equals(
          Files.readAttributes(root, BasicFileAttributes.class).fileKey(), rootKey);
    } catch (IOException e) {
      return false;
    }
  }

  private boolean isListening() {
    return events.isPresent() && !listening.isDone();
  }

  private void stopListening() {
    events.ifPresent(
        watcher -> {
          try {
            watcher.close();
          } catch (IOException | RuntimeException e) {
            log(System.Logger.Level.DEBUG, "listening to " + root + " ended badly", e);
          }
        });
    events = Optional.empty();
  }

  private void heard(DirectoryChangeEvent event) {
    lock.lock();
    try {
      eventsCome = true;
      var path = event.path();
      if (event.eventType() == DirectoryChangeEvent.EventType.OVERFLOW
          || path == null
          || !path.startsWith(root)) {
        lookAtAll = true;
      } else {
        hints.add(path);
      }
      stirred.signalAll();
    } finally {
      lock.unlock();
    }
  }
}
