package org.framewright.ready;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.framewright.base.Sha256;
import org.framewright.copies.device.Volumes;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;

/** What an answer rests on, by name: an answer lapses when one of them is another. */
final class Rests {
  static final String DAY = "day";
  static final String DISK = "disk";
  static final String LIST = "list";
  static final String CONVENTION = "convention";
  static final String ZONE = "zone";

  /** Before the model and the serial number of a body. */
  static final String BODY = "body ";

  /** Before the folder of a place for copies. */
  static final String PLACE = "place ";

  /** The value of a body that is there, and of a place that is not. */
  static final String THERE = "yes";

  static final String AWAY = "";

  private static final int MOST_PLACES = 16;
  private static final int DIGITS = 16;

  private Rests() {}

  /** What an answer of now rests on. */
  static SequencedMap<String, String> of(
      Job job, FrameScan scan, List<Path> places, Volumes volumes) {
    var rests = new LinkedHashMap<String, String>();
    rests.put(DAY, LocalDate.ofInstant(job.now(), job.zone()).toString());
    rests.put(DISK, disk(job.framesFolder(), volumes));
    rests.put(LIST, digest(job.shotList().setups().toString()));
    rests.put(CONVENTION, digest(job.convention().yaml()));
    rests.put(ZONE, job.zone().getId());
    for (var camera :
        scan.frames().stream()
            .flatMap(frame -> frame.capture().camera().stream())
            .map(camera -> (camera.model() + " " + camera.serial()).strip())
            .collect(Collectors.toCollection(TreeSet::new))) {
      rests.put(BODY + camera, THERE);
    }
    for (var place : places) {
      rests.put(PLACE + place.toAbsolutePath().normalize(), disk(place, volumes));
    }
    return rests;
  }

  private static String digest(String text) {
    return Sha256.of(text.getBytes(StandardCharsets.UTF_8)).substring(0, DIGITS);
  }

  /** Which volume a folder lies on; {@link #AWAY} where it is not there. */
  private static String disk(Path folder, Volumes volumes) {
    try {
      var real = folder.toRealPath();
      var volume = volumes.mountOf(real).volume();
      return volume.isEmpty() ? Files.getFileStore(real).name() : volume;
    } catch (IOException e) {
      return AWAY;
    }
  }

  /** The places for copies that the last answer of a job rested on. */
  static List<Path> places(Job job) {
    var places = new ArrayList<Path>();
    var last = job.readiness().said(false);
    if (last.isPresent()) {
      for (var name : last.get().said().restsOn().keySet()) {
        if (name.startsWith(PLACE) && places.size() < MOST_PLACES) {
          try {
            places.add(job.folder().getFileSystem().getPath(name.substring(PLACE.length())));
          } catch (InvalidPathException e) {
            // Of another system; there is no such folder here.
          }
        }
      }
    }
    return List.copyOf(places);
  }
}
