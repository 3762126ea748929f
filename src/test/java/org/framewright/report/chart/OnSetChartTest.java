package org.framewright.report.chart;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.framewright.day.TimeOnSet;
import org.framewright.job.JobState;
import org.framewright.report.chart.Chart.Tone;
import org.framewright.report.chart.Chart.Words;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Test;

class OnSetChartTest {
  private static final JobState NOTHING_SAID =
      new JobState(
          new LinkedHashMap<>(),
          List.of(),
          List.of(),
          Map.of(),
          Set.of(),
          Map.of(),
          Optional.empty(),
          List.of());

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

  /** What a person said of a setup comes before the list's note. */
  @Test
  void aBarSaysWhatTheListAndTheLogSayOfItsSetup() {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Note", "with the belt");
    var list =
        new ShotList(
            List.of(
                new Setup("001", "Coat\u001b[2J", List.of(), OptionalInt.empty(), columns),
                new Setup(
                    "002",
                    "W".repeat(10_000),
                    List.of(),
                    OptionalInt.empty(),
                    new LinkedHashMap<>())));
    var times =
        List.of(
            new TimeOnSet("001", Duration.ofMinutes(40), true),
            new TimeOnSet("002", Duration.ofMinutes(9), false),
            new TimeOnSet("003", Duration.ofMinutes(8), false));
    var bars = OnSetChart.of(times, list, NOTHING_SAID).bars();
    assertThat(bars.getFirst())
        .isEqualTo(
            new OnSetChart.Bar(
                "001 Coat\\u{1B}[2J", Duration.ofMinutes(40), true, "with the belt"));
    assertThat(bars.get(1).name()).hasSizeLessThan(200).endsWith("W…");
    assertThat(bars.getLast().name()).as("gone from the list").isEqualTo("003");
  }
}
