package org.framewright.ui;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.framewright.Templates;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.ListReader;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** A job for a test: started by the convention for fashion, with the client's first list. */
public final class FreshJob {
  private FreshJob() {}

  public static Job in(Path folder, Clock clock) throws Exception {
    var job = started(folder, clock);
    var list = (ListReading.Understood) ListReader.read(Path.of("samples/shot-list.csv"));
    job.importList(list.list());
    return job;
  }

  private static Job started(Path folder, Clock clock) throws Exception {
    var started =
        (Started.Opened)
            Job.start(
                Templates.fashionDays(),
                folder,
                Map.of("day", "2026-11-23", "client", "KVÖ", "title", "look book"),
                clock);
    return started.job();
  }

  /** With a list of setups 001, 002 ... that have these titles and one wanted view each. */
  public static Job titled(Path folder, Clock clock, List<String> titles) throws Exception {
    var job = started(folder, clock);
    var setups = new ArrayList<Setup>();
    for (var title : titles) {
      setups.add(
          new Setup(
              "%03d".formatted(setups.size() + 1),
              title,
              List.of(new View("F", OptionalInt.of(2))),
              OptionalInt.empty(),
              new LinkedHashMap<>(Map.of("Rack", title))));
    }
    job.importList(new ShotList(setups));
    return job;
  }

  /** A setup of which the list says one thing more. */
  public static Setup with(Setup setup, String heading, String cell) {
    var columns = new LinkedHashMap<>(setup.columns());
    columns.put(heading, cell);
    return new Setup(setup.code(), setup.title(), setup.views(), setup.framesWanted(), columns);
  }

  /** With frames of the first setup, written while it was on set. */
  static Job withFrames(Path folder, Clock clock, int frames) throws Exception {
    var job = in(folder, clock);
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    for (var i = 0; i < frames; i++) {
      camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
    }
    job.recordArrivals(job.scan());
    return job;
  }
}
