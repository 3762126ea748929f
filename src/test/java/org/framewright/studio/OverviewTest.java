package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

/** The order of the sets, and what is said of each. */
class OverviewTest {
  private static final Instant NOW = Instant.parse("2026-11-23T14:00:00Z");

  /** A set in which nothing needs a person, but for what a test says. */
  private static final class Set {
    private final String name;
    private int done = 10;
    private int pickups;
    private List<String> waiting = List.of();
    private Optional<Instant> waitingSince = Optional.empty();
    private boolean late;
    private List<Text> urgent = List.of();
    private List<Text> troubles = List.of();
    private Optional<Instant> finish = Optional.of(NOW.plus(Duration.ofHours(2)));
    private Instant toldAt = NOW;
    private long behind;

    Set(String name) {
      this.name = name;
    }

    SetRow row() {
      return new SetRow(
          UUID.nameUUIDFromBytes(name.getBytes(java.nio.charset.StandardCharsets.UTF_8)),
          name,
          Optional.of(now()),
          Optional.of("desk-1a2b"),
          Optional.of(toldAt),
          behind,
          Optional.of(toldAt),
          NOW);
    }

    SetNow now() {
      return new SetNow(
          NOW,
          Optional.of(new SetNow.OnSetNow("012", "Coat", NOW.minusSeconds(300))),
          24,
          done,
          3,
          pickups,
          waiting,
          waitingSince,
          240,
          Optional.of(Duration.ofMinutes(6)),
          finish,
          Optional.of(NOW.plus(Duration.ofMinutes(90))),
          Optional.of(NOW.plus(Duration.ofMinutes(150))),
          late,
          urgent,
          troubles);
    }

    Set waiting(String setup, int minutes) {
      waiting = List.of(setup);
      waitingSince = Optional.of(NOW.minus(Duration.ofMinutes(minutes)));
      return this;
    }
  }

  @Test
  void theSetThatNeedsAPersonMostComesFirst() {
    var stopped = new Set("stopped");
    stopped.urgent = List.of(Text.of("the frames still planned do not fit on the disk"));
    var waitsLong = new Set("waits long").waiting("011", 40);
    var waits = new Set("waits").waiting("007", 5);
    var pickup = new Set("pickup");
    pickup.pickups = 1;
    var late = new Set("late");
    late.late = true;
    var trouble = new Set("trouble");
    trouble.troubles = List.of(Text.of("{0} has no frame of the view {1}", "001", "back"));
    var silent = new Set("silent");
    silent.toldAt = NOW.minus(Duration.ofMinutes(6));
    var sooner = new Set("well, done sooner");
    sooner.finish = Optional.of(NOW.plus(Duration.ofHours(1)));
    var later = new Set("well, done later");
    var over = new Set("well, over");
    over.done = 24;
    over.toldAt = NOW.minus(Duration.ofHours(6));
    over.finish = Optional.empty();
    var rows =
        new ArrayList<>(
            List.of(stopped, waitsLong, waits, pickup, late, trouble, silent, sooner, later, over));
    var names = rows.stream().map(set -> set.name).toList();
    Collections.reverse(rows);
    var overview = new Overview(rows.stream().map(Set::row).toList());
    assertThat(overview.sets().stream().map(SetRow::name)).containsExactlyElementsOf(names);
    assertThat(overview.sets().stream().map(SetRow::need))
        .containsExactly(
            SetRow.Need.URGENT,
            SetRow.Need.SIGN_OFF,
            SetRow.Need.SIGN_OFF,
            SetRow.Need.PICKUP,
            SetRow.Need.LATE,
            SetRow.Need.TROUBLE,
            SetRow.Need.SILENT,
            SetRow.Need.NOTHING,
            SetRow.Need.NOTHING,
            SetRow.Need.NOTHING);
  }

  @Test
  void aSetOfWhichNoComputerToldIsNotTakenForOneThatNeedsNobody() {
    var row =
        new SetRow(
            new UUID(0, 1),
            "new",
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            0,
            Optional.empty(),
            NOW);
    assertThat(row.need()).isEqualTo(SetRow.Need.SILENT);
    assertThat(OverviewDescription.lines(new Overview(List.of(row)), ZoneOffset.UTC))
        .containsExactly("1 set; 1 needs a person", "new  no computer told how it stands");
  }

