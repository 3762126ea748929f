package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;

/**
 * The files in a folder that came from somebody else and in all below it. Links are not followed,
 * and nothing is opened.
 *
 * @param files regular files, in the order of their paths
 * @param others what is no file to read, and why; by path
 * @param all whether these are all; beyond {@link #MOST} nobody looks
 */
record FolderFiles(List<Found> files, List<Other> others, boolean all) {
  static final int MOST = 100_000;

  private static final int DEEPEST = 64;
  private static final Set<String> OF_THE_SYSTEM =
      Set.of("system volume information", "$recycle.bin", "__macosx");

  /**
   * A file.
   *
   * @param name its path below the folder, with {@code /} between names
   */
  record Found(Path path, String name, long bytes) {}

  /** Something else. */
  record Other(String name, Problem problem) {}

  /** Looks through a folder; folders with hidden names and those of the system are passed over. */
  static FolderFiles below(Path folder) throws IOException {
    var files = new ArrayList<Found>();
    var others = new ArrayList<Other>();
    var all = new boolean[] {true};
    Files.walkFileTree(
        folder,
        EnumSet.noneOf(java.nio.file.FileVisitOption.class),
        DEEPEST,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path path, BasicFileAttributes attributes) {
            return path.equals(folder) || !isHidden(path.getFileName().toString())
                ? FileVisitResult.CONTINUE
                : FileVisitResult.SKIP_SUBTREE;
          }

          @Override
          public FileVisitResult visitFile(Path path, BasicFileAttributes attributes) {
            if (files.size() + others.size() >= MOST) {
              all[0] = false;
              return FileVisitResult.TERMINATE;
            }
            if (attributes.isRegularFile()) {
              files.add(new Found(path, name(path), attributes.size()));
            } else {
              others.add(new Other(name(path), problem(path, attributes)));
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path path, IOException failure)
              throws IOException {
            return failed(path, failure);
          }

          @Override
          public FileVisitResult postVisitDirectory(Path path, IOException failure)
              throws IOException {
            return failure == null ? FileVisitResult.CONTINUE : failed(path, failure);
          }

          private FileVisitResult failed(Path path, IOException failure) throws IOException {
            if (path.equals(folder)) {
              throw failure;
            }
            var said = FileProblems.of(failure);
            others.add(new Other(name(path), said.at(path.toString())));
            return FileVisitResult.CONTINUE;
          }

          private String name(Path path) {
            return folder.relativize(path).toString().replace('\\', '/');
          }
        });
    files.sort(Comparator.comparing(Found::name));
    others.sort(Comparator.comparing(Other::name));
    return new FolderFiles(List.copyOf(files), List.copyOf(others), all[0]);
  }

  private static boolean isHidden(String name) {
    return name.startsWith(".") || OF_THE_SYSTEM.contains(name.toLowerCase(Locale.ROOT));
  }

  private static Problem problem(Path path, BasicFileAttributes attributes) {
    if (attributes.isSymbolicLink()) {
      return new Problem(
          "this is a link, and links are not followed", path.toString(), "Put the file there.");
    }
    return attributes.isDirectory()
        ? new Problem("this folder is too deep to look into", path.toString(), "Give it by itself.")
        : new Problem("this is neither a file nor a folder", path.toString(), "Remove it.");
  }
}
