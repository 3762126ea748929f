package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SignatureTest {
  private static final String NONCE = "0123456789abcdef";
  private static final byte[] KEY = "a key".getBytes(StandardCharsets.UTF_8);
  private static final byte[] BODY = "[1]".getBytes(StandardCharsets.UTF_8);

  private static String header(long time, String mac) {
    return "Fw device=page-0a1b2c3d, time=" + time + ", nonce=" + NONCE + ", mac=" + mac;
  }

  private static Signature signed(String message) {
    var mac = Hmac.of(KEY, message.getBytes(StandardCharsets.UTF_8));
    return Signature.of(header(1000, HexFormat.of().formatHex(mac))).orElseThrow();
  }

  /** RFC 4231, sections 4.2 to 4.4, 4.7 and 4.8. */
  @ParameterizedTest
  @CsvSource({
    "0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b, 4869205468657265,"
        + " b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7",
    "4a656665, 7768617420646f2079612077616e7420666f72206e6f7468696e673f,"
        + " 5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
    "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa, dd*50,"
        + " 773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe",
    "aa*131, 54657374205573696e67204c6172676572205468616e20426c6f636b2d53697a65204b6579202d2048617368204b6579204669727374,"
        + " 60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54",
    "aa*131, 5468697320697320612074657374207573696e672061206c6172676572207468616e20626c6f636b2d73697a65206b657920616e642061206c6172676572207468616e20626c6f636b2d73697a6520646174612e20546865206b6579206e6565647320746f20626520686173686564206265666f7265206265696e6720757365642062792074686520484d414320616c676f726974686d2e,"
        + " 9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2"
  })
  void theMacIsThatOfTheStandard(String key, String message, String mac) {
    assertThat(HexFormat.of().formatHex(Hmac.of(bytes(key), bytes(message)))).isEqualTo(mac);
  }

  private static byte[] bytes(String hex) {
    int times = hex.indexOf('*');
    return HexFormat.of()
        .parseHex(
            times < 0
                ? hex
                : hex.substring(0, times).repeat(Integer.parseInt(hex.substring(times + 1))));
  }

  @Test
  void aMacOfPiecesIsThatOfTheWhole() {
    assertThat(Hmac.of(KEY, new byte[] {1, 2}, new byte[] {3}))
        .isEqualTo(Hmac.of(KEY, new byte[] {1, 2, 3}));
  }

  @Test
  void aRequestIsKnownByItsMac() {
    assertThat(signed("POST\n/events\n1000\n" + NONCE + "\n[1]").isBy(KEY, "POST", "/events", BODY))
        .isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GET\n/events\n1000\n" + NONCE + "\n[1]",
        "POST\n/events?\n1000\n" + NONCE + "\n[1]",
        "POST\n/events\n1001\n" + NONCE + "\n[1]",
        "POST\n/events\n1000\n0123456789abcdee\n[1]",
        "POST\n/events\n1000\n" + NONCE + "\n[2]",
        "POST\n/events\n1000\n" + NONCE + "\n"
      })
  void aMacOfAnythingElseIsNone(String message) {
    assertThat(signed(message).isBy(KEY, "POST", "/events", BODY)).isFalse();
  }

  @Test
  void anotherKeyIsNone() {
    var signature = signed("POST\n/events\n1000\n" + NONCE + "\n[1]");
    assertThat(signature.isBy(new byte[] {1}, "POST", "/events", BODY)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Fw",
        "Basic YTpi",
        "Fw device=desk, time=1, nonce=0123456789abcdef, mac=",
        "Fw device=page-0a1b2c3d, time=-1, nonce=0123456789abcdef, mac=",
        "Fw device=page-0a1b2c3d, time=1234567890123456, nonce=0123456789abcdef, mac=",
        "Fw device=page-0a1b2c3d, time=1, nonce=0123456789abcde, mac=",
        "Fw device=page-../../x, time=1, nonce=0123456789abcdef, mac=",
        "fw device=page-0a1b2c3d, time=1, nonce=0123456789abcdef, mac="
      })
  void aHeaderOfAnotherShapeIsNone(String header) {
    var whole = header.endsWith("mac=") ? header + "0".repeat(64) : header;
    assertThat(Signature.of(whole)).isEqualTo(Optional.empty());
  }

  @Test
  void noHeaderIsNone() {
    assertThat(Signature.of(null)).isEqualTo(Optional.empty());
  }

  @Test
  void aTimeHoldsForFiveMinutesEachWay() {
    var now = Instant.ofEpochMilli(1_795_680_000_000L);
    for (long off : new long[] {0, 300_000, -300_000}) {
      assertThat(at(now.toEpochMilli() + off).isTimely(now)).as("" + off).isTrue();
    }
    for (long off : new long[] {300_001, -300_001, -1_000_000_000_000L}) {
      assertThat(at(now.toEpochMilli() + off).isTimely(now)).as("" + off).isFalse();
    }
  }

  private static Signature at(long time) {
    return Signature.of(header(time, "0".repeat(64))).orElseThrow();
  }

  @Test
  void aStreamIsOpenedOnceByASignature() {
    var nonces = new Nonces();
    var now = Instant.ofEpochMilli(1000);
    assertThat(nonces.use(at(1000), now)).isTrue();
    assertThat(nonces.use(at(1000), now.plus(Duration.ofMinutes(5)))).isFalse();
    // By then its time is long over.
    assertThat(nonces.use(at(1000), now.plus(Duration.ofMinutes(16)))).isTrue();
  }
}
