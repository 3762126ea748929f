package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.LongSupplier;
import org.framewright.base.Progress;
import org.framewright.copies.device.ReadTime;
import org.framewright.job.Job;

/**
 * How fast the disk that a job's frames arrive on writes and reads.
 *
 * @param written bytes a second, flushed and not only remembered
 * @param read bytes a second, past the memory of the system; none where that cannot be done
 */
public record DiskSpeed(double written, OptionalDouble read) {
  /**
   * Measures it on up to 256 MiB in the job's own folder, for a few seconds, and removes them
   * again; what a kill leaves of them, the next measurement removes.
   *
   * @return nothing if it was stopped, or if there is not enough room
   */
  public static Optional<DiskSpeed> measure(Job job, Progress progress) throws IOException {
    return measure(job, progress, System::nanoTime);
  }

  static Optional<DiskSpeed> measure(Job job, Progress progress, LongSupplier nanos)
      throws IOException {
    return WriteSpeed.measure(
        job,
        progress,
        nanos,
        (speed, file) -> {
          long bytes = Files.size(file);
          var taken = ReadTime.of(file, progress, nanos);
          return new DiskSpeed(
              speed.bytesPerSecond(),
              taken.isEmpty()
                  ? OptionalDouble.empty()
                  : OptionalDouble.of(bytes / (taken.get().toNanos() / 1e9)));
        });
  }
}
