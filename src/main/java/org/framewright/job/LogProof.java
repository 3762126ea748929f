package org.framewright.job;

/**
 * The beginning of a station's log, and its checksum. What is written is never changed, so the
 * checksum of these bytes stays what it is however long the log becomes.
 *
 * @param file the log, as its path from the job's folder with slashes
 * @param bytes how many bytes; the last is that of a line, without its line feed
 * @param sha256 their SHA-256 in 64 lower-case hexadecimal digits
 */
public record LogProof(String file, long bytes, String sha256) {

  /** What computes it again, in a shell with the job's folder as the working directory. */
  public String command() {
    return "head -c " + bytes + " " + file + " | sha256sum";
  }
}
