package org.framewright.copies;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;

/**
 * What is to be copied where: every file of a folder, hidden ones too, into the same folders below
 * each target.
 *
 * @param from the folder, without links
 * @param to the targets as asked for, absolute
 * @param files sorted by path
 * @param leftOut what is not copied and should be known: links, devices, folders that cannot be
 *     opened
 */
public record CopyPlan(Path from, List<Path> to, List<CopyFile> files, List<Problem> leftOut) {

  /** A card has some thousands; this many fit into memory many times. */
  private static final int MOST_FILES = 1_000_000;

  private static final int DEEPEST = 64;

  /** What systems leave on a disk for themselves. Common practice, no one source. */
  private static final Set<String> LITTER =
      Set.of(
          ".DS_Store",
          "Thumbs.db",
          "desktop.ini",
          ".Spotlight-V100",
          ".fseventsd",
          "System Volume Information",
          "lost+found");

  public CopyPlan {
    to = List.copyOf(to);
    files = List.copyOf(files);
    leftOut = List.copyOf(leftOut);
  }

  /** The bytes of all files. */
  public long bytes() {
    return files.stream().mapToLong(CopyFile::size).sum();
  }

  /**
   * Lists a folder.
   *
   * @throws NoSuchFileException if there is no such folder
   * @throws NotDirectoryException if it is none
   */
  public static CopyPlan of(Path from, List<Path> to) throws IOException {
    var real = from.toRealPath();
    if (!Files.isDirectory(real)) {
      throw new NotDirectoryException(from.toString());
    }
    var files = new ArrayList<CopyFile>();
    var leftOut = new ArrayList<Problem>();
    Files.walkFileTree(real, Set.of(), DEEPEST, new Lister(real, files, leftOut));
    files.sort(Comparator.comparing(CopyFile::path));
    return new CopyPlan(
        real, to.stream().map(path -> path.toAbsolutePath().normalize()).toList(), files, leftOut);
  }

  private static final class Lister extends SimpleFileVisitor<Path> {
    private final Path root;
    private final List<CopyFile> files;
    private final List<Problem> leftOut;

    Lister(Path root, List<CopyFile> files, List<Problem> leftOut) {
      this.root = root;
      this.files = files;
      this.leftOut = leftOut;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      // A job's own log is written while it is copied, and goes with the job's folder.
      return !folder.equals(root) && (isLitter(folder) || name(folder).equals(PlaceFinder.OWN))
          ? FileVisitResult.SKIP_SUBTREE
          : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      if (isLitter(file) || CopyParts.isPart(name(file))) {
        return FileVisitResult.CONTINUE;
      }
      if (!attributes.isRegularFile()) {
        leftOut.add(
            new Problem(
                "this is " + SmallFiles.kind(attributes) + ", and is not copied",
                file.toString(),
                "Put the file itself there if it is needed."));
        return FileVisitResult.CONTINUE;
      }
      if (files.size() >= MOST_FILES) {
        throw new IOException("there are more than " + MOST_FILES + " files in " + root);
      }
      files.add(new CopyFile(root.relativize(file), attributes.size()));
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException failure) {
      var said = FileProblems.of(failure);
      leftOut.add(
          new Problem("it could not be looked at: " + said.what(), file.toString(), said.remedy()));
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException failure) {
      return failure == null ? FileVisitResult.CONTINUE : visitFileFailed(folder, failure);
    }

    private static boolean isLitter(Path path) {
      return LITTER.contains(name(path));
    }

    private static String name(Path path) {
      return String.valueOf(path.getFileName());
    }
  }
}
