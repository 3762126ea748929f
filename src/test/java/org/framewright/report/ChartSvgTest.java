package org.framewright.report;

import static org.framewright.AssertThat.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.framewright.report.chart.Chart;
import org.framewright.report.chart.Chart.Anchor;
import org.framewright.report.chart.Chart.Drawing;
import org.framewright.report.chart.Chart.Tone;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Charts as they are written into pages and drawn on paper. */
class ChartSvgTest {
  private static String svg(Chart chart) {
    var page = new StringBuilder();
    ChartSvg.write(chart, new Html(page), false, 100);
    return page.toString();
  }

  private static String word(String text, double room) {
    var chart = new Drawing(900).within(0, 20, text, 20, Tone.INK, room).said(40, "said");
    return svg(chart).replaceFirst("(?s).*<text[^>]*>", "").replaceFirst("(?s)</text>.*", "");
  }

  /** Widths of letters of Noto Sans, by its own tables. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "a wool coat with two rows of buttons",
        "WWWWWWWWWWWWWWWWWWWWWWWW",
        "COATCOATCOATCOATCOATCOAT"
      })
  void whatIsCutIsNoWiderThanItsRoomWhateverItsLetters(String text) throws Exception {
    var shown = word(text, 200);
    assertThat(shown).endsWith("…");
    assertThat(shown.length()).isLessThan(text.length());
    try (var fonts = new Fonts()) {
      assertThat(fonts.outline(shown, 20, false).width()).isBetween(120.0, 210.0);
    }
  }

  @Test
  void whatHasRoomStaysAsItIs() {
    assertThat(word("008 Coat", 200)).isEqualTo("008 Coat");
    assertThat(word("\uD83D\uDC57".repeat(40), 100)).as("no half of a pair").endsWith("\uDC57…");
  }

  /** (L1 + 0.05) / (L2 + 0.05) of 4.5 at least: WCAG 2.2, success criterion 1.4.3. */
  @ParameterizedTest
  @CsvSource({
    "INK, GREY",
    "INK, MID",
    "INK, PALE",
    "INK, FAINT",
    "INK, GROUND",
    "NEEDS, GROUND",
    "GROUND, DARK"
  })
  void wordsCanBeReadOnWhatIsBehindThem(Tone words, Tone behind) {
    var chart =
        new Drawing(90)
            .box(0, 0, 90, 40, behind)
            .bold(9, 20, "7", 20, Anchor.START, words)
            .said(40, "said");
    var fills = Pattern.compile("fill=\"#(\\w{6})\"").matcher(svg(chart)).results().toList();
    double one = luminance(Integer.parseInt(fills.getFirst().group(1), 16));
    double other = luminance(Integer.parseInt(fills.getLast().group(1), 16));
    assertThat((Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05))
        .isGreaterThanOrEqualTo(4.5);
  }

  private static double luminance(int colour) {
    return 0.2126 * linear(colour >> 16) + 0.7152 * linear(colour >> 8) + 0.0722 * linear(colour);
  }

  private static double linear(int value) {
    double part = (value & 0xFF) / 255.0;
    return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
  }

  /** Lam and alef become one sign, and what comes last in writing stands on the left. */
  @Test
  void arabicIsDrawnFromTheRightInTheShapesThatNeighboursGive() throws Exception {
    try (var fonts = new Fonts()) {
      var word = fonts.outline("سلام", 20, false);
      var meem = fonts.outline("م", 20, false);
      double apart = meem.width();
      for (var letter : List.of("س", "ل", "ا")) {
        apart += fonts.outline(letter, 20, false).width();
      }
      assertThat(word.width()).isLessThan(apart * 0.9);
      var all = word.shape().getPathIterator(null);
      double[] its = new double[6];
      double[] of = new double[6];
      for (var first = meem.shape().getPathIterator(null); !first.isDone(); first.next()) {
        assertThat(all.currentSegment(its)).isEqualTo(first.currentSegment(of));
        assertThat(Arrays.equals(its, of)).isTrue();
        all.next();
      }
    }
  }

  @Tag("slow")
  @Test
  void aSignThatNoFontHasIsDrawnAsOnAPage() throws Exception {
    try (var fonts = new Fonts()) {
      assertThat(fonts.outline("\uD83D\uDC57", 20, false).width())
          .isEqualTo(fonts.outline("#", 20, false).width());
      assertThat(fonts.outline("羊", 20, true).width())
          .isNotEqualTo(fonts.outline("#", 20, true).width());
    }
  }
}
