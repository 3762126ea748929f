package org.framewright.installer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.Predicate;
import org.framewright.base.OwnFolder;

/** Folders that are laid anew. */
final class Folders {
  private Folders() {}

  /** An empty folder, whatever was there. */
  static Path empty(Path folder) throws IOException {
    OwnFolder.remove(folder);
    return Files.createDirectories(folder);
  }

  /** Copies what is in a folder, with modes and times, as far as its path there is wanted. */
  static void copy(Path from, Path to, Predicate<Path> wanted) throws IOException {
    List<Path> all;
    try (var paths = Files.walk(from)) {
      all = paths.sorted().toList();
    }
    for (var path : all) {
      var inside = from.relativize(path);
      if (!inside.toString().isEmpty() && !wanted.test(inside)) {
        continue;
      }
      var target = to.resolve(inside.toString());
      if (Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) {
        Files.createDirectories(target);
      } else {
        Files.createDirectories(target.getParent());
        Files.copy(path, target, StandardCopyOption.COPY_ATTRIBUTES, LinkOption.NOFOLLOW_LINKS);
      }
    }
  }

  /** The bytes of all files in a folder, or of a file. */
  static long size(Path path) throws IOException {
    try (var paths = Files.walk(path)) {
      return paths
          .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
          .mapToLong(file -> file.toFile().length())
          .sum();
    }
  }
}
