package org.framewright.ui.handoff;

import java.util.Collection;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.transformation.FilteredList;

/**
 * Lines of which all are shown, or those of one kind.
 *
 * @param <L> a line
 * @param <K> what kinds of lines there are
 */
final class Narrowed<L, K> {
  private final ObservableList<L> all = FXCollections.observableArrayList();
  private final FilteredList<L> lines = new FilteredList<>(all);
  private final ObjectProperty<Optional<K>> only = new SimpleObjectProperty<>(Optional.empty());

  Narrowed(Function<L, K> kind) {
    only.addListener(
        (_, _, now) ->
            lines.setPredicate(now.isEmpty() ? null : line -> kind.apply(line).equals(now.get())));
  }

  /** Those that the filter lets through. */
  ObservableList<L> lines() {
    return lines;
  }

  /** The kind that is shown; all where there is none. */
  ObjectProperty<Optional<K>> only() {
    return only;
  }

  /** Other lines, of these kinds; a filter that would hide all of them ends. */
  void setAll(Collection<L> now, Collection<K> kinds) {
    all.setAll(now);
    if (only.get().filter(kind -> !kinds.contains(kind)).isPresent()) {
      only.set(Optional.empty());
    }
  }

  void clear() {
    only.set(Optional.empty());
    all.clear();
  }
}
