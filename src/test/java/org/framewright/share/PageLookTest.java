package org.framewright.share;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The colours of the page: those of the app, and with contrast enough to be read. */
class PageLookTest {
  private static final Pattern TOKEN = Pattern.compile("-([a-z-]+): (#[0-9a-f]{6});");

  /** Success criterion 1.4.3 of WCAG 2.2: text. */
  private static final double READABLE = 4.5;

  /** Success criterion 1.4.11: edges of what is pressed. */
  private static final double SEEN = 3;

  /** The grounds, as the page's and as the app's style sheet begin them. */
  private static final Map<String, List<String>> GROUNDS =
      Map.of(
          "paper", List.of(":root, .paper {", ".root, .paper-sheet,"),
          "table", List.of(".table {", ".root.table, .client, .root.client {"),
          "sunlight",
              List.of("[data-look=\"sunlight\"],", ".root.sunlight, .root.table.sunlight,"));

  private static String read(Class<?> beside, String name) throws IOException {
    try (var in = beside.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), UTF_8);
    }
  }

  private static Map<String, String> tokens(String sheet, String begin) {
    int from = sheet.indexOf(begin);
    assertThat(from).as(begin).isNotNegative();
    var block = sheet.substring(sheet.indexOf('{', from), sheet.indexOf('}', from));
    var tokens = new HashMap<String, String>();
    TOKEN
        .matcher(block)
        .results()
        .forEach(
            (MatchResult one) -> tokens.put(one.group(1).replaceFirst("^-", ""), one.group(2)));
    return tokens;
  }

  private static Map<String, String> page(String ground) throws IOException {
    return tokens(read(PageFiles.class, "style.css"), GROUNDS.get(ground).getFirst());
  }

  /** The relative luminance of WCAG 2.2. */
  private static double luminance(String colour) {
    double[] parts = new double[3];
    for (int i = 0; i < 3; i++) {
      double part = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
      parts[i] = part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
  }

  private static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  @ParameterizedTest
  @ValueSource(strings = {"paper", "table", "sunlight"})
  void everyWordCanBeRead(String ground) throws IOException {
    var tokens = page(ground);
    for (var words : List.of("ink", "quiet", "good", "needs")) {
      for (var under : List.of("ground", "raised", "chosen")) {
        assertThat(contrast(tokens.get(words), tokens.get(under)))
            .as("%s on %s", words, under)
            .isGreaterThanOrEqualTo(READABLE);
      }
    }
    assertThat(contrast(tokens.get("strong-ink"), tokens.get("strong")))
        .isGreaterThanOrEqualTo(READABLE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"paper", "table", "sunlight"})
  void theEdgeOfWhatIsPressedAndTheFocusAreSeen(String ground) throws IOException {
    var tokens = page(ground);
    assertThat(contrast(tokens.get("line"), tokens.get("ground"))).isGreaterThanOrEqualTo(SEEN);
    assertThat(contrast(tokens.get("focus"), tokens.get("ground"))).isGreaterThanOrEqualTo(SEEN);
    assertThat(contrast(tokens.get("strong"), tokens.get("ground"))).isGreaterThanOrEqualTo(SEEN);
  }

  @ParameterizedTest
  @ValueSource(strings = {"paper", "table", "sunlight"})
  void coloursAreThoseOfTheApp(String ground) throws IOException {
    var app = read(PageFiles.class, "/org/framewright/ui/framewright.css");
    assertThat(tokens(app, GROUNDS.get(ground).getLast())).containsAllEntriesOf(page(ground));
  }

  @Test
  void noRuleNamesAColour() throws IOException {
    var sheet = read(PageFiles.class, "style.css");
    var rules = sheet.substring(sheet.indexOf("* { box-sizing"));
    assertThat(rules.replaceAll("(?m)^(video|dialog::backdrop).*", ""))
        .doesNotContainPattern("(color|background|fill|stroke):[^;]*(#|rgb)");
  }
}
