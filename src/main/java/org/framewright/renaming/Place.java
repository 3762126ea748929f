package org.framewright.renaming;

/** Which of its names a file of a batch has. */
enum Place {
  SOURCE,
  TEMP,
  TARGET
}
