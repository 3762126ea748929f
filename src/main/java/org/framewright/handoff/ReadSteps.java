package org.framewright.handoff;

import org.framewright.base.Progress;

/**
 * How far one is with what came back, in mebibytes: each file is read against the selects, and once
 * more against the lists of checksums that came with it, where there are such.
 */
final class ReadSteps {
  private final Progress progress;
  private final int once;
  private final int total;
  private long octets;
  private int told = -1;

  ReadSteps(FolderFiles below, boolean twice, Progress progress) {
    this.progress = progress;
    this.once = mebibytes(below.files().stream().mapToLong(FolderFiles.Found::bytes).sum());
    this.total = Math.max(1, twice ? 2 * once : once);
  }

  private static int mebibytes(long bytes) {
    return (int) Math.min(Integer.MAX_VALUE / 2, bytes >> 20);
  }

  /** A file was read against the selects. */
  void read(FolderFiles.Found file) {
    octets += file.bytes();
    tell(mebibytes(octets));
  }

  /** For whoever compares all of it with the lists that came with it. */
  Progress ofPackage() {
    return new Progress() {
      @Override
      public void step(int done, int all) {
        tell(once + (int) ((long) once * done / Math.max(1, all)));
      }

      @Override
      public boolean cancelled() {
        return progress.cancelled();
      }
    };
  }

  /** All is read, also where the lists name less than there is. */
  void end() {
    tell(total);
  }

  private void tell(int done) {
    if (done > told) {
      told = done;
      progress.step(done, total);
    }
  }
}
