package org.framewright.job;

/**
 * A computer that takes part in a job.
 *
 * @param name its name in the names of log files: letters, digits and hyphens
 */
public record Station(String name) {
  public Station {
    if (!name.matches("[A-Za-z0-9][A-Za-z0-9-]{0,62}")) {
      throw new IllegalArgumentException("not a station's name: " + name);
    }
  }
}
