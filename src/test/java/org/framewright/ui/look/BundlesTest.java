package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import com.ibm.icu.text.MessagePattern;
import com.ibm.icu.text.PluralRules;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The bundles say the same, each in its language and as that is written. */
class BundlesTest {
  /** Words that are the same in English and in the language, in the trade or in general. */
  private static final Map<String, Set<String>> EQUAL =
      Map.of(
          "de",
          Set.of(
              "Framewright",
              "Start",
              "Esc",
              "Alt",
              "Tab",
              "Name",
              "Model",
              "Studio",
              "Website",
              "Logo"),
          "fr",
          Set.of(
              "Framewright",
              "Convention",
              "Copies",
              "Alt",
              "Ctrl",
              "Tab",
              "Source",
              "Studio",
              "Logo",
              "minutes",
              "client",
              "code",
              "date",
              "version"));

  /** Examples and signs, in which no word is to be translated. */
  private static final Set<String> NO_WORDS =
      Set.of(
          "app.title",
          "proposal.prompt",
          "clientList.prompt",
          "settings.percent",
          "copies.speed",
          "handoff.basis.rated.at",
          "handoff.line.why",
          "handoff.progress",
          "time.minutes",
          "sets.join.store",
          "sets.join.add",
          "time.hours",
          "time.hoursAndMinutes");

  private static final Pattern LETTERS = Pattern.compile("\\p{L}");

  /** Before these the French leave a narrow space, and the others none. */
  private static final Pattern CLOSE = Pattern.compile("[\\p{L}\\p{N}}»)][:;!?](?=\\s|$)");

  /** {@code many} is for millions and more, of which no text here tells. */
  private static final Set<String> NEVER_SO_MANY = Set.of("many");

