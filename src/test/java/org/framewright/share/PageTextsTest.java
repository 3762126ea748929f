package org.framewright.share;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the page says: all of it in each language, and nothing outside of it. */
class PageTextsTest {
  /** The plural forms that a text needs in each language (Unicode CLDR). */
  private static final Map<String, Set<String>> PLURALS =
      Map.of(
          "en", Set.of("one", "other"),
          "de", Set.of("one", "other"),
          "fr", Set.of("one", "many", "other"));

  /** The same in another language: values alone, signs, words that both have. */
  private static final Set<String> ALIKE = Set.of("act.pickup", "state.pickup", "told.comment");

  private static final Pattern VALUE = Pattern.compile("\\{\\d}");
  private static final Pattern KEY = Pattern.compile("'([a-z][A-Za-z]*(?:\\.[A-Za-z-]+)*\\.?)'");
  private static final Pattern SAID = Pattern.compile("\\bsay\\(\\s*'([a-zA-Z.-]+)'\\s*[,)]");

  private static String file(String name) throws IOException {
    try (var in = PageFiles.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), UTF_8);
    }
  }

  private static JsonNode texts(String language) throws IOException {
    return new JsonMapper().readTree(file("texts-" + language + ".json"));
  }

  private static Set<String> keys(JsonNode texts) {
    var keys = new TreeSet<String>();
    texts.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  /** All forms of a text. */
  private static List<String> forms(JsonNode text) {
    if (text.isTextual()) {
      return List.of(text.asText());
    }
    var forms = new ArrayList<String>();
    text.forEach(form -> forms.add(form.asText()));
    return forms;
  }

  private static Set<String> values(String form) {
    return VALUE.matcher(form).results().map(one -> one.group()).collect(Collectors.toSet());
  }

  private static List<String> scripts() {
    return PageFiles.NAMES.stream().filter(name -> name.endsWith(".js")).toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void aLanguageHasEveryTextWithItsValues(String language) throws IOException {
    var english = texts("en");
    var texts = texts(language);
    assertThat(keys(texts)).isEqualTo(keys(english));
    for (var key : keys(english)) {
      var wanted = values(forms(english.get(key)).getLast());
      for (var form : forms(texts.get(key))) {
        assertThat(values(form)).as(key).isEqualTo(wanted);
      }
      assertThat(texts.get(key).isTextual()).as(key).isEqualTo(english.get(key).isTextual());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "de", "fr"})
  void whatIsCountedHasThePluralsOfTheLanguage(String language) throws IOException {
    var texts = texts(language);
    for (var key : keys(texts)) {
      if (texts.get(key).isObject()) {
        assertThat(keys(texts.get(key))).as(key).isEqualTo(PLURALS.get(language));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void nothingIsLeftInEnglish(String language) throws IOException {
    var english = texts("en");
    var texts = texts(language);
    for (var key : keys(english)) {
      var words = VALUE.matcher(forms(english.get(key)).getFirst()).replaceAll("");
      if (words.matches(".*\\p{L}{4,}.*") && !ALIKE.contains(key)) {
        assertThat(forms(texts.get(key))).as(key).isNotEqualTo(forms(english.get(key)));
      }
    }
  }

  @Test
  void frenchHasItsNarrowSpaces() throws IOException {
    var texts = texts("fr");
    for (var key : keys(texts)) {
      for (var form : forms(texts.get(key))) {
        assertThat(form)
            .as(key)
            .doesNotMatch(".*[^\\u202f\\d][;:?!»](\\s.*|$)")
            .doesNotContain("'");
      }
    }
  }

  @Test
  void everyTextThatIsSaidIsThere() throws IOException {
    var keys = keys(texts("en"));
    var missing = new LinkedHashSet<String>();
    for (var script : scripts()) {
      SAID.matcher(file(script))
          .results()
          .map(one -> one.group(1))
          .filter(key -> !keys.contains(key))
          .forEach(missing::add);
    }
    Stream.of(SetupState.values())
        .map(state -> "state." + state.word())
        .filter(key -> !keys.contains(key))
        .forEach(missing::add);
    Stream.of(Role.values())
        .flatMap(role -> Stream.of("role.", "pair.role.", "pair.name.").map(it -> it + role.word()))
        .filter(key -> !keys.contains(key))
        .forEach(missing::add);
    assertThat(missing).isEmpty();
  }

  @Test
  void everyTextThatIsThereIsSaid() throws IOException {
    var said = new TreeSet<String>();
    for (var script : scripts()) {
      KEY.matcher(file(script)).results().map(one -> one.group(1)).forEach(said::add);
    }
    assertThat(keys(texts("en")))
        .allMatch(
            key ->
                said.contains(key)
                    || said.stream().anyMatch(it -> it.endsWith(".") && key.startsWith(it)));
  }

  @Test
  void noScriptMakesMarkupOfText() throws IOException {
    for (var script : scripts()) {
      assertThat(file(script))
          .as(script)
          .doesNotContain(
              "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(");
    }
    assertThat(file("index.html")).doesNotContain("style=", "<style", " on", "javascript:");
  }
}
