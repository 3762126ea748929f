package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javafx.scene.paint.Color;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The contrast of text against its ground reaches 4.5:1, as WCAG 2.2 asks in success criterion
 * 1.4.3 (level AA); the ratio is computed by its definitions of contrast ratio and relative
 * luminance.
 */
class ContrastTest {
  private static final double ENOUGH = 4.5;

  /** What is written in which inks on which ground, on the table as on the sheet. */
  private static final Map<List<String>, List<String>> INKS_BY_GROUNDS =
      Map.of(
          List.of("-ground", "-raised", "-chosen"),
          List.of("-ink", "-quiet", "-good", "-needs"),
          List.of("-strong"),
          List.of("-strong-ink"),
          List.of("-strong-ink"),
          List.of("-strong"));

  /** A ground in a look, by the rule that gives it its colours. */
  enum Ground {
    SHEET("\\.root, \\.paper-sheet[^{]*\\{(.*?)\\}"),
    TABLE("\\.table, \\.root\\.table[^{]*\\{(.*?)\\}"),
    SUNLIGHT("\\.root\\.sunlight, [^{]*\\{(.*?)\\}"),
    BEFORE_THE_CAMERA("\\.list-cell:filled:on-set \\{(.*?)\\}");

    private final String rule;

    Ground(String rule) {
      this.rule = rule;
    }
  }

  private static String sheet() throws IOException {
    return Files.readString(Path.of("src/main/resources/org/framewright/ui/framewright.css"))
        .replaceAll("(?s)/\\*.*?\\*/", "");
  }

  private static Map<String, Color> colours(String rule) throws IOException {
    var body = Pattern.compile(rule, Pattern.DOTALL).matcher(sheet());
    assertThat(body.find()).as(rule).isTrue();
    var colours = new LinkedHashMap<String, Color>();
    var said = Pattern.compile("(-[a-z-]+):\\s*(#[0-9a-fA-F]{6});").matcher(body.group(1));
    while (said.find()) {
      colours.put(said.group(1), Color.web(said.group(2)));
    }
    return colours;
  }

  @ParameterizedTest
  @EnumSource
  void textStandsOutFromItsGround(Ground ground) throws IOException {
    var colours = new LinkedHashMap<>(colours(Ground.SHEET.rule));
    colours.putAll(colours(ground.rule));
    if (ground == Ground.BEFORE_THE_CAMERA) {
      var strong = colours.get("-strong");
      Stream.of("-ground", "-raised", "-chosen").forEach(each -> colours.put(each, strong));
    }
    var weak = new TreeMap<String, Double>();
    INKS_BY_GROUNDS.forEach(
        (grounds, inks) ->
            grounds.forEach(
                on ->
                    inks.forEach(
                        ink -> {
                          var ratio = ratio(colours.get(ink), colours.get(on));
                          if (ratio < ENOUGH) {
                            weak.put(ink + " on " + on, ratio);
                          }
                        })));
    assertThat(weak).isEmpty();
  }

  @Test
  void everyColourOfTextIsOneOfTheInks() throws IOException {
    var known = new TreeSet<String>();
    INKS_BY_GROUNDS.values().forEach(known::addAll);
    var used = new TreeSet<String>();
    var said = Pattern.compile("-fx-(?:text|prompt-text)-fill:\\s*([^;]+);").matcher(sheet());
    while (said.find()) {
      used.add(said.group(1).strip());
    }
    assertThat(used).isNotEmpty().isSubsetOf(known);
  }

  @Test
  void theRatioIsThatOfTheDefinition() {
    assertThat(ratio(Color.BLACK, Color.WHITE)).isEqualTo(21);
    assertThat(ratio(Color.WHITE, Color.WHITE)).isEqualTo(1);
  }

  private static double ratio(Color one, Color other) {
    var lighter = Math.max(luminance(one), luminance(other));
    var darker = Math.min(luminance(one), luminance(other));
    return (lighter + 0.05) / (darker + 0.05);
  }

  private static double luminance(Color colour) {
    return 0.2126 * linear(colour.getRed())
        + 0.7152 * linear(colour.getGreen())
        + 0.0722 * linear(colour.getBlue());
  }

  private static double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
  }
}
