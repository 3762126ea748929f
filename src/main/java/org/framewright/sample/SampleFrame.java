package org.framewright.sample;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;

/**
 * One frame as the camera's software would write it.
 *
 * @param stem the name that its files share, such as {@code IMG_0001}
 * @param arrived the true time at which it was taken
 * @param files file name to content, in the order in which they are written
 */
public record SampleFrame(String stem, Instant arrived, SequencedMap<String, byte[]> files) {

  /** The same frame under another stem. */
  public SampleFrame named(String other) {
    var renamed = new LinkedHashMap<String, byte[]>();
    files.forEach((name, bytes) -> renamed.put(other + name.substring(stem.length()), bytes));
    return new SampleFrame(other, arrived, renamed);
  }

  /**
   * Writes the files whole, each under a temporary name first, with the time of arrival as their
   * time of modification.
   *
   * @throws FileAlreadyExistsException where a file of that name is there: the folder of another
   *     card is wanted, as in a camera
   */
  public List<Path> writeTo(Path folder) throws IOException {
    Files.createDirectories(folder);
    var written = new ArrayList<Path>();
    for (var file : files.entrySet()) {
      var path = folder.resolve(file.getKey());
      if (Files.exists(path)) {
        throw new FileAlreadyExistsException(path.toString());
      }
      var temporary = folder.resolve("." + file.getKey() + ".tmp");
      Files.write(temporary, file.getValue(), StandardOpenOption.CREATE_NEW);
      Files.setLastModifiedTime(temporary, FileTime.from(arrived));
      Files.move(temporary, path, StandardCopyOption.ATOMIC_MOVE);
      written.add(path);
    }
    return List.copyOf(written);
  }
}
