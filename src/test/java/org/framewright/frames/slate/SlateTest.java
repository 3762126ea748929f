package org.framewright.frames.slate;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.NotBlank;
import net.jqwik.api.constraints.StringLength;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SlateTest {
  private static final JobKey KEY = new JobKey("K7Q2");

  /** Source of the checks and hashes: python3, hashlib, with the alphabet written out. */
  @ParameterizedTest
  @CsvSource({
    "K7Q2, 014, S1K7Q2014C75Y",
    "0000, a-012, S10000A-012VMKJ",
    "ZZZZ, A.B-9, S1ZZZZA.B-9G0KF",
    "K7Q2, 1, S1K7Q21TE8M",
    "K7Q2, Ärmel 3, S1K7Q2*MYC35FZ3SD",
    "K7Q2, Look 7, S1K7Q2*N1231RR8BE",
    "K7Q2, 裙子, S1K7Q2*XTEEF49W8R",
    "K7Q2, Thirteen-long, S1K7Q2*JER068025J",
    "K7Q2, 12345678901, S1K7Q2*4N5A4JT4W6",
    "K7Q2, a_1, S1K7Q2*8YSMNX9187"
  })
  void aSlateIsItsMarkTheJobsKeyTheSetupAndACheck(String key, String setup, String text) {
    var slate = Slate.of(new JobKey(key), setup);
    assertThat(slate.print()).isEqualTo(text);
    assertThat(Slate.read(text)).contains(slate);
    assertThat(slate.means(setup)).isTrue();
  }

  @Test
  void whatStandsBelowTheSymbolCanBeTypedInGroups() {
    var slate = Slate.of(KEY, "014");
    assertThat(slate.grouped()).isEqualTo("S1 K7Q2 014 C75Y");
    assertThat(Slate.read(" s1 k7q2 014  c75y\n")).contains(slate);
  }

  /** 95012346 and 4006381333931 are product numbers whose check digit is right, from memory. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "S1",
        "S1K7Q2C75Y",
        "S1K7Q2014C75X",
        "S2K7Q2014C75Y",
        "S1K7U2014C75Y",
        "XS1K7Q2014C75Y",
        "S1K7Q2014C75YY",
        "95012346",
        "4006381333931",
        "https://example.org/S1K7Q2014C75Y",
        "S1K7Q2\u0661\u0661\u0661C75Y"
      })
  void whatIsNotSureIsNoSlate(String text) {
    assertThat(Slate.read(text)).isEmpty();
  }

  @Test
  void aTextOfAnyLengthIsNoSlate() {
    assertThat(Slate.read("S1".repeat(2_000_000))).isEmpty();
    assertThat(Slate.read(" ".repeat(2_000_000))).isEmpty();
  }

  /** A check of 20 bits: about 1 of a million. 300,000 with a fixed seed have 0 or 1. */
  @Tag("slow")
  @Test
  void chanceTextsAreNoSlates() {
    var random = new Random(7);
    int read = 0;
    for (int i = 0; i < 300_000; i++) {
      var text = "S1" + Base32.digits(random.nextLong(), 11);
      read += Slate.read(text).isPresent() ? 1 : 0;
    }
    assertThat(read).isLessThan(3);
  }

  @Test
  void oneWrongCharacterMakesItNoSlate() {
    var text = Slate.of(KEY, "A-12").print();
    for (int i = 0; i < text.length(); i++) {
      for (var c : (Base32.ALPHABET + "-.*").toCharArray()) {
        if (c != text.charAt(i)) {
          assertThat(Slate.read(text.substring(0, i) + c + text.substring(i + 1))).isEmpty();
        }
      }
    }
  }

  @Property(tries = 300)
  void everyCodeOfAListHasASlateThatIsReadBackAndFitsTheSmallSymbols(
      @ForAll @NotBlank @StringLength(max = 40) String setup) {
    var slate = Slate.of(KEY, setup);
    assertThat(Slate.read(slate.print())).contains(slate);
    assertThat(slate.means(setup)).isTrue();
    // ISO/IEC 18004, table 7: versions 1-M and 2-H hold 20 alphanumeric characters.
    assertThat(slate.print()).hasSizeLessThanOrEqualTo(20).matches("[0-9A-Z.*-]+");
  }

  @ParameterizedTest
  @CsvSource({
    "014, 14, true",
    "14, 0014, true",
    "a-1, A-01, true",
    "014, 015, false",
    "1.0, 10, false",
    "Ärmel 3, ärmel 03, true",
    "Ärmel 3, Ärmel 4, false",
    "00000000014, 14, true",
    "14, 00000000014, true"
  })
  void codesAreComparedAsTheListComparesThem(String printed, String listed, boolean same) {
    var slate = Slate.of(KEY, printed);
    var setups =
        new SlateSetups(new ShotList(List.of(new Setup(listed, "a"), new Setup("x", "b"))));
    assertThat(slate.means(listed)).isEqualTo(same);
    assertThat(setups.setup(slate).map(Setup::code).orElse("").equals(listed)).isEqualTo(same);
  }

  @Property(tries = 200)
  void keysOfJobsAreFourCharactersThatAreNotMistaken(@ForAll @IntRange(max = 1000) int seed) {
    var key = JobKey.random(new Random(seed));
    assertThat(JobKey.of(key.text())).contains(key);
    assertThat(key.text()).matches("[0-9A-HJKMNP-TV-Z]{4}");
  }

  @Test
  void keysOfJobsDiffer() {
    var random = new Random(1);
    var keys = new HashSet<JobKey>();
    for (int i = 0; i < 100; i++) {
      keys.add(JobKey.random(random));
    }
    // 100 of a million: two are the same with a chance of 0.5 percent; with this seed none are.
    assertThat(keys).hasSize(100);
    assertThatThrownBy(() -> new JobKey("K7QU")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Slate(KEY, "a b")).isInstanceOf(IllegalArgumentException.class);
  }
}
