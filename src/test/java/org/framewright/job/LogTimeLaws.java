package org.framewright.job;

import static org.assertj.core.api.Assertions.catchThrowable;
import static org.framewright.AssertThat.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Against the parser of the JDK, for what is a time and for what is none. */
class LogTimeLaws {
  private static void alike(String text) {
    assertThat(answer(() -> LogTime.parse(text)))
        .as(text)
        .isEqualTo(answer(() -> Instant.parse(text)));
  }

  private static Object answer(Callable<Instant> parse) {
    var instant = new Instant[1];
    var failure = catchThrowable(() -> instant[0] = parse.call());
    return failure == null ? instant[0] : failure.getClass();
  }

  @Property
  void aTimeAsItIsWrittenIsReadAsItWas(
      @ForAll("seconds") long seconds, @ForAll("nanos") long nanos) {
    var instant = Instant.ofEpochSecond(seconds, nanos);
    assertThat(LogTime.parse(instant.toString())).isEqualTo(instant);
  }

  @Property
  void whateverElseIsWrittenIsTakenAsTheJdkTakesIt(
      @ForAll("seconds") long seconds,
      @ForAll("nanos") long nanos,
      @ForAll("places") int place,
      @ForAll("signs") char sign) {
    var text = new StringBuilder(Instant.ofEpochSecond(seconds, nanos).toString());
    int at = place % text.length();
    text.setCharAt(at, sign);
    alike(text.toString());
    alike(text.deleteCharAt(at).toString());
    alike(text.insert(at, sign).insert(at, sign).toString());
  }

  @Example
  void theEndsOfMonthsAndDaysAreThoseOfTheCalendar() {
    for (var text :
        List.of(
            "2026-02-28T24:00:00Z",
            "2026-02-29T00:00:00Z",
            "2028-02-29T00:00:00Z",
            "2026-06-30T23:59:60Z",
            "2026-04-31T00:00:00Z",
            "2026-13-01T00:00:00Z",
            "2026-00-10T00:00:00Z",
            "2026-01-00T00:00:00Z",
            "0000-01-01T00:00:00Z",
            "-001-01-01T00:00:00Z",
            "2026-11-02T09:00:00.Z",
            "2026-11-02T09:00:00.1Z",
            "2026-11-02T09:00:00.1234567891Z",
            "2026-11-02t09:00:00z",
            "2026-11-02T09:00:00+00:00",
            "2026-11-02T09:00Z",
            "\u0662026-11-02T09:00:00Z",
            "")) {
      alike(text);
    }
  }

  @Provide
  Arbitrary<Long> seconds() {
    return Arbitraries.longs()
        .between(
            Instant.parse("0000-01-01T00:00:00Z").getEpochSecond(),
            Instant.parse("9999-12-31T23:59:59Z").getEpochSecond());
  }

  @Provide
  Arbitrary<Long> nanos() {
    return Arbitraries.oneOf(
        Arbitraries.just(0L),
        Arbitraries.longs().between(0, 999).map(millis -> millis * 1_000_000),
        Arbitraries.longs().between(0, 999_999).map(micros -> micros * 1_000),
        Arbitraries.longs().between(0, 999_999_999));
  }

  @Provide
  Arbitrary<Integer> places() {
    return Arbitraries.integers().between(0, 1000);
  }

  @Provide
  Arbitrary<Character> signs() {
    return Arbitraries.of('0', '1', '5', '9', '-', ':', '.', 'T', 'Z', '+', ' ', '\u0663', 'x');
  }
}
