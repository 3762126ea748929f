package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;

/**
 * What is to be copied where: every file of a folder, hidden ones too, into the same folders below
 * each target. It is listed as a comparison lists a card, so that no comparison asks for a file
 * that a copy left out.
 *
 * @param from the folder, without links
 * @param to the targets as asked for, absolute
 * @param files sorted by path
 * @param litter what computers leave behind, below {@code from}; it is not copied, and nobody
 *     misses it
 * @param leftOut what is not copied and should be known: links, devices, folders that cannot be
 *     opened
 */
public record CopyPlan(
    Path from, List<Path> to, List<CopyFile> files, List<String> litter, List<Problem> leftOut) {

  public CopyPlan {
    to = List.copyOf(to);
    files = List.copyOf(files);
    litter = List.copyOf(litter);
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
    var listing = FolderLister.list(real, Set.of(), Volumes.ofThisSystem(), Progress.NONE);
    return new CopyPlan(
        real,
        to.stream().map(path -> path.toAbsolutePath().normalize()).toList(),
        listing.files().stream()
            .map(file -> new CopyFile(real.relativize(file.path()), file.size()))
            .sorted(Comparator.comparing(CopyFile::path))
            .toList(),
        listing.litter(),
        listing.troubles());
  }

  /** The same without what a job keeps of itself: its log is written while it is copied. */
  public CopyPlan besides(Job job) throws IOException {
    var own = job.folder().toRealPath().resolve(PlaceFinder.OWN);
    return new CopyPlan(
        from,
        to,
        files.stream().filter(file -> !from.resolve(file.path()).startsWith(own)).toList(),
        litter,
        leftOut);
  }
}
