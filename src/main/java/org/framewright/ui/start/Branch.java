package org.framewright.ui.start;

/**
 * One line of the tree of what will be made.
 *
 * @param depth 0 for the job folder
 * @param text the folder's name, or a name that will come to lie in it
 * @param kind what the line is
 */
record Branch(int depth, String text, Kind kind) {
  /** What a line of the tree is. */
  enum Kind {
    /** A folder that is made. */
    FOLDER,
    /** A name as they will be, made of examples. */
    EXAMPLE
  }
}
