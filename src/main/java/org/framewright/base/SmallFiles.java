package org.framewright.base;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;

/**
 * Reads files that are small if they are what they should be. A device or a pipe, which need not
 * end or would be waited for, is refused, and never is more read than was asked for.
 */
public final class SmallFiles {
  private static final int PIECE = 1 << 16;

  private SmallFiles() {}

  /**
   * Reads a file whole.
   *
   * @param most the most bytes that it may have
   * @param links whether links are followed
   * @throws java.nio.file.NoSuchFileException if there is none
   * @throws FileProblemException if it is no regular file, or is larger
   */
  public static byte[] read(Path file, int most, LinkOption... links) throws IOException {
    var attributes = Files.readAttributes(file, BasicFileAttributes.class, links);
    requirePlain(file, attributes);
    var options = new HashSet<OpenOption>(Arrays.asList(links));
    options.add(StandardOpenOption.READ);
    try (var channel = Files.newByteChannel(file, options)) {
      return rest(channel, most)
          .orElseThrow(
              () ->
                  new FileProblemException(
                      new Problem(
                          Text.of(
                              "this file is larger than {0} kB, which none of its kind is",
                              most / 1024),
                          file.toString(),
                          "Bring it back from a copy, or check the path.")));
    }
  }

  /** What is left of an open file; empty where that is more than {@code most} bytes. */
  public static Optional<byte[]> rest(ReadableByteChannel channel, int most) throws IOException {
    var bytes = new ByteArrayOutputStream();
    var piece = ByteBuffer.allocate(PIECE);
    while (channel.read(piece.clear()) >= 0) {
      bytes.write(piece.array(), 0, piece.position());
      if (bytes.size() > most) {
        return Optional.empty();
      }
    }
    return Optional.of(bytes.toByteArray());
  }

  /**
   * Refuses what is no regular file.
   *
   * @param attributes what is known of the file
   * @throws FileProblemException if it is a link, a folder, a device or a pipe
   */
  public static void requirePlain(Path file, BasicFileAttributes attributes)
      throws FileProblemException {
    if (!attributes.isRegularFile()) {
      throw new FileProblemException(
          new Problem(
              Text.of("this is {0}, and a plain file is needed here", kind(attributes)),
              file.toString(),
              "Move it away, and put the file itself there if it was moved elsewhere."));
    }
  }

  /** What something is, in words: {@code a folder}. */
  public static Text kind(BasicFileAttributes attributes) {
    return Text.of(
        attributes.isRegularFile()
            ? "a file"
            : attributes.isSymbolicLink()
                ? "a link"
                : attributes.isDirectory() ? "a folder" : "a device or a pipe");
  }
}
