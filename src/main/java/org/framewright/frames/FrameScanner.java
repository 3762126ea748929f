package org.framewright.frames;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.framewright.base.Problem;
import org.framewright.base.Progress;

/**
 * Finds the frames below a folder. What was read of a file is kept until its size, its time or the
 * file behind its name changes, so scan with one scanner again and again. Files and folders whose
 * name starts with a dot, temporary files and other {@link Litter} are passed over; whatever else
 * is no file of a frame is named in the scan.
 *
 * <p>A picture or a clip is complete when its size and time held over two looks at least {@link
 * #SETTLE} apart (a file last written more than {@link #OLD} ago needs one look only), and its
 * container is whole. One whose end is empty, or cuts its description off, must have held for
 * {@link #HOLLOW}.
 *
 * <p>Safe for use by several threads, one scan at a time.
 */
public final class FrameScanner {
  /** How long size and time must hold. */
  static final Duration SETTLE = Duration.ofMillis(100);

  /** How old the last change of a file must be for a single look to do. */
  static final Duration OLD = Duration.ofSeconds(2);

  /** How long a file must hold whose last bytes are all zero, or whose description is cut. */
  static final Duration HOLLOW = Duration.ofSeconds(5);

  /** So many files to be read take longer than beginning a thread. */
  private static final int WORTH_A_THREAD = 32;

  /** So often at most a scan reports how far it is. */
  private static final int REPORTS = 25;

  private final Path root;
  private final InstantSource clock;
  private final FileReader reader;
  private final Map<Path, FolderFrames> folders = new ConcurrentSkipListMap<>();
  private final Map<Camera, Camera> bodies = new ConcurrentHashMap<>();
  private final Map<Path, Problem> unreadable = new ConcurrentSkipListMap<>();
  private List<Problem> copies = List.of();
  private int framesBefore;

  /** A scanner of one folder and all below it. */
  public FrameScanner(Path root) {
    this(root, InstantSource.system());
  }

  FrameScanner(Path root, InstantSource clock) {
    this(root, clock, FileReading::of);
  }

  FrameScanner(Path root, InstantSource clock, FileReader reader) {
    this.root = root;
    this.clock = clock;
    this.reader = reader;
  }

  Path root() {
    return root;
  }

  /**
   * Scans the folder. Where files were written just now, waits a moment and looks at those again;
   * one that is still being written is then reported as incomplete.
   *
   * @throws IOException where the folder itself is missing or cannot be read
   */
  public FrameScan scan() throws IOException {
    return scan(Progress.NONE).orElseThrow();
  }

  /**
   * Scans the folder like {@link #scan()}, and reports how far it is.
   *
   * @return nothing if it was stopped; what was read until then is not read again
   * @throws IOException where the folder itself is missing or cannot be read
   */
  public synchronized Optional<FrameScan> scan(Progress progress) throws IOException {
    var look = look(progress);
    if (!look.unsettled().isEmpty() && !progress.cancelled()) {
      try {
        Thread.sleep(SETTLE.plusMillis(10));
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return Optional.of(look.scan());
      }
      look = look(look.unsettled());
    }
    return progress.cancelled() ? Optional.empty() : Optional.of(look.scan());
  }

  /** One look at everything. */
  Look look() throws IOException {
    return look(Progress.NONE);
  }

  /** One look at everything, of which the reading can be stopped. */
  synchronized Look look(Progress progress) throws IOException {
    if (!Files.isDirectory(root)) {
      throw Files.exists(root)
          ? new NotDirectoryException(root.toString())
          : new NoSuchFileException(root.toString());
    }
    unreadable.clear();
    Set<Path> seen = ConcurrentHashMap.newKeySet();
    walk(root, seen);
    folders.keySet().removeIf(folder -> !seen.contains(folder) && !isBelowUnreadable(folder));
    return finish(progress);
  }

  /** Whether something above it could not be read, so that nobody knows whether it is there. */
  private boolean isBelowUnreadable(Path folder) {
    for (var at = folder; at != null && at.startsWith(root); at = at.getParent()) {
      if (unreadable.containsKey(at)) {
        return true;
      }
    }
    return false;
  }

