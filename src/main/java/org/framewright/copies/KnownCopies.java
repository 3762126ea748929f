package org.framewright.copies;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.framewright.copies.device.Device;
import org.framewright.job.Job;

/**
 * What the last comparisons of a job say of the files of cards: on how many disks each was found,
 * cards not counted. A hint for people, and no evidence.
 */
final class KnownCopies {
  private static final int MOST_RUNS = 5;
  private static final int PARTS_OF_PLACE = 7;
  private static final int PARTS_OF_FILE = 4;
  private static final int KIND = 0;
  private static final int ID = 5;
  private static final Pattern SUM = Pattern.compile("\\\\?([0-9a-f]{64})  .*");

  /** Of each file of a card, by size, time and name: the most disks that one comparison found. */
  private final Map<String, Integer> disks = new HashMap<>();

  private KnownCopies() {}

  static KnownCopies of(Job job) {
    var known = new KnownCopies();
    for (var run : job.comparisons().reversed().stream().limit(MOST_RUNS).toList()) {
      var reader = new Reader();
      try {
        if (EvidenceReader.readAll(job.folder(), run.found(), reader::line)) {
          reader.into(known.disks);
        }
      } catch (IOException e) {
        // Then it says nothing.
      }
    }
    return known;
  }

  OptionalInt notOnTwo(Listing card) {
    int not = 0;
    boolean known = false;
    for (var file : card.files()) {
      var found = disks.get(key("" + file.size(), file.modified().toString(), file.name()));
      known |= found != null;
      not += found != null && found >= 2 ? 0 : 1;
    }
    return known ? OptionalInt.of(not) : OptionalInt.empty();
  }

  private static String key(String size, String modified, String name) {
    return size + Evidence.BETWEEN + modified + Evidence.BETWEEN + name;
  }

  private static final class Reader {
    private final List<Device> devices = new ArrayList<>();
    private final Map<String, Long> places = new HashMap<>();
    private final Map<String, String> onCards = new HashMap<>();
    private boolean inCard;
    private String file = "";

    void line(String line) {
      if (line.startsWith(Evidence.PLACE)) {
        var parts = line.substring(Evidence.PLACE.length()).split(Evidence.BETWEEN, -1);
        file = "";
        inCard = parts.length != PARTS_OF_PLACE || parts[KIND].equals("card");
        var id = parts.length == PARTS_OF_PLACE ? Evidence.plain(parts[ID]) : "";
        devices.add(new Device(id, kind(id), ""));
      } else if (line.startsWith(Evidence.FILE)) {
        var parts = line.substring(Evidence.FILE.length()).split(Evidence.BETWEEN, -1);
        file =
            parts.length == PARTS_OF_FILE ? key(parts[0], parts[1], Evidence.plain(parts[3])) : "";
      } else if (!file.isEmpty() && !devices.isEmpty()) {
        var sum = SUM.matcher(line);
        if (sum.matches() && inCard) {
          onCards.put(file, sum.group(1));
        } else if (sum.matches() && devices.size() < Long.SIZE) {
          places.merge(sum.group(1), 1L << (devices.size() - 1), (one, other) -> one | other);
        }
        file = "";
      }
    }

    /** What is no disk of this computer counts for none here. */
    private static Device.Kind kind(String id) {
      return id.startsWith("disk:") || id.startsWith("serial:")
          ? Device.Kind.DISK
          : Device.Kind.UNKNOWN;
    }

    void into(Map<String, Integer> disks) {
      var distinct = new DistinctDevices(devices);
      onCards.forEach(
          (key, sha256) ->
              disks.merge(key, distinct.count(places.getOrDefault(sha256, 0L)), Math::max));
    }
  }
}
