package org.framewright.renaming;

/** Which of its names a file of a batch has. */
enum Position {
  SOURCE,
  TEMP,
  TARGET
}
