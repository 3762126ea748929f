package org.framewright.studio;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.function.Consumer;
import org.postgresql.PGConnection;

/**
 * Hears from the server that something came, on a connection of its own. That is a hint only: one
 * that is missed costs no more than the time until the next look.
 */
public final class StoreHints implements AutoCloseable {
  private static final Duration AGAIN = Duration.ofSeconds(5);
  private static final int WAIT_MILLIS = 500;

  private final Store store;
  private final Consumer<String> listener;
  private final Thread thread;
  private volatile boolean closed;

  private StoreHints(Store store, Consumer<String> listener) {
    this.store = store;
    this.listener = listener;
    this.thread = Thread.ofPlatform().daemon().name("store").unstarted(this::listen);
  }

  /**
   * Begins to listen.
   *
   * @param listener called on a thread of its own with the identity of a job that got events
   */
  public static StoreHints listen(Store store, Consumer<String> listener) {
    var hints = new StoreHints(store, listener);
    hints.thread.start();
    return hints;
  }

  private void listen() {
    while (!closed) {
      try (var connection = store.ownConnection()) {
        hear(connection);
      } catch (SQLException e) {
        // Away; whoever looks every few seconds says so.
      }
      try {
        if (!closed) {
          Thread.sleep(AGAIN);
        }
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  private void hear(Connection connection) throws SQLException {
    try (var statement = connection.createStatement()) {
      statement.execute("listen " + Store.CHANNEL);
    }
    var server = connection.unwrap(PGConnection.class);
    while (!closed) {
      for (var hint : server.getNotifications(WAIT_MILLIS)) {
        listener.accept(hint.getParameter());
      }
    }
  }

  @Override
  public void close() {
    closed = true;
    thread.interrupt();
  }
}
