package org.framewright.ready;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.copies.DiskSpeed;
import org.framewright.copies.TestVolumes;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** A job in the morning, on a computer of which the test says what it stands on. */
final class ReadyScene implements Surroundings {
  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

  final Job job;
  final TestVolumes volumes = new TestVolumes();
  Instant now = Instant.parse("2026-11-23T07:30:00Z");
  Facts.Power power = new Facts.Power.OnMains();
  Optional<DiskSpeed> speed = Optional.of(new DiskSpeed(2e9, OptionalDouble.of(3e9)));
  Optional<IOException> refused = Optional.empty();

  ReadyScene(Path parent) throws Exception {
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(),
                    parent.toRealPath(),
                    Map.of("day", "2026-11-23", "client", "KVO", "title", "look book"),
                    clock(),
                    new Station("set")))
            .job();
    volumes.disk(job.folder(), "laptop");
    job.importList(list(3));
  }

  /** A job with nothing in it, for those who need no more. */
  static Job job(Path parent) throws Exception {
    return new ReadyScene(parent).job;
  }

  static ShotList list(int setups) {
    var all = new ArrayList<Setup>();
    for (int i = 1; i <= setups; i++) {
      all.add(
          new Setup(
              String.valueOf(i),
              "Coat",
              List.of(new View("F")),
              OptionalInt.of(4),
              new TreeMap<>()));
    }
    return new ShotList(all);
  }

  Clock clock() {
    return ((InstantSource) () -> now).withZone(ZONE);
  }

  Answer asked(Path... places) throws Exception {
    return Answer.morning(
        job, job.scan(), new Asked(20, List.of(places), false), this, Progress.NONE);
  }

  @Override
  public Instant now() {
    return now;
  }

  @Override
  public Facts.Power power() {
    return power;
  }

  @Override
  public Volumes volumes() {
    return volumes;
  }

  @Override
  public Optional<DiskSpeed> speed(Job of, Progress progress) throws IOException {
    if (refused.isPresent()) {
      throw refused.get();
    }
    return speed;
  }
}
