package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Optional;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.JobMirror;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.job.TestClock;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sets whose computers meet in the store only, and what the overview shows of them. */
@Tag("slow")
class OwnSetTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Store store;

  @BeforeEach
  void aStore() throws Exception {
    var server = PlayedServer.shared();
    store = server.store(server.database());
  }

  @AfterEach
  void close() {
    if (store != null) {
      store.close();
    }
  }

  private Path folder(String place, String title) throws Exception {
    var parent = Files.createDirectories(root.resolve(place));
    clock.pass(Duration.ofSeconds(1)); // No two jobs begin at one moment.
    return SetScene.job(parent, title, 4, clock, "desk").folder();
  }

  private OwnSet set(Path folder, String station) throws Exception {
    return OwnSet.open(store, folder, DayHours.usual(ZoneOffset.UTC), clock, new Station(station));
  }

  private void copy(Path from, Path to) throws Exception {
    Files.createDirectories(to.getParent());
    assertThat(new ProcessBuilder("cp", "-a", "" + from, "" + to).start().waitFor()).isZero();
  }

  @Test
  void twoComputersWithCopiesOfOneFolderShowOneBoard() throws Exception {
    var here = folder("desk", "Winter");
    var there = root.resolve("cart").resolve(here.getFileName());
    copy(here, there);
    var desk = set(here, "desk");
    var cart = set(there, "cart");
    assertThat(cart.id()).isEqualTo(desk.id());
    desk.job().mark("001", SetupState.SHOT, MarkDetails.NONE);
    cart.job().mark("002", SetupState.ON_SET, MarkDetails.NONE);
    desk.follow();
    cart.follow();
    desk.follow();
    for (var job : new Job[] {desk.job(), cart.job()}) {
      assertThat(job.state().of("001").state()).isEqualTo(SetupState.SHOT);
      assertThat(job.state().of("002").state()).isEqualTo(SetupState.ON_SET);
    }
    assertThat(Overview.of(store).sets()).hasSize(1);
  }

  @Test
  void theOverviewShowsEachSetAsItsComputerToldIt() throws Exception {
    var winter = set(folder("a", "Winter"), "desk");
    var summer = set(folder("b", "Summer"), "desk");
    winter.job().mark("001", SetupState.ON_SET, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(6));
    summer.job().mark("003", SetupState.SHOT, MarkDetails.NONE);
    winter.job().mark("002", SetupState.ON_SET, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(4));
    winter.follow();
    summer.follow();
    var sets = Overview.of(store).sets();
    assertThat(sets.stream().map(SetRow::name))
        .containsExactly(summer.job().name(), winter.job().name());
    var now = sets.getFirst().now().orElseThrow();
    assertThat(sets.getFirst().need()).isEqualTo(SetRow.Need.SIGN_OFF);
    assertThat(now.waiting()).containsExactly("003");
    assertThat(now.planned()).isEqualTo(4);
    assertThat(now.done()).isEqualTo(1);
    var other = sets.getLast().now().orElseThrow();
    assertThat(other.onSet().map(SetNow.OnSetNow::setup)).isEqualTo(Optional.of("002"));
    assertThat(sets.getLast().behind()).isZero();
    assertThat(sets.getLast().toldBy()).contains("desk");
  }

  @Test
  void anOverviewThatIsOlderThanTheLogSaysSo() throws Exception {
    var folder = folder("a", "Winter");
    var desk = set(folder, "desk");
    desk.follow();
    var copied = root.resolve("b").resolve(folder.getFileName());
    copy(folder, copied);
    var cart = set(copied, "cart");
    cart.job().mark("001", SetupState.SHOT, MarkDetails.NONE);
    JobMirror.of(copied, clock, new Station("cart"), store.logs(cart.id())).exchange();
    assertThat(Overview.of(store).sets().getFirst().behind()).isEqualTo(1);
    desk.follow();
    assertThat(Overview.of(store).sets().getFirst().behind()).isEqualTo(1);
    clock.pass(Duration.ofSeconds(2));
    desk.follow();
    assertThat(Overview.of(store).sets().getFirst().behind()).isZero();
    assertThat(Overview.of(store).sets().getFirst().now().orElseThrow().waiting())
        .containsExactly("001");
  }

  @Test
  void whoKnowsLessDoesNotReplaceWhatWasTold() throws Exception {
    var set = set(folder("a", "Winter"), "desk");
    set.job().mark("001", SetupState.SHOT, MarkDetails.NONE);
    set.follow();
    store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement("select framewright.tell(?, 1, 'old', '{}')")) {
            statement.setObject(1, set.id());
            try (var row = statement.executeQuery()) {
              row.next();
              assertThat(row.getBoolean(1)).isFalse();
            }
          }
          return true;
        });
    assertThat(Overview.of(store).sets().getFirst().now().orElseThrow().done()).isEqualTo(1);
  }

  @Test
  void aSetInWhichNothingWasDoneLatelyIsLeftOut() throws Exception {
    set(folder("a", "Winter"), "desk").follow();
    assertThat(Overview.of(store, Duration.ofDays(1)).sets()).hasSize(1);
    assertThat(Overview.of(store, Duration.ZERO).sets()).isEmpty();
  }
}
