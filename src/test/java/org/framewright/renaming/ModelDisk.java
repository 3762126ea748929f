package org.framewright.renaming;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.framewright.base.NameKey;

/**
 * A disk in memory that forgets at a power cut. What is flushed stays; of the changes of names
 * since the flush of their folder, any may have reached the disk and any not. A rename by itself is
 * done or not done. What is being flushed when the power fails may be cut off anywhere.
 *
 * <p>If a subset of the changes would put a file over another, or would need a change that is
 * missing, the order of the writes mattered where it must not: that is a violation.
 */
final class ModelDisk implements Disk {
  /** The power cut. */
  static final class PowerCut extends Error {
    private static final long serialVersionUID = 1L;

    PowerCut() {
      super("power cut", null, false, false);
    }
  }

  private sealed interface Change {
    record Create(Path path, int file) implements Change {}

    record Move(Path from, Path to, int file) implements Change {}

    record Remove(Path path) implements Change {}

    default boolean touches(Path folder) {
      return switch (this) {
        case Create create -> create.path().getParent().equals(folder);
        case Move move ->
            move.from().getParent().equals(folder) || move.to().getParent().equals(folder);
        case Remove remove -> remove.path().getParent().equals(folder);
      };
    }
  }

  private final Random random;
  private final boolean foldsNames;
  private final boolean numbersFiles;
  private final Set<Path> folders = new HashSet<>();
  private final Map<Integer, byte[]> contents = new HashMap<>();
  private final Map<Path, Integer> live = new HashMap<>();
  private final Map<Path, Integer> durable = new HashMap<>();
  private final List<Change> pending = new ArrayList<>();
  private final List<String> violations = new ArrayList<>();
  private boolean locked;
  private String name = "model";
  private int left = Integer.MAX_VALUE;
  private int firstNumber;
  private long time;

  /**
   * An empty disk.
   *
   * @param random chooses what a power cut leaves
   * @param foldsNames whether names that collide are one name
   * @param numbersFiles whether the disk numbers its files
   */
  ModelDisk(Random random, boolean foldsNames, boolean numbersFiles) {
    this.random = random;
    this.foldsNames = foldsNames;
    this.numbersFiles = numbersFiles;
  }

  /**
   * A copy of the whole disk as it is: its files have other numbers, and other times unless those
   * are kept.
   */
  ModelDisk copy(boolean withTimes) {
    var copy = new ModelDisk(random, foldsNames, numbersFiles);
    copy.name = name + " copied";
    copy.firstNumber = firstNumber + 1_000;
    copy.time = withTimes ? time : time + 3_600_000_000_000L;
    copy.folders.addAll(folders);
    copy.contents.putAll(contents);
    copy.live.putAll(live);
    copy.durable.putAll(live);
    return copy;
  }

  void put(Path path, String content) {
    int file = contents.size();
    contents.put(file, content.getBytes(StandardCharsets.UTF_8));
    live.put(path, file);
    durable.put(path, file);
    folders.add(path.getParent());
  }

  /** Path to content of the people's files. */
  Map<Path, String> files() {
    var files = new HashMap<Path, String>();
    live.forEach(
        (path, file) -> {
          if (!isOurs(path)) {
            files.put(path, new String(contents.get(file), StandardCharsets.UTF_8));
          }
        });
    return files;
  }

  List<String> violations() {
    return violations;
  }

  /** Cuts the power at a change to come: before it, after it, or amid it. */
  void cutAfter(int steps) {
    left = steps;
  }

  /** How many steps were done since the cut was set to the largest number. */
  int stepsDone() {
    return Integer.MAX_VALUE - left;
  }

  /** Whether the power is still to be cut. */
  boolean uncut() {
    return left >= 0;
  }

  /** The power comes back: what is there is what reached the disk. */
  void restart() {
    for (var change : pending) {
      if (random.nextBoolean()) {
        persist(change);
      }
    }
    pending.clear();
    live.clear();
    live.putAll(durable);
    locked = false;
    left = Integer.MAX_VALUE;
  }

  private void persist(Change change) {
    switch (change) {
      case Change.Create create -> durable.put(create.path(), create.file());
      case Change.Remove remove -> durable.remove(remove.path());
      case Change.Move move -> {
        boolean was = durable.remove(move.from(), move.file());
        if (!was && !isOurs(move.from())) {
          violations.add(move + " needs a change that may not have reached the disk");
        }
        var over = durable.put(move.to(), move.file());
        if (over != null) {
          violations.add(move + " would overwrite");
        }
      }
    }
  }

