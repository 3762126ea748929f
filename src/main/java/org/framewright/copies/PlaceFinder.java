package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.copies.device.Volumes;

/** Finds the folders that are compared, and what lies in them. */
final class PlaceFinder {
  private static final int MOST = 32;

  /** The program's own folder in a job. */
  static final String OWN = ".framewright";

  private final Path jobFolder;
  private final CopiesRequest request;
  private final Volumes volumes;
  private final Progress progress;

  PlaceFinder(Path jobFolder, CopiesRequest request, Volumes volumes, Progress progress) {
    this.jobFolder = jobFolder;
    this.request = request;
    this.volumes = volumes;
    this.progress = progress;
  }

  /** The job first, then cards and backups in the order in which they were given. */
  List<Place> find() throws IOException, CopiesException {
    var kinds = new LinkedHashMap<Path, Place.Kind>();
    var given = new LinkedHashMap<Path, Path>();
    var job = real(jobFolder);
    kinds.put(job, Place.Kind.JOB);
    given.put(job, jobFolder);
    for (var folder : request.cards()) {
      var real = real(folder);
      kinds.put(real, Place.Kind.CARD);
      given.put(real, folder);
    }
    var said = new HashSet<Path>();
    for (var folder : request.backups()) {
      var real = real(folder);
      requireBackup(folder, real, kinds.get(real));
      said.add(real);
      given.putIfAbsent(real, folder);
      kinds.putIfAbsent(real, Place.Kind.BACKUP);
    }
    for (var folder : request.folders()) {
      var real = real(folder);
      given.putIfAbsent(real, folder);
      kinds.putIfAbsent(real, Place.looksLikeCard(real) ? Place.Kind.CARD : Place.Kind.BACKUP);
    }
    if (kinds.size() > MOST) {
      throw CopiesException.badInput(
          "more than " + (MOST - 1) + " folders were given", "", "Give fewer at a time.");
    }
    requireApart(job, kinds, given);
    var places = new ArrayList<Place>();
    for (var one : kinds.entrySet()) {
      var real = one.getKey();
      places.add(
          new Place(
              given.get(real),
              real,
              one.getValue(),
              !said.contains(real)
                  && (one.getValue() == Place.Kind.CARD
                      || Place.looksLikeCard(volumes.topOf(real))),
              volumes.deviceOf(real),
              volumes.mountOf(real),
              FolderLister.list(
                  real,
                  one.getValue() == Place.Kind.JOB ? Set.of(OWN) : Set.of(),
                  volumes,
                  progress)));
    }
    return places;
  }

  private static Path real(Path folder) throws IOException, CopiesException {
    if (!Files.isDirectory(folder)) {
      throw CopiesException.badInput(
          Files.exists(folder) ? "this is no folder" : "there is no such folder",
          folder.toString(),
          "Check the path, and that the card or disk is plugged in.");
    }
    return folder.toRealPath();
  }

  /**
   * A folder that looks like a card is a backup by a person's word, but not where it may be a card
   * all the same: at the top of a disk, unless this program copied to it, which it never does to a
   * card.
   */
  private void requireBackup(Path folder, Path real, Place.Kind also)
      throws IOException, CopiesException {
    if (also == Place.Kind.CARD) {
      throw CopiesException.badInput(
          "this folder cannot be a card and a backup", folder.toString(), "Give it once.");
    }
    var problem = noBackup(folder, real, volumes);
    if (problem.isPresent()) {
      throw CopiesException.refused(problem.get());
    }
  }

  /**
   * Why a folder that looks like a card is no backup, whatever a person says; empty if it may be.
   */
  static Optional<Problem> noBackup(Path folder, Path real, Volumes volumes) throws IOException {
    var top = volumes.topOf(real);
    return Place.looksLikeCard(top) && !CopyTarget.hasList(top)
        ? Optional.of(
            new Problem(
                Text.of(
                    "this disk looks like a card, with DCIM at the top of {0}, and what is on a"
                        + " card is no copy",
                    top),
                folder.toString(),
                "Move DCIM into a folder of its own on that disk; or copy to that disk by"
                    + " framewright copy, whose list of checksums tells it from a card."))
        : Optional.empty();
  }

  private static void requireApart(Path job, Map<Path, Place.Kind> kinds, Map<Path, Path> given)
      throws CopiesException {
    for (var one : kinds.entrySet()) {
      if (one.getValue() != Place.Kind.CARD) {
        continue;
      }
      var card = one.getKey();
      if (job.startsWith(card)) {
        throw CopiesException.refused(
            "the job lies on this card",
            given.get(card).toString(),
            "Move the job to a disk first; nothing may be kept on a card.");
      }
      for (var other : kinds.keySet()) {
        if (!other.equals(card) && (other.startsWith(card) || card.startsWith(other))) {
          throw CopiesException.badInput(
              "this folder and " + given.get(card) + " lie in each other",
              given.get(other).toString(),
              "Give a card and its copies as folders of their own.");
        }
      }
    }
  }
}
