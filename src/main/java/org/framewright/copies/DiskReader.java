package org.framewright.copies;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.framewright.base.FileProblems;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.Medium;
import org.framewright.copies.device.Volumes;
import org.framewright.frames.PictureFile;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.RunningHashes;

/**
 * Reads files of several places. Each disk is read by one thread, as a disk reads fastest in one
 * row; where that thread is busy hashing, so that the disk waits for it, by one more.
 */
final class DiskReader {
  private static final long MIB = 1 << 20;

  /** Mebibytes of a file. */
  private static final int BETWEEN_TOLD = 16;

  private final Volumes volumes;
  private final EarlierRuns earlier;
  private final Progress progress;
  private final Consumer<PlaceProgress> told;
  private final AtomicBoolean stopped = new AtomicBoolean();
  private final AtomicLong done = new AtomicLong();
  private final DiskQueue.Sharing sharing;
  private int total;

  /**
   * @param told how far each place is, from the threads that read it, one at a time
   * @param sharing when a disk is read by more than one thread
   */
  DiskReader(
      Volumes volumes,
      EarlierRuns earlier,
      Progress progress,
      Consumer<PlaceProgress> told,
      DiskQueue.Sharing sharing) {
    this.volumes = volumes;
    this.earlier = earlier;
    this.progress = progress;
    this.told = told;
    this.sharing = sharing;
  }

  /** The files of one place that are to be read. */
  record Work(Place place, List<Listed> files) {}

  /**
   * Reads them; what was found is in {@link Place#facts}.
   *
   * @throws CancellationException if it was stopped
   */
  void read(List<Work> work) {
    long bytes = 0;
    for (var one : work) {
      for (var file : one.files()) {
        bytes += weight(file);
      }
    }
    total = (int) Math.min(Integer.MAX_VALUE, Math.max(1, bytes / MIB));
    progress.step(0, total);
    try (var threads = Executors.newCachedThreadPool()) {
      var readers = new Readers(threads);
      byDisk(work).forEach(disk -> readers.add(new DiskQueue(waiting(disk), sharing)));
      readers.await();
    }
    if (isStopped()) {
      throw new CancellationException();
    }
    progress.step(total, total);
  }

  /** The threads that read; one of them may ask for another. */
  private final class Readers {
    private final ExecutorService threads;
    private final Queue<Future<?>> running = new ConcurrentLinkedQueue<>();

    Readers(ExecutorService threads) {
      this.threads = threads;
    }

    void add(DiskQueue disk) {
      running.add(threads.submit(() -> readAll(disk, this)));
    }

    /** A reader has ended only after those that it asked for are in the queue. */
    void await() {
      for (var one = running.poll(); one != null; one = running.poll()) {
        await(one);
      }
    }

    private void await(Future<?> one) {
      try {
        one.get();
      } catch (InterruptedException e) {
        stopped.set(true);
        Thread.currentThread().interrupt();
      } catch (ExecutionException e) {
        stopped.set(true);
        switch (e.getCause()) {
          case CancellationException _ -> {}
          case RuntimeException cause -> throw cause;
          case Error cause -> throw cause;
          default -> throw new IllegalStateException(e.getCause());
        }
      }
    }
  }

  /** A file takes some time whatever its size. */
  private static long weight(Listed file) {
    return file.size() + MIB / 4;
  }

  private static List<List<Work>> byDisk(List<Work> work) {
    var rows = new ArrayList<List<Work>>();
    for (var one : work) {
      Optional<List<Work>> same =
          rows.stream()
              .filter(
                  row ->
                      row.stream()
                          .anyMatch(
                              other ->
                                  Device.compare(other.place().device, one.place().device)
                                      == Device.Sameness.SAME))
              .findFirst();
      if (same.isPresent()) {
        same.get().add(one);
      } else {
        rows.add(new ArrayList<>(List.of(one)));
      }
    }
    return rows;
  }