  private void step() {
    if (left-- == 0) {
      throw new PowerCut();
    }
  }

  private boolean isOurs(Path path) {
    return path.toString().contains(Folders.OURS);
  }

  private boolean taken(Path path) {
    if (!foldsNames) {
      return live.containsKey(path);
    }
    var key = NameKey.of(path.toString());
    return live.keySet().stream().anyMatch(name -> NameKey.of(name.toString()).equals(key));
  }

  @Override
  public MoveResult move(Path from, Path to) {
    step();
    if (!live.containsKey(from)) {
      return MoveResult.GONE;
    }
    if (taken(to)) {
      return MoveResult.TAKEN;
    }
    int file = live.remove(from);
    live.put(to, file);
    pending.add(new Change.Move(from, to, file));
    step();
    return MoveResult.MOVED;
  }

  @Override
  public void sync(Path folder) {
    step();
    for (var change : List.copyOf(pending)) {
      if (change.touches(folder)) {
        persist(change);
        pending.remove(change);
      }
    }
    step();
  }

  @Override
  public void write(Path file, List<byte[]> parts) {
    var all = new ByteArrayOutputStream();
    parts.forEach(all::writeBytes);
    var bytes = all.toByteArray();
    int number = contents.size();
    live.put(file, number);
    pending.add(new Change.Create(file, number));
    contents.put(number, Arrays.copyOf(bytes, random.nextInt(bytes.length + 1)));
    step();
    contents.put(number, bytes);
    step();
  }

  @Override
  public void writeTail(Path file, long position, byte[] bytes) throws IOException {
    int number = number(file);
    var whole = Arrays.copyOf(contents.get(number), (int) position + bytes.length);
    System.arraycopy(bytes, 0, whole, (int) position, bytes.length);
    contents.put(number, Arrays.copyOf(whole, (int) position + random.nextInt(bytes.length + 1)));
    step();
    contents.put(number, whole);
    step();
  }

  private int number(Path file) throws FileNotFoundException {
    var number = live.get(file);
    if (number == null) {
      throw new FileNotFoundException(file.toString());
    }
    return number;
  }

  @Override
  public Look look(Path path) {
    if (folders.contains(path)) {
      return new Look(Look.Kind.FOLDER, Seen.NOTHING);
    }
    var file = live.get(path);
    return file == null
        ? Look.NONE
        : new Look(
            Look.Kind.FILE,
            new Seen(
                numbersFiles ? Integer.toString(firstNumber + file) : "",
                contents.get(file).length,
                time));
  }

  @Override
  public List<Path> names(Path folder) {
    return live.keySet().stream()
        .filter(path -> path.getParent().equals(folder))
        .map(Path::getFileName)
        .toList();
  }

  @Override
  public String volume(Path folder) {
    return "model";
  }

  @Override
  public String home(Path folder) {
    return numbersFiles ? name : "";
  }

  @Override
  public Traits traits() {
    return Traits.of(numbersFiles ? "ext4" : "model", false);
  }

  @Override
  public String hash(Path file) throws IOException {
    return Arrays.toString(contents.get(number(file)));
  }

  @Override
  public void settle(Path scratch) {}

  @Override
  public Guarantee guarantee() {
    return Guarantee.NATIVE;
  }

  @Override
  public boolean removePlaceholder(Path file) {
    return false;
  }

  @Override
  public boolean dropSecondName(Path keep, Path drop) {
    return false;
  }

  @Override
  public void makeFolder(Path folder) {
    folders.add(folder);
  }

  @Override
  public byte[] read(Path file, long position, int most) throws IOException {
    var content = contents.get(number(file));
    int from = (int) Math.min(position, content.length);
    return Arrays.copyOfRange(content, from, Math.min(content.length, from + most));
  }

  @Override
  public void remove(Path file) {
    step();
    if (live.remove(file) != null) {
      pending.add(new Change.Remove(file));
    }
    step();
  }

  @Override
  public Optional<Closeable> lock(Path file) {
    if (locked) {
      return Optional.empty();
    }
    locked = true;
    return Optional.of(() -> locked = false);
  }
}
