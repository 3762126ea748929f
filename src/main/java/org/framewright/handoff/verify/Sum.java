package org.framewright.handoff.verify;

import org.framewright.mhl.HashKind;

/** What a list says that the content of a file comes to. */
sealed interface Sum {
  /** As it is to be compared: hexadecimal digits are small letters. */
  String value();

  /** A checksum of a bag or of a list of checksums. */
  record Plain(Algorithm kind, String value) implements Sum {}

  /** A hash of a media hash list. */
  record Media(HashKind kind, String value) implements Sum {}
}
