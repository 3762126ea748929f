package org.framewright.mhl;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.regex.Pattern;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;

/** What the lists of one folder {@code ascmhl} say, from the first generation to the last. */
public final class MhlHistory {
  /** The name of the folder at the top of what its lists cover. */
  public static final String FOLDER = MhlPath.FOLDER;

  private static final int LARGEST_CHAIN = 16 << 20;
  private static final int LARGEST_LIST = 1 << 27;
  private static final long LARGEST_HISTORY = 1L << 29;

  /** {@code NNNN_NAME_YYYY-MM-DD_HHMMSSZ.mhl}; some lists lack the Z. */
  private static final Pattern NAME =
      Pattern.compile("(\\d{4,6})_.*_\\d{4}-\\d\\d-\\d\\d_\\d{6}Z?\\.mhl", Pattern.DOTALL);

  private final Chain chain;
  private final List<Generation> generations;
  private final Map<String, Claim> claims;

  /**
   * What a history says of a file.
   *
   * @param list the name of the list that said it first
   * @param size in bytes, if it says that
   * @param hashes those that were once right, by kind
   */
  public record Claim(String list, OptionalLong size, Map<HashKind, String> hashes) {
    /** The hash that is made fastest; empty where there is none. */
    public Optional<HashKind> fastest() {
      for (var kind :
          List.of(
              HashKind.XXH128,
              HashKind.XXH3,
              HashKind.XXH64,
              HashKind.SHA1,
              HashKind.MD5,
              HashKind.C4)) {
        if (hashes.containsKey(kind)) {
          return Optional.of(kind);
        }
      }
      return Optional.empty();
    }
  }

  private MhlHistory(Chain chain, List<Generation> generations) {
    this.chain = chain;
    this.generations = List.copyOf(generations);
    this.claims = claims(chain, generations);
  }

  /** One without any list. */
  static MhlHistory none() {
    return new MhlHistory(new Chain(List.of()), List.of());
  }

  /**
   * The history of a folder; nothing where it has none.
   *
   * @throws FileProblemException if it is damaged: a list is missing, is not what the chain says,
   *     or is not understood
   * @throws IOException if it cannot be read
   */
  public static Optional<MhlHistory> read(Path folder) throws IOException {
    var own = folder.resolve(FOLDER);
    if (!Files.exists(own, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    if (!Files.isDirectory(own, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileProblemException(
          new Problem(
              "this is no folder, as that of an ASC MHL is", own.toString(), "Look at it."));
    }
    var chainFile = own.resolve(Chain.FILE);
    var chain = new Chain(List.of());
    if (Files.exists(chainFile, LinkOption.NOFOLLOW_LINKS)) {
      chain =
          Chain.read(
              SmallFiles.read(chainFile, LARGEST_CHAIN, LinkOption.NOFOLLOW_LINKS),
              chainFile.toString());
    }
    var generations = new ArrayList<Generation>();
    long bytes = 0;
    for (var link : chain.links()) {
      var file = own.resolve(link.name());
      var list = list(file);
      bytes += list.length;
      if (bytes > LARGEST_HISTORY) {
        throw new FileProblemException(
            new Problem("its lists are larger than any are", own.toString(), "Look at them."));
      }
      if (!Chain.c4(list).equals(link.c4())) {
        throw new FileProblemException(
            new Problem(
                "this list is not what the chain of its history says",
                file.toString(),
                "Bring it back from a copy: it was changed, or its disk fails."));
      }
      generations.add(GenerationReader.read(list, file.toString()));
    }
    // What a kill left whole and without its link is one that was the next.
    var next = next(own, chain);
    if (next.isPresent()) {
      var list = list(next.get());
      generations.add(GenerationReader.read(list, next.get().toString()));
      chain = chain.with(next.get().getFileName().toString(), list);
    }
    return Optional.of(new MhlHistory(chain, generations));
  }

  private static byte[] list(Path file) throws IOException {
    return SmallFiles.read(file, LARGEST_LIST, LinkOption.NOFOLLOW_LINKS);
  }

  private static Optional<Path> next(Path own, Chain chain) throws IOException {
    var known = chain.links().stream().map(Chain.Link::name).toList();
    var others = new ArrayList<Path>();
    try (var names = Files.newDirectoryStream(own, "*.mhl")) {
      for (var file : names) {
        if (!known.contains(file.getFileName().toString())) {
          others.add(file);
        }
      }
    }
    if (others.isEmpty()) {
      return Optional.empty();
    }
    var match = NAME.matcher(others.getFirst().getFileName().toString());
    if (others.size() > 1
        || !match.matches()
        || Integer.parseInt(match.group(1)) != known.size() + 1) {
      throw new FileProblemException(
          new Problem(
              "there are lists that the chain of their history does not name",
              others.getFirst().toString(),
              "Look at them: bring the chain back from a copy, or move them away."));
    }
    return Optional.of(others.getFirst());
  }

  private static Map<String, Claim> claims(Chain chain, List<Generation> generations) {
    var claims = new HashMap<String, Claim>();
    for (int i = 0; i < generations.size(); i++) {
      for (var entry : generations.get(i).files()) {
        var before = claims.get(entry.path());
        if (entry.previousPath().isPresent()) {
          before = claims.remove(entry.previousPath().get());
        }
        var hashes = new EnumMap<HashKind, String>(HashKind.class);
        if (before != null) {
          hashes.putAll(before.hashes());
        }
        boolean failed =
            entry.hashes().values().stream()
                .anyMatch(hash -> hash.action() == Generation.Action.FAILED);
        if (!failed) {
          entry.hashes().forEach((kind, hash) -> hashes.putIfAbsent(kind, hash.value()));
        }
        if (!hashes.isEmpty()) {
          claims.put(
              entry.path(),
              new Claim(
                  before == null ? chain.links().get(i).name() : before.list(),
                  before == null ? entry.size() : before.size(),
                  hashes));
        }
      }
    }
    return Map.copyOf(claims);
  }

  /** Whether a file is of a history, by its name. */
  public static boolean isPart(String name) {
    return name.equals(Chain.FILE) || name.endsWith(".mhl");
  }

  /** By the path below the folder, with {@code /} between the names. */
  public Map<String, Claim> claims() {
    return claims;
  }

  /**
   * The C4 of each list of a history further in that one of these lists refers to, by its path
   * below the folder.
   */
  public Map<String, String> references() {
    var references = new HashMap<String, String>();
    for (var generation : generations) {
      generation.references().forEach(one -> references.put(one.path(), one.c4()));
    }
    return Map.copyOf(references);
  }

  /**
   * Whether the last list has the hash of the whole folder, and so says that nothing else was in
   * it.
   */
  public boolean coversAll() {
    return !generations.isEmpty() && generations.getLast().root().isPresent();
  }

  /** Patterns of what no list covers, as the lists have them. */
  public Set<String> ignored() {
    var ignored = new HashSet<String>();
    generations.forEach(one -> ignored.addAll(one.ignored()));
    return Set.copyOf(ignored);
  }

  /** The names of the lists, the first generation first. */
  public List<String> lists() {
    return chain.links().stream().map(Chain.Link::name).toList();
  }

  Chain chain() {
    return chain;
  }

  List<Generation> generations() {
    return generations;
  }
}
