package org.framewright.copies;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.framewright.base.FileProblems;
import org.framewright.base.Progress;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.Medium;
import org.framewright.copies.device.Volumes;
import org.framewright.frames.PictureFile;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.RunningHashes;

/** Reads files of several places, each disk by one thread: a disk reads fastest in one row. */
final class DiskReader {
  private static final long MIB = 1 << 20;

  private final Volumes volumes;
  private final EarlierRuns earlier;
  private final Progress progress;
  private final Consumer<PlaceProgress> told;
  private final AtomicBoolean stopped = new AtomicBoolean();
  private final AtomicLong done = new AtomicLong();
  private int total;

  /**
   * @param told how far each place is, from the thread that reads it
   */
  DiskReader(
      Volumes volumes, EarlierRuns earlier, Progress progress, Consumer<PlaceProgress> told) {
    this.volumes = volumes;
    this.earlier = earlier;
    this.progress = progress;
    this.told = told;
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
    var rows = byDisk(work);
    try (var threads = Executors.newFixedThreadPool(Math.max(1, rows.size()))) {
      var running = new ArrayList<Future<?>>();
      for (var row : rows) {
        running.add(threads.submit(() -> row.forEach(this::readAll)));
      }
      for (var one : running) {
        await(one);
      }
    }
    if (isStopped()) {
      throw new CancellationException();
    }
    progress.step(total, total);
  }

  private void await(Future<?> running) {
    try {
      running.get();
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

  private void readAll(Work work) {
    var row = new Row(work);
    row.tell(0);
    for (var file : work.files()) {
      if (isStopped()) {
        stopped.set(true);
        throw new CancellationException();
      }
      long before = done.get();
      var facts = facts(work.place(), file, row);
      row.end(file);
      work.place().facts.put(file.name(), facts);
      long now = done.addAndGet(weight(file));
      if (now / MIB != before / MIB) {
        progress.step((int) Math.min(total, now / MIB), total);
      }
    }
  }

  /** How far one place is. */
  private final class Row {
    private static final int BETWEEN_TOLD = 16;

    private final Work work;
    private final long ofBytes;
    private final long begun = System.nanoTime();
    private int files;
    private long bytes;

    Row(Work work) {
      this.work = work;
      this.ofBytes = work.files().stream().mapToLong(Listed::size).sum();
    }

    void end(Listed file) {
      files++;
      bytes += file.size();
      tell(0);
    }

    void tell(long ofThis) {
      double seconds = (System.nanoTime() - begun) / 1e9;
      long now = Math.min(ofBytes, bytes + ofThis);
      told.accept(
          new PlaceProgress(
              work.place().given,
              files,
              work.files().size(),
              now,
              ofBytes,
              seconds > 1 ? now / seconds : 0));
    }

    /** A clip may be as large as a thousand frames. */
    Progress inFile() {
      return new Progress() {
        @Override
        public void step(int done, int total) {
          if (done % BETWEEN_TOLD == 0) {
            tell(done * MIB);
          }
        }

        @Override
        public boolean cancelled() {
          return isStopped();
        }
      };
    }
  }

  private FileFacts facts(Place place, Listed file, Row row) {
    Optional<String> fault =
        place.kind == Place.Kind.CARD && file.isExposure()
            ? PictureFile.faultOfFrame(file.path())
            : Optional.empty();
    var kinds = EnumSet.noneOf(HashKind.class);
    place.claims.kind(file).ifPresent(kinds::add);
    place.mhl.ifPresent(mhl -> kinds.addAll(mhl.kinds(file.name())));
    var running = new RunningHashes(kinds);
    try {
      var reading = volumes.read(file.path(), running::update, row.inFile());
      boolean asListed =
          reading.bytes() == file.size() && reading.modified().toInstant().equals(file.modified());
      if (!asListed) {
        return unread(file, "it changed since it was listed", fault);
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
      return unread(file, FileProblems.of(e).what(), fault);
    }
  }

  static FileFacts notRead(Listed file) {
    return unread(file, "it was not read", Optional.empty());
  }

  private static FileFacts unread(Listed file, String why, Optional<String> fault) {
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
