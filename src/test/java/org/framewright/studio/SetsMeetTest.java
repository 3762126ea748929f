package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two computers of one set, each with its own folder, that meet in the store while both work. */
@Tag("slow")
@Timeout(120)
class SetsMeetTest {
  @TempDir private Path root;

  private record Awaited(CountDownLatch something) implements SetFollower.Listener {
    @Override
    public void brought() {
      something.countDown();
    }

    @Override
    public void told(List<Text> told) {}

    @Override
    public void away(StoreException why) {}

    @Override
    public void reached() {}
  }

  /** A follower of a folder, as of the computer that is called so. */
  private SetFollower follower(Store store, Path folder, String station, CountDownLatch brought) {
    var clock = Clock.systemUTC();
    var hours = DayHours.usual(ZoneOffset.UTC);
    return new SetFollower(
            hint -> {
              var set = OwnSet.open(store, folder, hours, clock, new Station(station));
              return Optional.of(StoreVisit.of(store, set, hint));
            },
            new Awaited(brought),
            Duration.ofSeconds(5),
            Duration.ofSeconds(5))
        .started();
  }

  @Test
  void aTickOfTheOneIsOnTheBoardOfTheOther() throws Exception {
    var server = PlayedServer.shared();
    var store = server.store(server.database());
    var clock = Clock.systemUTC();
    var desk =
        SetScene.job(Files.createDirectory(root.resolve("desk")), "Winter", 4, clock, "desk");
    var there = root.resolve("cart").resolve(desk.folder().getFileName());
    Files.createDirectory(there.getParent());
    assertThat(new ProcessBuilder("cp", "-a", "" + desk.folder(), "" + there).start().waitFor())
        .isZero();
    var brought = new CountDownLatch(1);
    try (var atTheDesk = follower(store, desk.folder(), "desk", new CountDownLatch(1));
        var _ = follower(store, there, "cart", brought)) {
      desk.mark("003", SetupState.SHOT, MarkDetails.NONE);
      atTheDesk.changed();
      assertThat(brought.await(60, TimeUnit.SECONDS)).isTrue();
      var cart = Job.open(there, clock, new Station("cart"));
      assertThat(cart.state().of("003").state()).isEqualTo(SetupState.SHOT);
    }
  }
}
