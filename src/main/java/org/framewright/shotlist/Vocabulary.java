package org.framewright.shotlist;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The words that lists use, in several languages: of columns, views, crosses and sums. They are
 * data, in {@code headings.properties}.
 */
final class Vocabulary {
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern NUMBER_SIGN =
      Pattern.compile("[#\u2116\uFF03]|\\b[nN][\u00B0\u00BA]");
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern SET_UP = Pattern.compile("^set up\\b");

  /** Headings in two languages: {@code Style No. / Artikel}, {@code Look (Nr.)}. */
  private static final Pattern BETWEEN_LANGUAGES =
      Pattern.compile("[/|\\\\()\\[\\]\n\uFF08\uFF09]");

  private static final Pattern SUM =
      Pattern.compile("[\\d\\s.,:=()\u00D7xX-]*\\p{L}{0,12}[.)\\s]*");

  /** How much less sure a part of a heading is than all of it. */
  private static final int OF_A_PART = 10;

  /** Words of a list as they came with the program. */
  static final Vocabulary WORDS = load();

  private final Map<String, Map<Heading, Integer>> meanings = new HashMap<>();
  private final Map<String, String> views = new HashMap<>();
  private final Set<String> wanted = new HashSet<>();
  private final Set<String> unwanted = new HashSet<>();
  private final Set<String> totals = new HashSet<>();

  private Vocabulary() {}

  private static Vocabulary load() {
    var words = new Vocabulary();
    var data = new Properties();
    try (var in = Vocabulary.class.getResourceAsStream("headings.properties");
        var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      data.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    data.stringPropertyNames().forEach(key -> words.add(key, data.getProperty(key)));
    return words;
  }

  private void add(String key, String value) {
    var parts = key.split("\\.", -1);
    for (var word : all(value)) {
      switch (parts[0]) {
        case "view-words" -> views.putIfAbsent(plain(word), parts[1]);
        case "mark" -> (parts[1].equals("wanted") ? wanted : unwanted).add(mark(word));
        case "total" -> totals.add(plain(word));
        default ->
            meanings
                .computeIfAbsent(plain(word), _ -> new EnumMap<>(Heading.class))
                .merge(Heading.ofKey(parts[0]), Integer.valueOf(parts[1]), Math::min);
      }
    }
  }

  /** The words of a line of the data: {@code a|b c} stands for {@code a c} and {@code b c}. */
  private static List<String> all(String line) {
    var all = new ArrayList<String>();
    for (var phrase : line.split(",", -1)) {
      var made = List.of("");
      for (var slot : phrase.strip().split(" ", -1)) {
        var next = new ArrayList<String>();
        for (var begun : made) {
          for (var choice : slot.split("\\|", -1)) {
            next.add(begun.isEmpty() ? choice : begun + " " + choice);
          }
        }
        made = next;
      }
      all.addAll(made);
    }
    return all;
  }

  /**
   * All that a heading may mean, and how surely, the smaller the surer. Where the whole is not
   * known, its first known part counts.
   */
  Map<Heading, Integer> meanings(String heading) {
    var whole = meanings.get(plain(heading));
    if (whole != null) {
      return whole;
    }
    if (heading.length() <= 200 && BETWEEN_LANGUAGES.matcher(heading).find()) {
      for (var part : BETWEEN_LANGUAGES.split(heading, -1)) {
        var known = meanings.get(plain(part));
        if (known != null) {
          var less = new EnumMap<Heading, Integer>(Heading.class);
          known.forEach((meaning, sure) -> less.put(meaning, sure + OF_A_PART));
          return less;
        }
      }
    }
    return Map.of();
  }

  /** How sure the whole heading would be. */
  static int rank(int sure) {
    return sure > OF_A_PART ? sure - OF_A_PART : sure;
  }

  /** The view that a word means, in English: {@code front} for {@code Vorderansicht}. */
  Optional<String> view(String word) {
    return Optional.ofNullable(views.get(plain(word)));
  }

  /** Whether a cell holds a cross or its like. */
  boolean isWanted(String cell) {
    return wanted.contains(mark(cell));
  }

  /** Whether a cell says that something is not wanted. */
  boolean isUnwanted(String cell) {
    return unwanted.contains(mark(cell));
  }

  /** Whether a cell begins a line of sums: {@code Total}, {@code Summe: 24}. */
  boolean isTotal(String cell) {
    if (cell.length() > 80 || (!cell.isEmpty() && !Character.isLetter(cell.charAt(0)))) {
      return false;
    }
    if (totals.contains(plain(cell))) {
      return true;
    }
    int end = 0;
    while (end < cell.length() && ":=0123456789(".indexOf(cell.charAt(end)) < 0) {
      end++;
    }
    return end > 0
        && totals.contains(plain(cell.substring(0, end)))
        && SUM.matcher(cell.substring(end)).matches();
  }

  private static String mark(String cell) {
    return cell.strip().toLowerCase(Locale.ROOT);
  }

  /** Lower case, without accents; runs of anything but letters and digits are one space. */
  static String plain(String heading) {
    var stripped = heading.strip();
    if (stripped.equals("#")) {
      return "#";
    }
    if (stripped.chars().allMatch(c -> c < 0x80)) {
      return setup(plainAscii(stripped));
    }
    var signs = NUMBER_SIGN.matcher(stripped).replaceAll(" no ");
    var bare =
        MARKS
            .matcher(Normalizer.normalize(signs, Normalizer.Form.NFKD))
            .replaceAll("")
            .toLowerCase(Locale.ROOT)
            .replace('\u0142', 'l');
    var words = BETWEEN_WORDS.matcher(bare).replaceAll(" ").strip();
    return setup(words);
  }

  /** The same for what most lists are written in, in one go: a long list has many cells. */
  private static String plainAscii(String text) {
    var plain = new StringBuilder(text.length() + 4);
    boolean between = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean isSign = c == '#' && text.length() > 1 && text.chars().anyMatch(Character::isLetter);
      if (!isSign && !Character.isLetterOrDigit(c)) {
        between = true;
        continue;
      }
      if ((between || isSign) && !plain.isEmpty()) {
        plain.append(' ');
      }
      plain.append(isSign ? "no" : "" + Character.toLowerCase(c));
      between = isSign;
    }
    return plain.toString();
  }

  private static String setup(String words) {
    return words.startsWith("set up") ? SET_UP.matcher(words).replaceFirst("setup") : words;
  }
}
