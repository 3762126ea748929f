package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the next hand-off makes of those that were interrupted. */
class UnfinishedTest {
  @TempDir private Path folder;
  private Job job;
  private HandOffRecords records;
  private Path out;
  private Path draft;

  @BeforeEach
  void aJobAndAPlace() throws Exception {
    job = Scene.ofOneFile(folder).job();
    records = HandOffRecords.of(job);
    out = Files.createDirectory(folder.resolve("out"));
    draft = Draft.beside(out.resolve("for Bram"));
    Files.createDirectory(job.folder().resolve(".framewright/handoffs"));
  }

  private HandOffRecord begun(String draftPath) throws Exception {
    var begun =
        HandOffRecord.begun(
            1, "2026-11-23T09:00:00Z", out.resolve("for Bram").toString(), draftPath, "all");
    records.update(begun);
    return begun;
  }

  private HandOffRecord placing(String draftPath) throws Exception {
    var placing = begun(draftPath).placing("0".repeat(64), List.of());
    records.update(placing);
    return placing;
  }

  private void draft(Path path, boolean packed) throws Exception {
    try (var made = Draft.create(path, Draft.note(job.name(), 1, path))) {
      if (packed) {
        Files.createDirectory(made.packageFolder());
      }
    }
  }

  private List<String> finish() throws Exception {
    return finish(folder.resolve("another place"));
  }

  private List<String> finish(Path besideTarget) throws Exception {
    var unfinished = new Unfinished(job, records);
    unfinished.finish(besideTarget);
    unfinished.leftovers().close();
    return unfinished.remarks().stream().map(Problem::what).toList();
  }

  private HandOffRecord.State state() throws Exception {
    return records.read().usable().get(1).state();
  }

  @Test
  void aPackageOfAHandOffThatWasGivenUpIsStillRemovedWhereItIsThere() throws Exception {
    records.update(begun(draft.toString()).abandoned());
    assertThat(finish()).isEmpty();
    draft(draft, true);
    assertThat(finish())
        .containsExactly("hand-off 1 was interrupted; its unfinished package is removed");
    assertThat(draft).doesNotExist();
    assertThat(state()).isEqualTo(HandOffRecord.State.ABANDONED);
  }

  @Test
  void aHandOffWhoseDraftWasNeverMadeIsGivenUp() throws Exception {
    begun(draft.toString());
    assertThat(finish()).isEmpty();
    assertThat(state()).isEqualTo(HandOffRecord.State.ABANDONED);
  }

  @Test
  void aDraftOnAnotherSystemIsGivenUp() throws Exception {
    begun("C:\\Jobs\\.framewright-0");
    assertThat(finish()).isEmpty();
    assertThat(state()).isEqualTo(HandOffRecord.State.ABANDONED);
  }

  @Test
  void aDraftThatSomebodyWritesIsToldOnceAndLeft() throws Exception {
    begun(draft.toString());
    try (var _ = Draft.create(draft, Draft.note(job.name(), 1, draft))) {
      assertThat(finish(out))
          .containsExactly("an unfinished package was left as it is: somebody is writing it");
    }
    assertThat(draft).exists();
    assertThat(state()).isEqualTo(HandOffRecord.State.BEGUN);
  }

  @Test
  void whatIsLeftOfADraftWhosePackageTookItsPlaceIsRemoved() throws Exception {
    assertThat(Scene.deliver(job, out.resolve("for Bram"))).isInstanceOf(Delivery.Delivered.class);
    var done = records.read().usable().get(1);
    records.update(
        new HandOffRecord(
            1,
            HandOffRecord.State.PLACING,
            done.at(),
            done.folder(),
            Optional.of(draft.toString()),
            done.digest(),
            done.chosenBy(),
            done.selects()));
    draft(draft, false);
    assertThat(finish())
        .containsExactly(
            "hand-off 1 was interrupted when its package was in its place; it is recorded now");
    assertThat(draft).doesNotExist();
    assertThat(state()).isEqualTo(HandOffRecord.State.DELIVERED);
    assertThat(records.read().usable().get(1).selects()).isEqualTo(done.selects());
  }

  @Test
  void aPackageThatDidNotTakeItsPlaceIsGivenUpBeforeItIsTornApart() throws Exception {
    placing(draft.toString());
    draft(draft, true);
    Files.writeString(draft.resolve("draft.txt"), "another note");
    assertThat(finish())
        .containsExactly(
            "an unfinished package was left as it is: it is not certain that nobody needs it");
    assertThat(draft.resolve("package")).exists();
    assertThat(state()).isEqualTo(HandOffRecord.State.ABANDONED);
  }

  @Test
  void aPackageThatIsNowhereLeavesNoDraft() throws Exception {
    placing(draft.toString());
    draft(draft, false);
    assertThat(finish())
        .containsExactly(
            "hand-off 1 was interrupted when its package took its place, and it is not there now");
    assertThat(draft).doesNotExist();
    assertThat(state()).isEqualTo(HandOffRecord.State.PLACING);
  }

  @Test
  void aDraftOnADriveThatHadAnotherPathIsFinishedWhereItIsFoundNow() throws Exception {
    placing("/an old drive/" + draft.getFileName());
    draft(draft, true);
    assertThat(finish(out))
        .containsExactly(
            "hand-off 1 was interrupted when its package took its place, and it is not there now",
            "hand-off 1 was interrupted; what it had copied is used where it is whole");
    assertThat(draft).doesNotExist();
    assertThat(state()).isEqualTo(HandOffRecord.State.ABANDONED);
  }

  @Test
  void theRestOfADraftThereIsRemovedAndItsHandOffIsLookedForOn() throws Exception {
    placing("/an old drive/" + draft.getFileName());
    draft(draft, false);
    assertThat(finish(out)).hasSize(1);
    assertThat(draft).doesNotExist();
    assertThat(state()).isEqualTo(HandOffRecord.State.PLACING);
  }

  @Test
  void whatComesBackIsNotReadAgainstAHandOffThatWasGivenUp() throws Exception {
    records.update(begun(draft.toString()).abandoned());
    var back = Files.createDirectory(folder.resolve("back"));
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () -> Returns.of(job, back, java.util.OptionalInt.empty()))
        .hasMessageContaining("nothing was handed off");
  }
}
