package org.framewright.studio;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * The words that somebody looks for, each with those of the store that may be meant: the same word,
 * words that begin with it, that have it in them, and that are like it.
 *
 * @param words each with the words of the store by how near they are
 */
record SearchText(List<Word> words) {
  /** More words than this say nothing more. */
  static final int MOST_WORDS = 8;

  /** The shortest that words are looked for by which begin with it, or have it in them. */
  static final int SHORTEST_PART = 3;

  /** The shortest of which slips are known. */
  static final int SHORTEST_SLIP = 4;

  /** The field of a setup's code, which is known without its signs too. */
  static final String SETUP = "setup";

  /** How near a word of the store is; a lower one is nearer. */
  enum How {
    SAME,
    BEGINS,
    PART,
    SLIP
  }

  /**
   * @param parts words that have it in them
   * @param slips words like it
   */
  record Word(String text, Set<String> parts, Set<String> slips) {

    boolean meets(String word, How how) {
      return word.equals(text)
          || (how.compareTo(How.BEGINS) >= 0 && begins() && word.startsWith(text))
          || (how.compareTo(How.PART) >= 0 && parts.contains(word))
          || (how.compareTo(How.SLIP) >= 0 && slips.contains(word));
    }

    /** Few letters begin too much. */
    private boolean begins() {
      return text.length() >= SHORTEST_PART;
    }

    private String query(How how) {
      var any = new ArrayList<String>();
      any.add(quoted(text) + (how.compareTo(How.BEGINS) >= 0 && begins() ? ":*" : ""));
      if (how.compareTo(How.PART) >= 0) {
        parts.forEach(part -> any.add(quoted(part)));
      }
      if (how.compareTo(How.SLIP) >= 0) {
        slips.forEach(slip -> any.add(quoted(slip)));
      }
      return "(" + String.join(" | ", any) + ")";
    }

    /** It has letters and digits only. */
    private static String quoted(String word) {
      return "'" + word + "'";
    }
  }

  /** For the server's type {@code tsquery}: each word, as near as said. */
  String query(How how) {
    return String.join(" & ", words.stream().map(word -> word.query(how)).toList());
  }

  /** Which fields have a word that is looked for, "title: Coat" each. */
  List<String> matched(Map<String, String> fields, How how) {
    var matched = new ArrayList<String>();
    fields.forEach(
        (name, text) -> {
          var has = new ArrayList<>(SearchKey.words(text));
          if (name.equals(SETUP)) {
            has.add(SearchKey.joined(text));
          }
          if (words.stream().anyMatch(word -> has.stream().anyMatch(one -> word.meets(one, how)))) {
            matched.add(name + ": " + text);
          }
        });
    return matched;
  }

  /** What a line "client: Kvo" says. */
  static String value(String line) {
    return line.substring(line.indexOf(": ") + 2);
  }

  /** Of what it says that. */
  static String name(String line) {
    return line.substring(0, Math.max(0, line.indexOf(": "))).toLowerCase(Locale.ROOT);
  }
}