  private static Properties bundle(String ending) throws IOException {
    var all = new Properties();
    try (Reader in =
        new InputStreamReader(
            Texts.class.getResourceAsStream("/org/framewright/ui/texts" + ending + ".properties"),
            StandardCharsets.UTF_8)) {
      all.load(in);
    }
    return all;
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void noTextIsMissingOrLeftOver(String language) throws IOException {
    assertThat(new TreeSet<>(bundle("_" + language).keySet()))
        .isEqualTo(new TreeSet<>(bundle("").keySet()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "_de", "_fr"})
  void noKeyStandsTwice(String ending) throws IOException {
    var lines =
        Files.readAllLines(
            Path.of("src/main/resources/org/framewright/ui/texts" + ending + ".properties"));
    var keys =
        lines.stream()
            .filter(line -> !line.startsWith("#") && line.contains("="))
            .map(line -> line.substring(0, line.indexOf('=')))
            .toList();
    assertThat(keys).doesNotHaveDuplicates().hasSizeGreaterThan(600);
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void eachTextTakesTheSameValues(String language) throws IOException {
    var english = bundle("");
    var other = bundle("_" + language);
    var differing = new TreeSet<String>();
    for (var key : english.stringPropertyNames()) {
      var asked = arguments(english.getProperty(key));
      var given = arguments(other.getProperty(key, ""));
      if (!asked.keySet().equals(given.keySet())) {
        differing.add(key + " takes " + given.keySet() + ", not " + asked.keySet());
      }
    }
    assertThat(differing).isEmpty();
  }

  /** What each argument is: {@code NONE}, {@code SIMPLE} or {@code PLURAL}. */
  private static Map<Integer, Set<MessagePattern.ArgType>> arguments(String text) {
    var pattern = new MessagePattern(text);
    var arguments = new TreeMap<Integer, Set<MessagePattern.ArgType>>();
    for (int i = 0; i < pattern.countParts(); i++) {
      var part = pattern.getPart(i);
      if (part.getType() == MessagePattern.Part.Type.ARG_START) {
        arguments
            .computeIfAbsent(pattern.getPart(i + 1).getValue(), _ -> new TreeSet<>())
            .add(part.getArgType());
      }
    }
    return arguments;
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "_de", "_fr"})
  void eachPluralHasTheFormsOfItsLanguage(String ending) throws IOException {
    var locale = ending.isEmpty() ? Locale.ENGLISH : Locale.of(ending.substring(1));
    var forms = new TreeSet<>(PluralRules.forLocale(locale).getKeywords());
    forms.removeAll(NEVER_SO_MANY);
    var all = bundle(ending);
    var lacking = new TreeSet<String>();
    for (var key : all.stringPropertyNames()) {
      for (var said : plurals(all.getProperty(key))) {
        // Where one is said as many are, or a number of its own stands for it, there is one form.
        if (!said.containsAll(forms) && !said.equals(Set.of("=0", "other"))) {
          lacking.add(key + " has " + said);
        }
      }
    }
    assertThat(lacking).isEmpty();
  }

  private static List<Set<String>> plurals(String text) {
    var pattern = new MessagePattern(text);
    var plurals = new ArrayList<Set<String>>();
    for (int i = 0; i < pattern.countParts(); i++) {
      var part = pattern.getPart(i);
      if (part.getType() == MessagePattern.Part.Type.ARG_START
          && part.getArgType() == MessagePattern.ArgType.PLURAL) {
        var forms = new TreeSet<String>();
        for (int at = i + 1; at < pattern.getLimitPartIndex(i); at++) {
          if (pattern.getPartType(at) == MessagePattern.Part.Type.MSG_START) {
            at = pattern.getLimitPartIndex(at);
          } else if (pattern.getPartType(at) == MessagePattern.Part.Type.ARG_SELECTOR) {
            forms.add(pattern.getSubstring(pattern.getPart(at)));
          }
        }
        plurals.add(forms);
      }
    }
    return plurals;
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "_de", "_fr"})
  void noStraightApostropheQuotesWhatFollows(String ending) throws IOException {
    var all = bundle(ending);
    assertThat(all.stringPropertyNames()).noneMatch(key -> all.getProperty(key).contains("'"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void whatIsSaidAsInEnglishIsAllowedTo(String language) throws IOException {
    var english = bundle("");
    var other = bundle("_" + language);
    var untranslated = new TreeSet<String>();
    for (var key : english.stringPropertyNames()) {
      var text = other.getProperty(key, "");
      if (text.equals(english.getProperty(key))
          && LETTERS.matcher(withoutValues(text)).find()
          && !NO_WORDS.contains(key)
          && !EQUAL.get(language).contains(text)) {
        untranslated.add(key + "=" + text);
      }
    }
    assertThat(untranslated).isEmpty();
  }

  private static String withoutValues(String text) {
    return text.replaceAll("\\{\\d}", "");
  }

  @Test
  void whatIsAllowedToBeTheSameIs() throws IOException {
    for (var language : EQUAL.keySet()) {
      var english = bundle("").values();
      var other = bundle("_" + language).values();
      assertThat(EQUAL.get(language)).allMatch(english::contains).allMatch(other::contains);
    }
  }

  /**
   * Sources: Duden, "Satz- und Zeichengestaltung"; Imprimerie nationale, "Lexique des règles
   * typographiques"; both from memory.
   */
  @Test
  void quotationsAndSpacesAreThoseOfTheLanguage() throws IOException {
    var german = bundle("_de");
    assertThat(german.values())
        .noneMatch(text -> ("" + text).matches("(?s).*[\"”«»].*"))
        .noneMatch(text -> ("" + text).matches("(?s).*\\s[:;!?](\\s.*|$)"));
    var french = bundle("_fr");
    var wrong = new HashMap<String, String>();
    for (var key : french.stringPropertyNames()) {
      var text = french.getProperty(key).replaceAll("\\w:\\d", "");
      var tight = CLOSE.matcher(text).find();
      var loose = text.matches("(?s).*[ \u00a0][:;!?](\\s.*|$)");
      var quoted =
          text.matches("(?s).*[\"“”„].*")
              || text.matches("(?s).*«[^\u202f].*")
              || text.matches("(?s).*[^\u202f]».*");
      if (tight || loose || quoted) {
        wrong.put(key, text);
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void aCountIsSaidAsTheLanguageCounts() {
    var german = Texts.in(Locale.GERMANY);
    var french = Texts.in(Locale.FRANCE);
    assertThat(german.get("answer.frames", 1)).isEqualTo("1 Aufnahme");
    assertThat(german.get("answer.frames", 0)).isEqualTo("0 Aufnahmen");
    assertThat(german.get("answer.frames", 1200)).isEqualTo("1.200 Aufnahmen");
    // The singular stands for nought as well in French (CLDR, plural rules).
    assertThat(french.get("answer.frames", 0)).isEqualTo("0 image");
    assertThat(french.get("answer.frames", 2)).isEqualTo("2 images");
    assertThat(french.get("answer.frames", 1200)).isEqualTo("1\u202f200 images");
  }
}
