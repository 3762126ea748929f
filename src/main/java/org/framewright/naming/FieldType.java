package org.framewright.naming;

import java.util.Locale;

/** The types of fields. */
public enum FieldType {
  /** A date, a time of day or both, to any precision. */
  DATE,
  /** Letters and digits in one piece, such as a client's code. */
  CODE,
  /** Some words, joined by a separator. */
  WORDS,
  /** A person's name. */
  PERSON,
  /** A number that somebody gives. */
  NUMBER,
  /** A number that counts up by itself. */
  COUNTER,
  /** One of a few values. */
  CHOICE,
  /** A product number with its check digit: GTIN-8, -12, -13 or -14. */
  GTIN,
  /** Always the same text. */
  FIXED;

  /** The word for it in a convention. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
