package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;
import static org.framewright.job.JobTest.setup;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.Templates;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A setup that comes on the day, and one that the list said wrong. */
class EditedListTest {
  private static final Station DESK = new Station("desk");
  private static final Station SET = new Station("set");

  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Job job;

  @BeforeEach
  void aJobWithThreeSetups() throws Exception {
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(),
                    parent,
                    Map.of("day", "2026-11-23", "client", "KVO", "title", "wool"),
                    clock,
                    DESK))
            .job();
    job.importList(
        new ShotList(
            List.of(
                setup("001", "Coat", "F", "B"), setup("002", "Hat", "F"), setup("003", "Scarf"))));
  }

  @Test
  void aSetupComesRightBehindAnotherAndEveryStationHasIt() throws Exception {
    job.addSetup(setup("004", "Belt", "F"), Optional.of("1"));
    assertThat(job.shotList().codes()).containsExactly("001", "004", "002", "003");
    assertThat(Job.open(job.folder(), clock, SET).shotList()).isEqualTo(job.shotList());
  }

  @Test
  void aSetupComesAtTheEndWhenNobodySaysBehindWhich() throws Exception {
    job.addSetup(setup("004", "Belt"), Optional.empty());
    assertThat(job.shotList().codes()).endsWith("003", "004");
  }

  @Test
  void theFirstSetupOfAJobWithoutAListIsAddedToo() throws Exception {
    job.importList(new ShotList(List.of()));
    job.addSetup(setup("001", "Belt"), Optional.empty());
    assertThat(job.shotList().codes()).containsExactly("001");
  }

  @Test
  void aNumberThatNamesCannotTellFromAnotherIsRefusedAndNothingIsWritten() throws Exception {
    var before = job.shotList();
    assertThatThrownBy(() -> job.addSetup(setup("2", "Belt"), Optional.empty()))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("a setup 002 already");
    assertThat(Job.open(job.folder(), clock, SET).shotList()).isEqualTo(before);
  }

  @Test
  void aSetupWhoseFramesCouldNotBeNamedIsRefused() throws Exception {
    assertThat(job.tryNames(setup("belt/2", "Belt")).misfits()).isNotEmpty();
    assertThatThrownBy(() -> job.addSetup(setup("belt/2", "Belt"), Optional.empty()))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("belt/2");
    assertThatThrownBy(() -> job.changeSetup(setup("001", "Coat", "from the moon")))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("from the moon");
    assertThat(job.shotList().codes()).containsExactly("001", "002", "003");
  }

  @Test
  void whatTheListSaysOfASetupChangesAndItsTicksStay() throws Exception {
    job.mark("001", SetupState.SHOT, MarkDetails.NONE);
    assertThat(job.changeSetup(setup("001", "Coat, belted", "F"))).isPresent();
    assertThat(job.setup("001").title()).isEqualTo("Coat, belted");
    assertThat(job.setup("001").views()).containsExactly(new View("F"));
    assertThat(job.state().of("001").state()).isEqualTo(SetupState.SHOT);
    assertThat(job.shotList().codes()).containsExactly("001", "002", "003");
  }

  @Test
  void nothingIsWrittenWhereTheListSaysSoAlready() throws Exception {
    assertThat(job.changeSetup(setup("002", "Hat", "F"))).isEmpty();
    assertThat(job.reorder(List.of("001", "002"))).isEmpty();
  }

  @Test
  void aSetupKeepsItsNumber() {
    assertThatThrownBy(() -> job.changeSetup(setup("1", "Coat")))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("cannot be called 1");
    assertThatThrownBy(() -> job.changeSetup(setup("009", "Coat")))
        .isInstanceOf(JobException.class);
  }

  @Test
  void eachChangeIsUndoneByItselfWhateverCameAfterIt() throws Exception {
    var added = job.addSetup(setup("004", "Belt"), Optional.of("001"));
    var changed = job.changeSetup(setup("002", "Hat, felt", "F")).orElseThrow();
    var moved = job.reorder(List.of("003", "001")).orElseThrow();
    added.run();
    assertThat(job.shotList().codes()).containsExactlyInAnyOrder("001", "002", "003");
    assertThat(job.setup("002").title()).isEqualTo("Hat, felt");
    moved.run();
    changed.run();
    assertThat(job.shotList().codes()).containsExactly("001", "002", "003");
    assertThat(job.setup("002").title()).isEqualTo("Hat");
    assertThat(Job.open(job.folder(), clock, SET).shotList()).isEqualTo(job.shotList());
  }

  @Test
  void aSetupThatWasTickedStaysWhenItsComingIsUndone() throws Exception {
    var added = job.addSetup(setup("004", "Belt"), Optional.empty());
    job.mark("004", SetupState.SHOT, MarkDetails.NONE);
    added.run();
    assertThat(job.shotList().codes()).contains("004");
    assertThat(job.state().of("004").state()).isEqualTo(SetupState.SHOT);
    assertThat(Job.open(job.folder(), clock, SET).shotList()).isEqualTo(job.shotList());
  }
}
