package org.framewright.ui.start;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Comparator;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import org.framewright.frames.Thumbnails;

/**
 * Finds the last frame of a folder by the time of its file, without reading the frames: for a small
 * picture beside a job's name.
 */
final class LastPicture {
  /** Longest edge, in pixels: enough for an enlarged window. */
  private static final int EDGE = 240;

  /** So many files are looked at; in a larger folder, the last of those. */
  private static final int MOST_FILES = 20_000;

  private static final int DEEPEST = 6;

  /** The newest files may be none that shows anything: notes, clips. */
  private static final int MOST_TRIED = 6;

  private record Dated(Path file, long modified) {}

  /** Keeps the files that were written last. */
  private static final class NewestFiles extends SimpleFileVisitor<Path> {
    private final PriorityQueue<Dated> files =
        new PriorityQueue<>(Comparator.comparingLong(Dated::modified));
    private int seen;

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      return isHidden(folder) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      if (++seen > MOST_FILES) {
        return FileVisitResult.TERMINATE;
      }
      if (attributes.isRegularFile() && !isHidden(file)) {
        files.add(new Dated(file, attributes.lastModifiedTime().toMillis()));
        if (files.size() > MOST_TRIED) {
          files.remove();
        }
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path file, IOException failure) {
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult postVisitDirectory(Path folder, IOException failure) {
      return FileVisitResult.CONTINUE;
    }

    private static boolean isHidden(Path file) {
      return file.getFileName() != null && file.getFileName().toString().startsWith(".");
    }
  }

  private LastPicture() {}

  /** The last frame below a folder that shows something; no link is followed. */
  static Optional<BufferedImage> in(Path folder) throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    var newest = new NewestFiles();
    Files.walkFileTree(folder, Set.of(), DEEPEST, newest);
    return newest.files.stream()
        .sorted(Comparator.comparingLong(Dated::modified).reversed())
        .map(dated -> Thumbnails.of(dated.file(), EDGE))
        .flatMap(Optional::stream)
        .findFirst();
  }
}
