package org.framewright.copies;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;

/** The names of files that are being copied: {@code .framewright-copy-BATCH-NUMBER.part}. */
final class CopyParts {
  private static final Pattern NAME =
      Pattern.compile("\\.framewright-copy-([0-9a-f]{16})-(\\d{1,7})\\.part");

  private CopyParts() {}

  /** A name for a run that no other run has. */
  static String newBatch() {
    return HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextLong());
  }

  static Path part(Path target, String batch, int number) {
    return target.resolve(".framewright-copy-" + batch + "-" + number + ".part");
  }

  static boolean isPart(String name) {
    return NAME.matcher(name).matches();
  }

  /**
   * Removes a part; nothing else is ever removed.
   *
   * @return whether it is gone for certain
   */
  static boolean remove(Path part, SameFolder target) {
    try {
      target.require();
      Files.deleteIfExists(part);
      return true;
    } catch (IOException e) {
      return false; // The record of the run stays then, and the next run removes it.
    }
  }

  /** The parts of a run in a target; no other file is ever among them. */
  static List<Path> of(Path target, String batch) throws IOException {
    var parts = new ArrayList<Path>();
    if (!Files.isDirectory(target)) {
      return parts;
    }
    try (var names = Files.newDirectoryStream(target)) {
      for (var path : names) {
        var match = NAME.matcher(path.getFileName().toString());
        if (match.matches()
            && match.group(1).equals(batch)
            && Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
          parts.add(path);
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return parts;
  }
}
