package org.framewright.naming;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.framewright.AssertThat.assertThat;

import java.util.Comparator;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which conventions sort by time. That one does was found by comparing all its names, or by
 * thinking; that one does not is shown by the two names.
 */
class SortOrderTest {
  private static final long ENOUGH = 500_000;

  private static DeclaredKind kind(String fields, String pattern) {
    return ConventionTest.sound(
            Convention.parse(
                "convention: test\nfields: {%s}\nnames: {frame: \"%s\"}\nfolders: {frames: f}\n"
                    .formatted(fields, pattern),
                "test"))
        .declaredKinds()
        .get("frame");
  }

  private static Optional<Product.Found> inversion(
      String fields, String pattern, String order, long effort) throws Effort.TooLarge {
    return new SortOrder(kind(fields, pattern), new Effort(effort))
        .inversion(order.equals("bytes") ? Compare.bytes() : Compare.numbers());
  }

  /** The witness is read by ISO 8601, whose texts of one length sort by time, and by numbers. */
  private static void assertInverted(Product.Found found, String order) {
    Comparator<String> comparator =
        order.equals("bytes") ? Comparator.naturalOrder() : CheckOracleTest::byNumbers;
    assertThat(comparator.compare(found.first(), found.second()))
        .as("%s behind %s", found.first(), found.second())
        .isPositive();
    var day = found.firstValues().getOrDefault("day", "");
    var otherDay = found.secondValues().getOrDefault("day", "");
    assertThat(day).isLessThanOrEqualTo(otherDay);
    if (day.equals(otherDay)) {
      assertThat(Long.parseLong(found.firstValues().get("take")))
          .isLessThan(Long.parseLong(found.secondValues().get("take")));
    }
    assertThat(found.firstValues().keySet()).isEqualTo(found.secondValues().keySet());
    for (var field : found.firstValues().keySet()) {
      if (!field.equals("day") && !field.equals("take")) {
        assertThat(found.firstValues().get(field)).isEqualTo(found.secondValues().get(field));
      }
    }
  }

