package org.framewright.mhl;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.regex.Pattern;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.renaming.NoReplaceMove;

/** Adds generations to the history of a folder. */
public final class MhlFolder {
  /** What every list of ours has of every file; the fastest that the standard knows. */
  public static final HashKind KIND = HashKind.XXH128;

  private static final String LITTER = ".DS_Store";

  /** Our own lists of checksums are no part of what they are about. */
  private static final Pattern OWN_LISTS = Pattern.compile("copied-.*\\.sha256");

  /** In the words of the examples of the standard, and our own lists. */
  private static final List<String> IGNORED =
      List.of(LITTER, MhlPath.FOLDER, MhlPath.FOLDER + "/", "copied-*.sha256");

  private static final int MOST_ENTRIES = 1_000_000;
  private static final int LONGEST_NAME = 255;
  private static final char REPLACED = '\uFFFD';
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd_HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Path folder;
  private final NewGeneration generation;

  private MhlFolder(Path folder, NewGeneration generation) {
    this.folder = folder;
    this.generation =
        new NewGeneration(
            generation.at(),
            generation.process(),
            generation.host(),
            generation.files().stream().filter(file -> !isIgnored(file.path())).toList());
  }

  /**
   * A generation that was added.
   *
   * @param list its file
   * @param whole whether it covers everything in the folder, so that it has the folders' hashes
   * @param failed the paths of files that are not what an earlier generation says
   */
  public record Added(Path list, boolean whole, List<String> failed) {}

  /**
   * Adds a generation. It is on the disk when this returns.
   *
   * @param temporary a name on the same volume that the list has until it is whole
   * @return nothing where there is nothing to list
   * @throws FileProblemException if the history there is damaged, or a history further in has some
   *     of these files; nothing was written
   */
  public static Optional<Added> add(Path folder, NewGeneration generation, Path temporary)
      throws IOException {
    var adding = new MhlFolder(folder, generation);
    return adding.generation.files().isEmpty()
        ? Optional.empty()
        : Optional.of(adding.add(temporary));
  }

  /** Whether a path is of those that no list covers. */
  private static boolean isIgnored(String path) {
    for (var name : path.split("/", -1)) {
      if (name.equals(LITTER) || name.equals(MhlPath.FOLDER) || OWN_LISTS.matcher(name).matches()) {
        return true;
      }
    }
    return false;
  }

  private Added add(Path temporary) throws IOException {
    for (var file : generation.files()) {
      if (!XmlText.canHold(file.path()) || file.path().indexOf(REPLACED) >= 0) {
        throw new FileProblemException(
            new Problem(
                "this name cannot be written into an ASC MHL",
                folder.resolve(file.path()).toString(),
                "Rename it there, or do without the ASC MHL."));
      }
    }
    var history = MhlHistory.read(folder).orElseGet(MhlHistory::none);
    var failed = new ArrayList<String>();
    var actions = new HashMap<String, Map<HashKind, Generation.Action>>();
    for (var file : generation.files()) {
      var of = actions(file, Optional.ofNullable(history.claims().get(file.path())));
      if (of.containsValue(Generation.Action.FAILED)) {
        failed.add(file.path());
      }
      actions.put(file.path(), of);
    }
    var all = folders();
    Optional<SequencedMap<String, FolderHashing.Both>> folders =
        failed.isEmpty() ? all : Optional.empty();
    var bytes = GenerationText.of(generation, actions, KIND, folders, IGNORED);
    var own = folder.resolve(MhlPath.FOLDER);
    DurableFiles.createFolder(own);
    var list = own.resolve(name(history.chain().links().size() + 1));
    DurableFiles.writeFlushed(temporary, bytes);
    NoReplaceMove.move(temporary, list);
    DurableFiles.syncFolder(own);
    DurableFiles.replace(
        own.resolve(Chain.FILE),
        history.chain().with(list.getFileName().toString(), bytes).bytes());
    return new Added(list, folders.isPresent(), List.copyOf(failed));
  }

