package org.framewright.ready;

import org.framewright.base.Text;

/** What a check came to. */
public sealed interface Outcome {
  /** What there is to say. */
  Text said();

  /** All is well. */
  record Fine(Text said) implements Outcome {}

  /** The day can begin, and somebody should do something about it. */
  record Remark(Text said, Text remedy) implements Outcome {}

  /** The day cannot begin so. */
  record Stops(Text said, Text remedy) implements Outcome {}

  /** Nobody can know it, or not from here. */
  record CannotTell(Text said) implements Outcome {}

  /** What to do about it; empty where there is nothing to do. */
  default Text remedy() {
    return switch (this) {
      case Remark(_, Text remedy) -> remedy;
      case Stops(_, Text remedy) -> remedy;
      case Fine _, CannotTell _ -> Text.NONE;
    };
  }

  /** Its word in documents. */
  default String word() {
    return switch (this) {
      case Fine _ -> "fine";
      case Remark _ -> "remark";
      case Stops _ -> "stops";
      case CannotTell _ -> "cannot-tell";
    };
  }
}
