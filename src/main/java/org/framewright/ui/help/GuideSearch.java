package org.framewright.ui.help;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Finds sections of the guide by words: each word that is typed begins a word of the page, whatever
 * its case and accents. A page whose title has them comes before one whose headings have them, and
 * that before one whose text does.
 */
final class GuideSearch {
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");

  /** What a word counts for that is found there; one that is found whole counts for more. */
  private static final int IN_TITLE = 100;

  private static final int IN_HEADING = 20;
  private static final int IN_TEXT = 3;

  private static final int SNIPPET = 90;

  /**
   * What was found.
   *
   * @param anchor of the section; empty for the top of the page
   * @param says the section's heading, or the line with the first word
   */
  record Hit(String page, String title, String anchor, String says, int weight) {}

  private record Part(GuidePage.Section section, List<String> heading, List<String> text) {}

  private record Indexed(GuidePage page, List<String> title, List<Part> parts) {}

  private final List<Indexed> pages;

  GuideSearch(Guide guide) {
    pages = guide.pages().stream().map(GuideSearch::index).toList();
  }

  private static Indexed index(GuidePage page) {
    return new Indexed(
        page,
        words(page.title()),
        page.sections().stream()
            .map(part -> new Part(part, words(part.heading()), words(part.text())))
            .toList());
  }

  /** The words of a text without case and accents. */
  static List<String> words(String text) {
    var plain =
        MARKS
            .matcher(Normalizer.normalize(text, Normalizer.Form.NFKD))
            .replaceAll("")
            .toLowerCase(Locale.ROOT)
            .replace("\u00df", "ss");
    return WORD.matcher(plain).results().map(found -> found.group()).toList();
  }

  /** A hit a page, the best first; nothing for no words. */
  List<Hit> find(String typed) {
    var wanted = words(typed);
    if (wanted.isEmpty()) {
      return List.of();
    }
    var hits = new ArrayList<Hit>();
    pages.forEach(page -> hit(page, wanted).ifPresent(hits::add));
    // The order of the index where two weigh the same: the sort is stable.
    hits.sort(Comparator.comparingInt(Hit::weight).reversed());
    return List.copyOf(hits);
  }

  private static Optional<Hit> hit(Indexed page, List<String> wanted) {
    int all = 0;
    for (var word : wanted) {
      int best = IN_TITLE * begins(page.title(), word);
      for (var part : page.parts()) {
        best = Math.max(best, weight(part, word));
      }
      if (best == 0) {
        return Optional.empty();
      }
      all += best;
    }
    var top = page.parts().getFirst();
    for (var part : page.parts()) {
      if (weight(part, wanted) > weight(top, wanted)) {
        top = part;
      }
    }
    return Optional.of(
        new Hit(
            page.page().name(),
            page.page().title(),
            top.section().anchor(),
            says(top.section(), wanted),
            all));
  }

  private static int weight(Part part, List<String> wanted) {
    return wanted.stream().mapToInt(word -> weight(part, word)).sum();
  }

  private static int weight(Part part, String word) {
    return Math.max(IN_HEADING * begins(part.heading(), word), IN_TEXT * begins(part.text(), word));
  }

  /** 2 where a word is there whole, 1 where one begins so, 0 where there is none. */
  private static int begins(List<String> words, String wanted) {
    return words.contains(wanted)
        ? 2
        : words.stream().anyMatch(word -> word.startsWith(wanted)) ? 1 : 0;
  }

  private static String says(GuidePage.Section section, List<String> wanted) {
    var line =
        section
            .text()
            .lines()
            .filter(one -> wanted.stream().anyMatch(word -> begins(words(one), word) > 0))
            .findFirst()
            .or(() -> section.text().lines().findFirst())
            .orElse("");
    var brief = line.length() <= SNIPPET ? line : line.substring(0, cut(line)) + "\u2026";
    return section.heading().isEmpty() ? brief : section.heading() + " \u00b7 " + brief;
  }

  private static int cut(String line) {
    int blank = line.lastIndexOf(' ', SNIPPET);
    return blank < SNIPPET / 2 ? SNIPPET : blank;
  }
}
