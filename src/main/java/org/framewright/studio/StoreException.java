package org.framewright.studio;

import java.io.IOException;
import java.sql.SQLException;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** The store cannot be used, put into words; never with a password. */
public final class StoreException extends IOException {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;
  private final boolean reached;

  StoreException(Text what, String where, Text remedy) {
    this(new Problem(what, where, remedy), true);
  }

  private StoreException(Problem problem, boolean reached) {
    super(problem.sentence());
    this.problem = problem;
    this.reached = reached;
  }

  /** What a server or the way to it said, by its SQLSTATE (PostgreSQL manual, appendix A). */
  static StoreException of(SQLException failure, StoreAddress store) {
    var state = failure.getSQLState() == null ? "" : failure.getSQLState();
    var where = store.toString();
    if (state.startsWith("08") && firstLine(failure).contains("SSL")) {
      return new StoreException(
          Text.of("the store does not encrypt as its address asks: {0}", firstLine(failure)),
          where,
          Text.of(
              "Let whoever keeps the server turn TLS on with a certificate for its name, or name"
                  + " the authority of the certificate in the address: sslrootcert=FILE"));
    }
    if (state.startsWith("08") || state.startsWith("57P") || state.isEmpty()) {
      return new StoreException(
          new Problem(
              Text.of("the store is not reached"),
              where,
              Text.of(
                  "Check the network, and that the server runs. What is done meanwhile is in the"
                      + " job folder and follows by itself.")),
          false);
    }
    if (state.startsWith("28")) {
      return new StoreException(
          Text.of("the store does not let {0} in", store.user()),
          where,
          Text.of("Give its password again: framewright studio --store {0}", store.url()));
    }
    return switch (state) {
      case "3D000" ->
          new StoreException(
              Text.of("the server has no database {0}", store.database()),
              where,
              Text.of("Let whoever keeps the server create it, or correct its name."));
      case "3F000", "42P01", "42883" ->
          new StoreException(
              Text.of("this database is not prepared for Framewright, or for an older one"),
              where,
              Text.of(
                  "Let its owner prepare it: framewright studio --prepare --store {0}",
                  store.url()));
      case "42501" ->
          new StoreException(
              Text.of("{0} may not do this in the store", store.user()),
              where,
              Text.of(
                  "Let whoever keeps the server give it the role: grant framewright_station to {0}",
                  store.user()));
      case "55000" ->
          new StoreException(
              Text.of("the store confirms events before they are on its disk"),
              where,
              Text.of("Let whoever keeps the server set synchronous_commit to on."));
      case "53100" ->
          new StoreException(
              Text.of("the disk of the store is full"),
              where,
              Text.of("Let whoever keeps the server make room; what waits follows by itself."));
      case "53300" ->
          new StoreException(
              Text.of("the store has no connection left"),
              where,
              Text.of("Let whoever keeps the server raise max_connections."));
      default ->
          new StoreException(
              Text.of("the store answered: {0} ({1})", firstLine(failure), state),
              where,
              Text.of("Tell whoever keeps the server; what waits follows by itself."));
    };
  }

  private static String firstLine(SQLException failure) {
    return String.valueOf(failure.getMessage()).lines().findFirst().orElse("");
  }

  public Problem problem() {
    return problem;
  }

  /** Whether the server answered. */
  public boolean reached() {
    return reached;
  }
}
