package org.framewright.handoff;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import org.framewright.base.ByteSizes;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * The room that packages need, and the room that there is.
 *
 * @param needed in bytes, at the most
 * @param free in bytes; empty where the file system does not say
 * @param in the nearest folder on the way that is there
 */
public record Room(long needed, OptionalLong free, Path in) {

  /** The same where so many bytes are there already. */
  Room but(long there) {
    return new Room(needed - there, free, in);
  }

  /** The same with so many bytes more. */
  Room and(long more) {
    return new Room(needed + more, free, in);
  }

  /** What is missing of it; empty where there is enough, or nobody can tell. */
  public Optional<Problem> lack() {
    return free.isEmpty() || free.getAsLong() >= needed
        ? Optional.empty()
        : Optional.of(
            new Problem(
                Text.of(
                    "there is not enough room: the package needs {0}, {1} are free",
                    ByteSizes.inMegabytes(needed), ByteSizes.inMegabytes(free.getAsLong())),
                in.toString(),
                "Make room, or hand off to another drive."));
  }
}
