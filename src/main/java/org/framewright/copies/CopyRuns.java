package org.framewright.copies;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.HeldFile;
import org.framewright.base.Problem;
import org.framewright.base.RealPaths;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;
import org.framewright.job.Job;

/**
 * The runs of a job that have not ended: a small file each in {@code .framewright/copies}, with the
 * targets in it, one a line. It is written before the first byte of a copy, held as long as the run
 * lives, and removed when nothing half-made of it is left. So what a kill left is known to be ours.
 */
final class CopyRuns {
  private static final Pattern NAME = Pattern.compile("copy-([0-9a-f]{16})\\.txt");
  private static final int LARGEST = 1 << 18;

  private final Path folder;

  private CopyRuns(Path folder) {
    this.folder = folder;
  }

  static CopyRuns of(Job job) {
    return new CopyRuns(Evidence.folder(job.folder()));
  }

  /** A run that lives. */
  record Run(String batch, Path file, HeldFile held) implements Closeable {
    /** Nothing half-made is left of it. */
    void forget() throws IOException {
      held.close();
      Files.deleteIfExists(file);
    }

    @Override
    public void close() throws IOException {
      held.close();
    }
  }

  Run begin(List<Path> targets) throws IOException {
    if (!RealPaths.isOwnFolder(folder)) {
      DurableFiles.createFolder(folder);
    }
    var batch = CopyParts.newBatch();
    var file = folder.resolve("copy-" + batch + ".txt");
    var lines = new StringBuilder();
    targets.forEach(target -> lines.append(target.toString().replace("\n", "")).append('\n'));
    // Held from its first moment on; no part is written before it is flushed, so that one that a
    // kill left half-written has no parts.
    var held =
        HeldFile.hold(file, StandardOpenOption.CREATE_NEW)
            .orElseThrow(
                () -> new FileSystemException(file.toString(), null, "another program took it"));
    var run = new Run(batch, file, held);
    try {
      DurableFiles.writeFully(
          held.channel(), ByteBuffer.wrap(lines.toString().getBytes(StandardCharsets.UTF_8)));
      held.channel().force(true);
      DurableFiles.syncFolder(folder);
    } catch (IOException e) {
      run.forget();
      throw e;
    }
    return run;
  }

  /**
   * Removes what killed runs left in their targets, and in these.
   *
   * @return what could not be removed
   */
  List<Problem> clear(List<Path> targets) throws IOException {
    var left = new ArrayList<Problem>();
    if (!RealPaths.isOwnFolder(folder)) {
      return left;
    }
    for (var record : records()) {
      var match = NAME.matcher(record.getFileName().toString());
      if (match.matches()) {
        clear(record, match.group(1), targets, left);
      }
    }
    return left;
  }

  /** Whether a run that was killed copied to this place. */
  boolean isTarget(Path target) throws IOException {
    if (!RealPaths.isOwnFolder(folder)) {
      return false;
    }
    for (var record : records()) {
      if (NAME.matcher(record.getFileName().toString()).matches()
          && text(record).lines().anyMatch(target.toString()::equals)) {
        return true;
      }
    }
    return false;
  }

  /** The targets of the runs that are certainly over and have not ended. */
  List<String> interrupted() throws IOException {
    var targets = new ArrayList<String>();
    if (!RealPaths.isOwnFolder(folder)) {
      return targets;
    }
    for (var record : records()) {
      if (NAME.matcher(record.getFileName().toString()).matches()) {
        try (var held = HeldFile.hold(record).orElse(null)) {
          if (held != null && held.isCertain()) {
            targets.addAll(text(record).lines().toList());
          }
        }
      }
    }
    return targets;
  }

  private static String text(Path record) throws IOException {
    return new String(SmallFiles.read(record, LARGEST), StandardCharsets.UTF_8);
  }

  private List<Path> records() throws IOException {
    try (var names = Files.newDirectoryStream(folder)) {
      var records = new ArrayList<Path>();
      names.forEach(records::add);
      return records;
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }

  private void clear(Path record, String batch, List<Path> targets, List<Problem> left)
      throws IOException {
    boolean gone = true;
    boolean spokenFor = false;
    try (var held = HeldFile.hold(record).orElse(null)) {
      if (held == null || !held.isCertain()) {
        return; // It lives, or nobody can know.
      }
      var places = new ArrayList<>(targets);
      for (var line : text(record).lines().toList()) {
        try {
          places.add(record.getFileSystem().getPath(line));
        } catch (InvalidPathException e) {
          // Of another system; there is no such folder here.
        }
      }
      for (var place : places) {
        gone &= Files.isDirectory(place) || place.getParent() == null || isThere(place.getParent());
        for (var part : CopyParts.of(place, batch)) {
          Files.deleteIfExists(part);
        }
        spokenFor |= !targets.contains(place) && isKnownByRecord(place);
      }
    } catch (IOException e) {
      var said = FileProblems.of(e);
      left.add(
          new Problem(
              Text.of("what an interrupted copy left could not be removed: {0}", said.fault()),
              said.where(),
              said.fix()));
      return;
    }
    if (gone && !spokenFor) {
      Files.deleteIfExists(record);
    } else if (!gone) {
      left.add(
          new Problem(
              "a copy was interrupted, and the disk that it was for is not connected",
              record.toString(),
              "Connect it and copy to it again; what is half-made there is then removed."));
    }
  }

  /** Whether only the record tells a copy that ended without its list from a card. */
  private static boolean isKnownByRecord(Path place) throws IOException {
    return Files.isDirectory(place) && Place.looksLikeCard(place) && !CopyTarget.hasList(place);
  }

  private static boolean isThere(Path folder) {
    return Files.isDirectory(folder);
  }
}
