package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.framewright.naming.Convention;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ItemTicksTest {
  private static final Station SET = new Station("set");
  private static final Station DESK = new Station("desk");

  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T08:00:00Z");
  private Job set;
  private Job desk;

  @BeforeEach
  void aJobThatTwoComputersHaveOpen() throws Exception {
    var parsed = Convention.parse(Files.readString(Path.of("templates/fashion-days.yaml")), "test");
    var convention = ((Convention.Parsed.Sound) parsed).convention();
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "Winter");
    set = ((Started.Opened) Job.start(convention, parent, values, clock, SET)).job();
    desk = Job.open(set.folder(), clock, DESK);
  }

  @Test
  void aTickSaysWhoAndWhenAndWhere() throws Exception {
    set.tickItem("cables", true, "Timo");
    desk.refresh();
    assertThat(desk.readiness().ticks())
        .isEqualTo(Map.of("cables", new ItemTick("Timo", set.station(), clock.instant())));
  }

  @Test
  void ofTicksOnTwoComputersTheLastOneHolds() throws Exception {
    set.tickItem("cables", true, "Timo");
    clock.pass(Duration.ofMinutes(1));
    desk.tickItem("cables", true, "Ines");
    clock.pass(Duration.ofMinutes(1));
    set.refresh();
    assertThat(set.readiness().ticks().get("cables").by()).isEqualTo("Ines");
    set.tickItem("cables", false, "Timo");
    desk.refresh();
    assertThat(desk.readiness().ticks().containsKey("cables")).isFalse();
  }

  @Test
  void whatIsUndoneHasNeverBeen() throws Exception {
    set.tickItem("cables", true, "Timo");
    clock.pass(Duration.ofMinutes(1));
    var undo = set.tickItem("cables", false, "Ines");
    undo.run();
    assertThat(set.readiness().ticks().get("cables").by()).isEqualTo("Timo");
  }

  @Test
  void nobodyTicksWithoutAName() {
    assertThatThrownBy(() -> set.tickItem("cables", true, " "))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("name");
    assertThat(set.readiness().ticks().isEmpty()).isTrue();
  }

  @Test
  void theLastAnswerOfTheMorningAndOfTheEveningAreKeptApart() throws Exception {
    var rests = new LinkedHashMap<String, String>(Map.of("disk", "a"));
    var first = new ReadyRecord(false, "not-ready", List.of("no room"), rests);
    var second = new ReadyRecord(false, "ready", List.of(), rests);
    var evening = new ReadyRecord(true, "ready-but-for", List.of("the report"), rests);
    for (var said : List.of(first, second, evening)) {
      clock.pass(Duration.ofMinutes(1));
      set.record(said);
    }
    desk.refresh();
    assertThat(desk.readiness().said(false).orElseThrow().said()).isEqualTo(second);
    assertThat(desk.readiness().said(true).orElseThrow())
        .isEqualTo(new ReadyAt(clock.instant(), set.station(), evening));
  }
}