  private List<DiskQueue.Waiting> waiting(List<Work> disk) {
    return disk.stream()
        .flatMap(
            work -> {
              var far = new HowFar(work, told);
              return work.files().stream()
                  .map(file -> new DiskQueue.Waiting(work.place(), file, far));
            })
        .toList();
  }

  private void readAll(DiskQueue disk, Readers readers) {
    var reader = disk.reader();
    for (var next = disk.next(); next.isPresent(); next = disk.next()) {
      if (isStopped()) {
        stopped.set(true);
        throw new CancellationException();
      }
      read(next.get());
      if (reader.needsAnother(next.get().file().size())) {
        readers.add(disk);
      }
    }
  }

  private void read(DiskQueue.Waiting one) {
    var file = one.file();
    var inHand = one.far().begin(file);
    var facts = facts(one.place(), file, inHand);
    one.place().facts.put(file.name(), facts);
    inHand.end();
    long now = done.addAndGet(weight(file));
    if (now / MIB != (now - weight(file)) / MIB) {
      progress.step((int) Math.min(total, now / MIB), total);
    }
  }

  private Progress inFile(HowFar.InHand inHand) {
    return new Progress() {
      @Override
      public void step(int done, int total) {
        if (done % BETWEEN_TOLD == 0) {
          inHand.reached(done * MIB);
        }
      }

      @Override
      public boolean cancelled() {
        return isStopped();
      }
    };
  }

  private FileFacts facts(Place place, Listed file, HowFar.InHand inHand) {
    Optional<Text> fault =
        place.kind == Place.Kind.CARD && file.isExposure()
            ? PictureFile.faultOfFrame(file.path())
            : Optional.empty();
    var kinds = EnumSet.noneOf(HashKind.class);
    place.claims.kind(file).ifPresent(kinds::add);
    place.mhl.ifPresent(mhl -> kinds.addAll(mhl.kinds(file.name())));
    var running = new RunningHashes(kinds);
    try {
      var reading = volumes.read(file.path(), running::update, inFile(inHand));
      boolean asListed =
          reading.bytes() == file.size() && reading.modified().toInstant().equals(file.modified());
      if (!asListed) {
        return unread(file, Text.of("it changed since it was listed"), fault);
      }
      var hashes = running.values();
      place.mhl.ifPresent(mhl -> mhl.add(file.name(), reading, hashes));
      boolean fromMedium = reading.medium() == Medium.READ || earlier.wasListedBefore(place, file);
      return new FileFacts(
          file.name(),
          file.size(),
          Optional.of(new FileFacts.ReadFacts(reading.sha256(), fromMedium)),
          true,
          Optional.empty(),
          fault.or(() -> place.claims.fault(file, hashes)));
    } catch (IOException e) {
      return unread(file, FileProblems.of(e).fault(), fault);
    }
  }

  static FileFacts notRead(Listed file) {
    return unread(file, Text.of("it was not read"), Optional.empty());
  }

  private static FileFacts unread(Listed file, Text why, Optional<Text> fault) {
    return new FileFacts(
        file.name(), file.size(), Optional.empty(), false, Optional.of(why), fault);
  }

  /** Looks again, at the end, whether what was read is still as it was; a look costs no reading. */
  static void lookAgain(Place place) {
    Map<String, Listed> listed = new HashMap<>();
    place.listing.files().forEach(file -> listed.put(file.name(), file));
    place.facts.replaceAll(
        (name, facts) -> {
          var before = listed.get(name);
          boolean held;
          try {
            held = FolderLister.now(before).isLike(before);
          } catch (IOException e) {
            held = false;
          }
          return new FileFacts(
              facts.path(),
              facts.size(),
              facts.read(),
              facts.held() && held,
              facts.trouble(),
              facts.fault());
        });
  }

  private boolean isStopped() {
    return stopped.get() || progress.cancelled();
  }
}
