package org.framewright.ui.settings;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.framewright.base.DurableFiles;
import org.framewright.base.SmallFiles;

/** What is kept between runs: words by key, in one JSON file. Safe from any thread. */
public final class Preferences {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private static final TypeReference<TreeMap<String, Object>> SHAPE = new TypeReference<>() {};
  private static final int RECENT = 8;

  /** Far more than what is kept; a larger file is none of ours. */
  private static final int LARGEST_FILE = 1 << 20;

  private final Path file;
  private final Executor writer;
  private final SortedMap<String, Object> values;
  private final Consumer<? super IOException> failed;

  /** What was changed here and is not in the file yet; nothing for a key that was forgotten. */
  private final Map<String, Optional<Object>> unwritten = new LinkedHashMap<>();

  /** What could not be written; it goes with what is kept next. */
  private final Map<String, Optional<Object>> missed = new LinkedHashMap<>();

  /** Touched by the writer only: whether the last write failed, which is reported once. */
  private boolean failing;

  private Preferences(
      Path file,
      Executor writer,
      SortedMap<String, Object> values,
      Consumer<? super IOException> failed) {
    this.file = file;
    this.writer = writer;
    this.values = values;
    this.failed = failed;
  }

  /**
   * Reads the file, if there is one. One that is no JSON is renamed to {@code NAME.unreadable}. One
   * that cannot be read stays as it is, and nothing is kept in this run. What another program, or a
   * newer version, wrote into it stays there.
   *
   * @param writer where the file is written; one thread, so that the newest comes last
   * @param failed hears that the file cannot be read, or, once until it can again, not be written
   */
  public static Preferences read(Path file, Executor writer, Consumer<? super IOException> failed) {
    try {
      return new Preferences(file, writer, values(file), failed);
    } catch (IOException e) {
      failed.accept(e);
      return new Preferences(file, _ -> {}, new TreeMap<>(), failed);
    }
  }

  private static SortedMap<String, Object> values(Path file) throws IOException {
    if (!Files.exists(file)) {
      return new TreeMap<>();
    }
    try {
      var values = JSON.readValue(SmallFiles.read(file, LARGEST_FILE), SHAPE);
      return values == null ? new TreeMap<>() : values;
    } catch (JsonProcessingException _) {
      Files.move(file, aside(file), StandardCopyOption.ATOMIC_MOVE);
      return new TreeMap<>();
    }
  }

  /** A name that is free; the tenth unreadable file takes the place of the ninth. */
  private static Path aside(Path file) {
    var aside = file.resolveSibling(file.getFileName() + ".unreadable");
    for (var i = 2; i <= 9 && Files.exists(aside); i++) {
      aside = file.resolveSibling(file.getFileName() + ".unreadable-" + i);
    }
    return aside;
  }

  /** Where all of it is kept. */
  Path file() {
    return file;
  }

  /** The word kept under a key. */
  public synchronized Optional<String> get(String key) {
    return Optional.ofNullable(values.get(key))
        .filter(String.class::isInstance)
        .map(String::valueOf);
  }

  /** The number kept under a key, or {@code otherwise}. */
  public synchronized double number(String key, double otherwise) {
    return values.get(key) instanceof Number number ? number.doubleValue() : otherwise;
  }

  /** Keeps a word. */
  public void put(String key, String value) {
    keep(key, value);
  }

  /** Keeps a number. */
  public void put(String key, double value) {
    keep(key, value);
  }

  /** Keeps words as a list. */
  public void put(String key, List<String> value) {
    keep(key, List.copyOf(value));
  }

  /** What is kept under a key, of whatever kind; for what is checked by whoever asks. */
  synchronized Optional<Object> any(String key) {
    return Optional.ofNullable(values.get(key));
  }

  /** Forgets a key. */
  public void remove(String key) {
    synchronized (this) {
      if (values.remove(key) == null) {
        return;
      }
    }
    write(key, Optional.empty());
  }

  /** The words kept as a list under a key, latest first. */
  public synchronized List<String> recent(String key) {
    return values.get(key) instanceof List<?> list
        ? list.stream().map(String::valueOf).toList()
        : List.of();
  }

  /** The paths kept as a list under a key, latest first; what is no path on this system is not. */
  public List<Path> recentPaths(String key) {
    return recent(key).stream().flatMap(Preferences::pathOf).toList();
  }

  /** The path kept under a key, if it is one on this system. */
  public Optional<Path> path(String key) {
    return get(key).stream().flatMap(Preferences::pathOf).findFirst();
  }

  private static Stream<Path> pathOf(String kept) {
    try {
      return Stream.of(Path.of(kept));
    } catch (InvalidPathException _) {
      return Stream.empty();
    }
  }

  /** Puts a word in front of the list under a key; the list keeps the latest eight. */
  public void remember(String key, String value) {
    var list = new ArrayList<>(recent(key));
    list.remove(value);
    list.addFirst(value);
    keep(key, List.copyOf(list.subList(0, Math.min(RECENT, list.size()))));
  }

  private void keep(String key, Object value) {
    synchronized (this) {
      if (value.equals(values.put(key, value))) {
        return;
      }
    }
    write(key, Optional.of(value));
  }

  private void write(String key, Optional<Object> value) {
    boolean first;
    synchronized (this) {
      first = unwritten.isEmpty();
      unwritten.put(key, value);
    }
    if (first) {
      writer.execute(this::flush);
    }
  }

  /** Another window of the program may have kept something else meanwhile, which stays. */
  private void flush() {
    Map<String, Optional<Object>> changes;
    synchronized (this) {
      changes = new LinkedHashMap<>(missed);
      changes.putAll(unwritten);
      missed.clear();
      unwritten.clear();
    }
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      var kept = values(file);
      if (kept.isEmpty()) {
        kept = all();
      }
      for (var change : changes.entrySet()) {
        if (change.getValue().isPresent()) {
          kept.put(change.getKey(), change.getValue().get());
        } else {
          kept.remove(change.getKey());
        }
      }
      // A link is kept, and what it leads to is written.
      DurableFiles.replace(
          Files.exists(file) ? file.toRealPath() : file, JSON.writeValueAsBytes(kept));
      failing = false;
    } catch (IOException e) {
      notWritten(changes);
      if (!failing) {
        failing = true;
        failed.accept(e);
      }
    }
  }

  private synchronized SortedMap<String, Object> all() {
    return new TreeMap<>(values);
  }

  /** They go with what is kept next. */
  private synchronized void notWritten(Map<String, Optional<Object>> changes) {
    missed.putAll(changes);
  }
}
