package org.framewright.ready;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.DurableFiles;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/**
 * The checklists that come along, and the one of a job, which lies in its folder as {@code
 * checklist.yaml} and is a person's to change.
 *
 * @param folder where those lie that come along
 */
public record Checklists(Path folder) {
  /** The one of a job. */
  public static final String FILE = "checklist.yaml";

  private static final String ENDING = ".yaml";

  /** The names of those that come along, such as {@code studio}, in order. */
  public List<String> names() throws IOException {
    var names = new ArrayList<String>();
    try (var files = Files.newDirectoryStream(folder, "*" + ENDING)) {
      for (var file : files) {
        var name = file.getFileName().toString();
        names.add(name.substring(0, name.length() - ENDING.length()));
      }
    } catch (NoSuchFileException | NotDirectoryException e) {
      return List.of();
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    names.sort(null);
    return List.copyOf(names);
  }

  /** That of a job; nothing where none was chosen. */
  public static Optional<Checklist.Parsed> of(Job job) {
    var file = job.folder().resolve(FILE);
    return Files.exists(file, LinkOption.NOFOLLOW_LINKS)
        ? Optional.of(Checklist.read(file))
        : Optional.empty();
  }

  /**
   * Puts one that comes along into a job's folder, where people may change it.
   *
   * @throws JobException if there is none of that name, or the job has another one
   */
  public void choose(Job job, String name) throws IOException, JobException {
    if (!names().contains(name)) {
      throw new JobException(
          Text.of("there is no checklist “{0}”", name),
          "",
          Text.of("There are {0}.", String.join(", ", names())));
    }
    var template = folder.resolve(name + ENDING);
    var wanted = sound(Checklist.read(template));
    var there = of(job);
    if (there.isEmpty()) {
      DurableFiles.create(job.folder().resolve(FILE), Files.readAllBytes(template));
      return;
    }
    // A kill between the two names of a new file leaves the first one.
    DurableFiles.clearLeftovers(job.folder(), FILE::equals);
    if (!sound(there.get()).title().equals(wanted.title())) {
      throw new JobException(
          Text.of("the job has a checklist already: {0}", sound(there.get()).title()),
          job.folder().resolve(FILE).toString(),
          Text.of("Change that one, or move it away and choose again."));
    }
  }

  /**
   * One that must be usable.
   *
   * @throws JobException with its first fault
   */
  public static Checklist sound(Checklist.Parsed parsed) throws JobException {
    return switch (parsed) {
      case Checklist.Parsed.Sound(var list) -> list;
      case Checklist.Parsed.Faulty(List<Problem> problems) ->
          throw new JobException(problems.getFirst());
    };
  }
}
