package org.framewright.handoff;

import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * How the selects of a hand-off were chosen. A plan, its record and its package keep it in English,
 * as {@link Selection} and {@link Extent} write it; read back, it can be said in any language.
 */
final class ChosenBy {
  private static final Pattern PARTS =
      Pattern.compile(
          "(.+?)(?:, of (setups?) (.+?))?(?:, only (raw|JPEG))?(, only what no earlier hand-off"
              + " had)?(, with the slates)?",
          Pattern.DOTALL);
  private static final Pattern RATED = Pattern.compile("rated ([1-5]) or higher");
  private static final Pattern LABELLED = Pattern.compile("labelled “(.*)”", Pattern.DOTALL);
  private static final Pattern NAMED = Pattern.compile("named in (.*)", Pattern.DOTALL);
  private static final Pattern CAME = Pattern.compile("came back in (.*)", Pattern.DOTALL);
  private static final Pattern MORE = Pattern.compile("(.+) and ([0-9]+) more", Pattern.DOTALL);

  private ChosenBy() {}

  /** The words as a text; what is not known stays as it is. */
  static Text said(String words) {
    var match = PARTS.matcher(words);
    if (!match.matches()) {
      return Text.of("{0}", words);
    }
    var said = first(match.group(1));
    if (match.group(3) != null) {
      said =
          match.group(2).equals("setup")
              ? Text.of("{0}, of setup {1}", said, match.group(3))
              : Text.of("{0}, of the setups {1}", said, setups(match.group(3)));
    }
    if (match.group(4) != null) {
      said =
          match.group(4).equals("raw")
              ? Text.of("{0}, only raw pictures", said)
              : Text.of("{0}, only JPEG", said);
    }
    if (match.group(5) != null) {
      said = Text.of("{0}, only what no earlier hand-off had", said);
    }
    return match.group(6) == null ? said : Text.of("{0}, with the slates", said);
  }

  private static Text first(String words) {
    var rated = RATED.matcher(words);
    if (rated.matches()) {
      return Text.of("rated {0} or higher", rated.group(1));
    }
    var labelled = LABELLED.matcher(words);
    if (labelled.matches()) {
      return Text.of("labelled “{0}”", labelled.group(1));
    }
    var named = NAMED.matcher(words);
    if (named.matches()) {
      return Text.of("named in {0}", named.group(1));
    }
    var came = CAME.matcher(words);
    if (came.matches()) {
      return Text.of("came back in {0}", came.group(1));
    }
    return switch (words) {
      case "chosen in the job" -> Text.of("chosen in the job");
      case "every frame" -> Text.of("every frame");
      default -> Text.of("{0}", words);
    };
  }

  private static Text setups(String words) {
    var more = MORE.matcher(words);
    return more.matches()
        ? Text.of("{0} and {1} more", more.group(1), more.group(2))
        : Text.of("{0}", words);
  }
}
