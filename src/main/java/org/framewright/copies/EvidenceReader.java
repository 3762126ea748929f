package org.framewright.copies;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.DigestInputStream;
import java.util.function.Consumer;
import org.framewright.base.RealPaths;
import org.framewright.base.Sha256;
import org.framewright.base.SmallFiles;
import org.framewright.job.ComparedCopies;

/** Reads the lines of a file of evidence. */
final class EvidenceReader {
  private static final long LARGEST = 1L << 30;
  private static final int LONGEST_LINE = 1 << 16;

  private EvidenceReader() {}

  /**
   * Hands out each line that begins with {@code #}, and says whether they can be believed: whether
   * the file is the one that the log speaks of. What was handed out before that is known must not
   * be used where it is not.
   */
  static boolean read(Path job, ComparedCopies found, Consumer<String> line) throws IOException {
    return readAll(
        job,
        found,
        text -> {
          if (text.startsWith("#")) {
            line.accept(text);
          }
        });
  }

  /** The same for all lines, those of checksums too. */
  static boolean readAll(Path job, ComparedCopies found, Consumer<String> line) throws IOException {
    var folder = Evidence.folder(job);
    var file = folder.resolve(found.evidence());
    if (!RealPaths.isOwnFolder(folder) || !Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    var attributes =
        Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    SmallFiles.requirePlain(file, attributes);
    if (attributes.size() > LARGEST) {
      return false;
    }
    try (var in =
        new DigestInputStream(
            new BufferedInputStream(Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS), 1 << 18),
            Sha256.digest())) {
      lines(in, attributes.size(), line);
      return Sha256.hex(in.getMessageDigest()).equals(found.sha256());
    }
  }

  /**
   * What a file of evidence is like from outside; all zero where there is none.
   *
   * @param size in bytes
   * @param modified its time on the disk, in milliseconds since 1970
   */
  record Stamp(long size, long modified) {
    private static final Stamp NONE = new Stamp(0, 0);
  }

  /** Tells whether reading it again could say anything new. */
  static Stamp stamp(Path job, ComparedCopies found) {
    try {
      var attributes =
          Files.readAttributes(
              Evidence.folder(job).resolve(found.evidence()),
              BasicFileAttributes.class,
              LinkOption.NOFOLLOW_LINKS);
      return new Stamp(attributes.size(), attributes.lastModifiedTime().toMillis());
    } catch (IOException e) {
      return Stamp.NONE;
    }
  }

  private static void lines(InputStream in, long most, Consumer<String> line) throws IOException {
    var bytes = new ByteArrayOutputStream();
    for (long at = 0; at < most; at++) {
      int next = in.read();
      if (next < 0) {
        return;
      }
      if (next != '\n') {
        if (bytes.size() < LONGEST_LINE) {
          bytes.write(next);
        }
        continue;
      }
      if (bytes.size() > 0 && bytes.size() < LONGEST_LINE) {
        line.accept(bytes.toString(StandardCharsets.UTF_8));
      }
      bytes.reset();
    }
  }
}
