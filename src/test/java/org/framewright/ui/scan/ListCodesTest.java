package org.framewright.ui.scan;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.framewright.Templates;
import org.framewright.frames.slate.JobKey;
import org.framewright.job.Scanned;
import org.framewright.job.SetupCodes;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;

/** What is done in the background, and when somebody has waited long enough, is for the test. */
class ListCodesTest {
  private static final ShotList COAT = new ShotList(List.of(new Setup("001", "Coat")));
  private static final ShotList HAT = new ShotList(List.of(new Setup("002", "Hat")));

  private final Deque<Runnable> background = new ArrayDeque<>();
  private final Deque<Runnable> late = new ArrayDeque<>();
  private final List<Throwable> troubles = new ArrayList<>();
  private final List<ShotList> read = new ArrayList<>();
  private final List<String> done = new ArrayList<>();
  private boolean fails;
  private final ListCodes codes =
      new ListCodes(
          this::read, new Tasks(background::add, Runnable::run), troubles::add, late::add);

  private SetupCodes read(ShotList list) {
    read.add(list);
    if (fails) {
      throw new IllegalStateException("no room");
    }
    return SetupCodes.of(list, Templates.fashionDays(), List.of());
  }

  private void scan(String what) {
    codes.whenCurrent(() -> done.add(what), () -> done.add(what + " in vain"));
  }

  private void work() {
    background.removeFirst().run();
  }

  private void of(ShotList list) {
    codes.of(list, List.of());
  }

  @Test
  void scansWaitUntilTheListIsReadAndAreHeardInTheirOrder() {
    of(COAT);
    scan("first");
    scan("second");
    assertThat(done).isEmpty();
    assertThat(codes.current()).isEmpty();
    work();
    assertThat(done).containsExactly("first", "second");
    assertThat(codes.current().orElseThrow().find("001")).isInstanceOf(Scanned.One.class);
    scan("third");
    assertThat(done).contains("third");
    late.forEach(Runnable::run);
    assertThat(done).as("nobody waits any more").hasSize(3);
  }

  @Test
  void aScanWaitsForWhatTheListSaysNow() {
    of(COAT);
    work();
    of(HAT);
    scan("hat");
    assertThat(codes.latest()).isPresent();
    assertThat(codes.current()).isEmpty();
    of(COAT);
    work();
    assertThat(done).as("read of a list that is no longer the one").isEmpty();
    work();
    assertThat(done).containsExactly("hat");
  }

  @Test
  void theSameListIsReadOnceButWithEachKeyOfSlates() {
    of(COAT);
    of(new ShotList(List.of(new Setup("001", "Coat"))));
    work();
    assertThat(background).isEmpty();
    codes.of(COAT, List.of(new JobKey("K7Q2")));
    work();
    assertThat(read).hasSize(2);
  }

  @Test
  void aScanThatWaitsTooLongIsToldAndNotHeardLater() {
    of(COAT);
    scan("first");
    late.removeFirst().run();
    assertThat(done).containsExactly("first in vain");
    work();
    assertThat(done).containsExactly("first in vain");
  }

  @Test
  void noMoreScansWaitThanAnybodyMakes() {
    of(COAT);
    for (int i = 0; i < 60; i++) {
      scan("" + i);
    }
    assertThat(done).hasSize(10).contains("50 in vain");
    work();
    assertThat(done).hasSize(60);
  }

  @Test
  void aListThatCannotBeReadIsToldAndTriedAgainWithTheNextNews() {
    fails = true;
    of(COAT);
    scan("first");
    work();
    assertThat(troubles).hasSize(1);
    assertThat(done).containsExactly("first in vain");
    fails = false;
    of(COAT);
    work();
    scan("second");
    assertThat(done).contains("second");
  }

  @Test
  void whenTheJobIsClosedWhatWaitsIsTold() {
    of(COAT);
    scan("first");
    codes.close();
    assertThat(done).containsExactly("first in vain");
  }

  @Test
  void whatIsHeardMayChangeTheListAndTheNextOneWaitsForThat() {
    of(COAT);
    codes.whenCurrent(
        () -> {
          done.add("added");
          of(HAT);
        },
        () -> {});
    scan("next");
    work();
    assertThat(done).containsExactly("added");
    work();
    assertThat(done).containsExactly("added", "next");
  }
}
