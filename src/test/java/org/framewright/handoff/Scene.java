package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.naming.Convention;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.Renamer;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** A small job with rated frames. */
final class Scene {
  private Instant now = Instant.parse("2026-11-23T09:00:00Z");
  private final Clock clock = ((InstantSource) () -> now).withZone(ZoneOffset.UTC);
  private final Job job;
  private final SampleCamera camera;

  private Scene(Path folder, SampleCamera.Writes writes) throws Exception {
    this(folder, writes, Templates.fashionDays(), Map.of());
  }

  /**
   * @param columns more columns of each setup
   */
  private Scene(
      Path folder, SampleCamera.Writes writes, Convention convention, Map<String, String> columns)
      throws Exception {
    var started =
        Job.start(
            convention,
            folder,
            Map.of("day", "2026-11-23", "client", "KVO", "title", "look book"),
            clock);
    job = ((Started.Opened) started).job();
    job.importList(
        new ShotList(
            List.of(setup("001", "Coat", "F", columns), setup("002", "Dress", "B", columns))));
    camera = new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, writes, 9998);
  }

  private static Setup setup(String code, String title, String view, Map<String, String> columns) {
    return new Setup(
        code, title, List.of(new View(view)), OptionalInt.empty(), new TreeMap<>(columns));
  }

  /** Two setups; 001 has four frames, of which two are rated 4 and one 2; 002 has one rated 5. */
  static Scene rated(Path folder) throws Exception {
    var scene = new Scene(folder, SampleCamera.Writes.RAW_AND_JPEG);
    scene.shoot("001", "F", 4, 0, 2, 4);
    scene.shoot("002", "B", 0, 5);
    return scene;
  }

  /** The same under their names by another convention. */
  static Scene rated(Path folder, Convention convention) throws Exception {
    var scene = new Scene(folder, SampleCamera.Writes.JPEG, convention, Map.of());
    scene.shoot("001", "F", 4, 0, 2, 4);
    scene.shoot("002", "B", 0, 5);
    scene.rename();
    return scene;
  }

  /** One frame rated 5, under its name by a convention, of a setup with more columns. */
  static Scene named(Path folder, Convention convention, Map<String, String> columns)
      throws Exception {
    var scene = new Scene(folder, SampleCamera.Writes.JPEG, convention, columns);
    scene.shoot("001", "F", 5);
    scene.rename();
    return scene;
  }

  /** One frame of one file, rated 5, under its name by the convention. */
  static Scene ofOneFile(Path folder) throws Exception {
    var scene = new Scene(folder, SampleCamera.Writes.JPEG);
    scene.shoot("001", "F", 5);
    scene.rename();
    return scene;
  }

  /** Frames rated 5 of one setup, under their names by the convention. */
  static Scene ofMany(Path folder, int frames) throws Exception {
    var scene = new Scene(folder, SampleCamera.Writes.JPEG);
    var ratings = new int[frames];
    Arrays.fill(ratings, 5);
    scene.shoot("001", "F", ratings);
    scene.rename();
    return scene;
  }

  Job job() {
    return job;
  }

  private void shoot(String setup, String view, int... ratings) throws Exception {
    job.mark(setup, SetupState.ON_SET, MarkDetails.NONE.andView(view));
    for (int rating : ratings) {
      now = now.plusMillis(400);
      var exposure = Exposure.of(now, setup, view);
      camera.take(rating > 0 ? exposure.rated(rating) : exposure).writeTo(job.framesFolder());
    }
    age();
    job.recordArrivals(job.scan());
    now = now.plusSeconds(60);
  }

  /** A scanner waits for files that were written just now. */
  private void age() throws Exception {
    try (var files = Files.walk(job.framesFolder())) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(Duration.ofHours(1))));
      }
    }
  }

  void rename() throws Exception {
    var renamer = Renamer.in(job.folder(), clock);
    var plan = renamer.plan(job.frameNames(job.scan()).requests());
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
  }

  static HandOff handOff(Job job) throws Exception {
    var scan = job.scan();
    return HandOff.of(job, scan, job.tally(scan));
  }

  /** Hands off what is rated 4 or higher. */
  static Delivery deliver(Job job, Path target) throws Exception {
    var handOff = handOff(job);
    return handOff.deliver(handOff.rated(4), target, Progress.NONE);
  }

  static Job open(Path jobFolder) throws Exception {
    return Job.open(jobFolder, Clock.fixed(Instant.parse("2026-11-23T12:00:00Z"), ZoneOffset.UTC));
  }

  /** A copy with the times of its files, as a person copies a job. */
  static Path copied(Path from, Path to) throws Exception {
    try (var files = Files.walk(from)) {
      for (var file : files.toList()) {
        Files.copy(
            file, to.resolve(from.relativize(file).toString()), StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    return to;
  }

  /** Each file's checksum by its path. */
  static Map<String, String> contents(Path where) throws Exception {
    try (var files = Files.walk(where)) {
      var contents = new TreeMap<String, String>();
      for (var file : files.filter(Files::isRegularFile).toList()) {
        contents.put(where.relativize(file).toString(), Checksum.of(file));
      }
      return contents;
    }
  }

  /** The names of unfinished packages in a folder. */
  static List<String> drafts(Path folder) {
    return List.of(folder.toFile().list()).stream().filter(Draft::isName).toList();
  }
}
