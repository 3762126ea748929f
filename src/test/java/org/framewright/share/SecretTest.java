package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SecretTest {
  /** RFC 4648, section 10, without what fills up. */
  @ParameterizedTest
  @CsvSource({
    "f, MY",
    "fo, MZXQ",
    "foo, MZXW6",
    "foob, MZXW6YQ",
    "fooba, MZXW6YTB",
    "foobar, MZXW6YTBOI"
  })
  void isWrittenInBase32(String bytes, String letters) {
    assertThat(new Secret(bytes.getBytes(StandardCharsets.US_ASCII)).text()).isEqualTo(letters);
  }

  @Test
  void has128BitsIn26Letters() {
    var random = new SecureRandom();
    var text = Secret.random(random).text();
    assertThat(text).matches("[A-Z2-7]{26}");
    assertThat(Phone.base32(text)).hasSize(16);
    assertThat(Secret.random(random).text()).isNotEqualTo(text);
  }

  @Test
  void givesEachDeviceAKeyOfItsOwn() {
    var secret = new Secret(new byte[16]);
    var expected =
        Phone.hmac(new byte[16], "device page-0a1b2c3d".getBytes(StandardCharsets.UTF_8));
    assertThat(HexFormat.of().formatHex(secret.key("page-0a1b2c3d")))
        .isEqualTo(HexFormat.of().formatHex(expected));
    assertThat(secret.key("page-0a1b2c3e")).isNotEqualTo(expected);
  }
}
