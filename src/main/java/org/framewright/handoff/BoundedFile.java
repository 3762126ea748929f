package org.framewright.handoff;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import org.framewright.base.SmallFiles;

/** Small files that somebody else wrote, read within bounds: never a device, a pipe or a flood. */
final class BoundedFile {
  private BoundedFile() {}

  /**
   * A line of a text.
   *
   * @param number from 1
   * @param text without its end; empty where it is not UTF-8 or holds a NUL
   */
  record Line(int number, Optional<String> text) {}

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

  /**
   * The lines of a text, which end in line feed, carriage return or both; made one by one, as a
   * text may be nothing but line ends.
   */
  static Iterable<Line> lines(byte[] text) {
    return () ->
        new Iterator<>() {
          private int from;
          private int number;

          @Override
          public boolean hasNext() {
            return from < text.length;
          }

          @Override
          public Line next() {
            if (!hasNext()) {
              throw new NoSuchElementException();
            }
            int to = from;
            while (to < text.length && text[to] != '\n' && text[to] != '\r') {
              to++;
            }
            var line = new Line(++number, decoded(text, from, to));
            boolean both = to + 1 < text.length && text[to] == '\r' && text[to + 1] == '\n';
            from = to + (both ? 2 : 1);
            return line;
          }
        };
  }

  private static Optional<String> decoded(byte[] text, int from, int to) {
    try {
      var line =
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(ByteBuffer.wrap(text, from, to - from))
              .toString();
      return line.indexOf('\0') >= 0 ? Optional.empty() : Optional.of(line);
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }
}
