package org.framewright.naming;

import java.util.Locale;

/** What a finding is about. */
public enum Rule {
  SAME_NAME(
      "Two different sets of values, or two frames, make the same name.",
      "Show what is different between them, or a counter."),
  TWO_READINGS(
      "A name can be read back in two ways.",
      "Put text between the fields that none of their values can contain, or fix their length."),
  WRONG_KIND(
      "A name of one kind can be read as another kind.",
      "Give one of them text that the other does not have."),
  SORT_ORDER(
      "The order of names is not the order of time.",
      "Write year, month, day and then the counter, all with fixed numbers of digits."),
  NOT_PORTABLE(
      "A name is illegal or risky on a place that it travels to.",
      "Use another character, or take the place out of travels-to."),
  TOO_LONG(
      "The longest possible name or path does not fit a place that it travels to.",
      "Give the longest fields a smaller length."),
  COUNTER_FULL("A counter runs out before the planned frames do.", "Give it one more digit."),
  CASE_CLASH(
      "Two names differ only in case or normalisation, which common file systems ignore.",
      "Give the field letters: upper or letters: lower."),
  UNKNOWN_FIELD(
      "A pattern shows a field that is not declared, or shows it in other brackets.",
      "Correct its spelling, or declare it."),
  UNUSED_FIELD(
      "A field is declared and no name shows it.", "Show it, or take the declaration out."),
  RESERVED_NAME(
      "A name that means something to the program is missing, spelt differently or of no use.",
      "Use the name in the table of names with a meaning."),
  TOO_LARGE(
      "The convention is too large for a proof within the bounds; nothing is claimed about the"
          + " rule.",
      "Show fewer fields, or shorter ones, in one name."),
  BAD_CONVENTION("The file is not a convention.", "The finding says what is expected at its line."),
  BAD_VALUE(
      "A value cannot become a legal text of its field.", "The finding says what the field takes."),
  MISSING_VALUE("A value is missing.", "Give it.");

  private final String meaning;
  private final String remedy;

  Rule(String meaning, String remedy) {
    this.meaning = meaning;
    this.remedy = remedy;
  }

  /** The rule's id in reports, such as {@code same-name}. */
  public String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What is so, in one sentence. */
  public String meaning() {
    return meaning;
  }

  /** What is usually done about it, in one sentence. */
  public String remedy() {
    return remedy;
  }
}
