package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SearchKeyTest {
  @Test
  void caseAccentsAndSignsDoNotCount() {
    assertThat(SearchKey.words("Éloïse's  Straße-COAT, coat"))
        .isEqualTo(List.of("eloise", "s", "strasse", "coat"));
    assertThat(SearchKey.words("İZMİR ıspanak Łódź Ærø"))
        .isEqualTo(List.of("izmir", "ispanak", "lodz", "aero"));
  }

  @Test
  void otherScriptsAreFoundToo() {
    assertThat(SearchKey.words("Пальто 外套 ٤٢")).isEqualTo(List.of("пальто", "外套", "42"));
  }

  @Test
  void aGtinIsOneWithAndWithoutZerosBefore() {
    assertThat(SearchKey.words("04006381333931 4006381333931")).containsExactly("4006381333931");
    assertThat(SearchKey.words("001")).containsExactly("001");
  }

  @Test
  void nothingButLettersAndDigitsIsLeft() {
    assertThat(SearchKey.words("'; drop table x; -- % _ \\ \u0000 \" & | ! :* <->"))
        .containsExactly("drop", "table", "x");
    assertThat(SearchKey.words("\uD83D \uD83D\uDC57")).isEmpty();
    assertThat(SearchKey.words("a".repeat(100_000)).getFirst()).hasSize(SearchKey.LONGEST);
  }

  @ParameterizedTest
  @CsvSource({
    "KVO_0123.NEF, kvo, 123",
    "kvo0123, kvo, 123",
    "KVO 123, kvo, 123",
    "kvo_012_F_03, kvo012f, 3",
    "kvo_012_03, kvo012-, 3",
    "0123, '', 123",
    "Détail, detail, -1"
  })
  void aFrameIsAStemAndANumber(String name, String stem, long number) {
    assertThat(FrameRange.asked(name)).isEqualTo(new FrameRange("", stem, number, number));
  }

  @Test
  void framesInARowAreOneRange() {
    var ranges =
        FrameRange.joined(
            List.of(
                FrameRange.of("001", "KVO_0009"),
                FrameRange.of("001", "KVO_0010"),
                FrameRange.of("001", "KVO_0010"),
                FrameRange.of("001", "KVO_0012"),
                FrameRange.of("002", "KVO_0011"),
                FrameRange.of("001", "detail")));
    assertThat(ranges)
        .containsExactlyInAnyOrder(
            new FrameRange("001", "kvo", 9, 10),
            new FrameRange("001", "kvo", 12, 12),
            new FrameRange("002", "kvo", 11, 11),
            new FrameRange("001", "detail", -1, -1));
  }
}
