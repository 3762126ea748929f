package org.framewright.handoff;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.framewright.base.SmallFiles;

/** Small files that somebody else wrote, read within bounds: never a device, a pipe or a flood. */
final class BoundedFile {
  private BoundedFile() {}

  /**
   * All bytes of a file; empty where it has more than {@code most}.
   *
   * @throws FileSystemException where it is no regular file
   */
  static Optional<byte[]> read(Path file, int most, LinkOption... links) throws IOException {
    // Opening a pipe would wait for its writer.
    if (!Files.readAttributes(file, BasicFileAttributes.class, links).isRegularFile()) {
      throw new FileSystemException(file.toString(), null, "not a regular file");
    }
    var options = new HashSet<OpenOption>(List.of(links));
    options.add(StandardOpenOption.READ);
    try (var channel = FileChannel.open(file, options)) {
      return SmallFiles.rest(channel, most);
    } catch (FileSystemException e) {
      throw e;
    } catch (IOException e) {
      throw new FileSystemException(file.toString(), null, e.getMessage());
    }
  }
}