  /** As the worked examples of the standard have it: what was never listed is original. */
  private static Map<HashKind, Generation.Action> actions(
      NewGeneration.Sealed file, Optional<MhlHistory.Claim> claim) {
    boolean differs =
        claim.isPresent()
            && claim.get().hashes().entrySet().stream()
                .anyMatch(
                    one ->
                        file.hashes().containsKey(one.getKey())
                            && !file.hashes().get(one.getKey()).equals(one.getValue()));
    boolean compared =
        claim.isPresent()
            && claim.get().hashes().keySet().stream().anyMatch(file.hashes()::containsKey);
    var actions = new EnumMap<HashKind, Generation.Action>(HashKind.class);
    for (var kind : file.hashes().keySet()) {
      actions.put(
          kind,
          differs
              ? Generation.Action.FAILED
              : compared ? Generation.Action.VERIFIED : Generation.Action.ORIGINAL);
    }
    return actions;
  }

  private String name(int number) {
    var last = folder.getFileName();
    var about = last == null ? "root" : last.toString();
    var start = String.format(Locale.ROOT, "%04d_", number);
    var end = "_" + TIME.format(generation.at()) + ".mhl";
    while (about.getBytes(StandardCharsets.UTF_8).length + start.length() + end.length()
        > LONGEST_NAME) {
      about = about.substring(0, about.offsetByCodePoints(about.length(), -1));
    }
    return start + about + end;
  }

  /** The hashes of all folders; nothing where something lies there that is not listed. */
  private Optional<SequencedMap<String, FolderHashing.Both>> folders() throws IOException {
    var hashing = new FolderHashing(KIND);
    var listed = new HashMap<String, byte[]>();
    for (var file : generation.files()) {
      var hash = Optional.ofNullable(file.hashes().get(KIND)).flatMap(KIND::bytes);
      listed.put(file.path(), hash.orElseThrow());
    }
    var walk = new Walk(hashing, listed);
    Files.walkFileTree(folder, walk);
    walk.requireNoneInside();
    return walk.isWhole() ? Optional.of(hashing.hashes()) : Optional.empty();
  }

  private final class Walk extends SimpleFileVisitor<Path> {
    private final FolderHashing hashing;
    private final Map<String, byte[]> listed;
    private final Set<String> histories = new HashSet<>();
    private int met;
    private int found;
    private boolean others;

    Walk(FolderHashing hashing, Map<String, byte[]> listed) {
      this.hashing = hashing;
      this.listed = listed;
    }

    boolean isWhole() {
      return !others && histories.isEmpty() && found == listed.size();
    }

    /** A history further in has its files for itself. */
    void requireNoneInside() throws FileProblemException {
      for (var inside : histories) {
        if (listed.keySet().stream().anyMatch(path -> path.startsWith(inside + "/"))) {
          throw new FileProblemException(
              new Problem(
                  "this folder has an ASC MHL of its own, which a list further out must not cover",
                  folder.resolve(inside).toString(),
                  "Copy that folder for itself with --mhl, and the rest without it."));
        }
      }
    }

    private String path(Path of) {
      return folder.relativize(of).toString().replace(of.getFileSystem().getSeparator(), "/");
    }

    @Override
    public FileVisitResult preVisitDirectory(Path entry, BasicFileAttributes attributes) {
      if (entry.equals(folder)) {
        return FileVisitResult.CONTINUE;
      }
      if (++met > MOST_ENTRIES) {
        others = true;
        return FileVisitResult.TERMINATE;
      }
      var path = path(entry);
      if (entry.getFileName().toString().equals(MhlPath.FOLDER)) {
        int slash = path.lastIndexOf('/');
        if (slash > 0) {
          histories.add(path.substring(0, slash));
        }
        return FileVisitResult.SKIP_SUBTREE;
      }
      hashing.folder(path);
      others |= !XmlText.canHold(path) || path.indexOf(REPLACED) >= 0;
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path entry, BasicFileAttributes attributes) {
      var path = path(entry);
      if (isIgnored(path)) {
        return FileVisitResult.CONTINUE;
      }
      var hash = listed.get(path);
      if (hash == null || !attributes.isRegularFile() || ++met > MOST_ENTRIES) {
        others = true;
      } else {
        found++;
        hashing.file(path, hash);
      }
      return met > MOST_ENTRIES ? FileVisitResult.TERMINATE : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path entry, IOException failure) {
      others = true;
      return FileVisitResult.CONTINUE;
    }
  }
}
