package org.framewright.report.chart;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.framewright.report.chart.Chart.Tone;
import org.framewright.report.chart.Chart.Words;
import org.junit.jupiter.api.Test;

class OnSetChartTest {
  private static List<OnSetChart.Bar> bars(int count) {
    var bars = new ArrayList<OnSetChart.Bar>();
    for (int i = 1; i <= count; i++) {
      bars.add(
          new OnSetChart.Bar(
              "00" + i + " Coat",
              Duration.ofMinutes(i == 2 ? 38 : 12),
              i == 2,
              i == 2 ? "steamer broke" : ""));
    }
    return bars;
  }

  @Test
  void oneFarOffTheOthersIsMarkedByAStrokeAndHasItsNote() {
    var chart = new OnSetChart(bars(3)).in(new Room(600, 200, 15), HoursChartTest.WORDS);
    assertThat(chart.said())
        .isEqualTo(
            "001 Coat: 12 min. 002 Coat: 38 min, far more than most (steamer broke). 003 Coat: 12"
                + " min.");
    assertThat(chart.shapes()).filteredOn(Chart.Line.class::isInstance).hasSize(1);
    assertThat(chart.shapes())
        .filteredOn(shape -> shape instanceof Words words && words.fill() == Tone.NEEDS)
        .extracting(shape -> ((Words) shape).text())
        .containsExactly("38 min", "steamer broke");
  }

  @Test
  void whereThereIsRoomForSomeTheLatestAreShown() {
    var room = new Room(600, 15 * 1.55 * 4, 15);
    var chart = new OnSetChart(bars(9)).in(room, HoursChartTest.WORDS);
    assertThat(OnSetChart.fitting(room)).isEqualTo(4);
    assertThat(chart.said()).startsWith("006 Coat").endsWith("009 Coat: 12 min.");
  }

  @Test
  void noTimeAtAllIsABarThatCanBeSeen() {
    var bars = List.of(new OnSetChart.Bar("001", Duration.ZERO, false, ""));
    var chart = new OnSetChart(bars).in(new Room(600, 200, 15), HoursChartTest.WORDS);
    assertThat(chart.said()).isEqualTo("001: 0 min.");
  }
}
