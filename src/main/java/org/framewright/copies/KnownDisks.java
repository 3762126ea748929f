package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.framewright.base.PlainText;
import org.framewright.copies.device.MountedVolumes;
import org.framewright.job.Job;

/**
 * The disks besides the job's own that matter to it and are in this computer now: those that its
 * copies lie on, as the log tells, and cards of cameras. A folder that the log names is looked at
 * only where a disk of this computer is mounted: what a log says must not make this computer reach
 * out to another one.
 */
public final class KnownDisks {
  private static final int MOST = 16;
  private static final int MOST_PLACES = 200;

  private KnownDisks() {}

  /**
   * A disk.
   *
   * @param card whether it is a camera's card
   * @param name what it is called
   * @param free bytes that are free
   */
  public record Disk(boolean card, String name, long free) {}

  /**
   * A volume.
   *
   * @param itself equal for two folders of one volume
   * @param free bytes that are free
   */
  record Volume(Object itself, long free) {
    static Volume of(Path folder) throws IOException {
      var store = Files.getFileStore(folder);
      return new Volume(store, store.getUsableSpace());
    }
  }

  /** Tells the volume of a folder. */
  @FunctionalInterface
  interface Volumes {
    Volume of(Path folder) throws IOException;
  }

  /** Those of a job now; one that goes away meanwhile is not among them. */
  public static List<Disk> of(Job job, MountedVolumes mounted) {
    return of(job, mounted, Volume::of);
  }

  static List<Disk> of(Job job, MountedVolumes mounted, Volumes volumes) {
    try {
      return of(job, mounted.folders(), volumes);
    } catch (IOException e) {
      return List.of();
    }
  }

  private static List<Disk> of(Job job, List<Path> mounted, Volumes volumes) throws IOException {
    var seen = new ArrayList<Object>(List.of(volumes.of(job.framesFolder()).itself()));
    var disks = new ArrayList<Disk>();
    var copies = new LinkedHashSet<Path>();
    for (var place : places(job)) {
      under(place, mounted).filter(_ -> Files.isDirectory(place)).ifPresent(copies::add);
    }
    for (var top : copies) {
      if (!Place.looksLikeCard(top)) {
        add(top, false, volumes, seen, disks);
      }
    }
    for (var top : mounted) {
      if (Place.looksLikeCard(top)) {
        add(top, true, volumes, seen, disks);
      }
    }
    return List.copyOf(disks);
  }

  private static void add(
      Path top, boolean card, Volumes volumes, List<Object> seen, List<Disk> disks) {
    try {
      var volume = volumes.of(top);
      if (disks.size() < MOST && !seen.contains(volume.itself())) {
        seen.add(volume.itself());
        var name = top.getFileName() == null ? top : top.getFileName();
        disks.add(new Disk(card, PlainText.line(name.toString()), volume.free()));
      }
    } catch (IOException e) {
      // It was pulled out.
    }
  }

  /** The folders that were copied to or compared, the latest first. */
  private static List<Path> places(Job job) {
    var places = new LinkedHashSet<String>();
    job.copies().reversed().stream()
        .flatMap(copy -> copy.to().stream())
        .map(target -> target.folder())
        .limit(MOST_PLACES)
        .forEach(places::add);
    job.comparisons().reversed().stream()
        .flatMap(run -> run.found().places().stream())
        .limit(MOST_PLACES)
        .forEach(places::add);
    return places.stream().flatMap(place -> path(place).stream()).toList();
  }

  private static Optional<Path> path(String text) {
    try {
      var path = Path.of(text).normalize();
      return path.isAbsolute() ? Optional.of(path) : Optional.empty();
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** The volume that a path lies on by its words; nothing is looked at. */
  private static Optional<Path> under(Path path, List<Path> mounted) {
    return mounted.stream()
        .filter(path::startsWith)
        .max(Comparator.comparingInt(Path::getNameCount));
  }
}
