package org.framewright.frames.slate;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.shotlist.Setup;

/**
 * What a slate says: a setup of a job. As text it is {@code S1}, the job's key, the setup's code
 * and a check of four characters, without anything between them, so that a scanner that is set to
 * another keyboard loses nothing.
 *
 * @param job whose setup it is
 * @param code the setup's code in capitals; where that has other characters than digits, letters,
 *     {@code -} and {@code .}, or is longer than {@value #LONGEST_CODE}, {@code *} and the first
 *     six characters of its hash
 */
public record Slate(JobKey job, String code) {
  /** What every slate begins with, so that no product number is taken for one. */
  private static final String MARK = "S1";

  /** With a longer one the card would need a finer symbol, which is read less far away. */
  static final int LONGEST_CODE = 10;

  private static final String HASHED = "*";
  private static final int HASH = 6;
  private static final int CHECK = 4;
  private static final int BEFORE_CODE = MARK.length() + JobKey.LENGTH;
  private static final int LONGEST = BEFORE_CODE + LONGEST_CODE + CHECK;
  private static final Pattern PLAIN = Pattern.compile("[0-9A-Z.-]{1," + LONGEST_CODE + "}");
  private static final Pattern BETWEEN = Pattern.compile("[ \\u00A0]+");

  public Slate {
    boolean hashed =
        code.startsWith(HASHED)
            && code.length() == HASHED.length() + HASH
            && Base32.holds(code.substring(HASHED.length()));
    if (!hashed && !PLAIN.matcher(code).matches()) {
      throw new IllegalArgumentException("no code of a slate: " + code);
    }
  }

  /** The slate of a setup. */
  public static Slate of(JobKey job, String setup) {
    var plain = setup.strip().toUpperCase(Locale.ROOT);
    return new Slate(job, PLAIN.matcher(plain).matches() ? plain : hashed(setup));
  }

  /**
   * As a slate has a code that it cannot have as it is; codes that a list takes for one are one.
   */
  static String hashed(String setup) {
    return HASHED + Base32.ofHash(Setup.canonicalKey(setup), HASH);
  }

  /**
   * Reads a slate's text, as a symbol has it or as a person types it from the card: case and spaces
   * do not count. None where it is no slate or its check is wrong.
   */
  public static Optional<Slate> read(String text) {
    if (text.length() > 2 * LONGEST) {
      return Optional.empty();
    }
    var bare = BETWEEN.matcher(text.strip()).replaceAll("").toUpperCase(Locale.ROOT);
    int end = bare.length() - CHECK;
    if (!bare.startsWith(MARK) || end <= BEFORE_CODE || bare.length() > LONGEST) {
      return Optional.empty();
    }
    var key = JobKey.of(bare.substring(MARK.length(), BEFORE_CODE));
    if (key.isEmpty() || !check(bare.substring(0, end)).equals(bare.substring(end))) {
      return Optional.empty();
    }
    try {
      return Optional.of(new Slate(key.get(), bare.substring(BEFORE_CODE, end)));
    } catch (IllegalArgumentException e) {
      return Optional.empty(); // The check is right by chance, or a newer version made it.
    }
  }

  private static String check(String before) {
    return Base32.ofHash(before, CHECK);
  }

  private String withoutCheck() {
    return MARK + job.text() + code;
  }

  /** Its text, which its symbol holds. */
  public String print() {
    return withoutCheck() + check(withoutCheck());
  }

  /** Its text as it stands below the symbol, in groups that a person can type. */
  public String grouped() {
    return String.join(" ", MARK, job.text(), code, check(withoutCheck()));
  }

  boolean isHashed() {
    return code.startsWith(HASHED);
  }

  /** Whether it means the setup with this code, compared as the list compares codes. */
  public boolean means(String setup) {
    return key().equals(isHashed() ? hashed(setup) : Setup.canonicalKey(setup));
  }

  /** What slates have in common that mean the same setup in the same form. */
  String key() {
    return isHashed() ? code : Setup.canonicalKey(code);
  }
}
