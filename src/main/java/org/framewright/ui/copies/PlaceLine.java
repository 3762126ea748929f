package org.framewright.ui.copies;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.copies.FoundPlace;
import org.framewright.copies.device.MountIdentity;

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

  /** The volume of which a person said that it is a backup although it looks like a card. */
  private Optional<MountIdentity> said = Optional.empty();

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

  /** Whether it counts as a backup only because a person said so. */
  boolean isSaidBackup() {
    return kind == Kind.BACKUP && said.isPresent();
  }

  /** The volume of which a person said so. */
  Optional<MountIdentity> said() {
    return said;
  }

  /** Whether a place is still what a person spoke of. */
  static boolean isAsSaid(MountIdentity said, FoundPlace now) {
    return now.there() && said.equals(now.mount());
  }

  /**
   * Takes over what is found there now. A person's word is about one volume, and not about what
   * comes to the same path after it, which may be a card.
   */
  void look(FoundPlace now) {
    found = now;
    said = said.filter(one -> isAsSaid(one, now));
    if (kind == Kind.BACKUP && now.looksLikeCard() && said.isEmpty()) {
      kind = Kind.CARD;
    }
  }

  void turnTo(Kind now) {
    kind = now;
    said = Optional.empty();
  }

  void sayBackup() {
    kind = Kind.BACKUP;
    said = Optional.of(found.mount());
  }

  /** Whether a person's word holds for one comparison only: nobody would notice another volume. */
  boolean isSaidOnce() {
    return isSaidBackup() && found.mount().mount().isEmpty();
  }

  void show(Shown now) {
    shown.set(now);
  }
}
