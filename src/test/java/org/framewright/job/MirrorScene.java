package org.framewright.job;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.framewright.base.Text;

/** Job folders that are kept like a store. */
final class MirrorScene {
  private MirrorScene() {}

  /** The mirror of a job folder, which is made where it is not there yet. */
  static JobMirror mirror(Path job, String station, Clock clock, NumberedLogs store)
      throws IOException {
    Files.createDirectories(log(job));
    return JobMirror.of(job, clock, new Station(station), store);
  }

  static Path log(Path job) {
    return new JobLayout(job).log();
  }

  static MirroredEventLog log(Path job, String station, Clock clock, JobMirror mirror) {
    return new MirroredEventLog(new FileEventLog(log(job), new Station(station), clock), mirror);
  }

  /** A mirrored log that exchanges with the store after each append and before each look. */
  static EventLog exchanging(Path job, String station, Clock clock, NumberedLogs store)
      throws IOException {
    var mirror = mirror(job, station, clock, store);
    var log = log(job, station, clock, mirror);
    return new EventLog() {
      @Override
      public List<Entry> news() throws IOException {
        mirror.exchange();
        return log.news();
      }

      @Override
      public Stamp append(Event event) throws IOException {
        var stamp = log.append(event);
        mirror.exchange();
        return stamp;
      }

      @Override
      public long last(String writer) {
        return log.last(writer);
      }

      @Override
      public boolean append(Entry next) throws IOException {
        boolean appended = log.append(next);
        mirror.exchange();
        return appended;
      }

      @Override
      public List<Text> told() {
        return log.told();
      }

      @Override
      public String station() {
        return log.station();
      }

      @Override
      public Instant now() {
        return log.now();
      }
    };
  }
}
