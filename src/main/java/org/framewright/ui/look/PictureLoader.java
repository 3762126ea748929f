package org.framewright.ui.look;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/**
 * Pictures for tiles, made in the background: what was asked for last comes first, what scrolled
 * away before its turn is never read, and a bounded number is kept. Called on the interface thread.
 *
 * @param <K> whose picture
 * @param <P> the picture, ready to be shown
 */
final class PictureLoader<K, P> {
  private final Executor background;
  private final Executor ui;
  private final Function<K, Optional<P>> source;
  private final Object lock = new Object();
  private final ArrayDeque<K> wanted = new ArrayDeque<>();
  private final Map<K, Optional<P>> made = new HashMap<>();
  private boolean working;
  private boolean delivering;

  private final Map<K, List<Consumer<Optional<P>>>> waiting = new HashMap<>();
  private final Map<K, Optional<P>> kept = new LinkedHashMap<>(64, 0.75f, true);
  private final ToLongFunction<P> weight;
  private final long most;
  private long weighed;

  /**
   * @param background where pictures are read, one at a time
   * @param source empty for a key without a picture that could be read; one that throws has none,
   *     and the next picture is read all the same
   * @param weight what a picture costs to keep
   * @param most what all that are kept may weigh together
   */
  PictureLoader(
      Executor background,
      Executor ui,
      Function<K, Optional<P>> source,
      ToLongFunction<P> weight,
      long most) {
    this.background = background;
    this.ui = ui;
    this.source = source;
    this.weight = weight;
    this.most = most;
  }

  /** The picture if it is at hand; else {@code then} gets it later, unless it is dropped. */
  Optional<Optional<P>> want(K key, Consumer<Optional<P>> then) {
    var picture = kept.get(key);
    if (picture != null) {
      return Optional.of(picture);
    }
    waiting.computeIfAbsent(key, _ -> new ArrayList<>()).add(then);
    synchronized (lock) {
      wanted.remove(key);
      wanted.addFirst(key);
      if (working) {
        return Optional.empty();
      }
      working = true;
    }
    background.execute(this::work);
    return Optional.empty();
  }

  /** Nobody looks at it any more. */
  void drop(K key, Consumer<Optional<P>> then) {
    var listeners = waiting.get(key);
    if (listeners == null || !listeners.remove(then) || !listeners.isEmpty()) {
      return;
    }
    waiting.remove(key);
    synchronized (lock) {
      wanted.remove(key);
    }
  }

  /** Forgets what was asked for and what is kept. */
  void clear() {
    waiting.clear();
    kept.clear();
    weighed = 0;
    synchronized (lock) {
      wanted.clear();
      made.clear();
    }
  }

  private void work() {
    while (true) {
      K key;
      synchronized (lock) {
        key = wanted.pollFirst();
        if (key == null) {
          working = false;
          return;
        }
      }
      var picture = read(key);
      boolean first;
      synchronized (lock) {
        made.put(key, picture);
        first = !delivering;
        delivering = true;
      }
      if (first) {
        ui.execute(this::deliver);
      }
    }
  }

  /** Whoever waits for a picture gets an answer, whatever a broken file did to its reader. */
  private Optional<P> read(K key) {
    try {
      return source.apply(key);
    } catch (RuntimeException | Error e) {
      System.getLogger(PictureLoader.class.getName())
          .log(System.Logger.Level.WARNING, "A picture could not be read: " + key, e);
      return Optional.empty();
    }
  }

  private void deliver() {
    Map<K, Optional<P>> fresh;
    synchronized (lock) {
      fresh = new HashMap<>(made);
      made.clear();
      delivering = false;
    }
    fresh.forEach(
        (key, picture) -> {
          keep(key, picture);
          var listeners = waiting.remove(key);
          if (listeners != null) {
            listeners.forEach(listener -> listener.accept(picture));
          }
        });
  }

  /** Having no picture weighs one. */
  private void keep(K key, Optional<P> picture) {
    var before = kept.put(key, picture);
    weighed += weigh(picture) - (before == null ? 0 : weigh(before));
    var oldest = kept.entrySet().iterator();
    while (weighed > most && oldest.hasNext()) {
      weighed -= weigh(oldest.next().getValue());
      oldest.remove();
    }
  }

  private long weigh(Optional<P> picture) {
    return picture.map(weight::applyAsLong).orElse(1L);
  }
}
