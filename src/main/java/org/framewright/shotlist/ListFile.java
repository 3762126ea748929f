package org.framewright.shotlist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import org.framewright.base.FileProblems;
import org.framewright.base.Text;

/** A client's file, read whole if it is no larger than a list may be. */
public sealed interface ListFile {

  /**
   * What is in it.
   *
   * @param name the file's own, as problems call it
   */
  @SuppressWarnings("ArrayRecordComponent") // nobody compares or changes it
  record Content(byte[] bytes, String name) implements ListFile {}

  /** Nothing: why it could not be read. */
  record Unreadable(ListReading.Refused refused) implements ListFile {}

  /** Reads a file; what the disk refuses is a problem of the list, too. */
  static ListFile of(Path file) {
    var name = file.getFileName() == null ? file.toString() : file.getFileName().toString();
    try {
      // Asked first: opening a pipe waits for its other end, and a device may never end.
      var attributes = Files.readAttributes(file, BasicFileAttributes.class);
      if (attributes.isDirectory()) {
        return unreadable(file, Text.of("this is a folder, a list was meant"));
      }
      if (!attributes.isRegularFile()) {
        return unreadable(file, Text.of("this is a device or a pipe, no file"));
      }
      if (attributes.size() > Limits.FILE_BYTES) {
        return new Unreadable(ListReader.tooLarge(name, Limits.FILE_BYTES));
      }
      try (var in = Files.newInputStream(file)) {
        // The file may grow, and the files of a system may be longer than they say.
        return new Content(in.readNBytes((int) Limits.FILE_BYTES + 1), name);
      }
    } catch (IOException e) {
      var problem = FileProblems.of(e);
      var where = problem.where().isEmpty() ? file.toString() : problem.where();
      return new Unreadable(
          new ListReading.Refused(List.of(new ListProblem(problem.at(where), 0, 0))));
    }
  }

  private static Unreadable unreadable(Path file, Text what) {
    return new Unreadable(
        ListReader.refused(file.toString(), what, Text.of("Give a .csv or .xlsx file.")));
  }
}
