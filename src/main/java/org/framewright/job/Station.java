package org.framewright.job;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;

/**
 * A computer that takes part in a job.
 *
 * @param name its name in the names of log files: letters, digits and hyphens
 */
public record Station(String name) {
  private static final String LEGAL = "[A-Za-z0-9][A-Za-z0-9-]{0,62}";

  public Station {
    if (!name.matches(LEGAL)) {
      throw new IllegalArgumentException("not a station's name: " + name);
    }
  }

  /**
   * This computer: its host name and four random bytes, kept in the settings of whoever uses it,
   * since two computers may have one host name. Where the settings cannot be written, each run of
   * the program is a station of its own.
   */
  public static Station here() {
    return kept(SettingsFolder.usual().resolve("station"));
  }

  static Station kept(Path file) {
    try {
      var name = Files.readString(file).strip();
      if (name.matches(LEGAL)) {
        return new Station(name);
      }
    } catch (NoSuchFileException e) {
      return create(file);
    } catch (IOException e) {
      return fresh();
    }
    return fresh();
  }

  private static Station create(Path file) {
    var station = fresh();
    try {
      Files.createDirectories(file.getParent());
      var temporary = Files.createTempFile(file.getParent(), "station", ".tmp");
      try {
        Files.writeString(temporary, station.name() + "\n");
        // A link fails where another process was first; its name is as good.
        Files.createLink(file, temporary);
      } finally {
        Files.delete(temporary);
      }
    } catch (FileAlreadyExistsException e) {
      return kept(file);
    } catch (IOException | UnsupportedOperationException e) {
      return station;
    }
    return station;
  }

  private static Station fresh() {
    var id = new byte[4];
    new SecureRandom().nextBytes(id);
    return new Station(legal(host()) + "-" + HexFormat.of().formatHex(id));
  }

  /** The first label of a host name, as far as it is legal in every file name. */
  static String legal(String host) {
    var label = host.replaceFirst("\\..*", "").replaceAll("[^A-Za-z0-9]+", "-");
    label = label.replaceAll("^-+|-+$", "");
    return label.isEmpty() ? "station" : label.substring(0, Math.min(label.length(), 40));
  }

  private static String host() {
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException e) {
      return "";
    }
  }
}
