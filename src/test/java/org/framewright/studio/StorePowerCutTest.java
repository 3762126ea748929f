package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.framewright.disk.Volume;
import org.framewright.job.Receipt;
import org.framewright.job.StoredLines;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A server whose disk forgets all that was not flushed. To kill a server shows nothing of that,
 * since the system still has in memory what it did not write yet.
 */
@Tag("slow")
@Timeout(240)
class StorePowerCutTest {
  private static final int EVENTS = 200;

  @TempDir private Path scratch;
  private Volume volume;
  private PlayedServer server;
  private String database;
  private final UUID job = UUID.randomUUID();

  @BeforeEach
  void aServerOnAVolumeOfItsOwn() throws Exception {
    // The server's user is another one.
    Files.setPosixFilePermissions(scratch, PosixFilePermissions.fromString("rwxr-xr-x"));
    volume = Volume.loop(scratch, "ext4", 400, "mkfs.ext4", "-q", "-F");
    server = PlayedServer.below(volume.root());
    database = server.database();
    // The folder was made without flushes.
    server.execute(database, "checkpoint");
    assertThat(Volume.run(List.of("sync", "-f", volume.root().toString()))).isTrue();
  }

  @AfterEach
  void clear() throws IOException {
    if (server != null) {
      server.close();
    }
    if (volume != null) {
      volume.close();
    }
  }

  /** How many of the confirmed events are not there after a power cut. */
  private long lost(boolean flushing) throws Exception {
    long last = 0;
    try (var store = server.store(database)) {
      store.add(job, "Winter", "fields: {}");
      server.set("fsync", flushing ? "on" : "off");
      while (last < EVENTS
          && store.logs(job).append("desk", StoredLines.lines("desk", last + 1, last + 1))
              instanceof Receipt.Kept) {
        last++;
      }
    }
    assertThat(last).isEqualTo(EVENTS);
    server.kill();
    volume.cutPower();
    return last - storedAfterwards();
  }

  private long storedAfterwards() throws SQLException {
    try {
      server.start();
      try (var connection = server.connect(database, PlayedServer.OWNER);
          var statement = connection.createStatement();
          var row = statement.executeQuery("select count(*) from framewright.event")) {
        row.next();
        return row.getLong(1);
      }
    } catch (IOException e) {
      return 0; // What is left starts no more.
    }
  }

  @Test
  void noConfirmedEventIsLostWhenThePowerIsCut() throws Exception {
    assertThat(lost(true)).isZero();
  }

  /** The proof that the test above can fail. */
  @Test
  void aServerThatDoesNotFlushLosesThem() throws Exception {
    assertThat(lost(false)).isPositive();
  }
}
