package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.metadata.Block;
import org.framewright.handoff.metadata.Sidecar;
import org.framewright.job.Job;

/**
 * Writes the ratings that people gave in the job into the sidecars of their frames, so that other
 * programs know them, too. Only on request; the pictures themselves are only read, and nothing else
 * that a sidecar says is changed.
 */
public final class RatingSidecars {
  private static final String ENDING = ".xmp";

  private RatingSidecars() {}

  /**
   * A sidecar that is to be written.
   *
   * @param rating from 0, not rated, to 5
   * @param isNew whether the frame has none yet
   */
  public record Planned(Path sidecar, int rating, boolean isNew) {}

  /**
   * What came of it.
   *
   * @param written sidecars that say the rating now
   * @param left why the others stayed as they were
   * @param cancelled whether some were not come to
   */
  public record Outcome(List<Planned> written, List<Problem> left, boolean cancelled) {
    public Outcome {
      written = List.copyOf(written);
      left = List.copyOf(left);
    }
  }

  /** The frames that were rated here and whose files say otherwise, in their order. */
  public static List<Planned> plan(Job job, FrameScan scan) {
    var state = job.state();
    var planned = new ArrayList<Planned>();
    for (var frame : job.inOrder(scan)) {
      var here = state.ratingHere(frame);
      if (frame.complete()
          && here.isPresent()
          && here.getAsInt() != frame.capture().rating().orElse(0)) {
        planned.add(planned(frame, here.getAsInt()));
      }
    }
    return List.copyOf(planned);
  }

  private static Planned planned(Frame frame, int rating) {
    var there =
        frame.files().stream()
            .filter(file -> file.role() == FileRole.SIDECAR)
            .map(FrameFile::path)
            .filter(path -> path.toString().toLowerCase(Locale.ROOT).endsWith(ENDING))
            .findFirst();
    return there
        .map(path -> new Planned(path, rating, false))
        .orElseGet(() -> new Planned(beside(frame), rating, true));
  }

  /**
   * Named as the picture is, as programs look for it (XMP specification, part 3, section 1.2.3).
   */
  private static Path beside(Frame frame) {
    var picture = frame.primary().path();
    var name = picture.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return picture.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ENDING);
  }

  /** Writes them, one after another. */
  public static Outcome write(List<Planned> planned, Progress progress) {
    var written = new ArrayList<Planned>();
    var left = new ArrayList<Problem>();
    for (var one : planned) {
      if (progress.cancelled()) {
        return new Outcome(written, left, true);
      }
      var problem = written(one);
      if (problem.isPresent()) {
        left.add(problem.get());
      } else {
        written.add(one);
      }
      progress.step(written.size() + left.size(), planned.size());
    }
    return new Outcome(written, left, false);
  }

  private static Optional<Problem> written(Planned one) {
    try {
      return one.isNew() ? created(one) : changed(one);
    } catch (NoSuchFileException | FileAlreadyExistsException e) {
      return Optional.of(moved(one.sidecar()));
    } catch (IOException e) {
      return Optional.of(FileProblems.of(e));
    }
  }

  private static Optional<Problem> created(Planned one) throws IOException {
    var made = Sidecar.made(Optional.empty(), Block.ofRating(one.rating()), true);
    DurableFiles.create(one.sidecar(), made.bytes());
    return Optional.empty();
  }

  private static Optional<Problem> changed(Planned one) throws IOException {
    var before = look(one.sidecar());
    SmallFiles.requirePlain(one.sidecar(), before);
    var bytes = SmallFiles.read(one.sidecar(), Sidecar.largest() + 1, LinkOption.NOFOLLOW_LINKS);
    switch (Sidecar.merged(bytes, Block.ofRating(one.rating()), true)) {
      case Sidecar.Outcome.Left(var why) -> {
        return Optional.of(
            new Problem(
                Text.of("the rating is not in its sidecar: {0}", why),
                one.sidecar().toString(),
                "Look at it in the program that wrote it; it stayed as it was."));
      }
      case Sidecar.Outcome.Made made -> {
        var now = look(one.sidecar());
        if (now.size() != before.size()
            || !now.lastModifiedTime().equals(before.lastModifiedTime())) {
          return Optional.of(moved(one.sidecar()));
        }
        if (!made.isSame(bytes)) {
          DurableFiles.replace(one.sidecar(), made.bytes());
        }
        return Optional.empty();
      }
    }
  }

  private static BasicFileAttributes look(Path file) throws IOException {
    return Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
  }

  private static Problem moved(Path sidecar) {
    return new Problem(
        Text.of("another program changed this sidecar meanwhile"),
        sidecar.toString(),
        "Let it finish, then write the ratings again; it stayed as it was.");
  }
}
