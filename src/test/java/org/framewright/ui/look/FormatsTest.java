package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Isolated;

/** Expected values are those of Unicode CLDR 45 and later, by the browser at cldr.unicode.org. */
@Isolated("one test changes the language of the machine")
class FormatsTest {
  private static final LocalDateTime EVENING = LocalDateTime.of(2026, 11, 25, 18, 40, 5);

  private static Formats of(String language) {
    return Texts.in(Locale.forLanguageTag(language)).formats();
  }

  @Test
  void timesAreThoseOfTheCountry() {
    assertThat(of("en-GB").time(EVENING)).isEqualTo("18:40");
    assertThat(of("en-US").time(EVENING).replace('\u202f', ' ')).isEqualTo("6:40 PM");
    assertThat(of("de-DE").time(EVENING)).isEqualTo("18:40");
    assertThat(of("fr-FR").timeToTheSecond(EVENING)).isEqualTo("18:40:05");
  }

  @Test
  void daysAreThoseOfTheLanguage() {
    var day = LocalDate.of(2026, 11, 25);
    assertThat(of("en-GB").day(day)).isEqualTo("Wed, 25 Nov 2026");
    assertThat(of("de-DE").day(day)).isEqualTo("Mi., 25. Nov. 2026");
    assertThat(of("fr-FR").day(day)).isEqualTo("mer. 25 nov. 2026");
  }

  @Test
  void anotherLanguageThanTheCountrysIsWrittenAsTheCountryDoes() {
    assertThat(of("en-DE").time(EVENING)).as("English in Germany").isEqualTo("18:40");
  }

  @Test
  void sizesHaveTheUnitsOfTheLanguage() {
    assertThat(plain(of("en-GB").size(0))).isEqualTo("0 kB");
    assertThat(plain(of("de-DE").size(41_600_000))).isEqualTo("42 MB");
    assertThat(plain(of("de-DE").size(4_240_000_000L))).isEqualTo("4,2 GB");
    assertThat(plain(of("fr-FR").size(4_240_000_000L))).isEqualTo("4,2 Go");
  }

  private static String plain(String text) {
    return text.replaceAll("[\u00a0\u202f]", " ");
  }

  @Test
  void listsAreJoinedAsTheLanguageDoes() {
    var views = List.of("F", "B", "D");
    assertThat(of("en-GB").list(views)).isEqualTo("F, B and D");
    assertThat(of("de-DE").list(views)).isEqualTo("F, B und D");
    assertThat(of("fr-FR").list(views)).isEqualTo("F, B et D");
    assertThat(of("de-DE").list(List.of("F"))).isEqualTo("F");
  }

  @Test
  void workingTimeIsToTheMinute() {
    assertThat(of("de-DE").workingTime(Duration.ofMinutes(37))).isEqualTo("37 min");
    assertThat(of("fr-FR").workingTime(Duration.ofMinutes(125))).isEqualTo("2 h 5 min");
    assertThat(of("en-GB").workingTime(Duration.ofHours(60))).isEqualTo("60 h");
    assertThat(of("en-GB").stopwatch(Duration.ofMinutes(2).plusSeconds(5))).isEqualTo("2:05");
    assertThat(of("en-GB").stopwatch(Duration.ofMinutes(10).minusSeconds(1))).isEqualTo("9:59");
    assertThat(of("en-GB").stopwatch(Duration.ofMinutes(10))).isEqualTo("10 min");
    assertThat(of("en-GB").stopwatch(Duration.ofMinutes(13).minusSeconds(1))).isEqualTo("12 min");
  }

  @Test
  void aStopwatchIsLookedAtNoOftenerThanItTurns() {
    assertThat(Formats.stopwatchStays(Duration.ofMillis(61_200))).isEqualTo(Duration.ofMillis(800));
    assertThat(Formats.stopwatchStays(Duration.ZERO)).isEqualTo(Duration.ofSeconds(1));
    assertThat(Formats.stopwatchStays(Duration.ofMinutes(12).plusSeconds(59)))
        .isEqualTo(Duration.ofSeconds(1));
    assertThat(Formats.stopwatchStays(Duration.ofHours(7))).isEqualTo(Duration.ofMinutes(1));
  }

  @Test
  void aLanguageWithoutTextsIsAnsweredInEnglish() {
    var texts = Texts.in(Locale.forLanguageTag("ja-JP"));
    assertThat(texts.get("state.shot")).isEqualTo("shot");
    assertThat(texts.locale().getLanguage()).isEqualTo("en");
    assertThat(of("ar-EG").number(1200)).as("its numbers are English, too").isEqualTo("1,200");
  }

  @Test
  void theMachinesLanguagePlaysNoPart() {
    var before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(Texts.in(Locale.UK).get("state.shot")).isEqualTo("shot");
      assertThat(of("en-GB").number(1200)).isEqualTo("1,200");
    } finally {
      Locale.setDefault(before);
    }
  }
}
