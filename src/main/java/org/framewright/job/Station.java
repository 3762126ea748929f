package org.framewright.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import org.framewright.base.DurableFiles;
import org.framewright.base.HostName;

/**
 * A computer that takes part in a job.
 *
 * @param name its name in the names of log files: letters, digits and hyphens
 */
public record Station(String name) {
  private static final String LEGAL = "[A-Za-z0-9][A-Za-z0-9-]{0,62}";
  private static final int LONGEST_FILE = 4096;

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
      return named(file).orElseGet(() -> replaced(file));
    } catch (NoSuchFileException e) {
      return created(file);
    } catch (IOException e) {
      return fresh();
    }
  }

  /** The station whose name is in a file; nothing where the file is damaged. */
  private static Optional<Station> named(Path file) throws IOException {
    var name = new String(PlainFiles.read(file, LONGEST_FILE), StandardCharsets.UTF_8).strip();
    return name.matches(LEGAL) ? Optional.of(new Station(name)) : Optional.empty();
  }

  private static Station created(Path file) {
    var station = fresh();
    try {
      Files.createDirectories(file.getParent());
      DurableFiles.create(file, station.text());
      return station;
    } catch (FileAlreadyExistsException e) {
      // Another process was first; its name is as good.
    } catch (IOException e) {
      return station;
    }
    try {
      return named(file).orElse(station);
    } catch (IOException e) {
      return station;
    }
  }

  /** A power cut may have emptied the file; each run would be another station from then on. */
  private static Station replaced(Path file) {
    var station = fresh();
    try {
      DurableFiles.replace(file, station.text());
    } catch (IOException e) {
      // It stays damaged, and this run goes by a name of its own.
    }
    return station;
  }

  private byte[] text() {
    return (name + "\n").getBytes(StandardCharsets.UTF_8);
  }

  private static Station fresh() {
    var id = new byte[4];
    new SecureRandom().nextBytes(id);
    return new Station(legal(HostName.get().orElse("")) + "-" + HexFormat.of().formatHex(id));
  }

  /** The first label of a host name, as far as it is legal in every file name. */
  static String legal(String host) {
    var label = host.replaceFirst("\\..*", "").replaceAll("[^A-Za-z0-9]+", "-");
    label = label.replaceAll("^-+|-+$", "");
    return label.isEmpty() ? "station" : label.substring(0, Math.min(label.length(), 40));
  }
}
