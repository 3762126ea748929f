package org.framewright.ready;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.SortedSet;
import org.framewright.base.OperatingSystem;
import org.framewright.base.Progress;
import org.framewright.copies.DiskSpeed;
import org.framewright.copies.device.Volumes;
import org.framewright.day.PowerSource;
import org.framewright.job.Job;

/** What a job stands on: this computer, its clock, power and disks. */
public interface Surroundings {
  /** What this computer's own clock shows. */
  Instant now();

  /** What it runs on. */
  Facts.Power power();

  /** Its disks. */
  Volumes volumes();

  /**
   * How fast the disk that frames arrive on is; takes some seconds.
   *
   * @return nothing where there is no room to measure, or it was stopped
   * @throws IOException if the disk takes no file
   */
  Optional<DiskSpeed> speed(Job job, Progress progress) throws IOException;

  /**
   * What only the app knows.
   *
   * @param scripts those of the list besides the Latin one
   */
  default Facts.AtHand atHand(SortedSet<String> scripts) {
    return new Facts.AtHand(scripts, Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** Those of this computer, with these disks. */
  static Surroundings ofThisComputer(Volumes disks) {
    return new Surroundings() {
      private static final Path SUPPLIES = Path.of("/sys/class/power_supply");

      @Override
      public Instant now() {
        return Instant.now();
      }

      @Override
      public Facts.Power power() {
        var battery = PowerSource.ofThisSystem().battery();
        if (battery.isPresent()) {
          return new Facts.Power.OnBattery(battery.get());
        }
        boolean known =
            OperatingSystem.current() == OperatingSystem.LINUX && Files.isDirectory(SUPPLIES);
        return known ? new Facts.Power.OnMains() : new Facts.Power.Unknown();
      }

      @Override
      public Volumes volumes() {
        return disks;
      }

      @Override
      public Optional<DiskSpeed> speed(Job job, Progress progress) throws IOException {
        return DiskSpeed.measure(job, progress);
      }
    };
  }
}
