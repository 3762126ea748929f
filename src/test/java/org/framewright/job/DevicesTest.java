package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.groups.Tuple.tuple;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.framewright.Templates;
import org.framewright.frames.FrameId;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people do on phones and tablets, as a job keeps it. */
class DevicesTest {
  private static final Device PHONE = new Device("page-00000001");
  private static final Device TABLET = new Device("page-00000002");
  private static final Station SET = new Station("set");

  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Job job;

  @BeforeEach
  void aJob() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    job = ((Started.Opened) Job.start(Templates.fashionDays(), parent, values, clock, SET)).job();
    job.importList(
        new ShotList(
            List.of(new Setup("001", "Coat"), new Setup("002", "Hat"), new Setup("003", "Scarf"))));
  }

  private Numbered numbered(long number, Asked asked) {
    return new Numbered(number, clock.instant(), asked);
  }

  private static Asked tick(String setup, SetupState state) {
    return new Asked.Ticked(setup, state, MarkDetails.NONE);
  }

  private static Asked comment(String text) {
    return new Asked.Commented("001", List.of(), text, "Ada");
  }

  private SetupState state(String setup) {
    return job.state().of(setup).state();
  }

  @Test
  void keepsWhatComesNextAndHasWhatComesAgain() throws Exception {
    var first = numbered(1, tick("1", SetupState.ON_SET));
    assertThat(job.last(PHONE)).isZero();
    assertThat(job.receive(PHONE, first)).isEqualTo(new Receipt.Kept(1));
    assertThat(state("001")).isEqualTo(SetupState.ON_SET);
    clock.pass(Duration.ofSeconds(3));
    assertThat(job.receive(PHONE, numbered(2, tick("001", SetupState.SHOT))))
        .isEqualTo(new Receipt.Kept(2));
    assertThat(job.receive(PHONE, first)).isEqualTo(new Receipt.Had(2));
    assertThat(state("001")).isEqualTo(SetupState.SHOT);
    assertThat(job.last(PHONE)).isEqualTo(2);
    assertThat(job.last(TABLET)).isZero();
    assertThat(lines(PHONE)).hasSize(2);
  }

  private List<String> lines(Device device) throws Exception {
    var log = new JobLayout(job.folder()).log().resolve(device.name() + ".jsonl");
    return Files.exists(log) ? Files.readAllLines(log) : List.of();
  }

  @Test
  void asksForWhatIsMissing() throws Exception {
    assertThat(job.receive(PHONE, numbered(2, tick("001", SetupState.SHOT))))
        .isEqualTo(new Receipt.Gap(0));
    assertThat(lines(PHONE)).isEmpty();
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
  }

  @Test
  void tellsOfTwoThatWroteUnderOneNumber() throws Exception {
    job.receive(PHONE, numbered(1, tick("001", SetupState.SHOT)));
    var clash = new Receipt.Clash(1);
    assertThat(job.receive(PHONE, numbered(1, tick("002", SetupState.SHOT)))).isEqualTo(clash);
    assertThat(job.receive(PHONE, numbered(1, tick("001", SetupState.DROPPED)))).isEqualTo(clash);
    assertThat(job.receive(PHONE, numbered(1, comment("x")))).isEqualTo(clash);
    var because =
        new Asked.Ticked("001", SetupState.SHOT, MarkDetails.NONE.andReason("a button is off"));
    assertThat(job.receive(PHONE, numbered(1, because))).isEqualTo(clash);
    clock.pass(Duration.ofMillis(1));
    assertThat(job.receive(PHONE, numbered(1, tick("001", SetupState.SHOT)))).isEqualTo(clash);
    assertThat(state("001")).isEqualTo(SetupState.SHOT);
    assertThat(lines(PHONE)).hasSize(1);
  }

  @Test
  void refusesWhatIsRefusedAtTheComputerAndKeepsTheNumberFree() throws Exception {
    assertThat(job.receive(PHONE, numbered(1, tick("7", SetupState.SHOT))))
        .isInstanceOfSatisfying(
            Receipt.Refused.class,
            refused -> {
              assertThat(refused.last()).isZero();
              assertThat(refused.why().what())
                  .isEqualTo("there is no setup \"7\" in the shot list");
            });
    assertThat(job.receive(PHONE, numbered(1, tick("001", SetupState.SIGNED_OFF))))
        .isInstanceOf(Receipt.Refused.class);
    assertThat(job.receive(PHONE, numbered(1, comment(" ")))).isInstanceOf(Receipt.Refused.class);
    assertThat(job.receive(PHONE, numbered(1, comment("x".repeat(Comment.LONGEST + 1)))))
        .isInstanceOf(Receipt.Refused.class);
    assertThat(lines(PHONE)).isEmpty();
    assertThat(job.receive(PHONE, numbered(1, tick("001", SetupState.SHOT))))
        .isEqualTo(new Receipt.Kept(1));
  }

  @Test
  void aTickCountsFromWhenItWasMadeHoweverLateItComes() throws Exception {
    var late = numbered(1, tick("001", SetupState.ON_SET));
    clock.pass(Duration.ofMinutes(10));
    job.mark("002", SetupState.ON_SET, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(10));
    job.receive(PHONE, late);
    assertThat(state("002")).isEqualTo(SetupState.ON_SET);
    assertThat(job.state().spans().getFirst().setup()).isEqualTo("001");
    assertThat(job.state().spans().getFirst().from()).isEqualTo(late.at());
  }

  @Test
  void aClockThatIsAheadMovesNothingAheadAndKeepsTheOrder() throws Exception {
    var day = clock.instant().plus(Duration.ofDays(1));
    job.receive(PHONE, new Numbered(1, day, tick("001", SetupState.ON_SET)));
    job.receive(PHONE, new Numbered(2, clock.instant(), tick("001", SetupState.SHOT)));
    assertThat(state("001")).isEqualTo(SetupState.SHOT);
    assertThat(job.state().of("001").since().get())
        .isBeforeOrEqualTo(clock.instant().plus(DeviceLog.MOST_AHEAD));
    clock.pass(DeviceLog.MOST_AHEAD.plusSeconds(1));
    job.mark("001", SetupState.PICKUP, MarkDetails.NONE);
    assertThat(state("001")).isEqualTo(SetupState.PICKUP);
  }

  @Test
  void aTimeThatNobodyCanHaveIsTakenAsNearAsCanBe() throws Exception {
    var odd = new Numbered(1, Instant.MIN, tick("001", SetupState.SHOT));
    assertThat(job.receive(PHONE, odd)).isEqualTo(new Receipt.Kept(1));
    assertThat(job.receive(PHONE, odd)).isEqualTo(new Receipt.Had(1));
    assertThat(job.receive(PHONE, new Numbered(2, Instant.MAX, tick("002", SetupState.SHOT))))
        .isEqualTo(new Receipt.Kept(2));
    assertThat(Job.open(job.folder(), clock, SET).state()).isEqualTo(job.state());
  }

  @Test
  void takesItsOwnBackOnceAndNothingElse() throws Exception {
    job.mark("003", SetupState.SHOT, MarkDetails.NONE);
    job.receive(PHONE, numbered(1, tick("001", SetupState.SHOT)));
    job.receive(TABLET, numbered(1, tick("002", SetupState.SHOT)));
    var back = numbered(2, new Asked.TakenBack(1));
    assertThat(job.receive(PHONE, back)).isEqualTo(new Receipt.Kept(2));
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
    assertThat(state("002")).isEqualTo(SetupState.SHOT);
    assertThat(job.receive(PHONE, back)).isEqualTo(new Receipt.Had(2));
    for (int of : List.of(1, 2, 3)) {
      assertThat(job.receive(PHONE, numbered(3, new Asked.TakenBack(of))))
          .isInstanceOf(Receipt.Refused.class);
    }
    job.takeBack();
    assertThat(state("003")).isEqualTo(SetupState.TO_SHOOT);
    assertThat(state("002")).isEqualTo(SetupState.SHOT);
  }

  @Test
  void tellsCommentsWithWhoMadeThemWhereUntilTheyAreTakenBack() throws Exception {
    job.receive(PHONE, numbered(1, new Asked.Named("Ada's tablet")));
    var frame = List.of(new FrameId("a"), new FrameId("b"));
    job.receive(
        PHONE, numbered(2, new Asked.Commented("1", frame, " collar \n lower\u0007", "Ada")));
    clock.pass(Duration.ofSeconds(1));
    var undo = job.comment("002", List.of(), "steam it", "Ines");
    assertThat(job.comments())
        .extracting(Comment::setup, Comment::text, Comment::by, Comment::called)
        .containsExactly(
            tuple("001", "collar lower\\u{7}", "Ada", Optional.of("Ada's tablet")),
            tuple("002", "steam it", "Ines", Optional.empty()));
    assertThat(job.comments().getFirst().frames()).isEqualTo(frame);
    assertThat(job.comments().getFirst().isOf(new Setup("1", "Coat"))).isTrue();
    assertThat(Job.open(job.folder(), clock, SET).comments()).isEqualTo(job.comments());
    undo.run();
    job.receive(PHONE, numbered(3, new Asked.TakenBack(2)));
    assertThat(job.comments()).isEmpty();
    assertThatThrownBy(() -> job.comment("001", List.of(), "", "Ines"))
        .isInstanceOf(JobException.class);
  }

  @Test
  void aLineThatWasTornIsKeptWhenItComesAgain() throws Exception {
    job.receive(PHONE, numbered(1, tick("001", SetupState.SHOT)));
    var log = new JobLayout(job.folder()).log().resolve(PHONE.name() + ".jsonl");
    Files.writeString(
        log, "{\"station\":\"page-", StandardCharsets.UTF_8, StandardOpenOption.APPEND);
    job = Job.open(job.folder(), clock, SET);
    assertThat(job.receive(PHONE, numbered(2, tick("002", SetupState.SHOT))))
        .isEqualTo(new Receipt.Kept(2));
    job = Job.open(job.folder(), clock, SET);
    assertThat(state("002")).isEqualTo(SetupState.SHOT);
    assertThat(job.last(PHONE)).isEqualTo(2);
  }

  @Test
  void twoProgramsThatServeOneFolderKeepAnEventOnce() throws Exception {
    var other = Job.open(job.folder(), clock, new Station("other"));
    var first = numbered(1, tick("001", SetupState.SHOT));
    var second = numbered(2, tick("002", SetupState.SHOT));
    assertThat(job.receive(PHONE, first)).isEqualTo(new Receipt.Kept(1));
    assertThat(other.receive(PHONE, first)).isEqualTo(new Receipt.Had(1));
    assertThat(other.receive(PHONE, second)).isEqualTo(new Receipt.Kept(2));
    assertThat(job.receive(PHONE, second)).isEqualTo(new Receipt.Had(2));
    assertThat(lines(PHONE)).hasSize(2);
  }

  @Test
  void aJobIsTheSameWhereverItsFolderLies() throws Exception {
    var moved = Files.move(job.folder(), parent.resolve("moved"));
    assertThat(Job.open(moved, clock, new Station("other")).identity())
        .isEqualTo(job.identity())
        .matches("[A-Za-z0-9-]+");
  }

  /** Whatever is sent again, left out or sent too early, each event is kept once and in order. */
  @Property(tries = 30)
  @net.jqwik.api.Tag("slow")
  void anyScheduleKeepsEachEventOnceAndInOrder(@ForAll List<Byte> schedule) throws Exception {
    var folder = Files.createTempDirectory("devices");
    try {
      var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
      var kept =
          ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock, SET)).job();
      kept.importList(new ShotList(List.of(new Setup("001", "Coat"))));
      long sent = 0;
      for (byte step : schedule) {
        long number = Math.max(1, sent + 1 + step % 3);
        if (step % 7 == 0) {
          kept = Job.open(kept.folder(), clock, SET);
        }
        var at = clock.instant().plusSeconds(number);
        var asked = new Asked.Commented("001", List.of(), "comment " + number, "Ada");
        var receipt = kept.receive(PHONE, new Numbered(number, at, asked));
        if (number == sent + 1) {
          sent++;
          assertThat(receipt).isEqualTo(new Receipt.Kept(sent));
        } else if (number <= sent) {
          assertThat(receipt).isEqualTo(new Receipt.Had(sent));
        } else {
          assertThat(receipt).isEqualTo(new Receipt.Gap(sent));
        }
      }
      var texts = kept.comments().stream().map(Comment::text).toList();
      assertThat(texts).hasSize((int) sent);
      for (int i = 0; i < sent; i++) {
        assertThat(texts.get(i)).isEqualTo("comment " + (i + 1));
      }
    } finally {
      try (var files = Files.walk(folder)) {
        for (var file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }
}
