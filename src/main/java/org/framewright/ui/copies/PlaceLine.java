package org.framewright.ui.copies;

import java.nio.file.Path;
import java.util.Locale;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.copies.FoundPlace;

/** A place of the comparison, whose standing changes while it stays in the list. */
final class PlaceLine {
  /** What a place is. */
  enum Kind {
    CARD,
    JOB,
    BACKUP;

    /** As in the keys of texts and styles. */
    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * What is shown of it.
   *
   * @param name what it is called
   * @param device what it lies on
   * @param established what is known of it, and since when
   * @param size how large its volume is, and what is free
   * @param figure how many of the files, beside the bar
   * @param part how long the bar is, from 0 to 1; below 0 for none
   * @param needs whether somebody has to act
   */
  record Shown(
      Kind kind,
      String name,
      String device,
      String established,
      String size,
      String figure,
      double part,
      boolean needs) {}

  private final ReadOnlyObjectWrapper<Shown> shown = new ReadOnlyObjectWrapper<>();
  private FoundPlace found;
  private Kind kind;

  PlaceLine(FoundPlace found, Kind kind) {
    this.found = found;
    this.kind = kind;
    shown.set(new Shown(kind, found.name(), found.device(), "", "", "", -1, false));
  }

  Path folder() {
    return found.folder();
  }

  String name() {
    return found.name();
  }

  FoundPlace found() {
    return found;
  }

  Kind kind() {
    return kind;
  }

  /** What is shown of it now. */
  ReadOnlyObjectProperty<Shown> shown() {
    return shown.getReadOnlyProperty();
  }

  void look(FoundPlace now) {
    found = now;
    if (kind == Kind.BACKUP && now.looksLikeCard()) {
      kind = Kind.CARD;
    }
  }

  void turnTo(Kind now) {
    kind = now;
  }

  void show(Shown now) {
    shown.set(now);
  }
}
