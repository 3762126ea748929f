package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.UUID;
import org.framewright.studio.PlayedServer;
import org.framewright.studio.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** The contract of every log, on a PostgreSQL server. */
@Tag("slow")
class PostgresLogsTest {
  private Store store;
  private final UUID job = UUID.randomUUID();

  @BeforeEach
  void aJobInADatabase() throws Exception {
    var server = PlayedServer.shared();
    store = server.store(server.database());
    store.add(job, "Winter", "fields: {}");
  }

  @AfterEach
  void close() {
    if (store != null) {
      store.close();
    }
  }

  @Nested
  class InPostgres extends EventLogContract {
    @Override
    EventLog open(String station, Clock clock) {
      return new StoredEventLog(store.logs(job), new Station(station), clock);
    }
  }

  /** Each station has a folder of its own; they meet in the store only. */
  @Nested
  class MirroredToPostgres extends EventLogContract {
    @TempDir private Path root;

    @Override
    EventLog open(String station, Clock clock) throws IOException {
      return MirrorScene.exchanging(root.resolve(station), station, clock, store.logs(job));
    }
  }
}
