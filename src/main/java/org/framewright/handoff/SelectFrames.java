package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.frames.FileRole;
import org.framewright.job.FormerNames;
import org.framewright.job.Job;

/**
 * Where the pictures of selects lie in the job now, by the records of hand-offs and, where frames
 * were renamed since, by the journals.
 */
final class SelectFrames {
  private final Job job;

  /** Read once a frame is not where it was. */
  private FormerNames former;

  SelectFrames(Job job) {
    this.job = job;
  }

  /** The pictures of a select's frame, those that are there, in the order of the record. */
  List<Path> of(ExpectedSelect select) throws IOException {
    var endings =
        select.copies().stream()
            .map(HandOffRecord.Copy::name)
            .filter(name -> name.startsWith(select.select()))
            .map(name -> name.substring(select.select().length()))
            .distinct()
            .toList();
    var found = Stream.<Path>builder();
    for (var ending : endings) {
      picture(select.original() + ending).ifPresent(found);
    }
    return found.build().distinct().toList();
  }

  private Optional<Path> picture(String original) throws IOException {
    Path then;
    try {
      then = job.framesFolder().resolve(original).normalize();
    } catch (InvalidPathException e) {
      return Optional.empty(); // The record is of another system.
    }
    if (FileRole.of(then).filter(FileRole::isPicture).isEmpty()) {
      return Optional.empty();
    }
    if (isFrame(then)) {
      return Optional.of(then);
    }
    if (former == null) {
      former = FormerNames.of(job);
    }
    for (var now : former.now(then)) {
      if (isFrame(now)) {
        return Optional.of(now);
      }
    }
    return Optional.empty();
  }

  /** A record may come from a stranger: no path in it leads out of the frames folder. */
  private boolean isFrame(Path file) throws IOException {
    return file.startsWith(job.framesFolder())
        && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && file.toRealPath().startsWith(job.framesFolder().toRealPath());
  }
}
