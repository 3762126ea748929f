package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.io.TempDir;

/** The contract of every log, for the kinds that need no server. */
class EventLogsTest {

  @Nested
  class InAFolder extends EventLogContract {
    @TempDir private Path folder;

    @Override
    EventLog open(String station, Clock clock) {
      return new FileEventLog(folder, new Station(station), clock);
    }
  }

  @Nested
  class InAStore extends EventLogContract {
    private final NumberedLogs store = new MemoryLogs();

    @Override
    EventLog open(String station, Clock clock) {
      return new StoredEventLog(store, new Station(station), clock);
    }
  }

  /** Each station has a folder of its own; they meet in the store only. */
  @Nested
  class Mirrored extends EventLogContract {
    @TempDir private Path root;
    private final NumberedLogs store = new MemoryLogs();

    @Override
    EventLog open(String station, Clock clock) throws IOException {
      return MirrorScene.exchanging(root.resolve(station), station, clock, store);
    }
  }
}
