package org.framewright.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.page.Finder;
import org.framewright.ui.page.Finder.Found;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/** Finds anything by typing part of it: of each kind some, all in one list. */
final class FindModel {
  private static final int MOST_OF_A_KIND = 8;

  /**
   * What is looked through.
   *
   * @param word what its things are, for people
   */
  record Source(String word, Finder finder) {}

  /**
   * A line of what was found.
   *
   * @param kind what it is, for people; empty where the line before is of the same kind
   */
  record Line(String kind, Found found) {}

  private record Asked(String typed, List<Line> lines) {}

  private final List<Source> sources;
  private final StringProperty typed = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<List<Line>> lines = new ReadOnlyObjectWrapper<>(List.of());
  private final IntegerProperty chosen = new SimpleIntegerProperty(0);
  private final Newest<String, Asked> searches;

  FindModel(List<Source> sources, Tasks tasks, Consumer<Throwable> trouble) {
    this.sources = List.copyOf(sources);
    this.searches = new Newest<>(tasks, this::search, this::show, trouble);
    typed.addListener((_, _, now) -> searches.offer(now));
  }

  /** What is typed. */
  StringProperty typed() {
    return typed;
  }

  /** What was found of it. */
  ReadOnlyObjectProperty<List<Line>> lines() {
    return lines.getReadOnlyProperty();
  }

  /** The place of the line that Enter goes to. */
  IntegerProperty chosen() {
    return chosen;
  }

  /** Chooses another line. */
  void step(int by) {
    chosen.set(Math.clamp((long) chosen.get() + by, 0, Math.max(0, lines.get().size() - 1)));
  }

  /** What Enter goes to; nothing while what was typed last is still looked for. */
  Optional<Found> goal() {
    var at = chosen.get();
    return at >= 0 && at < lines.get().size()
        ? Optional.of(lines.get().get(at).found())
        : Optional.empty();
  }

  private Asked search(String text) {
    var words = TypedWords.of(text);
    var found = new ArrayList<Line>();
    if (!words.isEmpty()) {
      for (var source : sources) {
        var kind = source.word();
        for (var one : source.finder().find(words, MOST_OF_A_KIND)) {
          found.add(new Line(kind, one));
          kind = "";
        }
      }
    }
    return new Asked(text, List.copyOf(found));
  }

  private void show(Asked asked) {
    if (asked.typed().equals(typed.get())) {
      chosen.set(0);
      lines.set(asked.lines());
    }
  }
}
