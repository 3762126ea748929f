package org.framewright.report.chart;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.report.chart.Chart.Box;
import org.junit.jupiter.api.Test;

/** Hours of nine to six with a break at one; expected values by counting on one's fingers. */
class HoursChartTest {
  static final ChartWords WORDS =
      new ChartWords() {
        @Override
        public String say(Text text) {
          return text.english();
        }

        @Override
        public String number(long count) {
          return Long.toString(count);
        }

        @Override
        public String oneDecimal(double value) {
          return "%.1f".formatted(value);
        }

        @Override
        public String time(LocalTime at) {
          return at.toString();
        }

        @Override
        public String minutes(Duration time) {
          return time.toMinutes() + " min";
        }
      };

  private static final DayHours HOURS = DayHours.usual(ZoneOffset.UTC);
  private static final Room ROOM = new Room(900, 300, 15);

  private static LocalTime at(int hour, int minute) {
    return LocalTime.of(hour, minute);
  }

  private static List<Box> boxes(Chart chart, boolean outlined) {
    return chart.shapes().stream()
        .filter(Box.class::isInstance)
        .map(Box.class::cast)
        .filter(box -> box.dashed() == outlined)
        .toList();
  }

  private static double height(List<Box> boxes) {
    return boxes.stream().mapToDouble(Box::height).sum();
  }

  private static HoursChart chart(Instant now, int left) {
    return new HoursChart(
        List.of(at(9, 20), at(9, 50), at(10, 30)),
        HOURS,
        Optional.of(2.0),
        Optional.of(new HoursChart.Ahead(now, Duration.ofMinutes(30), left)));
  }

  @Test
  void aBarForEachHourInWhichSetupsWereFinishedAndAnOutlineForWhatIsToCome() {
    var chart = chart(Instant.parse("2026-11-23T11:00:00Z"), 5).in(ROOM, WORDS);
    var done = boxes(chart, false);
    var coming = boxes(chart, true);
    assertThat(done).hasSize(2);
    assertThat(done.getFirst().height()).isCloseTo(2 * done.getLast().height(), within(0.001));
    // Two an hour from eleven to one, none in the break, and the fifth after two.
    assertThat(coming).hasSize(3);
    assertThat(height(coming) / height(done)).isCloseTo(5 / 3.0, within(0.001));
    assertThat(coming).allMatch(box -> box.fill().isEmpty());
  }

  @Test
  void afterWorkNothingIsToCome() {
    var chart = chart(Instant.parse("2026-11-23T18:30:00Z"), 5).in(ROOM, WORDS);
    assertThat(boxes(chart, true)).isEmpty();
  }

  @Test
  void theSentenceSaysWhatTheDrawingShows() {
    var chart = chart(Instant.parse("2026-11-23T11:00:00Z"), 5).in(ROOM, WORDS);
    assertThat(chart.said())
        .isEqualTo(
            "3 setups finished; most of them, 2, from 09:00 on. To be done on this day it takes 2.0"
                + " an hour from now on.");
    var empty = new HoursChart(List.of(), HOURS, Optional.empty(), Optional.empty());
    assertThat(empty.in(ROOM, WORDS).said()).isEqualTo("No setup was finished on this day.");
  }

  @Test
  void nothingLiesOutsideOfTheDrawing() {
    for (var room : List.of(ROOM, new Room(300, 110, 20), new Room(2000, 900, 15))) {
      var chart = chart(Instant.parse("2026-11-23T09:55:00Z"), 400).in(room, WORDS);
      assertThat(chart.shapes())
          .filteredOn(Box.class::isInstance)
          .allSatisfy(
              shape -> {
                var box = (Box) shape;
                assertThat(box.x()).isBetween(0.0, room.width());
                assertThat(box.x() + box.width()).isBetween(0.0, room.width());
                assertThat(box.y()).isBetween(0.0, room.height());
                assertThat(box.y() + box.height()).isBetween(0.0, room.height());
              });
    }
  }
}
