package org.framewright.naming;

import java.util.Locale;

/** What a finding is about. */
public enum Rule {
  /** Two different sets of values make the same name. */
  SAME_NAME,
  /** A name can be read back in two ways. */
  TWO_READINGS,
  /** A name of one kind can be read as another kind. */
  WRONG_KIND,
  /** The order of names is not the order of time. */
  SORT_ORDER,
  /** A name is illegal or risky on a place that it travels to. */
  NOT_PORTABLE,
  /** The longest possible name or path does not fit a place that it travels to. */
  TOO_LONG,
  /** A counter runs out before the planned frames do. */
  COUNTER_FULL,
  /** Two names differ only in case or normalisation. */
  CASE_CLASH,
  /** A pattern shows a field that is not declared. */
  UNKNOWN_FIELD,
  /** A field is declared and no name shows it. */
  UNUSED_FIELD,
  /**
   * The convention is too large for a proof within the bounds; nothing is claimed about the rule.
   */
  TOO_LARGE,
  /** The file is not a convention. */
  BAD_CONVENTION,
  /** A value cannot become a legal text of its field. */
  BAD_VALUE,
  /** A value is missing. */
  MISSING_VALUE;

  /** The rule's id in reports, such as {@code same-name}. */
  public String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
