package org.framewright.ui.settings;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicReference;

/** What is kept between runs: words by key, in one JSON file. Safe from any thread. */
public final class Preferences {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private static final TypeReference<TreeMap<String, Object>> SHAPE = new TypeReference<>() {};
  private static final int RECENT = 8;

  private final Path file;
  private final Executor writer;
  private final SortedMap<String, Object> values;
  private final AtomicReference<Map<String, Object>> unwritten = new AtomicReference<>();

  private Preferences(Path file, Executor writer, SortedMap<String, Object> values) {
    this.file = file;
    this.writer = writer;
    this.values = values;
  }

  /**
   * Reads the file, if there is one. One that is no JSON is renamed to {@code NAME.unreadable} and
   * the preferences start afresh.
   *
   * @param writer where the file is written; one thread, so that the newest comes last
   */
  public static Preferences read(Path file, Executor writer) throws IOException {
    if (!Files.exists(file)) {
      return new Preferences(file, writer, new TreeMap<>());
    }
    try {
      return new Preferences(file, writer, JSON.readValue(Files.readAllBytes(file), SHAPE));
    } catch (JsonProcessingException _) {
      Files.move(
          file,
          file.resolveSibling(file.getFileName() + ".unreadable"),
          StandardCopyOption.REPLACE_EXISTING);
      return new Preferences(file, writer, new TreeMap<>());
    }
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

  /** Forgets a key. */
  public void remove(String key) {
    synchronized (this) {
      if (values.remove(key) == null) {
        return;
      }
    }
    write();
  }

  /** The words kept as a list under a key, latest first. */
  public synchronized List<String> recent(String key) {
    return values.get(key) instanceof List<?> list
        ? list.stream().map(String::valueOf).toList()
        : List.of();
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
    write();
  }

  private void write() {
    Map<String, Object> now;
    synchronized (this) {
      now = new TreeMap<>(values);
    }
    if (unwritten.getAndSet(now) == null) {
      writer.execute(this::flush);
    }
  }

  private void flush() {
    var newest = unwritten.getAndSet(null);
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
      var temporary = file.resolveSibling(file.getFileName() + ".tmp");
      Files.write(temporary, JSON.writeValueAsBytes(newest));
      try (var channel = FileChannel.open(temporary, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      System.getLogger(Preferences.class.getName())
          .log(System.Logger.Level.WARNING, "The preferences could not be kept: " + file, e);
    }
  }
}
