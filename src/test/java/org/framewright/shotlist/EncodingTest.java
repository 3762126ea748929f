package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EncodingTest {

  private static Encoding.Decoded decode(String bytes) {
    return Encoding.decode(bytes.getBytes(StandardCharsets.ISO_8859_1));
  }

  @ParameterizedTest
  @CsvSource({
    "a_b_c_d_, 'UTF-16, little-endian'",
    "a_b_c_dd, 'UTF-16, little-endian'",
    "a_b_ccdd, UTF-8",
    "_a_b_c_d, 'UTF-16, big-endian'",
    "_a_b_cdd, 'UTF-16, big-endian'",
    "_a_bccdd, UTF-8",
    "a_b_, 'UTF-16, little-endian'",
    "_a_b, 'UTF-16, big-endian'",
    "a_, UTF-8",
    "_a, UTF-8",
    "a_b_c_d___, UTF-8",
    "_a_b_c____, UTF-8",
    "abcd, UTF-8",
  })
  void takesTextForUtf16WhereMostOfEverySecondByteIsZeroAndNoOther(String bytes, String name) {
    assertThat(decode(bytes.replace('_', '\0')).name()).isEqualTo(name);
  }

  @ParameterizedTest
  @ValueSource(strings = {"UTF-16LE", "UTF-16BE"})
  void leavesOutACharacterThatIsCut(String charset) {
    for (var mark : new String[] {"", "\uFEFF"}) {
      var whole = (mark + "Setup").getBytes(java.nio.charset.Charset.forName(charset));
      assertThat(Encoding.decode(whole).isCut()).isFalse();
      assertThat(Encoding.decode(whole).text()).isEqualTo("Setup");
      var cut = Encoding.decode(Arrays.copyOf(whole, whole.length - 1));
      assertThat(cut.isCut()).isTrue();
      assertThat(cut.text()).isEqualTo("Setu");
    }
  }

  @Test
  void looksAtTheFirstFourThousandBytesOnly() {
    assertThat(decode("a\0".repeat(2048) + "\0\0").name()).isEqualTo("UTF-16, little-endian");
    assertThat(decode("a\0".repeat(2047) + "\0\0").name()).isEqualTo("UTF-8");
  }

  @Test
  void readsNothingAsNothing() {
    assertThat(decode("").text()).isEmpty();
  }
}