  @Tag("slow")
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // a date alone
        "day: {type: date, pattern: uuuuMMdd}|{day}|bytes numbers",
        "day: {type: date, pattern: uuuuMMdd}|x_{day}_x|bytes numbers",
        "day: {type: date, pattern: uuMMdd, years: 2000-2099}|{day}|bytes numbers",
        "day: {type: date, pattern: uuMMdd, years: 1950-2049}|{day}|",
        "day: {type: date, pattern: uuuuDDD}|{day}|bytes numbers",
        "day: {type: date, pattern: DDDuuuu}|{day}|",
        "day: {type: date, pattern: uuuu-M}|{day}|numbers",
        "day: {type: date, pattern: uuuu-M-d}|{day}|numbers",
        "day: {type: date, pattern: uuuuMM-d}|{day}|numbers",
        "day: {type: date, pattern: uuuu-MMM}|{day}|",
        "day: {type: date, pattern: dd-MM-uuuu}|{day}|",
        "day: {type: date, pattern: uuuuMMddHHmmss}|{day}|bytes numbers",
        "day: {type: date, pattern: H.mm.ss}|{day}|numbers",
        "day: {type: date, pattern: HH.m.ss}|{day}|numbers",
        "day: {type: date, pattern: HHmmssSSS}|{day}|bytes numbers",
        "day: {type: date, pattern: HHmmssSSSSSS}|{day}|bytes numbers",
        "day: {type: date, pattern: SSSHHmmss}|{day}|",
        "day: {type: date, pattern: ss.S.HHmm}|{day}|",
        // a counter alone
        "take: {type: counter}|{take}|bytes numbers",
        "take: {type: counter, digits: 1}|{take}|bytes numbers",
        "take: {type: counter, digits: 1-4}|{take}|numbers",
        "take: {type: counter, digits: 2-3}|L{take}|numbers",
        "take: {type: counter, digits: 1-2, start: 7}|L{take}|numbers",
        "take: {type: counter, digits: 1-2, start: 10}|L{take}|bytes numbers",
        "take: {type: counter, digits: 3-6}|L{take}_x|numbers",
        // with what all names share
        "take: {type: counter}, a: {type: code}|{a}_{take}|bytes numbers",
        "take: {type: counter, digits: 1-4}, a: {type: code}|{a}_{take}|numbers",
        "take: {type: counter, digits: 1-3}, a: {type: code}|{a}{take}|numbers",
        "take: {type: counter, digits: 1-3}, a: {type: code}|{take}_{a}|numbers",
        "take: {type: counter, digits: 1-2}, n: {type: number, digits: 1-2}|{take}{n}|numbers",
        "take: {type: counter, digits: 1-2}, n: {type: number, digits: 1-2}|{n}{take}|numbers",
        "take: {type: counter, digits: 1-2}, a: {type: choice, values: [x, '5', '99']}|{take}[{a}]|numbers",
        // a counter and a date
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter, restarts: day}|{day}_{take}|bytes numbers",
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter, restarts: day}|{take}_{day}|",
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter}|{day}_{take}|bytes numbers",
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter}|{take}_{day}|bytes numbers",
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter, digits: 1-2}|{day}_{take}|numbers",
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter, digits: 1-2}|{day}{take}|numbers",
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter, digits: 1-2}|{take}-{day}|numbers",
        "day: {type: date, pattern: uuuu}, take: {type: counter, digits: 1-2, restarts: day}|{day}-{take}|numbers",
        "day: {type: date, pattern: dd-MM-uuuu}, take: {type: counter}|{take}_{day}|bytes numbers",
        "day: {type: date, pattern: dd-MM-uuuu}, take: {type: counter}|{day}_{take}|",
        "day: {type: date, pattern: uuuuMMdd}, take: {type: counter, restarts: day}|[{day}_]{take}|bytes numbers",
      })
  void tellsWhetherNamesSortByTime(String fields, String pattern, String sorted)
      throws Effort.TooLarge {
    for (var order : new String[] {"bytes", "numbers"}) {
      var found = inversion(fields, pattern, order, ENOUGH);
      assertThat(found.map(two -> two.first() + " before " + two.second()).isEmpty())
          .as("%s sorts by %s: %s", pattern, order, found)
          .isEqualTo(sorted != null && sorted.contains(order));
      found.ifPresent(two -> assertInverted(two, order));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "take: {type: counter, digits: 1-4}|L{take}|L2|L10",
        "take: {type: counter, digits: 2-3}|{take}|11|100",
        "take: {type: counter, digits: 1-2, start: 7}|L{take}_x|L7_x|L10_x",
      })
  void showsTwoNamesThatComeTheOtherWayRound(
      String fields, String pattern, String first, String second) throws Effort.TooLarge {
    var found = inversion(fields, pattern, "bytes", ENOUGH).orElseThrow();
    assertThat(found.first()).isEqualTo(first);
    assertThat(found.second()).isEqualTo(second);
  }

  @Test
  void onlyNamesWithADateOrACounterHaveATime() {
    assertThat(new SortOrder(kind("a: {type: code}", "{a}"), new Effort(1)).showsTime()).isFalse();
    assertThat(new SortOrder(kind("take: {type: counter}", "{take}"), new Effort(1)).showsTime())
        .isTrue();
    assertThat(
            new SortOrder(kind("day: {type: date, pattern: HH}", "{day}"), new Effort(1))
                .showsTime())
        .isTrue();
  }

  /** What only a search of each number could show is not taken for shown. */
  @Tag("slow")
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "take: {type: counter, digits: 1-4}, n: {type: number, digits: 2}|{take}{n}",
        "take: {type: counter, digits: 1-4}|{take}7",
        "take: {type: counter, digits: 1-4}, day: {type: date, pattern: uuuu}|{take}{day}",
      })
  void doesNotTakeAFewNumbersForAllWhereDigitsFollowThem(String fields, String pattern) {
    assertThatExceptionOfType(Effort.TooLarge.class)
        .isThrownBy(() -> inversion(fields, pattern, "numbers", ENOUGH));
  }

  @Tag("slow")
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "take: {type: counter, digits: 1-4}, a: {type: choice, values: [x, y]}|{take}{a}",
        "take: {type: counter, digits: 1-4}|{take}x7",
        "take: {type: counter, digits: 1-4}, day: {type: date, pattern: 'MMM'}|{take}[{day}]x",
      })
  void aFewNumbersStandForAllWhereNoDigitFollowsThem(String fields, String pattern)
      throws Effort.TooLarge {
    inversion(fields, pattern, "numbers", ENOUGH);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "take: {type: counter}, a: {type: code, length: 1-60}|{a}_{take}",
        "take: {type: counter}|{take}",
        "day: {type: date, pattern: uuuuMMdd}|{day}",
      })
  void givesUpWhereItWouldTakeMoreThanItMay(String fields, String pattern) throws Effort.TooLarge {
    assertThat(inversion(fields, pattern, "bytes", ENOUGH)).isEmpty();
    assertThatExceptionOfType(Effort.TooLarge.class)
        .isThrownBy(() -> inversion(fields, pattern, "bytes", 40));
  }
}
