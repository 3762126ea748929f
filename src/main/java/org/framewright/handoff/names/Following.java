package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.List;

/** What a number that stands alone goes on with. */
sealed interface Following {
  /** As it is written. */
  String written();

  /** The frames of a number. */
  NameIndex.Hits of(NameIndex index, Token number);

  /**
   * A name before it, of which it is another last number: {@code IMG 1234, 1236}.
   *
   * @param before the tokens before the number; none where a number went before
   * @param digits as many as that number has
   */
  record Name(String written, List<Token> before, int digits) implements Following {
    @Override
    public NameIndex.Hits of(NameIndex index, Token number) {
      return index.find(with(number));
    }

    List<Token> with(Token number) {
      var run = new ArrayList<>(before);
      run.add(number);
      return run;
    }
  }

  /** A heading: {@code Look 003: 1, 5}. */
  record Heading(String written, List<Token> tokens, SearchBudget budget) implements Following {
    @Override
    public NameIndex.Hits of(NameIndex index, Token number) {
      return index.following(tokens, List.of(number), budget);
    }
  }
}