  /** One look at some files and folders; everything else is taken to be as it was. */
  synchronized Look look(Collection<Path> hints) throws IOException {
    for (var hint : hints) {
      if (!hint.startsWith(root) || passedOver(hint)) {
        continue;
      }
      unreadable.remove(hint);
      try {
        var attributes =
            Files.readAttributes(hint, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
        if (attributes.isDirectory()) {
          walk(hint, ConcurrentHashMap.newKeySet());
        } else {
          folder(hint.getParent()).see(hint, attributes, clock.instant());
        }
      } catch (NoSuchFileException e) {
        forget(hint);
      } catch (IOException e) {
        unreadable.put(hint, FrameProblems.unreadable(hint, e));
      }
    }
    return finish(Progress.NONE);
  }

  private void forget(Path path) {
    if (folders.containsKey(path)) {
      folders.keySet().removeIf(folder -> folder.startsWith(path) && !folder.equals(root));
    }
    var folder = folders.get(path.getParent());
    if (folder != null) {
      folder.forget(path);
    }
  }

  private boolean passedOver(Path path) {
    for (var name : root.relativize(path)) {
      // Of a file by that name its folder asks again.
      if (Litter.isFolder(name.toString())) {
        return true;
      }
    }
    return false;
  }

  private FolderFrames folder(Path path) {
    return folders.computeIfAbsent(path, FolderFrames::new);
  }

  /** Lists a folder and all below it, the folders of one depth side by side. */
  private void walk(Path from, Set<Path> seen) throws IOException {
    var now = clock.instant();
    var depth = List.of(from);
    try {
      while (!depth.isEmpty()) {
        depth = depth.parallelStream().flatMap(folder -> list(folder, now, seen).stream()).toList();
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /** Lists one folder; answers the folders in it. */
  private List<Path> list(Path path, Instant now, Set<Path> seen) {
    var folder = folder(path);
    var below = new ArrayList<Path>();
    seen.add(path);
    folder.beginListing();
    try (var entries = Files.newDirectoryStream(path)) {
      for (var entry : entries) {
        if (!entry.getFileName().toString().startsWith(".")) {
          see(entry, folder, now, below);
        }
      }
      folder.endListing();
    } catch (NoSuchFileException e) {
      missed(path, e);
      seen.remove(path);
    } catch (DirectoryIteratorException e) {
      missed(path, e.getCause());
      unreadable.put(path, FrameProblems.unreadableNow(path, e.getCause()));
    } catch (IOException e) {
      missed(path, e);
      unreadable.put(path, FrameProblems.unreadableNow(path, e));
    }
    return below;
  }

  private void see(Path entry, FolderFrames folder, Instant now, List<Path> below) {
    try {
      var attributes =
          Files.readAttributes(entry, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      if (attributes.isDirectory()) {
        if (!Litter.isFolder(entry.getFileName().toString())) {
          below.add(entry);
        }
      } else {
        folder.see(entry, attributes, now);
      }
    } catch (NoSuchFileException e) {
      // It was deleted or renamed between the listing and this look.
      return;
    } catch (IOException e) {
      folder.keep(entry);
      unreadable.put(entry, FrameProblems.unreadableNow(entry, e));
    }
  }

  /** Without the scanned folder itself there is no scan. */
  private void missed(Path path, IOException e) {
    if (path.equals(root)) {
      throw new UncheckedIOException(e);
    }
  }

  private Look finish(Progress progress) {
    var now = clock.instant();
    var due = new ArrayList<Known>();
    var unsettled = new ArrayList<Path>();
    for (var folder : folders.values()) {
      folder.sort(now, due, unsettled);
    }
    read(due, now, progress);
    boolean changed = false;
    var frames = new ArrayList<Frame>();
    var problems = new ArrayList<>(unreadable.values());
    var notUnderstood = new ArrayList<NotUnderstood>();
    int files = 0;
    for (var folder : folders.values()) {
      changed |= folder.isChanged();
      folder.gather();
      frames.addAll(folder.frames());
      problems.addAll(folder.problems());
      folder.notUnderstood(notUnderstood);
      files += folder.frameFiles();
    }
    if (changed || frames.size() != framesBefore) {
      copies = copies(frames);
      framesBefore = frames.size();
    }
    problems.addAll(copies);
    return new Look(
        new FrameScan(
            List.copyOf(frames), files, List.copyOf(problems), List.copyOf(notUnderstood)),
        List.copyOf(unsettled));
  }

  /** Reads side by side, each reader in one room: a room for each file would be all garbage. */
  private void read(List<Known> due, Instant now, Progress progress) {
    var next = new AtomicInteger();
    var done = new AtomicInteger();
    int each = Math.ceilDiv(due.size(), REPORTS);
    Runnable readSome =
        () -> {
          var room = new Bytes.Room();
          for (var i = next.getAndIncrement(); i < due.size(); i = next.getAndIncrement()) {
            if (progress.cancelled()) {
              return;
            }
            due.get(i).read(now, reader, bodies, room);
            var so = done.incrementAndGet();
            if (so % each == 0 || so == due.size()) {
              progress.step(so, due.size());
            }
          }
        };
    // Threads of its own, not the pool of all: they are as urgent as the one that asks.
    var more =
        Math.min(Runtime.getRuntime().availableProcessors() - 1, due.size() / WORTH_A_THREAD);
    var others =
        IntStream.range(0, more)
            .mapToObj(
                _ -> CompletableFuture.runAsync(readSome, Thread.ofPlatform().daemon()::start))
            .toList();
    readSome.run();
    others.forEach(CompletableFuture::join);
  }

  private static List<Problem> copies(List<Frame> frames) {
    var first = HashMap.<FrameId, Frame>newHashMap(frames.size());
    var copies = new ArrayList<Problem>();
    for (var frame : frames) {
      var other = first.putIfAbsent(frame.id(), frame);
      if (other != null) {
        copies.add(FrameProblems.isACopy(frame.primary().path(), other.primary().path()));
      }
    }
    return List.copyOf(copies);
  }

  /**
   * The outcome of one look.
   *
   * @param scan what was found
   * @param unsettled the files that must be looked at again before they can count
   */
  record Look(FrameScan scan, List<Path> unsettled) {}
}
