package org.framewright.copies;

import java.util.function.Consumer;

/** How far one place is, told by whoever reads its files; one thread at a time tells. */
final class HowFar {
  private final DiskReader.Work work;
  private final Consumer<PlaceProgress> told;
  private final long ofBytes;
  private final long begun = System.nanoTime();
  private int files;
  private long bytes;

  HowFar(DiskReader.Work work, Consumer<PlaceProgress> told) {
    this.work = work;
    this.told = told;
    this.ofBytes = work.files().stream().mapToLong(Listed::size).sum();
    tell();
  }

  /** A file that is read from now on. */
  InHand begin(Listed file) {
    return new InHand(file.size());
  }

  final class InHand {
    private final long size;
    private long read;

    private InHand(long size) {
      this.size = size;
    }

    /** A clip may be as large as a thousand frames. */
    void reached(long read) {
      synchronized (HowFar.this) {
        long now = Math.min(size, read);
        bytes += now - this.read;
        this.read = now;
        tell();
      }
    }

    void end() {
      synchronized (HowFar.this) {
        files++;
        reached(size);
      }
    }
  }

  private synchronized void tell() {
    double seconds = (System.nanoTime() - begun) / 1e9;
    told.accept(
        new PlaceProgress(
            work.place().given,
            files,
            work.files().size(),
            bytes,
            ofBytes,
            seconds > 1 ? bytes / seconds : 0));
  }
}
