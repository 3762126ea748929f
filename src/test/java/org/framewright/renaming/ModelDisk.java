package org.framewright.renaming;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;

/**
 * A disk in memory that forgets at a power cut. What is flushed stays; of the changes of names
 * since the flush of their folder, any may have reached the disk and any not, or, where a log keeps
 * their order, those up to one of them. A rename by itself is done or not done, unless the disk
 * {@link #tearsRenames}. What is being flushed when the power fails may be cut off anywhere.
 *
 * <p>If what reached the disk would put a file over another, or would need a change that is
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

    record Link(Path path, int file) implements Change {}

    record Move(Path from, Path to, int file) implements Change {}

    record Remove(Path path, int file) implements Change {}

    default boolean touches(Path folder) {
      return switch (this) {
        case Create create -> create.path().getParent().equals(folder);
        case Link link -> link.path().getParent().equals(folder);
        case Move move ->
            move.from().getParent().equals(folder) || move.to().getParent().equals(folder);
        case Remove remove -> remove.path().getParent().equals(folder);
      };
    }
  }

  private final Random random;
  private final ModelVolume volume;
  private final Set<Path> folders = new HashSet<>();
  private final Map<Integer, byte[]> contents = new HashMap<>();
  private final Map<Path, Integer> live = new HashMap<>();
  private final Map<Path, Integer> durable = new HashMap<>();
  private final List<Change> pending = new ArrayList<>();
  private final List<String> violations = new ArrayList<>();

  /** The files that reserved a name, whose content nobody flushes. */
  private final Set<Integer> marks = new HashSet<>();

  private final Map<Guarantee, Integer> moves = new EnumMap<>(Guarantee.class);
  private final Set<Integer> torn = new HashSet<>();
  private boolean tearing;
  private boolean locked;
  private boolean mounted = true;
  private String name = "model";
  private int left = Integer.MAX_VALUE;
  private int firstNumber;
  private long later;

  /**
   * An empty disk.
   *
   * @param random chooses what a power cut leaves
   */
  ModelDisk(Random random, ModelVolume volume) {
    this.random = random;
    this.volume = volume;
  }

  /**
   * A copy of the whole disk as it is: its files have other numbers, and other times unless those
   * are kept.
   */
  ModelDisk copy(boolean withTimes) {
    var copy = new ModelDisk(random, volume);
    copy.name = name + " copied";
    copy.firstNumber = firstNumber + 1_000;
    copy.later = withTimes ? later : later + 3_600_000_000_000L;
    copy.mounted = mounted;
    copy.folders.addAll(folders);
    copy.contents.putAll(contents);
    copy.live.putAll(live);
    copy.durable.putAll(live);
    copy.marks.addAll(marks);
    return copy;
  }

  /** From now on a power cut may leave a rename with both names or with none, as FAT may. */
  void tearsRenames() {
    tearing = true;
  }

  void put(Path path, String content) {
    int file = contents.size();
    contents.put(file, content.getBytes(StandardCharsets.UTF_8));
    live.put(listed(path), file);
    durable.put(listed(path), file);
    folders.add(path.getParent());
  }

  /** As this disk lists a path. */
  Path listed(Path path) {
    return Path.of(volume.listed().apply(path.toString()));
  }

  /** Path to content of the people's files. */
  Map<Path, String> files() {
    var files = new HashMap<Path, String>();
    live.forEach(
        (path, file) -> {
          if (!isOurs(path) && !marks.contains(file)) {
            files.put(path, new String(contents.get(file), StandardCharsets.UTF_8));
          }
        });
    return files;
  }

  /** The contents of the people's files, each once, under however many names. */
  List<String> peoplesContents() {
    return live.entrySet().stream()
        .filter(entry -> !isOurs(entry.getKey()) && !marks.contains(entry.getValue()))
        .map(Map.Entry::getValue)
        .distinct()
        .map(file -> new String(contents.get(file), StandardCharsets.UTF_8))
        .toList();
  }

  /** Where a name was reserved and neither taken nor given back. */
  Set<Path> leftovers() {
    var left = new HashSet<Path>();
    live.forEach(
        (path, file) -> {
          if (!isOurs(path) && marks.contains(file)) {
            left.add(path);
          }
        });
    return left;
  }

  /** Whether what has this name, in whatever spelling, only reserved it. */
  boolean isLeftover(Path path) {
    return leftovers().contains(stored(path));
  }

  /** Does what a person is told to do with the leftovers. */
  void removeLeftovers() {
    leftovers().forEach(path -> drop(path, live.get(path)));
  }

  /** By which ways names were changed, and how often. */
  Map<Guarantee, Integer> moves() {
    return moves;
  }

  /** The contents of the people's files of which a power cut left two names, or none. */
  List<String> torn() {
    return torn.stream()
        .map(file -> new String(contents.get(file), StandardCharsets.UTF_8))
        .toList();
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
    if (volume.flush() == SystemVolume.Flush.IN_ORDER) {
      pending.subList(0, random.nextInt(pending.size() + 1)).forEach(this::persist);
    } else {
      for (var change : pending) {
        if (tearing && change instanceof Change.Move move) {
          tear(move);
        } else if (random.nextBoolean()) {
          persist(change);
        }
      }
    }
    pending.clear();
    live.clear();
    live.putAll(durable);
    for (int mark : marks) {
      var whole = contents.get(mark);
      var part = Arrays.copyOf(whole, random.nextInt(whole.length + 1));
      contents.put(mark, random.nextBoolean() ? part : new byte[part.length]);
    }
    mounted = false;
    locked = false;
    left = Integer.MAX_VALUE;
  }

  private void tear(Change.Move move) {
    switch (random.nextInt(6)) {
      case 0 -> {
        durable.put(move.to(), move.file());
        noteTorn(move);
      }
      case 1 -> {
        durable.remove(move.from(), move.file());
        noteTorn(move);
      }
      case 2, 3 -> persist(move);
      default -> {} // It did not reach the disk.
    }
  }

  private void noteTorn(Change.Move move) {
    if (!isOurs(move.to())) {
      torn.add(move.file());
    }
  }

  private void persist(Change change) {
    switch (change) {
      case Change.Create create -> durable.put(create.path(), create.file());
      case Change.Link link -> overwritten(link, durable.put(link.path(), link.file()));
      case Change.Remove remove -> durable.remove(remove.path(), remove.file());
      case Change.Move move -> {
        boolean was = durable.remove(move.from(), move.file());
        if (!was && !isOurs(move.from()) && !torn.contains(move.file())) {
          violations.add(move + " needs a change that may not have reached the disk");
        }
        overwritten(move, durable.put(move.to(), move.file()));
      }
    }
  }

  private void overwritten(Change by, Integer file) {
    if (file != null && !marks.contains(file)) {
      violations.add(by + " would overwrite");
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

  /** A name in the spelling that the disk has of it; as it would list it, if there is none. */
  private Path stored(Path path) {
    if (live.containsKey(path)) {
      return path;
    }
    var key = key(path);
    for (var there : live.keySet()) {
      if (key(there).equals(key)) {
        return there;
      }
    }
    return listed(path);
  }

  private String key(Path path) {
    return volume.key().apply(path.toString());
  }

  // ---- people's files

  @Override
  public MoveResult move(Path given, Path wanted) {
    step();
    var from = stored(given);
    var file = live.get(from);
    if (file == null) {
      return MoveResult.GONE;
    }
    var to = stored(wanted);
    if (live.containsKey(to)) {
      return MoveResult.TAKEN;
    }
    moves.merge(guarantee(), 1, Integer::sum);
    switch (guarantee()) {
      case NATIVE -> moved(from, to, file);
      case LINKED -> {
        live.put(to, file);
        pending.add(new Change.Link(to, file));
        step();
        drop(from, file);
      }
      case RESERVED -> {
        int mark = contents.size();
        contents.put(mark, ReserveMover.mark());
        marks.add(mark);
        live.put(to, mark);
        pending.add(new Change.Create(to, mark));
        step();
        moved(from, to, file);
      }
    }
    step();
    return MoveResult.MOVED;
  }

  private void moved(Path from, Path to, int file) {
    live.remove(from);
    live.put(to, file);
    pending.add(new Change.Move(from, to, file));
  }

  private void drop(Path path, int file) {
    live.remove(path);
    pending.add(new Change.Remove(path, file));
  }

  @Override
  public void sync(Path folder) {
    step();
    switch (volume.flush()) {
      case FOLDER -> flush(change -> change.touches(folder));
      case VOLUME -> flush(_ -> true);
      case IN_ORDER -> {} // Nothing is known to be flushed by it.
    }
    step();
  }

  private void flush(Predicate<Change> which) {
    for (var change : List.copyOf(pending)) {
      if (which.test(change)) {
        persist(change);
        pending.remove(change);
        if (change instanceof Change.Move move) {
          // What was in the place of the new name before is not written any more.
          pending.removeIf(old -> old instanceof Change.Create c && c.path().equals(move.to()));
        }
      }
    }
  }

  /** A log is written in its order: a file that is flushed takes along what was changed before. */
  private void fileFlushed() {
    if (volume.flush() == SystemVolume.Flush.IN_ORDER) {
      flush(_ -> true);
    }
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
    fileFlushed();
    step();
  }

  @Override
  public void writeTail(Path file, long position, byte[] bytes) throws IOException {
    int number = number(file);
    var whole = Arrays.copyOf(contents.get(number), (int) position + bytes.length);
    System.arraycopy(bytes, 0, whole, (int) position, bytes.length);
    fileFlushed();
    contents.put(number, Arrays.copyOf(whole, (int) position + random.nextInt(bytes.length + 1)));
    step();
    contents.put(number, whole);
    step();
  }

  private int number(Path file) throws FileNotFoundException {
    var number = live.get(stored(file));
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
    var file = live.get(stored(path));
    return file == null
        ? Look.NONE
        : new Look(
            Look.Kind.FILE,
            new Seen(
                volume.numbers() ? Integer.toString(firstNumber + file) : "",
                contents.get(file).length,
                time(file)));
  }

  /** Where times are coarse, a finer one is known until the disk is mounted anew. */
  private long time(int file) {
    long fine = 333_333_333L * file;
    boolean kept = mounted && volume.traits().toleranceNanos() > 0;
    return later + (kept ? fine : fine / volume.timeStepNanos() * volume.timeStepNanos());
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
    return volume.numbers() ? name : "";
  }

  @Override
  public Traits traits() {
    return volume.traits();
  }

  @Override
  public String hash(Path file) throws IOException {
    return Arrays.toString(contents.get(number(file)));
  }

  @Override
  public void settle(Path scratch) {}

  @Override
  public Guarantee guarantee() {
    return volume.guarantee();
  }

  @Override
  public boolean removePlaceholder(Path file) {
    var path = stored(file);
    var number = live.get(path);
    if (number == null || !Arrays.equals(contents.get(number), ReserveMover.mark())) {
      return false;
    }
    step();
    drop(path, number);
    step();
    return true;
  }

  @Override
  public boolean areOneFile(Path a, Path b) throws IOException {
    return number(a) == number(b);
  }

  @Override
  public boolean dropSecondName(Path keep, Path drop) throws IOException {
    // FAT counts no links: two names of one file, left by a power cut, are two files to it.
    if (guarantee() != Guarantee.LINKED || number(keep) != number(drop)) {
      return false;
    }
    step();
    drop(stored(drop), number(drop));
    step();
    return true;
  }

  // ---- files of our own

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
    var number = live.get(file);
    if (number != null) {
      drop(file, number);
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
