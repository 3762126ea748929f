package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.JobMirror;
import org.framewright.job.MarkDetails;
import org.framewright.job.MemoryLogs;
import org.framewright.job.MoveRefusal;
import org.framewright.job.OtherJob;
import org.framewright.job.SetupMoves;
import org.framewright.job.Station;
import org.framewright.job.TestClock;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Setups that go from one set to another, with the store played in memory. */
class SetMovesTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final MemoryMoves book = new MemoryMoves();
  private Set winter;
  private Set summer;

  /** A set with one computer. */
  private record Set(Job job, SetMoves moves) {
    OtherJob other() {
      return new OtherJob(OwnSet.id(job), job.name());
    }

    void follow() throws IOException {
      moves.follow();
    }

    List<String> codes() {
      return job.shotList().codes();
    }
  }

  @BeforeEach
  void twoSets() throws Exception {
    winter = set("Winter", 3);
    summer = set("Summer", 2);
  }

  private Set set(String title, int setups) throws Exception {
    clock.pass(Duration.ofSeconds(1)); // No two jobs begin at one moment.
    var parent = Files.createDirectory(root.resolve(title));
    return set(SetScene.job(parent, title, setups, clock, "desk").folder(), new MemoryLogs());
  }

  private Set set(Path folder, MemoryLogs logs) throws Exception {
    var station = new Station("desk");
    var mirror = JobMirror.of(folder, clock, station, logs);
    var job = Job.open(folder, clock, station, mirror.logs());
    return new Set(job, new SetMoves(book, OwnSet.id(job), job, mirror));
  }

  private SetupMove ask(Set from, Set to, String code) {
    var move =
        new SetupMove(
            UUID.randomUUID(), from.other(), to.other(), code, "Mara", Instant.EPOCH, List.of());
    book.ask(move);
    return move;
  }

  private SetupMove now(SetupMove move) {
    return book.all().stream().filter(one -> one.id().equals(move.id())).findFirst().orElseThrow();
  }

  private MoveRefusal refusal(SetupMove move) {
    return ((SetupMove.Outcome.Stays) now(move).outcome()).why().orElseThrow();
  }

  private void bothFollow() throws IOException {
    winter.follow();
    summer.follow();
    winter.follow();
  }

  @Test
  void aSetupGoesWithItsLineAndItsComments() throws Exception {
    var line = winter.job().setup("003");
    winter.job().comment("003", List.of(), "Steam it first", "Odette");
    var move = ask(winter, summer, "3");
    bothFollow();
    assertThat(winter.codes()).containsExactly("001", "002");
    assertThat(summer.codes()).containsExactly("001", "002", "003");
    assertThat(summer.job().setup("003")).isEqualTo(line);
    assertThat(summer.job().state().of("003").state()).isEqualTo(SetupState.TO_SHOOT);
    var comment = summer.job().comments().getFirst();
    assertThat(comment.setup()).isEqualTo("003");
    assertThat(comment.text()).isEqualTo("Steam it first");
    assertThat(comment.by()).isEqualTo("Odette");
    assertThat(MoveDescription.said(now(move)).english())
        .isEqualTo("Setup 3 is at " + summer.job().name() + " now, as 003");
    assertThat(summer.job().moves().came("003").map(SetupMoves.Came::from))
        .isEqualTo(Optional.of(winter.other()));
    var given = winter.job().moves().given("3").orElseThrow();
    assertThat(given.to()).isEqualTo(summer.other());
    assertThat(given.arrived()).isTrue();
    assertThat(given.by()).isEqualTo("Mara");
  }

  @Test
  void aCodeThatIsInUseThereBecomesTheNextFreeOneAndTheOldOneBackHome() throws Exception {
    ask(winter, summer, "001");
    bothFollow();
    assertThat(summer.codes()).containsExactly("001", "002", "003");
    var came = summer.job().moves().came("003").orElseThrow();
    assertThat(came.was()).isEqualTo("001");
    ask(summer, winter, "003");
    summer.follow();
    bothFollow();
    assertThat(summer.codes()).containsExactly("001", "002");
    assertThat(winter.codes()).containsExactlyInAnyOrder("001", "002", "003");
    assertThat(winter.job().moves().given()).isEmpty();
    assertThat(winter.job().setup("001").title()).isEqualTo("Garment 1");
  }

  @Test
  void untilItIsTakenItIsOnItsWayAndShotByNobody() throws Exception {
    var move = ask(winter, summer, "002");
    winter.follow();
    assertThat(winter.codes()).containsExactly("001", "003");
    assertThat(winter.job().moves().given("002").orElseThrow().arrived()).isFalse();
    assertThat(MoveDescription.said(now(move)).english()).contains("is on its way");
    var refused = refusedTick("002");
    assertThat(refused.what()).isEqualTo("setup 002 was given to " + summer.job().name());
    assertThat(refused.remedy()).isEqualTo("Move it on from there.");
    summer.follow();
    winter.follow();
    assertThat(winter.job().moves().given("002").orElseThrow().arrived()).isTrue();
  }

  private JobException refusedTick(String code) throws IOException {
    try {
      winter.job().mark(code, SetupState.ON_SET, MarkDetails.NONE);
    } catch (JobException e) {
      return e;
    }
    throw new AssertionError("it was ticked");
  }

  @Test
  void whatNobodyTookIsTakenBack() throws Exception {
    var move = ask(winter, summer, "002");
    winter.follow();
    assertThat(Moves.takeBack(book, now(move), "producer")).isTrue();
    summer.follow();
    winter.follow();
    assertThat(winter.codes()).containsExactly("001", "002", "003");
    assertThat(winter.job().moves().given()).isEmpty();
    assertThat(summer.codes()).hasSize(2);
    assertThat(MoveDescription.said(now(move)).english()).endsWith("setup 002 was taken back");
  }

  @Test
  void whatWasTakenIsNotTakenBack() throws Exception {
    var move = ask(winter, summer, "003");
    winter.follow();
    var onItsWay = now(move);
    summer.follow();
    assertThat(Moves.takeBack(book, onItsWay, "producer")).isFalse();
    assertThat(Moves.takeBack(book, now(move), "producer")).isTrue();
    winter.follow();
    assertThat(now(move).outcome()).isInstanceOf(SetupMove.Outcome.Arrived.class);
    assertThat(winter.codes()).containsExactly("001", "002");
  }

  @Test
  void whatIsOnSetOrTickedStaysAndSaysWhy() throws Exception {
    winter.job().mark("001", SetupState.SHOT, MarkDetails.NONE);
    winter.job().mark("002", SetupState.DROPPED, MarkDetails.NONE);
    winter.job().mark("003", SetupState.ON_SET, MarkDetails.NONE);
    var moves =
        List.of(
            ask(winter, summer, "001"),
            ask(winter, summer, "002"),
            ask(winter, summer, "003"),
            ask(winter, summer, "077"));
    bothFollow();
    assertThat(moves.stream().map(move -> refusal(move).why()))
        .containsExactly(
            MoveRefusal.Why.SHOT,
            MoveRefusal.Why.DROPPED,
            MoveRefusal.Why.ON_SET,
            MoveRefusal.Why.NO_SETUP);
    assertThat(winter.codes()).hasSize(3);
    assertThat(summer.codes()).hasSize(2);
    for (var move : moves) {
      assertThat(MoveDescription.said(now(move)).english()).contains(" stays at ");
      assertThat(MoveDescription.remedy(now(move))).isPresent();
    }
  }

  @Test
  void whatHasFramesStays() throws Exception {
    var frame = winter.job().framesFolder().resolve("DSC_0001.jpg");
    Files.write(frame, new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xD9});
    var scan = winter.job().scan();
    winter
        .job()
        .moveFrames(List.of(scan.frames().getFirst().id()), "002", Optional.empty(), "Odette");
    var move = ask(winter, summer, "002");
    bothFollow();
    assertThat(refusal(move)).isEqualTo(new MoveRefusal(MoveRefusal.Why.FRAMES, "002", "1"));
  }

  @Test
  void ofTwoProducersOneIsToldThatTheOtherCameFirst() throws Exception {
    var autumn = set("Autumn", 1);
    var first = ask(winter, summer, "003");
    var second = ask(winter, autumn, "003");
    bothFollow();
    autumn.follow();
    assertThat(summer.codes()).contains("003");
    assertThat(autumn.codes()).containsExactly("001");
    assertThat(now(first).outcome()).isInstanceOf(SetupMove.Outcome.Arrived.class);
    assertThat(refusal(second))
        .isEqualTo(new MoveRefusal(MoveRefusal.Why.GIVEN, "003", summer.job().name()));
  }

  @Test
  void theClientsNextListChangesNeitherWhatWentNorWhatCame() throws Exception {
    ask(winter, summer, "003");
    bothFollow();
    winter.job().importList(SetScene.list(3));
    assertThat(winter.codes()).containsExactly("001", "002");
    summer.job().importList(SetScene.list(2));
    assertThat(summer.codes()).containsExactly("001", "002", "003");
    assertThat(winter.job().previewImport(SetScene.list(3)).isEmpty()).isTrue();
  }

  @Test
  void aNewSetupDoesNotGetTheCodeOfOneThatWentAway() throws Exception {
    ask(winter, summer, "003");
    winter.follow();
    assertThat(winter.job().nextCode()).isEqualTo("004");
    try {
      winter.job().addSetup(new Setup("3", "Scarf"), Optional.empty());
      throw new AssertionError("it was added");
    } catch (JobException e) {
      assertThat(e.what()).isEqualTo("setup 003 was given to " + summer.job().name());
    }
  }

  @Test
  void aCodeThatDoesNotFitThereBecomesOneThatDoes() throws Exception {
    winter.job().importList(new ShotList(List.of(new Setup("LONG-CODE-12345", "Coat"))));
    var code = winter.job().shotList().codes().getFirst();
    var move = ask(winter, summer, code);
    bothFollow();
    assertThat(now(move).outcome()).isInstanceOf(SetupMove.Outcome.Arrived.class);
    assertThat(summer.codes()).containsExactly("001", "002", "003");
  }

  @Test
  void aBookThatCameBackFromAnOlderCopyIsFilledAgain() throws Exception {
    var move = ask(winter, summer, "003");
    winter.follow();
    book.clear();
    winter.follow();
    winter.follow();
    summer.follow();
    winter.follow();
    assertThat(now(move).outcome()).isInstanceOf(SetupMove.Outcome.Arrived.class);
    assertThat(summer.codes()).contains("003");
    assertThat(winter.job().moves().given("003").orElseThrow().arrived()).isTrue();
  }
}
