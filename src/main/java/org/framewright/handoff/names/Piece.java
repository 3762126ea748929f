package org.framewright.handoff.names;

import java.util.List;

/** What was made of a part of a line. */
public sealed interface Piece {
  /** The part as it is written. */
  String written();

  /** What it was taken for, or what is to be known of it. */
  String why();

  /**
   * Frames that are asked for.
   *
   * @param frames each once, in the order of the text
   */
  record Taken(String written, List<Integer> frames, String why) implements Piece {
    public Taken {
      frames = List.copyOf(frames);
    }
  }

  /**
   * It may mean these frames, or some of them: a person has to say.
   *
   * @param fitting the first of the frames, each by the name that fits
   * @param count how many there are
   */
  record Asked(String written, List<KnownName> fitting, int count, String why) implements Piece {
    public Asked {
      fitting = List.copyOf(fitting);
    }
  }

  /**
   * It looks like a name, but no frame has it.
   *
   * @param nearest the names most like it, one of a frame; none where none is like it
   */
  record Unknown(String written, List<KnownName> nearest, String why) implements Piece {
    public Unknown {
      nearest = List.copyOf(nearest);
    }
  }

  /** It asks for no frame. */
  record Aside(String written, String why) implements Piece {}

  /** The names among which a person can choose; none where it is clear. */
  default List<KnownName> candidates() {
    return switch (this) {
      case Asked asked -> asked.fitting();
      case Unknown unknown -> unknown.nearest();
      case Taken _, Aside _ -> List.of();
    };
  }

  /** Whether a person has to say what is meant. */
  default boolean unclear() {
    return this instanceof Asked || this instanceof Unknown;
  }
}