  @Test
  void eachSetIsSaidInAFewLines() {
    var set = new Set("2026-11-23_KVO_Winter").waiting("011", 40);
    set.pickups = 2;
    set.late = true;
    set.troubles = List.of(Text.of("{0} has no frame of the view {1}", "001", "back"));
    set.toldAt = NOW.minus(Duration.ofMinutes(10));
    set.behind = 3;
    assertThat(OverviewDescription.lines(new Overview(List.of(set.row())), ZoneOffset.UTC))
        .containsExactly(
            "1 set; 1 needs a person",
            "2026-11-23_KVO_Winter  on set 012 Coat; 10 of 24 done, 6 min a setup lately; done at"
                + " 16:00, likely between 15:30 and 16:30",
            "    Waits for sign-off: 011, since 13:20",
            "    To be shot again: 2",
            "    What is planned for today will not be done today",
            "    Look at: 001 has no frame of the view back",
            "    desk-1a2b told this at 13:50; 3 events came since");
  }

  @Test
  void whatIsKeptOfASetIsReadAgain() {
    var set = new Set("a").waiting("011", 40);
    set.urgent = List.of(Text.of("an accent é and \"quotes\""));
    assertThat(SetNow.read(set.now().json())).contains(set.now());
    set.waiting = List.of();
    set.waitingSince = Optional.empty();
    set.finish = Optional.empty();
    assertThat(SetNow.read(set.now().json())).contains(set.now());
  }

  /** Whoever reads it says it in a language of their own; English sentences are those of before. */
  @Test
  void sentencesAreKeptWithWhatStandsInThem() {
    var set = new Set("a");
    set.troubles =
        List.of(
            Text.counted("{0} frame is not whole", "{0} frames are not whole", 3),
            Text.of("the clock of {0} is {1} slow", "Body B", Text.of("{0} days", 4L)),
            Text.of("{0} of {1} in {braces}", new Text.Grouped(60_000), new Text.Size(5, true)),
            Text.of("{0} without values"));
    assertThat(SetNow.read(set.now().json())).contains(set.now());
    var before = set.now().json().replaceFirst("\"troubles\":.*]", "\"troubles\":[\"old words\"]");
    assertThat(SetNow.read(before).orElseThrow().troubles()).containsExactly(Text.of("old words"));
  }

  @Test
  void sentencesOfAnybodyAreReadWithinBounds() {
    var endless = "x".repeat(5_000);
    var many = "{0}".repeat(10);
    var deep = "\"" + endless + "\"";
    for (int i = 0; i < 10; i++) {
      deep = "{\"text\":{\"many\":\"" + many + "\",\"values\":[" + deep + "]}}";
    }
    for (var text :
        List.of(
            "\"" + endless + "\"",
            "{}",
            "[]",
            "{\"many\":\"" + endless + "\",\"values\":[1]}",
            "{\"many\":\"" + many + "\",\"values\":[" + deep + "]}",
            "{\"many\":\"" + many.repeat(13) + "\",\"values\":[" + deep + "]}",
            "{\"many\":\"{0}\",\"values\":[\"\\u001b[2J\\n" + endless + "\"]}")) {
      var json =
          new Set("a").now().json().replace("\"troubles\":[]", "\"troubles\":[" + text + "]");
      var read = SetNow.read(json).orElseThrow().troubles().getFirst().english();
      assertThat(read).hasSizeLessThanOrEqualTo(400);
      assertThat(read.chars().noneMatch(Character::isISOControl)).isTrue();
    }
  }

  @Test
  void whatNobodyCanReadIsNoSet() {
    for (var text : List.of("", "null", "[]", "{", "{\"at\":\"yesterday\"}")) {
      assertThat(SetNow.read(text)).as(text).isEmpty();
    }
    assertThat(SetNow.read(new Set("a").now().json().replace("{\"at\"", "{\"new\":1,\"at\"")))
        .isPresent();
  }
}
