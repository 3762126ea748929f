package org.framewright.handoff.verify;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.StringJoiner;
import java.util.TreeMap;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;

/**
 * What lies in a folder from somebody else, hidden files too. Links are not followed and nothing is
 * opened, so a file that is not found here is never read, whatever a list says of it.
 */
final class Listing {
  static final int MOST = 400_000;
  private static final int DEEPEST = 64;

  private final SortedMap<String, Found> files = new TreeMap<>();
  private final SortedMap<String, Problem> others = new TreeMap<>();
  private final List<String> folders = new ArrayList<>();

  /** Names beyond ASCII, with letters and their accents in one; made when it is asked for. */
  private Map<String, Found> composed;

  private boolean all = true;

  private Listing() {}

  /**
   * A regular file.
   *
   * @param name its path below the folder, with {@code /} between names
   */
  record Found(Path path, String name, long bytes) {}

  static Listing of(Path folder) throws IOException {
    return of(folder, MOST);
  }

  static Listing of(Path folder, int most) throws IOException {
    var listing = new Listing();
    Files.walkFileTree(
        folder, EnumSet.noneOf(FileVisitOption.class), DEEPEST, listing.new Walk(folder, most));
    return listing;
  }

  /** By name. */
  SortedMap<String, Found> files() {
    return files;
  }

  /** What is no file to read, and why; by name. */
  SortedMap<String, Problem> others() {
    return others;
  }

  /** The names of all folders. */
  List<String> folders() {
    return folders;
  }

  /** Whether this is all there is; beyond {@link #MOST} nobody looks. */
  boolean isAll() {
    return all;
  }

  /** The file of exactly this name. */
  Optional<Found> named(String name) {
    return Optional.ofNullable(files.get(name));
  }

  /**
   * A file whose name is the same text with its accents written in the other way, which some
   * volumes change; RFC 8493, section 6.1.1.2, warns of it.
   */
  Optional<Found> spelledOtherwise(String name) {
    if (composed == null) {
      composed = new HashMap<>();
      for (var file : files.values()) {
        if (!isAscii(file.name())) {
          composed.putIfAbsent(nfc(file.name()), file);
        }
      }
    }
    return Optional.ofNullable(composed.get(nfc(name)));
  }

  private static String nfc(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC);
  }

  private static boolean isAscii(String name) {
    return name.chars().allMatch(c -> c < 128);
  }

  private final class Walk extends SimpleFileVisitor<Path> {
    private final Path folder;
    private final int most;

    Walk(Path folder, int most) {
      this.folder = folder;
      this.most = most;
    }

    private String name(Path path) {
      var names = new StringJoiner("/");
      folder.relativize(path).forEach(name -> names.add(name.toString()));
      return names.toString();
    }

    private FileVisitResult next() {
      all = files.size() + others.size() + folders.size() < most;
      return all ? FileVisitResult.CONTINUE : FileVisitResult.TERMINATE;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path path, BasicFileAttributes attributes) {
      if (path.equals(folder)) {
        return FileVisitResult.CONTINUE;
      }
      if (attributes.isOther()) { // A folder of Windows that leads to another one.
        other(path, link());
        return FileVisitResult.SKIP_SUBTREE;
      }
      folders.add(name(path));
      return next();
    }

    @Override
    public FileVisitResult visitFile(Path path, BasicFileAttributes attributes) {
      var name = name(path);
      if (!attributes.isRegularFile()) {
        other(path, problem(attributes));
      } else if (files.putIfAbsent(name, new Found(path, name, attributes.size())) != null) {
        other(
            path,
            new Problem(
                "two files have names here that cannot be told apart",
                "Give them other names. Where no locale is set, set LC_ALL=C.UTF-8."));
      }
      return next();
    }

    @Override
    public FileVisitResult visitFileFailed(Path path, IOException failure) throws IOException {
      return failed(path, failure);
    }

    @Override
    public FileVisitResult postVisitDirectory(Path path, IOException failure) throws IOException {
      return failure == null ? FileVisitResult.CONTINUE : failed(path, failure);
    }

    private FileVisitResult failed(Path path, IOException failure) throws IOException {
      if (path.equals(folder)) {
        throw failure;
      }
      other(path, FileProblems.of(failure));
      return next();
    }

    private void other(Path path, Problem problem) {
      others.put(name(path), problem.at(name(path)));
    }
  }

  private static Problem problem(BasicFileAttributes attributes) {
    if (attributes.isSymbolicLink()) {
      return link();
    }
    return attributes.isDirectory()
        ? new Problem("this folder is too deep to look into", "Give it by itself.")
        : new Problem("this is neither a file nor a folder", "Remove it.");
  }

  private static Problem link() {
    return new Problem("this is a link, and links are not followed", "Put the file there.");
  }
}
