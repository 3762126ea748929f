package org.framewright.studio;

import java.io.PrintWriter;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Properties;
import java.util.logging.Logger;
import javax.sql.DataSource;

/** Connections that are made when they are asked for, with properties that no text shows. */
final class OneByOne implements DataSource {
  private final StoreAddress address;
  private final Properties properties;

  OneByOne(StoreAddress address, Properties properties) {
    this.address = address;
    this.properties = properties;
  }

  @Override
  public Connection getConnection() throws SQLException {
    return DriverManager.getConnection(address.jdbc(), properties);
  }

  @Override
  public Connection getConnection(String user, String password) throws SQLException {
    return getConnection();
  }

  @Override
  public PrintWriter getLogWriter() {
    return null;
  }

  @Override
  public void setLogWriter(PrintWriter out) {}

  @Override
  public void setLoginTimeout(int seconds) {}

  @Override
  public int getLoginTimeout() {
    return 0;
  }

  @Override
  public Logger getParentLogger() {
    return Logger.getGlobal();
  }

  @Override
  public <T> T unwrap(Class<T> type) throws SQLException {
    throw new SQLException("wraps nothing");
  }

  @Override
  public boolean isWrapperFor(Class<?> type) {
    return false;
  }
}
