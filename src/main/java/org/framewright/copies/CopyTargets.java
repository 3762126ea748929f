package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import org.framewright.base.ByteSizes;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.RealPaths;
import org.framewright.base.Text;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;

/** Where copies may go. */
final class CopyTargets {
  private static final String ON_CARDS = "DCIM";
  private static final long USUAL_BLOCK = 4096;

  private CopyTargets() {}

  /**
   * Why nothing may be copied there; empty if it may.
   *
   * @throws NoSuchFileException if the folder that a target is to be in does not exist
   */
  static Optional<Problem> problem(Job job, CopyPlan plan, Volumes volumes, CopyRuns runs)
      throws IOException {
    var card = card(plan.from());
    for (int number = 0; number < plan.to().size(); number++) {
      var target = plan.to().get(number);
      var parent = target.getParent();
      if (parent == null || !Files.isDirectory(parent)) {
        throw new NoSuchFileException(String.valueOf(parent == null ? target : parent));
      }
      if (Files.exists(target) && !Files.isDirectory(target)) {
        throw new NotDirectoryException(target.toString());
      }
      if (Files.isSymbolicLink(target) && !Files.exists(target)) {
        throw new NoSuchFileException(target.toString());
      }
      var real = real(target);
      if (isInside(real, card)) {
        return refused(
            target,
            card.equals(plan.from())
                ? "it lies in the folder that is copied"
                : "it lies on the card that is copied",
            "Choose a folder on another disk; nothing is ever written on the source.");
      }
      var top = volumes.topOf(Files.exists(real) ? real : real.getParent());
      if (Place.looksLikeCard(top) && !CopyTarget.hasList(top) && !runs.isTarget(target)) {
        return refused(
            target,
            Text.of("it is on a disk that looks like a card, with DCIM at the top of {0}", top),
            "Choose a folder on another disk; nothing is ever written on a card.");
      }
      if (isInside(plan.from(), real)) {
        return refused(
            target,
            "the folder that is copied lies in it",
            "Choose a folder beside it, or on another disk.");
      }
      for (var name : real) {
        if (NameKey.of(name.toString()).equals(PlaceFinder.OWN)) {
          return refused(
              target,
              Text.of("it is in a folder {0}, where a job keeps its log", PlaceFinder.OWN),
              "Choose another folder.");
        }
      }
      if (isInside(real, job.framesFolder())) {
        return refused(
            target,
            "it is in the frames folder, where the copies would be counted as frames",
            "Choose another folder.");
      }
      for (int other = 0; other < plan.to().size(); other++) {
        var realOther = real(plan.to().get(other));
        boolean nested = key(real).startsWith(key(realOther)) || isInside(real, realOther);
        if (other != number && nested) {
          return refused(
              target,
              Text.of("it is or lies in another target, {0}", plan.to().get(other)),
              "Name each target once.");
        }
      }
    }
    return Optional.empty();
  }

  /** The card that a folder lies on, by the folder that all cameras make; else the folder. */
  private static Path card(Path from) {
    for (var at = from; at != null; at = at.getParent()) {
      if (Files.isDirectory(at.resolve(ON_CARDS), LinkOption.NOFOLLOW_LINKS)) {
        return at;
      }
    }
    return from;
  }

  private static boolean isInside(Path path, Path folder) throws IOException {
    return Files.exists(folder) && RealPaths.isInside(path, folder);
  }

  /** Names that a disk may take for one are one. */
  private static String key(Path real) {
    return NameKey.of(real.toString().replace('\\', '/')) + "/";
  }

  /** Without links; the last name need not exist. */
  static Path real(Path target) throws IOException {
    return Files.exists(target)
        ? target.toRealPath()
        : target.getParent().toRealPath().resolve(target.getFileName());
  }

  private static Optional<Problem> refused(Path target, String what, String remedy) {
    return refused(target, Text.of(what), remedy);
  }

  private static Optional<Problem> refused(Path target, Text what, String remedy) {
    return Optional.of(new Problem(what, target.toString(), remedy));
  }

  /** What is missing of the room that the copies need; empty where there is enough. */
  static Optional<Problem> roomProblem(CopyPlan plan) throws IOException {
    var needed = new HashMap<String, Long>();
    for (var target : plan.to()) {
      var place = Files.exists(target) ? target : target.getParent();
      var store = Files.getFileStore(place);
      if (store.getTotalSpace() <= 0) {
        continue; // Some servers do not say.
      }
      long block = block(place);
      long bytes = 0;
      for (var file : plan.files()) {
        if (!Files.exists(target.resolve(file.path().toString()), LinkOption.NOFOLLOW_LINKS)) {
          bytes += (file.size() / block + 1) * block;
        }
      }
      // Two targets on one volume need it twice.
      long all = needed.merge(store + " " + store.type(), bytes, Long::sum);
      long free = store.getUsableSpace();
      if (free < all) {
        return Optional.of(
            new Problem(
                Text.of(
                    "there is not enough room: the copies need {0}, {1} are free",
                    ByteSizes.inMegabytes(all), ByteSizes.inMegabytes(free)),
                target.toString(),
                "Make room, or copy to another disk."));
      }
    }
    return Optional.empty();
  }

  private static long block(Path place) throws IOException {
    try {
      return Math.max(1, Files.getFileStore(place).getBlockSize());
    } catch (UnsupportedOperationException e) {
      return USUAL_BLOCK;
    }
  }

  /** Makes the folders on the way to a file, none of which may be a link. */
  static void makeFolders(Path target, Path file, List<Path> made) throws IOException {
    var folder = file.getParent();
    if (folder.equals(target) && Files.isDirectory(target)) {
      return;
    }
    if (!folder.equals(target)) {
      makeFolders(target, folder, made);
    }
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
        throw new NotDirectoryException(folder.toString());
      }
      return;
    }
    Files.createDirectory(folder);
    made.add(folder);
  }
}
