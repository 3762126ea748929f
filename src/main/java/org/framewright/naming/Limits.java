package org.framewright.naming;

/**
 * How large a convention may be. Each limit is far above what a name of at most 255 characters can
 * use; together they bound the time and memory that a hostile file can take. What exceeds one is a
 * finding.
 */
final class Limits {
  /** Bytes of UTF-8, and UTF-16 units, of the whole file. */
  static final int FILE = 262_144;

  /** Lists and mappings within one another. */
  static final int DEPTH = 10;

  /** Faults that are reported of one file. */
  static final int FAULTS = 100;

  static final int FIELDS = 200;
  static final int KINDS = 50;
  static final int FOLDERS = 50;

  /** Shapes of one field besides the main one. */
  static final int SHAPES = 20;

  /** Values of one choice. */
  static final int CHOICES = 1_000;

  /** Characters of all the texts of one choice together. */
  static final int CHOICE_TEXTS = 10_000;

  /** Fields that a counter restarts on. */
  static final int RESTARTS = 20;

  /** Characters of one text that shows in names, or of a default or a label. */
  static final int TEXT = 255;

  /** Characters of a date's pattern. */
  static final int DATE_PATTERN = 100;

  /** Characters that a text field may have besides letters and digits. */
  static final int ALSO = 100;

  /** Characters of a title or of what a convention is about. */
  static final int PROSE = 10_000;

  /** Characters of a pattern. */
  static final int PATTERN = 4_000;

  /** Characters of literal text that one name shows. */
  static final int LITERALS = 255;

  /** Characters of literal text that one folder's path shows. */
  static final int PATH_LITERALS = 1_000;

  /** Fields that one name or path shows. */
  static final int SHOWN = 50;

  /** States of the automaton of one name. */
  static final int STATES = 20_000;

  /** Moves of the automata of all fields together, in all their shapes. */
  static final int MOVES = 1_000_000;

  /** Characters of a name; no file system takes more. */
  static final int NAME = 255;

  /** Characters of a value that a person gives. */
  static final int GIVEN = 1_000;

  private Limits() {}
}
