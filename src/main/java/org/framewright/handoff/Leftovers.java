package org.framewright.handoff;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Copies that interrupted hand-offs of the job left beside the next packages, so that they need not
 * be written again. Only their names and sizes are believed: whoever takes one compares it with its
 * frame. What nobody took is removed at the end.
 */
final class Leftovers implements Closeable {
  private final List<Draft> drafts = new ArrayList<>();
  private final Map<String, Copy> copies = new HashMap<>();

  private record Copy(Path file, long bytes) {}

  /** What an interrupted hand-off left, which nobody else writes now. */
  void add(Draft draft) {
    drafts.add(draft);
  }

  /**
   * Removes all that cannot be a copy of a frame of the plans, so that its room is free.
   *
   * @param plans those of the packages that are still to be written
   */
  void keep(List<HandOffPlan> plans) throws IOException {
    var sizes = new HashMap<String, Long>();
    for (var plan : plans) {
      for (var select : plan.selects()) {
        for (int i = 0; i < select.files().size(); i++) {
          sizes.put(select.files().get(i), select.frame().files().get(i).size());
        }
      }
    }
    for (var draft : drafts) {
      Files.walkFileTree(draft.packageFolder(), new Sieve(Bag.data(draft.packageFolder()), sizes));
    }
  }

  private final class Sieve extends SimpleFileVisitor<Path> {
    private final Path data;
    private final Map<String, Long> sizes;

    Sieve(Path data, Map<String, Long> sizes) {
      this.data = data;
      this.sizes = sizes;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
      var name = data.relativize(file).toString();
      boolean fits =
          attributes.isRegularFile()
              && file.getParent().equals(data)
              && Long.valueOf(attributes.size()).equals(sizes.get(name))
              && copies.putIfAbsent(name, new Copy(file, attributes.size())) == null;
      if (!fits) {
        Files.delete(file);
      }
      return FileVisitResult.CONTINUE;
    }
  }

  /** How much of a plan lies here already. */
  long bytes(HandOffPlan plan) {
    return plan.selects().stream()
        .flatMap(select -> select.files().stream())
        .filter(copies::containsKey)
        .mapToLong(name -> copies.get(name).bytes())
        .sum();
  }

  /** What may be the copy of that name; it is given away. */
  Optional<Path> take(String name) {
    return Optional.ofNullable(copies.remove(name)).map(Copy::file);
  }

  /** Removes what is left. */
  @Override
  public void close() throws IOException {
    copies.clear();
    IOException failure = null;
    for (var draft : drafts) {
      try {
        draft.discard();
      } catch (IOException e) {
        failure = e;
      }
    }
    drafts.clear();
    if (failure != null) {
      throw failure;
    }
  }
}
