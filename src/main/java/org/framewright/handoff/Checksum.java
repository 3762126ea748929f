package org.framewright.handoff;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Sha256;

/** SHA-256 of files, and the line in which bags write it. */
final class Checksum {
  private static final int PIECE = 1 << 18;

  private Checksum() {}

  /** The checksum of a file; a link is not followed. */
  static String of(Path file) throws IOException {
    var digest = Sha256.digest();
    try (var in = open(file)) {
      var piece = ByteBuffer.allocate(PIECE);
      while (in.read(piece.clear()) >= 0) {
        digest.update(piece.flip());
      }
    } catch (IOException e) {
      throw FileProblems.named(file, e);
    }
    return Sha256.hex(digest);
  }

  /**
   * Copies a file to a new one with its time and flushes it to the disk; a link is not followed.
   *
   * @return the checksum of what was read
   */
  static String copy(Path from, Path to) throws IOException {
    var digest = Sha256.digest();
    try (var in = open(from)) {
      try (var out =
          FileChannel.open(to, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        var piece = ByteBuffer.allocate(PIECE);
        while (read(in, piece.clear(), from) >= 0) {
          digest.update(piece.flip().duplicate());
          DurableFiles.writeFully(out, piece);
        }
        out.force(true);
      } catch (IOException e) {
        throw FileProblems.named(to, e);
      }
    }
    Files.setLastModifiedTime(to, Files.getLastModifiedTime(from, LinkOption.NOFOLLOW_LINKS));
    return Sha256.hex(digest);
  }

  private static FileChannel open(Path file) throws IOException {
    return FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS);
  }

  private static int read(FileChannel in, ByteBuffer piece, Path file) throws IOException {
    try {
      return in.read(piece);
    } catch (IOException e) {
      throw FileProblems.named(file, e);
    }
  }

  /**
   * A manifest line of RFC 8493, section 2.1.3: only line feed, carriage return and % are coded.
   */
  static String bagLine(String checksum, String name) {
    return checksum
        + "  "
        + name.replace("%", "%25").replace("\n", "%0A").replace("\r", "%0D")
        + "\n";
  }
}
