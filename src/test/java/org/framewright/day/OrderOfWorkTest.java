package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.framewright.Templates;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OrderOfWorkTest {
  private static final DayHours HOURS = DayHours.usual(ZoneOffset.UTC);

  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-11-02T09:00:00Z");
  private Job job;

  @BeforeEach
  void startAJob() throws Exception {
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(),
                    folder,
                    Map.of("day", "2026-11-02", "client", "KVO", "title", "look book"),
                    ((InstantSource) () -> now).withZone(ZoneOffset.UTC)))
            .job();
  }

  /** A setup for each: its model, rack and day, as in {@code Mira A1 2026-11-02}; - for none. */
  private void list(String... lines) throws Exception {
    var setups = new ArrayList<Setup>();
    for (var line : lines) {
      var parts = line.split(" ", -1);
      var columns = new LinkedHashMap<String, String>();
      var headings = List.of("Model", "Rack", "Day", "Set");
      for (int i = 0; i < parts.length; i++) {
        if (!parts[i].equals("-")) {
          columns.put(headings.get(i), parts[i]);
        }
      }
      setups.add(
          new Setup(
              "%03d".formatted(setups.size() + 1),
              "Garment",
              List.of(new View("F")),
              OptionalInt.empty(),
              columns));
    }
    job.importList(new ShotList(setups));
  }

  private void mark(String setup, SetupState state) throws Exception {
    job.mark(setup, state, MarkDetails.NONE);
  }

  private OrderOfWork order(String... stay) throws Exception {
    var scan = job.scan();
    return OrderOfWork.of(job, scan, job.standing(scan).state(), HOURS, Set.of(stay));
  }

  private static List<String> codes(List<OrderOfWork.Line> lines) {
    return lines.stream().map(line -> line.setup().code()).toList();
  }

  @Test
  void savesChangesAndCountsThem() throws Exception {
    list("Mira A1", "Jonna A1", "Mira A1", "Jonna A1");
    var order = order();
    assertThat(codes(order.given())).containsExactly("001", "002", "003", "004");
    assertThat(codes(order.proposed())).containsExactly("001", "003", "002", "004");
    assertThat(order.changes(order.given())).isEqualTo(Map.of(Change.MODEL, 3));
    assertThat(order.changes(order.proposed())).isEqualTo(Map.of(Change.MODEL, 1));
    assertThat(order.gain().map(Text::english))
        .contains("another order of what is left has 1 change in place of 3 changes");
    assertThat(order.saves()).isEmpty();
    assertThat(order.reasons())
        .extracting(Text::english)
        .contains("All orders were weighed, and none has less to be changed.")
        .anyMatch(reason -> reason.contains("nobody knows how long changes take"));
  }

  @Test
  void modelsAreTheSameWhateverTheirCaseAndSpaces() throws Exception {
    list("Mira A1", "MIRA a1");
    assertThat(order().count(order().given())).isZero();
    assertThat(order().gain()).isEmpty();
  }

  @Test
  void setsAndViewsAreChangedToo() throws Exception {
    list("- - - stairs", "- - - wall", "- - - stairs");
    assertThat(order().changes(order().given())).isEqualTo(Map.of(Change.SET, 2));
    var one = new Setup("1", "", View.listOf("F, B"), OptionalInt.empty(), new LinkedHashMap<>());
    var two = new Setup("2", "", View.listOf("b, f"), OptionalInt.empty(), new LinkedHashMap<>());
    var three = new Setup("3", "", View.listOf("D"), OptionalInt.empty(), new LinkedHashMap<>());
    assertThat(new Traits().between(one, two)).isEmpty();
    assertThat(new Traits().between(two, three)).containsExactly(Change.VIEWS);
  }

  /** Else a setup of which the list says nothing would hide the change across it. */
  @Test
  void nothingSaidIsAValueOfItsOwn() throws Exception {
    list("Mira A1", "- A1", "Mira A1");
    assertThat(order().count(order().given())).isEqualTo(2);
    assertThat(codes(order().proposed())).containsExactly("001", "003", "002");
  }

  @Test
  void whatIsDoneOrOnSetStaysAndTheRestGoesOnFromThere() throws Exception {
    list("Mira A1", "Jonna A1", "Mira A1", "Jonna A1", "Mira A1", "Jonna A1");
    mark("001", SetupState.SHOT);
    mark("004", SetupState.ON_SET);
    mark("005", SetupState.DROPPED);
    var order = order();
    assertThat(order.before().map(Setup::code)).contains("004");
    // Round the list, as it comes: 006, then 002 and 003, which were left out.
    assertThat(codes(order.given())).containsExactly("006", "002", "003");
    assertThat(order.isBetter()).isFalse();
    assertThat(order.reasons().getFirst().english())
        .isEqualTo("No other order has less to be changed.");
    mark("001", SetupState.TO_SHOOT);
    mark("004", SetupState.SHOT);
    // Jonna is still there: the last one on set was hers.
    order = order();
    assertThat(codes(order.given())).containsExactly("001", "002", "003", "006");
    assertThat(codes(order.proposed())).containsExactly("002", "006", "001", "003");
    assertThat(order.list()).containsExactly("002", "006", "001", "004", "005", "003");
  }

  @Test
  void whoWasOnSetYesterdayIsNotThereAnyMore() throws Exception {
    list("Mira A1", "Jonna A1", "Mira A1");
    mark("001", SetupState.ON_SET);
    mark("001", SetupState.SHOT);
    assertThat(order().before()).isPresent();
    now = now.plus(Duration.ofDays(1));
    assertThat(order().before()).isEmpty();
  }

  @Test
  void setupsStayOnTheirDayAndPickupsComeLast() throws Exception {
    list(
        "Mira A1 2026-11-02",
        "Jonna A1 2026-11-02",
        "Mira A1 2026-11-02",
        "Jonna A1 2026-11-03",
        "Mira A1 2026-11-03",
        "Jonna A1 2026-11-03");
    assertThat(codes(order().proposed())).containsExactly("001", "003", "002", "004", "006", "005");
    mark("001", SetupState.PICKUP);
    mark("004", SetupState.PICKUP);
    var order = order();
    assertThat(codes(order.given())).containsExactly("002", "003", "005", "006", "001", "004");
    assertThat(codes(order.proposed())).containsExactly("002", "003", "005", "006", "004", "001");
    assertThat(order.list()).containsExactly("004", "002", "003", "001", "005", "006");
  }

  @Test
  void whatIsToStayDoes() throws Exception {
    list("Mira A1", "Jonna A1", "Mira A1", "Jonna A1");
    assertThat(codes(order("002").proposed())).containsExactly("001", "002", "004", "003");
    assertThat(order("002").reasons())
        .extracting(Text::english)
        .contains("You want these to stay where they are: 002");
  }

  @Test
  void theOrderIsGivenToTheListAndTakenBack() throws Exception {
    list("Mira A1", "Jonna A1", "Mira A1", "Jonna A1");
    var undo = job.reorder(order().list()).orElseThrow();
    assertThat(job.shotList().codes()).containsExactly("001", "003", "002", "004");
    assertThat(order().isBetter()).isFalse();
    undo.run();
    assertThat(job.shotList().codes()).containsExactly("001", "002", "003", "004");
  }

  private final SampleCamera camera =
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);

  private void shoot(String setup, int minutesBefore) throws Exception {
    mark(setup, SetupState.ON_SET);
    now = now.plus(Duration.ofMinutes(minutesBefore));
    for (int i = 0; i < 2; i++) {
      now = now.plus(Duration.ofMinutes(i));
      camera.take(Exposure.of(now, setup, "F")).writeTo(job.framesFolder());
      job.recordArrivals(job.scan());
    }
    mark(setup, SetupState.SHOT);
    now = now.plusSeconds(1);
  }

  // Worked by hand. Without a change 2, 3, 4: 3 in the median. Another model 13, 12, 14: 10 more.
  // (A second more each, between the last frame and the next tick.)
  // The last gap lies across the break and says nothing.
  @Test
  void learnsFromTheFramesHowLongAChangeTakes() throws Exception {
    list(
        "Mira A1",
        "Mira A1",
        "Jonna A1",
        "Jonna A1",
        "Mira A1",
        "Mira A1",
        "Jonna A1",
        "Mira A1",
        "Jonna A1",
        "Mira A1",
        "Jonna A1",
        "Mira A1");
    shoot("001", 5);
    shoot("002", 2);
    shoot("003", 13);
    shoot("004", 3);
    shoot("005", 12);
    shoot("006", 4);
    shoot("007", 14);
    now = Instant.parse("2026-11-02T12:55:00Z");
    shoot("008", 70);
    var order = order();
    assertThat(order.times().learned())
        .isEqualTo(Map.of(Change.MODEL, new ChangeTimes.Learned(Duration.ofMinutes(10), 3, false)));
    assertThat(codes(order.given())).containsExactly("009", "010", "011", "012");
    assertThat(codes(order.proposed())).containsExactly("010", "012", "009", "011");
    assertThat(order.saves()).contains(Duration.ofMinutes(30));
    assertThat(order.gain().map(Text::english).orElseThrow()).endsWith("saves about 30 min");
    assertThat(order.reasons())
        .extracting(Text::english)
        .contains(
            "Change of model: 10 min more, the median of 3 against that of 3 without a"
                + " change.");
  }

  @Test
  void aListOfNothingThatIsLeftHasNoOrder() throws Exception {
    assertThat(order().given()).isEmpty();
    assertThat(order().isBetter()).isFalse();
    assertThat(order().said(List.of()).english()).isEqualTo("no change");
  }
}
