package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {
  private static final Text EARLY = Text.of("too early to tell");
  private static final String ENGLISH = "too early to tell";

  private final Words words = new Words();

  /** RFC 9110, section 12.5.4. */
  @ParameterizedTest
  @CsvSource({
    "'en', too early to tell",
    "'de-AT, en;q=0.5', 'zu früh, um das zu sagen'",
    "'fr', trop tôt pour le dire",
    "'ja, fr;q=0.8, de;q=0.9', 'zu früh, um das zu sagen'",
    "'ja', too early to tell",
    "'*', too early to tell",
    "'', too early to tell",
    "';;;q=x', too early to tell"
  })
  void theFirstLanguageThatWeSpeakIsSpoken(String accepted, String said) {
    assertThat(words.in(accepted).apply(EARLY)).isEqualTo(said);
  }

  @Test
  void whoAsksForNoneOrForEndlesslyManyIsSpokenToInEnglish() {
    assertThat(words.in(null).apply(EARLY)).isEqualTo(ENGLISH);
    assertThat(words.in("de, ".repeat(100) + "de").apply(EARLY)).isEqualTo(ENGLISH);
  }
}
