package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import org.framewright.base.FileProblems;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.FrameFile;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.job.Job;
import org.framewright.naming.Reserved;

/**
 * Where a package is to be: as it was asked for, and where that really is, whatever links lead
 * there.
 *
 * @param folder as asked for, absolute
 * @param existing the nearest folder on the way to it that is there, without links
 * @param real the package's folder to be, without links
 */
record Target(Path folder, Path existing, Path real) {
  private static final String OURS = ".framewright";
  private static final String FRAMES = Reserved.FRAMES;
  private static final long PAPERS_PER_FILE = 1024;
  private static final long PAPERS = 1 << 20;
  private static final long FOLDERS = 10;
  private static final long USUAL_BLOCK = 4096;
  private static final long SIDECAR = 16 << 10;
  private static final long PACKET = 64 << 10;

  /** Finds where a path leads. */
  static Target of(Path asked) throws IOException {
    var folder = asked.toAbsolutePath().normalize();
    var above = folder;
    while (above.getParent() != null && !Files.exists(above, LinkOption.NOFOLLOW_LINKS)) {
      above = above.getParent();
    }
    var existing = above.toRealPath();
    var rest = above.relativize(folder);
    var real = rest.toString().isEmpty() ? existing : existing.resolve(rest);
    return new Target(folder, existing, real);
  }

  boolean isTaken() {
    return Files.exists(folder, LinkOption.NOFOLLOW_LINKS);
  }

  /** Why no package may lie here; empty where it may. */
  Optional<Problem> problem(Job job) throws IOException {
    return problem(job, Optional.empty());
  }

  /**
   * The same of a package that is made of what lies in a folder.
   *
   * @param source the folder, without links
   */
  Optional<Problem> problem(Job job, Optional<Path> source) throws IOException {
    if (is(real, job.folder().toRealPath())) {
      return Optional.of(refused("this is the job's own folder", "Choose a new folder."));
    }
    if (source.isPresent() && isOrHas(source.get(), real)) {
      return Optional.of(
          refused(
              "it is in the folder that came back, where it would be read as that",
              "Choose another place."));
    }
    for (var name : real) {
      if (NameKey.of(name.toString()).equals(OURS)) {
        return Optional.of(
            refused(
                Text.of("it is in a folder {0}, where a job keeps its log", OURS),
                "Choose another."));
      }
    }
    for (var role : job.convention().folders().keySet()) {
      var problem = problem(role, job.folder(role));
      if (problem.isPresent()) {
        return problem;
      }
    }
    return isTaken() || Files.isDirectory(existing)
        ? Optional.empty()
        : Optional.of(new Problem("this is no folder", existing.toString(), "Check the path."));
  }

  private Optional<Problem> problem(String role, Path of) throws IOException {
    var folderOfRole = Target.of(of);
    if (is(real, folderOfRole.real)) {
      return Optional.of(
          refused(
              Text.of("it is the job's folder for {0}", role),
              "Choose a new folder, there or elsewhere."));
    }
    if (!isOrHas(folderOfRole.real, real)) {
      return Optional.empty();
    }
    return switch (role) {
      case FRAMES ->
          Optional.of(
              refused(
                  "it is in the frames folder, where the copies would be counted as frames",
                  "Choose another place."));
      case Returns.RETOUCHED ->
          Optional.of(
              refused(
                  "it is in the folder for what comes back, where it would be read as that",
                  "Choose another place."));
      default -> Optional.empty();
    };
  }

  private Problem refused(String what, String remedy) {
    return refused(Text.of(what), remedy);
  }

  private Problem refused(Text what, String remedy) {
    return new Problem(what, folder.toString(), remedy);
  }

  /** Whether two paths without links are one, on any file system. */
  private static boolean is(Path one, Path other) throws IOException {
    return key(one).equals(key(other)) || (isThere(one) && isThere(other) && same(one, other));
  }

  /** Whether a path is a folder, or lies in it. */
  private static boolean isOrHas(Path folder, Path inside) throws IOException {
    for (var path = inside; path != null; path = path.getParent()) {
      if (is(path, folder)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isThere(Path path) {
    return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
  }

  /** By the numbers of the file system: a volume may be mounted twice, or fold letter case. */
  private static boolean same(Path one, Path other) throws IOException {
    return Files.isSameFile(one, other);
  }

  private static String key(Path path) {
    return NameKey.of(path.toString().replace('\\', '/'));
  }

  /**
   * What is missing of the room that a package needs here; empty where there is enough.
   *
   * @param papers the bytes of what lies beside the index
   * @param there how many bytes of it are there already
   */
  Optional<Problem> roomProblem(HandOffPlan plan, MetadataMode metadata, long papers, long there) {
    try {
      return room(plan, metadata).and(papers).but(there).lack();
    } catch (IOException e) {
      return Optional.of(FileProblems.of(e));
    }
  }

  /** The room that a package needs here, and the room that there is. */
  Room room(HandOffPlan plan, MetadataMode metadata) throws IOException {
    var store = Files.getFileStore(existing);
    return new Room(
        needed(plan, block(store)) + needed(plan, metadata),
        store.getTotalSpace() <= 0
            ? OptionalLong.empty() // Some servers do not say.
            : OptionalLong.of(store.getUsableSpace()),
        existing);
  }

  /**
   * The bytes that a package takes at the most: each file fills its last block and has its lines in
   * the lists; then the papers, the folders, and a fiftieth to spare.
   *
   * @param block the size of a block of the file system
   */
  static long needed(HandOffPlan plan, long block) {
    long needed = plan.bytes() / 50 + PAPERS + FOLDERS * block;
    for (var select : plan.selects()) {
      for (var file : select.frame().files()) {
        needed += (file.size() / block + 1) * block + PAPERS_PER_FILE;
      }
    }
    return needed;
  }

  /** What its metadata take at the most; a copy that gets them is there twice for a moment. */
  static long needed(HandOffPlan plan, MetadataMode metadata) {
    return switch (metadata) {
      case NONE -> 0;
      case SIDECAR -> plan.selects().size() * SIDECAR;
      case EMBED ->
          plan.selects().size() * SIDECAR
              + plan.files() * PACKET
              + plan.selects().stream()
                  .flatMap(select -> select.frame().files().stream())
                  .mapToLong(FrameFile::size)
                  .max()
                  .orElse(0);
    };
  }

  private static long block(FileStore store) throws IOException {
    try {
      return Math.max(1, store.getBlockSize());
    } catch (UnsupportedOperationException e) {
      return USUAL_BLOCK;
    }
  }
}
