package org.framewright.naming;

import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/** How the values of a field show as text. */
sealed interface Shape
    permits TextShape, NumberShape, ChoiceShape, DateShape, GtinShape, FixedShape {

  /** What came of a person's text. */
  sealed interface Settled {
    /** Legal: the text to show, and the field's value. */
    record Legal(String text, String value) implements Settled {}

    /** Not to be made legal: why not, and its remedy. */
    record Refused(Text why, Text remedy) implements Settled {}
  }

  /** Two values of the field that this shape shows alike. */
  record Loss(String first, String second) {}

  /** Every text that the field can show in this shape. */
  Dfa texts();

  /** Makes a person's text legal; the steps taken are added to {@code steps}. */
  Settled settle(String field, String raw, List<Step> steps);

  /** The field's value that a legal text shows. */
  String value(String text);

  /** Two values that this shape shows alike, if there are any. */
  Optional<Loss> loss();

  /** What is wanted, for messages: {@code 2 to 6 capital letters and digits}. */
  Text inWords();
}
