package org.framewright.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a power cut may leave of a folder: the bytes of a file as of its last flush, and the names
 * in a folder as of that folder's last flush.
 *
 * <p>Harsher than most disks. A file that moved to another folder needs both folders flushed; of a
 * file with two names each copy stands alone; times and permissions are not modelled; what an open
 * file without a name still gets is left out.
 */
public final class CutDisk implements Changes.Witness {
  /** What becomes of names that no flush of their folder followed. */
  public enum Names {
    /** All are as they were at the last flush. */
    LOST,
    /** All are as they were at the end, though bytes that were not flushed are lost. */
    KEPT
  }

  private sealed interface Node {}

  private record Target(Path path) implements Node {}

  private static final class Folder implements Node {
    private final Map<String, Node> live = new TreeMap<>();
    private Map<String, Node> flushed = Map.of();

    void flush() {
      flushed = new TreeMap<>(live);
    }
  }

  private static final class Bytes implements Node {
    private byte[] live;
    private int size;
    private byte[] flushed;

    Bytes(byte[] bytes) {
      live = bytes;
      size = bytes.length;
      flushed = bytes.clone();
    }

    void write(int offset, byte[] bytes) {
      resize(Math.max(size, offset + bytes.length));
      System.arraycopy(bytes, 0, live, offset, bytes.length);
    }

    void resize(int wanted) {
      if (wanted < size) {
        Arrays.fill(live, wanted, size, (byte) 0);
      } else if (wanted > live.length) {
        live = Arrays.copyOf(live, Math.max(wanted, 2 * live.length));
      }
      size = wanted;
    }

    void flush() {
      flushed = Arrays.copyOf(live, size);
    }
  }

  private final Folder root;

  CutDisk(Path real) throws IOException {
    root = read(real, new HashMap<>());
  }

  private static Folder read(Path real, Map<Object, Node> known) throws IOException {
    var folder = new Folder();
    try (var names = Files.newDirectoryStream(real)) {
      for (var path : names) {
        folder.live.put(path.getFileName().toString(), node(path, known));
      }
    }
    folder.flush();
    return folder;
  }

  private static Node node(Path path, Map<Object, Node> known) throws IOException {
    if (Files.isSymbolicLink(path)) {
      return new Target(Files.readSymbolicLink(path));
    }
    if (Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) {
      return read(path, known);
    }
    var key = Files.getAttribute(path, "fileKey");
    var linked = key == null ? null : known.get(key);
    if (linked != null) {
      return linked;
    }
    var bytes = new Bytes(Files.readAllBytes(path));
    if (key != null) {
      known.put(key, bytes);
    }
    return bytes;
  }

  /** Writes what is left into a folder that is empty or not there yet, and gives it back. */
  public synchronized Path afterPowerCut(Path targetCopy, Names names) throws IOException {
    write(root, targetCopy, names);
    return targetCopy;
  }

  private static void write(Folder folder, Path to, Names names) throws IOException {
    Files.createDirectories(to);
    var entries = names == Names.KEPT ? folder.live : folder.flushed;
    for (var entry : entries.entrySet()) {
      var path = to.resolve(entry.getKey());
      switch (entry.getValue()) {
        case Folder inner -> write(inner, path, names);
        case Bytes bytes -> Files.write(path, bytes.flushed);
        case Target target -> Files.createSymbolicLink(path, target.path());
      }
    }
  }

  @Override
  public synchronized void saw(DiskOp op, byte[] bytes) {
    switch (op) {
      case DiskOp.Create create -> put(create.path(), new Bytes(new byte[0]));
      case DiskOp.CreateFolder create -> put(create.path(), new Folder());
      case DiskOp.SymbolicLink link -> put(link.path(), new Target(Path.of(link.target())));
      case DiskOp.Link link -> node(link.existing()).ifPresent(node -> put(link.path(), node));
      case DiskOp.Write write ->
          file(write.path()).ifPresent(file -> file.write((int) write.offset(), bytes));
      case DiskOp.Truncate truncate ->
          file(truncate.path()).ifPresent(file -> file.resize((int) truncate.size()));
      case DiskOp.Force force -> node(force.path()).ifPresent(CutDisk::flush);
      case DiskOp.Move move -> remove(move.from()).ifPresent(node -> put(move.to(), node));
      case DiskOp.Delete delete -> remove(delete.path());
      case DiskOp.SetTimes _, DiskOp.SetPermissions _, DiskOp.SetAttribute _, DiskOp.Lock _ -> {}
    }
  }

  private static void flush(Node node) {
    switch (node) {
      case Folder folder -> folder.flush();
      case Bytes bytes -> bytes.flush();
      case Target _ -> {}
    }
  }

  private Optional<Node> node(String path) {
    Node node = root;
    for (var name : path.equals(".") ? new String[0] : path.split("/")) {
      node = node instanceof Folder folder ? folder.live.get(name) : null;
    }
    return Optional.ofNullable(node);
  }

  private Optional<Bytes> file(String path) {
    return node(path).filter(Bytes.class::isInstance).map(Bytes.class::cast);
  }

  private Optional<Folder> parent(String path) {
    return node(path.contains("/") ? path.substring(0, path.lastIndexOf('/')) : ".")
        .filter(Folder.class::isInstance)
        .map(Folder.class::cast);
  }

  private static String last(String path) {
    return path.substring(path.lastIndexOf('/') + 1);
  }

  private void put(String path, Node node) {
    parent(path).ifPresent(folder -> folder.live.put(last(path), node));
  }

  private Optional<Node> remove(String path) {
    return parent(path).map(folder -> folder.live.remove(last(path)));
  }
}
