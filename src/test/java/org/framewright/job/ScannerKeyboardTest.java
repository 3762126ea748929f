package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.framewright.Templates;
import org.framewright.frames.slate.JobKey;
import org.framewright.frames.slate.Slate;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The rows of keys are those of xkeyboard-config, which is named in the file. */
class ScannerKeyboardTest {
  private static final Path ROWS = Path.of("src/test/resources/keyboards/rows.txt");
  private static final Map<ScannerKeyboard, String> TYPED = rows();
  private static final JobKey JOB = JobKey.of("K7Q2").orElseThrow();

  private static Map<ScannerKeyboard, String> rows() {
    try {
      var lines = Files.readAllLines(ROWS).stream().filter(line -> !line.startsWith("# ")).toList();
      var rows = new EnumMap<ScannerKeyboard, String>(ScannerKeyboard.class);
      for (int i = 0; i < lines.size(); i += 3) {
        rows.put(ScannerKeyboard.valueOf(lines.get(i)), lines.get(i + 1) + lines.get(i + 2));
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * What a computer reads that is set to a keyboard, when a scanner presses the keys of a US one.
   */
  static String read(String scanned, ScannerKeyboard keyboard) {
    var us = TYPED.get(ScannerKeyboard.US);
    var read = new StringBuilder();
    for (int i = 0; i < scanned.length(); i++) {
      char c = scanned.charAt(i);
      read.append(c <= ' ' ? c : TYPED.get(keyboard).charAt(us.indexOf(c)));
    }
    return read.toString();
  }

  private static Setup setup(String code, String ean) {
    return new Setup(
        code, "", List.of(), OptionalInt.empty(), new LinkedHashMap<>(Map.of("EAN", ean)));
  }

  private static SetupCodes codes(Setup... setups) {
    return SetupCodes.of(new ShotList(List.of(setups)), Templates.fashionDays(), List.of(JOB));
  }

  /** The check digit as GS1 has it: weights 1 and 3 from the left for thirteen digits. */
  private static String ean(Random random) {
    var digits = IntStream.range(0, 12).map(_ -> random.nextInt(10)).toArray();
    var sum = IntStream.range(0, 12).map(i -> digits[i] * (i % 2 == 0 ? 1 : 3)).sum();
    var text = new StringBuilder();
    IntStream.of(digits).forEach(text::append);
    return text.append((10 - sum % 10) % 10).toString();
  }

  @ParameterizedTest
  @EnumSource(ScannerKeyboard.class)
  void everyKeyIsToldFromWhatItWrites(ScannerKeyboard keyboard) {
    var us = TYPED.get(ScannerKeyboard.US);
    assertThat(keyboard.pressed(TYPED.get(keyboard))).contains(us);
  }

  @Test
  void whatNoKeyWritesWasNotScanned() {
    assertThat(ScannerKeyboard.GERMAN.pressed("12\u20ac4")).isEmpty();
    assertThat(ScannerKeyboard.US.pressed("12\u20ac4")).contains("12\u20ac4");
  }

  @Test
  void capsLockDoesNotMatter() {
    assertThat(ScannerKeyboard.FRENCH.pressed("\u00c9\u00c8")).contains("27");
  }

  @Property(tries = 400)
  void aProductNumberIsRestoredOnEveryKeyboardAndNeverAmbiguous(
      @ForAll @IntRange(max = 10_000_000) int seed) {
    var number = ean(new Random(seed));
    var codes = codes(setup("001", ""), setup("002", number));
    var unknowing = codes(setup("001", ""));
    for (var keyboard : ScannerKeyboard.values()) {
      var read = read(number, keyboard);
      assertThat(codes.find(read)).isEqualTo(new Scanned.One(setup("002", number)));
      assertThat(codes.has(read, ScannerKeyboard.US)).isTrue();
      assertThat(unknowing.find(read)).isEqualTo(new Scanned.Unknown(number, true));
      assertThat(unknowing.has(read, ScannerKeyboard.US)).isFalse();
      var right = new LinkedHashSet<String>();
      for (var other : ScannerKeyboard.values()) {
        other.pressed(read).map(ScannedText::of).filter(ScannedText::fitsACheck).stream()
            .map(ScannedText::code)
            .forEach(right::add);
      }
      assertThat(right).containsExactly(number);
    }
  }

  @Property(tries = 400)
  void aSlateIsRestoredOnEveryKeyboardAndNeverAmbiguous(
      @ForAll @IntRange(max = 10_000_000) int seed) {
    var random = new Random(seed);
    var code =
        random
                .ints(6, 'A', 'Z' + 1)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            + "-."
            + random.nextInt(100);
    var setup = setup(random.nextBoolean() ? code : code + "\u00e4", "");
    var slate = Slate.of(JOB, setup.code()).print();
    var codes = codes(setup("001", ""), setup);
    for (var keyboard : ScannerKeyboard.values()) {
      for (var text : List.of(slate, slate.toLowerCase(Locale.ROOT))) {
        var read = read(text, keyboard);
        assertThat(codes.find(read)).isEqualTo(new Scanned.One(setup));
        assertThat(codes(setup("001", "")).find(read))
            .isEqualTo(new Scanned.StraySlate(Slate.read(slate).orElseThrow().code(), false));
        var right = new LinkedHashSet<Slate>();
        for (var other : ScannerKeyboard.values()) {
          other
              .pressed(read)
              .map(ScannedText::of)
              .flatMap(ScannedText::slate)
              .ifPresent(right::add);
        }
        assertThat(right).hasSize(1);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(ScannerKeyboard.class)
  void anArticleNumberIsFoundOnEveryKeyboard(ScannerKeyboard keyboard) {
    for (var code : List.of("AZ-1007/m", "QWERTY.42", "zy_8", "A 12")) {
      var listed = new ArrayList<>(List.of(setup("001", ""), setup(code, "")));
      assertThat(codes(listed.toArray(Setup[]::new)).find(read(code, keyboard)))
          .isEqualTo(new Scanned.One(setup(code, "")));
    }
  }

  @Test
  void whatStandsInTheListAsItWasReadIsMeant() {
    var codes = codes(setup("AY1", ""), setup("AZ1", ""));
    assertThat(codes.find("AY1")).isEqualTo(new Scanned.One(setup("AY1", "")));
  }

  @Test
  void aKeyboardThatWasToldByAScanIsRememberedForTheNext() {
    var codes = codes(setup("AY1", ""), setup("AZ1", ""), setup("ZOE-7", ""));
    var told = codes.read(read("ZOE-7", ScannerKeyboard.GERMAN), ScannerKeyboard.US);
    assertThat(told.scanned()).isEqualTo(new Scanned.One(setup("ZOE-7", "")));
    assertThat(told.keyboard()).isNotEqualTo(ScannerKeyboard.US);
    assertThat(codes.read("AY1", told.keyboard()).scanned())
        .isEqualTo(new Scanned.One(setup("AZ1", "")));
  }

  @Test
  void whatTwoKeyboardsReadAsTwoSetupsIsAsked() {
    // As typed on a German keyboard and on a French one; as it was read it is not in the list.
    var read = "AW-";
    var german = ScannerKeyboard.GERMAN.pressed(read).orElseThrow();
    var french = ScannerKeyboard.FRENCH.pressed(read).orElseThrow();
    var codes = codes(setup(german, ""), setup(french, ""));
    assertThat(Stream.of(german, french)).doesNotContain(read).doesNotHaveDuplicates();
    assertThat(codes.find(read)).isInstanceOf(Scanned.Several.class);
  }

  @Test
  void theWholeSymbolOfAFrenchComputerIsRead() {
    var codes = codes(setup("001", "9506000134352"));
    var symbol = "01095060001343521726123110ABC123\u001D2199";
    assertThat(codes.find(read(symbol, ScannerKeyboard.FRENCH))).isInstanceOf(Scanned.One.class);
  }
}
