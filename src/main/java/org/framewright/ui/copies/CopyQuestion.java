package org.framewright.ui.copies;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** What is copied, and where to: into a folder of its own on each disk that is named. */
final class CopyQuestion {
  private final List<PlaceLine> sources;
  private final LocalDate day;
  private final ObjectProperty<PlaceLine> from = new SimpleObjectProperty<>();
  private final ObservableList<Path> disks = FXCollections.observableArrayList();
  private final BooleanProperty mhl = new SimpleBooleanProperty();
  private final BooleanBinding ready;

  /**
   * @param sources what can be copied, the likeliest first
   * @param disks the places that it may go to
   * @param day of which the folders are
   */
  CopyQuestion(List<PlaceLine> sources, List<Path> disks, LocalDate day) {
    this.sources = List.copyOf(sources);
    this.day = day;
    this.disks.setAll(disks);
    from.set(sources.isEmpty() ? null : sources.getFirst());
    ready =
        Bindings.createBooleanBinding(
            () -> from.get() != null && !targets().isEmpty(), from, this.disks);
  }

  List<PlaceLine> sources() {
    return sources;
  }

  /** What is copied. */
  ObjectProperty<PlaceLine> from() {
    return from;
  }

  /** The folders in which the copies get a folder each. */
  ObservableList<Path> disks() {
    return disks;
  }

  /** Whether each copy gets a generation of its ASC MHL too. */
  BooleanProperty mhl() {
    return mhl;
  }

  /** Whether it can be copied. */
  BooleanBinding ready() {
    return ready;
  }

  /** One more disk; nothing changes if it is there. */
  void add(Path disk) {
    if (!disks.contains(disk)) {
      disks.add(disk);
    }
  }

  /** The folder that the copies get on a disk. */
  Optional<Path> target(Path disk) {
    return Optional.ofNullable(from.get()).map(source -> disk.resolve(name(source)));
  }

  /** All of them. */
  List<Path> targets() {
    return disks.stream().flatMap(disk -> target(disk).stream()).toList();
  }

  /** The card's own name and the day, as any system can write it. */
  private String name(PlaceLine source) {
    var plain = source.name().replaceAll("[^\\p{L}\\p{N}._ -]", "").strip();
    return (plain.isEmpty() || plain.startsWith(".") ? "card" : plain) + "_" + day;
  }
}
