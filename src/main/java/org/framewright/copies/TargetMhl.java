package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.copies.device.Reading;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.MhlFolder;
import org.framewright.mhl.MhlHistory;
import org.framewright.mhl.NewGeneration;

/** The generation of an ASC MHL that a run adds to one target. */
final class TargetMhl {
  private final Path folder;
  private final NewGeneration.Work process;
  private final Map<String, MhlHistory.Claim> claims;
  private final List<NewGeneration.Sealed> files = new ArrayList<>();

  /**
   * One that nothing was added to.
   *
   * @throws FileProblemException if the history there is damaged
   */
  TargetMhl(Path folder, NewGeneration.Work process) throws IOException {
    this.folder = folder;
    this.process = process;
    this.claims = MhlHistory.read(folder).map(MhlHistory::claims).orElse(Map.of());
  }

  /** The hashes that a file is to be given: ours, and one that the history can be compared with. */
  Set<HashKind> kinds(String name) {
    var kinds = EnumSet.of(MhlFolder.KIND);
    Optional.ofNullable(claims.get(name)).flatMap(MhlHistory.Claim::fastest).ifPresent(kinds::add);
    return kinds;
  }

  /** A file that is there, whole; from any thread. */
  synchronized void add(String name, Reading here, Map<HashKind, String> hashes) {
    files.add(new NewGeneration.Sealed(name, here.bytes(), here.modified().toInstant(), hashes));
  }

  /** Leaves out all files but these. */
  void keep(Predicate<String> names) {
    files.removeIf(file -> !names.test(file.path()));
  }

  /**
   * Adds the generation to the folder; nothing where no file is there.
   *
   * @param temporary a name at the top of the folder for what is half-made
   * @param contradicted told of each file that is not what an earlier generation says
   */
  Optional<Path> write(Instant at, String host, Path temporary, List<Problem> contradicted)
      throws IOException {
    var added = MhlFolder.add(folder, new NewGeneration(at, process, host, files), temporary);
    added.ifPresent(
        one ->
            one.failed().stream()
                .map(name -> contradicted(folder.resolve(name)))
                .forEach(contradicted::add));
    return added.map(MhlFolder.Added::list);
  }

  private static Problem contradicted(Path file) {
    return new Problem(
        "it is not what an earlier list of the ASC MHL there says",
        file.toString(),
        "Look at it: it was changed since, or it is another file of the same name.");
  }
}
