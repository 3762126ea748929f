package org.framewright.job;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.SequencedSet;
import java.util.regex.Pattern;
import org.framewright.frames.slate.Slate;
import org.framewright.naming.Gtin;

/**
 * What a scanner typed, and the codes that may be meant by it. A scanner may put the symbology
 * before what it read (ISO/IEC 15424: {@code ]}, a letter, a digit). A symbol of GS1 holds element
 * strings, of which 01 is the GTIN, or a web address with the GTIN after {@code /01/} (GS1 General
 * Specifications, section 3; GS1 Digital Link).
 */
record ScannedText(String code, List<String> meant) {
  /** More than any symbol of the trade holds; what is longer is no scan. */
  private static final int LONGEST = 2_000;

  private static final int GTIN = 14;
  private static final char SEPARATOR = '\u001D';
  private static final Pattern SYMBOLOGY = Pattern.compile("^\\][A-Za-z][0-9A-Za-z]");
  private static final Pattern ELEMENT = Pattern.compile("^\\(?01\\)?([0-9]{14})");
  private static final Pattern ADDRESS =
      Pattern.compile("^https?://\\S+?/01/([0-9]{8,14})(?:[/?]|$)");

  static ScannedText of(String typed) {
    var bare = SYMBOLOGY.matcher(bounded(typed).strip()).replaceFirst("");
    int from = 0;
    while (from < bare.length() && bare.charAt(from) == SEPARATOR) {
      from++;
    }
    var code = bare.substring(from).strip();
    var meant = new LinkedHashSet<String>();
    meant.add(code);
    add(ELEMENT, code, meant);
    add(ADDRESS, code, meant);
    return new ScannedText(code, List.copyOf(meant));
  }

  /** What of it may be a scan. */
  static String bounded(String typed) {
    return typed.length() > LONGEST ? typed.substring(0, LONGEST) : typed;
  }

  /** Whether a check in it says that it was read rightly. */
  boolean fitsACheck() {
    return slate().isPresent() || meant.stream().anyMatch(text -> Gtin.of14(text).isPresent());
  }

  /** What one would call it by: the product number in a symbol of GS1, else the text itself. */
  String called() {
    var number = meant.getLast();
    return meant.size() == 1
        ? code
        : number.length() == GTIN && number.startsWith("0") ? number.substring(1) : number;
  }

  /** The slate that was scanned, of whatever job; none where it is none. */
  Optional<Slate> slate() {
    return Slate.read(code);
  }

  private static void add(Pattern pattern, String code, SequencedSet<String> meant) {
    var matcher = pattern.matcher(code);
    if (matcher.find()) {
      Gtin.of14(matcher.group(1)).ifPresent(meant::add);
    }
  }
}
