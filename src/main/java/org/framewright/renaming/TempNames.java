package org.framewright.renaming;

import java.util.regex.Pattern;

/**
 * Names between two names: {@code fw-BATCH-NUMBER.tmp}, so that a file left under one shows its
 * batch without a journal.
 */
final class TempNames {
  private static final Pattern NAME =
      Pattern.compile("fw-(" + JournalFormat.BATCH.pattern() + ")-[0-9]{1,9}\\.tmp");

  private TempNames() {}

  static String of(String batch, int number) {
    return "fw-" + batch + "-" + number + ".tmp";
  }

  static boolean isOf(String batch, String name) {
    var match = NAME.matcher(name);
    return match.matches() && match.group(1).equals(batch);
  }

  static boolean isAny(String name) {
    return name.startsWith("fw-") && NAME.matcher(name).matches();
  }
}
