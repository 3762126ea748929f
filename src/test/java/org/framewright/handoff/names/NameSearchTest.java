package org.framewright.handoff.names;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names of selects as retouchers write them into names of files; common practice, no source. */
class NameSearchTest {
  private static final NameSearch SEARCH =
      new NameSearch(
          List.of(
              new KnownName(1, "KVO_001_F_0001", KnownName.Kind.SELECT),
              new KnownName(1, "A/IMG_4711", KnownName.Kind.NOW),
              new KnownName(2, "KVO_001_F_0012", KnownName.Kind.SELECT),
              new KnownName(3, "KVO_002_B_0003", KnownName.Kind.SELECT),
              new KnownName(4, "cover", KnownName.Kind.SELECT)));

  private static String found(String text) {
    return SEARCH
        .in(text)
        .map(
            found ->
                found.name().frame()
                    + (found.whole() ? " whole" : " part")
                    + (found.same() ? " " : " otherwise ")
                    + found.rest())
        .orElse("-");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '=',
      textBlock =
          """
          KVO_001_F_0001                       = 1 whole []
          kvo_001_f_0001_v02                   = 1 whole [v, 02]
          final KVO_001_F_0001 (2)             = 1 whole [final, 2]
          KVO-1-F-1                            = 1 whole otherwise []
          IMG_4711-Edit                        = 1 whole [Edit]
          001_F_0012 copy                      = 2 part [copy]
          F 0012                               = 2 part otherwise []
          Bram_002_B_0003                      = 3 part [Bram]
          cover                                = 4 whole []
          the cover, final                     = 4 whole [the, final]
          """)
  void aNameInALongerOneIsFoundWithWhatStandsBesideIt(String text, String expected) {
    assertThat(found(text)).isEqualTo(expected);
  }

  @Test
  void aWholeNameCountsMoreThanALongerPartOfAnother() {
    assertThat(found("002_B_0003 IMG_4711")).isEqualTo("1 whole [002, B, 0003]");
    assertThat(found("IMG_4711 002_B_0003")).isEqualTo("1 whole [002, B, 0003]");
    assertThat(found("cover KVO_001_F_0001")).isEqualTo("1 whole [cover]");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "holiday", "KVO", "KVO_001", "001_F", "0001", "KVO_001_F_0002"})
  void aTextWithoutTheEndOfANameHoldsNone(String text) {
    assertThat(SEARCH.in(text)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "KVO_001_F_0001 KVO_001_F_0012",
        "001_F_0001 and 002_B_0003",
        "IMG_4711_KVO_001_F_0012"
      })
  void aTextThatHoldsTwoNamesIsOfNeither(String text) {
    var longer = SEARCH.in(text).map(NameSearch.Found::name).map(KnownName::text);
    if (text.startsWith("IMG")) {
      // The longer one is the name; the camera's stands before it.
      assertThat(longer).contains("KVO_001_F_0012");
    } else {
      assertThat(longer).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"KVO_004_F_0012", "KVO_004_F_0012_v01", "Bram 7-F-12"})
  void theEndOfANameBehindAnotherNumberIsOfAnotherFrame(String text) {
    assertThat(SEARCH.in(text)).isEmpty();
  }

  @Test
  void theSameFrameByTwoNamesOfItIsOne() {
    var search =
        new NameSearch(
            List.of(
                new KnownName(1, "AB_01", KnownName.Kind.SELECT),
                new KnownName(1, "CD_02", KnownName.Kind.NOW)));
    assertThat(search.in("AB_01 CD_02")).map(found -> found.name().frame()).contains(1);
  }

  @Test
  void theNearestNamesAreThoseWithTheFewestChanges() {
    assertThat(SEARCH.near("KVO_001_G_0001"))
        .extracting(KnownName::text)
        .startsWith("KVO_001_F_0001");
    assertThat(SEARCH.near("holiday in the snow")).isEmpty();
    assertThat(SEARCH.near("___")).isEmpty();
    assertThat(SEARCH.near("")).isEmpty();
  }

  @Test
  void ofALongTextTheBeginningIsLookedAt() {
    var beginning = "x ".repeat(193) + "KVO_001_F_0001";
    assertThat(beginning).hasSize(400);
    assertThat(SEARCH.in(beginning)).isPresent();
    assertThat(SEARCH.in("x" + beginning)).isEqualTo(Optional.empty());
  }

  @Test
  void aBudgetIsSpentOnceAndThenNothingIsLeft() {
    var budget = new SearchBudget(10);
    assertThat(budget.take(4)).isTrue();
    assertThat(budget.take(6)).isTrue();
    assertThat(budget.take(1)).isFalse();
    var small = new SearchBudget(10);
    assertThat(small.take(11)).isFalse();
    assertThat(small.take(1)).isFalse();
  }
}
