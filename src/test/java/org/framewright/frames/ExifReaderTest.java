package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The fields and their forms are those of CIPA DC-008 (Exif), sections 4.6.4 and 4.6.5. */
class ExifReaderTest {

  private static Capture read(TestCamera.Tiff... blocks) throws IOException {
    return ExifReader.read(
        List.of(blocks).stream().map(block -> Bytes.of(block.file())).toList(), false);
  }

  private static TestCamera.Tiff withExif(int tag, String text) {
    var ifd = new TestCamera.Tiff();
    var exif = new TestCamera.Tiff();
    exif.ascii(tag, text);
    ifd.child(0x8769, exif);
    return ifd;
  }

  @ParameterizedTest
  @CsvSource({
    "2026:11:25 12:34:56, 2026-11-25T12:34:56",
    "2026-11-25 12:34:56, 2026-11-25T12:34:56",
    "2026-11-25T12:34:56, 2026-11-25T12:34:56",
    "2026:11:25 12:34:56+01:00, 2026-11-25T12:34:56",
    "0001:01:01 00:00:00, 0001-01-01T00:00:00",
    "9999:12:31 23:59:59, 9999-12-31T23:59:59",
  })
  void readsATimeInTheFormsThatBodiesWrite(String text, LocalDateTime time) {
    assertThat(ExifReader.time(text)).contains(time);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "", "0000:00:00 00:00:00", "    :  :     :  :  ", "2026:02:29 12:00:00",
        "2026:11:25 24:00:00", "2026:11:25 12:60:00", "2026:11:25", "26:11:25 12:00:00"
      })
  void readsNoTimeThatIsNone(String text) {
    assertThat(ExifReader.time(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "1, 100000000",
    "25, 250000000",
    "012, 12000000",
    "999999999, 999999999",
    "9999999999, 999999999",
    "'5 ', 500000000",
    "5x7, 500000000",
    "x5, 0",
    "/, 0",
    ":, 0",
    "09, 90000000",
    "'', 0",
  })
  void readsSubSecondsAsTheDigitsOfAFraction(String digits, int nanos) {
    assertThat(ExifReader.nanos(digits)).isEqualTo(nanos);
  }

  @ParameterizedTest
  @CsvSource({
    "+00:00, 0",
    "-00:00, 0",
    "+01:00, 3600",
    "-05:30, -19800",
    "+09:45, 35100",
    "+18:00, 64800",
    "-18:00, -64800",
  })
  void readsAnOffsetFromUtc(String text, int seconds) {
    assertThat(ExifReader.offset(text).orElseThrow().getTotalSeconds()).isEqualTo(seconds);
  }

  @ParameterizedTest
  @ValueSource(strings = {"+18:01", "-19:00", "   :  ", "01:00", "+1:00", "Z", "+01:00 "})
  void readsNoOffsetThatIsNone(String text) {
    assertThat(ExifReader.offset(text)).isEmpty();
  }

  @Test
  void takesTheTimeOfTheOriginalBeforeThatOfItsDigitizing() throws IOException {
    var ifd = new TestCamera.Tiff();
    var exif = new TestCamera.Tiff();
    exif.ascii(0x9004, "2026:11:25 13:00:00");
    exif.ascii(0x9292, "5");
    ifd.child(0x8769, exif);
    assertThat(read(ifd).time()).contains(LocalDateTime.parse("2026-11-25T13:00:00.5"));
    exif.ascii(0x9003, "2026:11:25 12:00:00");
    assertThat(read(ifd).time()).contains(LocalDateTime.parse("2026-11-25T12:00:00"));
    exif.ascii(0x9003, "    :  :     :  :  ");
    assertThat(read(ifd).time()).contains(LocalDateTime.parse("2026-11-25T13:00:00.5"));
  }

  @Test
  void takesTheFirstBlockThatSaysSomething() throws IOException {
    assertThat(
            read(withExif(0x9003, "0000:00:00 00:00:00"), withExif(0x9003, "2026:11:25 12:00:00"))
                .time())
        .contains(LocalDateTime.parse("2026-11-25T12:00:00"));
  }

  @Test
  void namesABodyByWhateverItSaysOfItself() throws IOException {
    var maker = new TestCamera.Tiff();
    maker.ascii(0x010F, " Invented\u0001\u0002Works ");
    assertThat(read(maker).camera()).contains(new Camera("Invented Works", "", ""));
    var model = new TestCamera.Tiff();
    model.ascii(0x0110, "Body A");
    assertThat(read(model).camera()).contains(new Camera("", "Body A", ""));
    assertThat(read(withExif(0xA431, "A-1")).camera()).contains(new Camera("", "", "A-1"));
    var dng = new TestCamera.Tiff();
    dng.ascii(0xC62F, "D-1");
    assertThat(read(dng).camera()).contains(new Camera("", "", "D-1"));
    assertThat(read(new TestCamera.Tiff()).camera()).isEmpty();
    assertThat(read(dng, withExif(0xA431, "A-1")).camera()).contains(new Camera("", "", "A-1"));
  }

  @Test
  void passesOverTextThatNobodySees() throws IOException {
    var ifd = new TestCamera.Tiff();
    ifd.ascii(0x0110, "\u0001\u0002");
    assertThat(read(ifd).camera()).isEmpty();
  }

  @Test
  void readsTheOffsetOfTheOriginal() throws IOException {
    assertThat(read(withExif(0x9011, "+09:30")).offset())
        .contains(java.time.ZoneOffset.ofHoursMinutes(9, 30));
    assertThat(read(withExif(0x9011, "   :  ")).offset()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3, 5})
  void readsARatingFromOneToFive(int rating) throws IOException {
    var ifd = new TestCamera.Tiff();
    ifd.shorts(0x4746, rating);
    assertThat(read(ifd).rating()).isEqualTo(OptionalInt.of(rating));
  }

  @Test
  void readsARatingThatIsAShareOfAHundredAfterThatInStars() throws IOException {
    var share = new TestCamera.Tiff();
    share.shorts(0x4749, 75);
    assertThat(read(share).rating()).hasValue(4);
    var both = new TestCamera.Tiff();
    both.shorts(0x4746, 2);
    both.shorts(0x4749, 75);
    assertThat(read(both).rating()).hasValue(2);
    var unrated = new TestCamera.Tiff();
    unrated.shorts(0x4746, 0);
    unrated.shorts(0x4749, 99);
    assertThat(read(unrated).rating()).hasValue(5);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 6, 99})
  void readsNoRatingThatIsNone(int rating) throws IOException {
    var ifd = new TestCamera.Tiff();
    ifd.shorts(0x4746, rating);
    assertThat(read(ifd).rating()).isEmpty();
  }

  @Test
  void passesOverTextThatIsLongerThanAnyNameIs() throws IOException {
    var ifd = new TestCamera.Tiff();
    ifd.ascii(0x0110, "x".repeat(4095));
    assertThat(read(ifd).camera().orElseThrow().model()).hasSize(4095);
    ifd.ascii(0x0110, "x".repeat(4096));
    assertThat(read(ifd).camera()).isEmpty();
  }
}
