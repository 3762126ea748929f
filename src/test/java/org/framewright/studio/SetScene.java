package org.framewright.studio;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.naming.Convention;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** Invented sets. */
final class SetScene {
  private SetScene() {}

  /** Setups 001, 002 and so on, of one view each. */
  static ShotList list(int setups) {
    return new ShotList(
        IntStream.rangeClosed(1, setups)
            .mapToObj(
                number ->
                    new Setup(
                        "%03d".formatted(number),
                        "Garment " + number,
                        List.of(new View("F")),
                        OptionalInt.empty(),
                        new LinkedHashMap<>()))
            .toList());
  }

  /** A job of its own below a folder. */
  static Job job(Path parent, String title, int setups, Clock clock, String station)
      throws Exception {
    var yaml = Files.readString(Path.of("templates/fashion-days.yaml"));
    var convention = ((Convention.Parsed.Sound) Convention.parse(yaml, "test.yaml")).convention();
    var values = Map.of("day", "2026-11-23", "client", "Kvo", "title", title);
    var started = Job.start(convention, parent, values, clock, new Station(station));
    var job = ((Started.Opened) started).job();
    job.importList(list(setups));
    return job;
  }
}
