package org.framewright.renaming;

/**
 * What a plan saw of a file, so that it can recognise the file.
 *
 * @param key the file system's number of the file (inode); empty where there is none
 * @param size bytes
 * @param modifiedNanos last modification, nanoseconds since 1970-01-01T00:00Z
 */
public record Seen(String key, long size, long modifiedNanos) {
  /** Nothing was seen: there is no such file, or it was not looked at. */
  public static final Seen NOTHING = new Seen("", -1, -1);
}
