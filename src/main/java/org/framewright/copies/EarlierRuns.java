package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.copies.device.MountIdentity;
import org.framewright.job.ComparedAt;

/**
 * Which files earlier comparisons listed on a volume that was away since: what is read of them now
 * cannot have stayed in memory from when they were written.
 */
final class EarlierRuns {
  private static final int MOST_RUNS = 20;
  private static final int PARTS_OF_PLACE = 7;
  private static final int PARTS_OF_FILE = 4;

  /** By real folder: the files with their size and time. */
  private final Map<String, Set<String>> listed = new HashMap<>();

  private EarlierRuns() {}

  /** Nothing is known of earlier. */
  static EarlierRuns none() {
    return new EarlierRuns();
  }

  /** What the evidence of a job says of these places, the newest runs only. */
  static EarlierRuns of(Path job, List<ComparedAt> runs, List<Place> places) {
    var earlier = new EarlierRuns();
    for (var run : runs.reversed().stream().limit(MOST_RUNS).toList()) {
      var found = new Reader(places);
      try {
        if (EvidenceReader.read(job, run.found(), found::line)) {
          found.listed.forEach(
              (folder, files) ->
                  earlier.listed.computeIfAbsent(folder, _ -> new HashSet<>()).addAll(files));
        }
      } catch (IOException e) {
        // Then it proves nothing, and the disk has to be taken out once more.
      }
    }
    return earlier;
  }

  boolean wasListedBefore(Place place, Listed file) {
    return listed
        .getOrDefault(place.real.toString(), Set.of())
        .contains(key("" + file.size(), file.modified().toString(), file.name()));
  }

  private static String key(String size, String modified, String name) {
    return size + Evidence.BETWEEN + modified + Evidence.BETWEEN + name;
  }

  private static final class Reader {
    private final List<Place> places;
    private final Map<String, Set<String>> listed = new HashMap<>();
    private Set<String> files = null;

    Reader(List<Place> places) {
      this.places = places;
    }

    void line(String line) {
      if (line.startsWith(Evidence.PLACE)) {
        files = place(line.substring(Evidence.PLACE.length()).split(Evidence.BETWEEN, -1));
      } else if (files != null && line.startsWith(Evidence.FILE)) {
        var parts = line.substring(Evidence.FILE.length()).split(Evidence.BETWEEN, -1);
        if (parts.length == PARTS_OF_FILE) {
          files.add(key(parts[0], parts[1], Evidence.plain(parts[3])));
        }
      }
    }

    /** Where the files of a place go; nowhere if its volume was not away since. */
    private Set<String> place(String[] parts) {
      if (parts.length != PARTS_OF_PLACE) {
        return null;
      }
      var folder = Evidence.plain(parts[1]);
      var then =
          new MountIdentity(
              Evidence.plain(parts[2]), Evidence.plain(parts[3]), Evidence.plain(parts[4]));
      boolean wasAway =
          places.stream()
              .anyMatch(
                  place -> place.real.toString().equals(folder) && place.mount.wasAwaySince(then));
      return wasAway ? listed.computeIfAbsent(folder, _ -> new HashSet<>()) : null;
    }
  }
}
