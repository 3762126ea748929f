package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Sums of days and weeks. */
class NumbersTest {
  private static Numbers.Line line(String set, String day, int done, Integer... minutes) {
    var times = List.of(minutes).stream().map(Duration::ofMinutes).toList();
    return new Numbers.Line(
        UUID.nameUUIDFromBytes(set.getBytes(java.nio.charset.StandardCharsets.UTF_8)),
        set,
        Optional.of(day).filter(one -> !one.isEmpty()).map(LocalDate::parse),
        new SetupNumbers(OptionalInt.of(10), done, 0, 0, 0, times, List.of()),
        day.isEmpty()
            ? Optional.empty()
            : Optional.of(
                new FrameNumbers(
                    100,
                    OptionalInt.of(7),
                    Optional.of(LocalDateTime.parse(day + "T09:05:00")),
                    Optional.of(LocalDateTime.parse(day + "T17:10:00")))));
  }

  /** The last days of 2026 and the first of 2027 are of one week, 2026-W53 (ISO 8601). */
  @Test
  void eachDayEachWeekAndAllHaveTheirSumBehindThem() {
    var numbers =
        new Numbers(
            List.of(
                line("one", "2026-12-27", 1, 5),
                line("one", "2026-12-31", 2, 10, 20),
                line("two", "2026-12-31", 3, 90),
                line("one", "2027-01-01", 4),
                line("three", "", 0)));
    assertThat(
            numbers.rows().stream()
                .map(
                    row ->
                        row.of()
                            + " "
                            + row.week().orElse("-")
                            + " "
                            + row.day().map(LocalDate::toString).orElse("-")
                            + " "
                            + row.name()
                            + " "
                            + row.sets()
                            + " "
                            + row.setups().done()))
        .containsExactly(
            "SET 2026-W52 2026-12-27 one 1 1",
            "DAY 2026-W52 2026-12-27  1 1",
            "WEEK 2026-W52 -  1 1",
            "SET 2026-W53 2026-12-31 one 1 2",
            "SET 2026-W53 2026-12-31 two 1 3",
            "DAY 2026-W53 2026-12-31  2 5",
            "SET 2026-W53 2027-01-01 one 1 4",
            "DAY 2026-W53 2027-01-01  1 4",
            "WEEK 2026-W53 -  2 9",
            "SET - - three 1 0",
            "DAY - -  1 0",
            "ALL - -  3 10");
  }

  @Test
  void aSumHasTheMedianOfAllItsTimesAndTheFirstAndLastOfItsFrames() {
    var numbers =
        new Numbers(
            List.of(
                line("one", "2026-11-23", 2, 10, 20),
                line("two", "2026-11-23", 2, 90, 30),
                line("one", "2026-11-24", 1, 25)));
    var day = numbers.rows().get(2);
    assertThat(day.setups().medianOnSet()).contains(Duration.ofMinutes(25));
    assertThat(day.setups().medianWait()).isEmpty();
    var all = numbers.rows().getLast();
    assertThat(all.setups().planned()).hasValue(30);
    assertThat(all.setups().medianOnSet()).contains(Duration.ofMinutes(25));
    assertThat(all.frames())
        .contains(
            new FrameNumbers(
                300,
                OptionalInt.of(21),
                Optional.of(LocalDateTime.parse("2026-11-23T09:05:00")),
                Optional.of(LocalDateTime.parse("2026-11-24T17:10:00"))));
  }

  @Test
  void theyArePrintedInColumns() {
    var numbers = new Numbers(List.of(line("one", "2026-11-23", 2, 10), line("two", "", 0)));
    assertThat(NumbersDescription.lines(numbers))
        .containsExactly(
            "Day         Set          Planned  Done  Signed off  Pickups  Dropped  Frames  Selects"
                + "  On set  Wait             First              Last",
            "2026-11-23  one               10     2           0        0        0     100        7"
                + "  10 min                   09:05             17:10",
            "2026-11-23  all: 1 set        10     2           0        0        0     100        7"
                + "  10 min                   09:05             17:10",
            "2026-W48    all: 1 set        10     2           0        0        0     100        7"
                + "  10 min        2026-11-23 09:05  2026-11-23 17:10",
            "no day      two               10     0           0        0        0",
            "no day      all: 1 set        10     0           0        0        0",
            "in all      all: 2 sets       20     2           0        0        0     100        7"
                + "  10 min        2026-11-23 09:05  2026-11-23 17:10");
    assertThat(NumbersDescription.lines(new Numbers(List.of())))
        .containsExactly("No set told of a day.");
  }
}
