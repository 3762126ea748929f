package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.RealPaths;
import org.framewright.base.Text;

/** Where a file that a person asked for may not be written. */
public final class OutputPlace {
  /** The folder in which a program of ours keeps what it must not lose: of this job or another. */
  private static final String OURS = ".framewright";

  private OutputPlace() {}

  /**
   * Why a file would harm a job: among its frames, or in the folder that is a job's own.
   *
   * @return nothing where it would not
   * @throws java.nio.file.NoSuchFileException if the folder that it is to be in does not exist
   */
  public static Optional<Problem> problem(Path file, Job job) throws IOException {
    if (file.getFileName() == null) {
      return Optional.empty();
    }
    if (RealPaths.isInside(file, job.framesFolder())) {
      return kept(
          file, Text.of("the frames folder holds frames alone, nothing else is written there"));
    }
    if (RealPaths.isInside(file, job.folder().resolve(OURS))) {
      return kept(file, Text.of("{0} holds the job itself, nothing else is written there", OURS));
    }
    return problem(file);
  }

  /**
   * Why a file would harm any job: in the folder that is a job's own.
   *
   * @return nothing where it would not
   * @throws java.nio.file.NoSuchFileException if the folder that it is to be in does not exist
   */
  public static Optional<Problem> problem(Path file) throws IOException {
    if (file.getFileName() == null) {
      return Optional.empty();
    }
    var real = file.toAbsolutePath().getParent().toRealPath();
    for (var name : real.resolve(file.getFileName())) {
      if (NameKey.of(name.toString()).equals(OURS)) {
        return kept(
            file,
            Text.of("{0} holds a job itself, nothing else is written there", name.toString()));
      }
    }
    return Optional.empty();
  }

  private static Optional<Problem> kept(Path file, Text why) {
    return Optional.of(new Problem(why, file.toString(), Text.of("Give another folder.")));
  }
}
