package org.framewright.copies;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.SmallFiles;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.Volumes;
import org.framewright.frames.FileRole;

/**
 * Lists a folder so that nothing on a card is overlooked: hidden files, the camera's own index,
 * what a repair recovered ({@code FOUND.000}, {@code LOST.DIR}, {@code lost+found}), what lies in a
 * trash. Links are named and not followed; what another disk is mounted on is named and not
 * entered.
 *
 * <p>Only what computers leave behind is left out, by its exact name, and told: a copy leaves out
 * the same, so that nobody is asked for it. What a stopped copy of this program left half-made is
 * litter too.
 */
final class FolderLister {
  private static final int DEEPEST = 64;
  private static final int MOST = 1_000_000;
  private static final int MOST_TROUBLES = 1000;

  private static final Set<String> LITTER = Set.of(".DS_Store", "Thumbs.db", "desktop.ini");

  /** Only at the top of a volume, where systems make them. */
  private static final Set<String> LITTER_FOLDERS =
      Set.of(".Spotlight-V100", ".fseventsd", "System Volume Information");

  /** What AppleSingle and AppleDouble files begin with (RFC 1740, appendix A and B). */
  private static final byte[] APPLE_DOUBLE = {0x00, 0x05, 0x16, 0x07};

  private static final String DOUBLE = "._";

  private record Folder(Path path, String name, int depth, boolean litter) {}

  private final Path root;
  private final Set<String> leftOut;
  private final Volumes volumes;
  private final Progress progress;
  private final List<Listed> files = new ArrayList<>();
  private final List<String> litter = new ArrayList<>();
  private final List<Problem> troubles = new ArrayList<>();
  private final Deque<Folder> waiting = new ArrayDeque<>();
  private final Set<Object> seen = new HashSet<>();
  private int met;

  private FolderLister(Path root, Set<String> leftOut, Volumes volumes, Progress progress) {
    this.root = root;
    this.leftOut = leftOut;
    this.volumes = volumes;
    this.progress = progress;
  }

  /**
   * Lists a folder.
   *
   * @param root real and absolute
   * @param leftOut names at the top that are passed over: the program's own
   * @param progress asked whether to stop; not told of steps
   * @throws CancellationException if it was stopped
   */
  static Listing list(Path root, Set<String> leftOut, Volumes volumes, Progress progress) {
    return new FolderLister(root, leftOut, volumes, progress).list();
  }

  private Listing list() {
    waiting.add(new Folder(root, "", 0, false));
    while (!waiting.isEmpty() && met <= MOST) {
      if (progress.cancelled()) {
        throw new CancellationException();
      }
      open(waiting.removeLast());
    }
    if (met > MOST) {
      trouble(
          root,
          "there are more than " + MOST + " files and folders in it",
          "Give a smaller folder.");
    }
    files.sort(Comparator.comparing(Listed::name));
    tellNamesApart();
    litter.sort(Comparator.naturalOrder());
    return new Listing(root, List.copyOf(files), List.copyOf(litter), List.copyOf(troubles));
  }

  /** Names that are no valid text may be spelled alike, and one file would pass for two. */
  private void tellNamesApart() {
    for (int i = 1; i < files.size(); i++) {
      if (files.get(i).name().equals(files.get(i - 1).name())) {
        trouble(
            files.get(i).path(),
            "two files have names that cannot be told apart here",
            "Look at them in the camera; copy them by another computer.");
      }
    }
  }

  private void open(Folder folder) {
    if (!seen.add(keyOf(folder.path()))) {
      trouble(
          folder.path(),
          "this folder was met before: the file system is damaged or leads in a circle",
          "Check the disk.");
      return;
    }
    var entries = new ArrayList<Path>();
    try (var names = Files.newDirectoryStream(folder.path())) {
      for (var entry : names) {
        entries.add(entry);
        if (++met > MOST) {
          return;
        }
      }
    } catch (DirectoryIteratorException e) {
      cannotOpen(folder, e.getCause());
      return;
    } catch (IOException e) {
      cannotOpen(folder, e);
      return;
    }
    var siblings = new HashSet<String>();
    entries.forEach(entry -> siblings.add(entry.getFileName().toString()));
    for (var entry : entries) {
      var own = entry.getFileName().toString();
      if (folder.depth() == 0 && leftOut.contains(own)) {
        continue;
      }
      enter(entry, folder.name().isEmpty() ? own : folder.name() + "/" + own, folder, siblings);
    }
  }

