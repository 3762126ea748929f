package org.framewright.copies;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.job.FramesCompared;

/** On how many disks each frame of the job lies, cards and the job's own disk with them. */
final class JobPlaces {
  private final List<Place> places;
  private final DistinctDevices devices;
  private final Map<String, Long> where = new HashMap<>();

  /** By the name below the job folder. */
  private final Map<String, String> contents = new HashMap<>();

  private final Path folder;
  private final long job;

  JobPlaces(Path folder, List<Place> places) {
    this.folder = folder;
    this.places = places;
    this.devices = new DistinctDevices(places.stream().map(place -> place.device).toList());
    long own = 0;
    for (int i = 0; i < places.size(); i++) {
      var place = places.get(i);
      long bit = 1L << i;
      for (var file : place.listing.files()) {
        place.sha256(file).ifPresent(sha -> where.merge(sha, bit, (one, more) -> one | more));
        if (place.kind == Place.Kind.JOB) {
          own = bit;
          place.sha256(file).ifPresent(sha -> contents.put(file.name(), sha));
        }
      }
    }
    job = own;
  }

  /** Of each frame that lies in the job once, the least number of disks that any part is on. */
  SequencedMap<FrameId, Integer> frames(FrameScan scan) {
    var frames = new LinkedHashMap<FrameId, Integer>();
    for (var frame : scan.distinct()) {
      int least = disks(frame);
      frame.knownAs().forEach(id -> frames.put(id, least));
    }
    return frames;
  }

  FramesCompared compared(FrameScan scan) {
    int once = 0;
    for (var frame : scan.distinct()) {
      once += disks(frame) < 2 ? 1 : 0;
    }
    return new FramesCompared(scan.distinct().size(), once);
  }

  /** Sidecars that have no copy on another disk. */
  int sidecarsOnce(FrameScan scan) {
    return (int)
        scan.frames().stream()
            .flatMap(frame -> frame.files().stream())
            .filter(file -> file.role() == FileRole.SIDECAR)
            .filter(file -> disks(file) < 2)
            .count();
  }

  private int disks(Frame frame) {
    return frame.files().stream()
        .filter(file -> file.role() != FileRole.SIDECAR && file.role() != FileRole.COMPANION)
        .mapToInt(this::disks)
        .min()
        .orElse(1);
  }

  private int disks(FrameFile file) {
    var sha256 = contents.get(folder.relativize(file.path()).toString().replace('\\', '/'));
    return sha256 == null ? 1 : Math.max(1, devices.count(where.getOrDefault(sha256, job)));
  }

  int files() {
    return places.stream().mapToInt(place -> place.listing.files().size()).sum();
  }
}