  private void cannotOpen(Folder folder, IOException failure) {
    // Systems lock their own folders away from people; what is in them is theirs.
    if (!folder.litter()) {
      troubles(FileProblems.of(failure), folder.path());
    }
  }

  private void enter(Path entry, String name, Folder in, Set<String> siblings) {
    BasicFileAttributes attributes;
    try {
      attributes =
          Files.readAttributes(entry, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    } catch (IOException e) {
      troubles(FileProblems.of(e), entry);
      return;
    }
    if (attributes.isDirectory()) {
      folder(entry, name, in);
    } else if (!attributes.isRegularFile()) {
      trouble(
          entry,
          "this is " + SmallFiles.kind(attributes) + ", neither a file nor a folder of the disk",
          "Look at what it leads to: what is needed of that has to be given by itself.");
    } else {
      file(entry, name, in, siblings, attributes);
    }
  }

  private void folder(Path entry, String name, Folder in) {
    if (in.depth() + 1 > DEEPEST) {
      trouble(entry, "folders lie in each other more than " + DEEPEST + " deep", "Check the disk.");
      return;
    }
    try {
      if (isOnAnotherDisk(entry)) {
        trouble(entry, "another disk is mounted here", "Give that folder too.");
        return;
      }
    } catch (IOException e) {
      troubles(FileProblems.of(e), entry);
      return;
    }
    boolean isLitter = in.litter() || (in.depth() == 0 && LITTER_FOLDERS.contains(name));
    if (isLitter && !in.litter()) {
      litter.add(name + "/");
    }
    waiting.add(new Folder(entry, name, in.depth() + 1, isLitter));
  }

  /** Most folders are on their parent's disk, which the number of the device tells at once. */
  private boolean isOnAnotherDisk(Path folder) throws IOException {
    if (!Files.getFileStore(root).supportsFileAttributeView("posix")) {
      return false;
    }
    try {
      var here = Files.getAttribute(folder, "unix:dev", LinkOption.NOFOLLOW_LINKS);
      if (here.equals(Files.getAttribute(root, "unix:dev", LinkOption.NOFOLLOW_LINKS))) {
        return false;
      }
    } catch (UnsupportedOperationException | IllegalArgumentException e) {
      return false;
    }
    return Device.compare(volumes.deviceOf(root), volumes.deviceOf(folder)) != Device.Sameness.SAME;
  }

  private void file(
      Path entry, String name, Folder in, Set<String> siblings, BasicFileAttributes attributes) {
    var own = entry.getFileName().toString();
    var role = FileRole.of(entry);
    if (LITTER.contains(own) || CopyParts.isPart(own) || isDouble(entry, own, siblings)) {
      litter.add(name);
      return;
    }
    if (in.litter() && role.isEmpty()) {
      return;
    }
    files.add(
        new Listed(
            entry, name, attributes.size(), attributes.lastModifiedTime().toInstant(), role));
  }

  /** What macOS keeps of a file beside it on disks that have no room for it elsewhere. */
  private static boolean isDouble(Path file, String name, Set<String> siblings) {
    if (!name.startsWith(DOUBLE) || !siblings.contains(name.substring(DOUBLE.length()))) {
      return false;
    }
    try (var in = Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS)) {
      return Arrays.equals(in.readNBytes(APPLE_DOUBLE.length), APPLE_DOUBLE);
    } catch (IOException e) {
      return false; // Then it is listed, and reading it will say why not.
    }
  }

  private static Object keyOf(Path folder) {
    try {
      var attributes =
          Files.readAttributes(folder, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      return attributes.fileKey() == null ? folder : attributes.fileKey();
    } catch (IOException e) {
      return folder;
    }
  }

  private void troubles(Problem problem, Path where) {
    trouble(where, problem.what(), problem.remedy());
  }

  private void trouble(Path where, String what, String remedy) {
    if (troubles.size() < MOST_TROUBLES) {
      troubles.add(new Problem(what, where.toString(), remedy));
    }
  }

  /**
   * The regular file at a path as it is now.
   *
   * @throws IOException if there is none
   */
  static Listed now(Listed before) throws IOException {
    var attributes =
        Files.readAttributes(before.path(), BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    if (!attributes.isRegularFile()) {
      throw new FileSystemException(before.path().toString(), null, "not a regular file");
    }
    return new Listed(
        before.path(),
        before.name(),
        attributes.size(),
        attributes.lastModifiedTime().toInstant(),
        before.role());
  }
}
