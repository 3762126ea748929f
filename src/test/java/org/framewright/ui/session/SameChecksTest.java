package org.framewright.ui.session;

import static org.framewright.AssertThat.assertThat;

import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.live.LiveJob;
import org.framewright.share.PlayedDevice;
import org.framewright.share.Role;
import org.framewright.share.ShareOptions;
import org.framewright.share.ShareServer;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.FreshJob;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** One does with a phone what another does in the app, on a job of the same list each. */
@Timeout(60)
class SameChecksTest {
  @TempDir private Path folder;

  /** A tick, and what it says besides. */
  private record Tick(String setup, String state, Map<String, String> more) {
    Tick(String setup, String state) {
      this(setup, state, Map.of());
    }

    Step step() {
      return new Step.Ticked(
          setup,
          SetupState.of(state).orElseThrow(),
          new MarkDetails(
              Optional.ofNullable(more.get("by")),
              Optional.ofNullable(more.get("view")),
              Optional.ofNullable(more.get("reason"))));
    }
  }

  private static final List<Tick> ASSISTANTS =
      List.of(
          new Tick("001", "on-set", Map.of("view", "F")),
          new Tick("2", "on-set", Map.of("view", "front")),
          new Tick("999", "shot"),
          new Tick("", "shot"),
          new Tick("001", "on-set", Map.of("view", "no such view")),
          new Tick("002", "shot"),
          new Tick("003", "pickup", Map.of("reason", "the train was creased")),
          new Tick("003", "dropped", Map.of("reason", "the courier did not come", "by", "Timo")),
          new Tick("001", "to-shoot"));

  private Job job(String name) throws Exception {
    return FreshJob.titled(
        Files.createDirectory(folder.resolve(name)),
        Clock.systemUTC(),
        List.of("Coat", "Hat", "Scarf"));
  }

  /** What a person is told; nothing where it was done. */
  private static String inTheApp(StepHistory app, Tick tick) throws Exception {
    try {
      app.take(tick.step());
      return "";
    } catch (JobException e) {
      return e.what() + " / " + e.remedy();
    }
  }

  private static String onThePhone(PlayedDevice phone, Tick tick) throws Exception {
    var refused = phone.tick(tick.setup(), tick.state(), tick.more()).path("refused");
    return refused.isMissingNode()
        ? ""
        : refused.path("what").asText() + " / " + refused.path("remedy").asText();
  }

  /** Where each setup stands, but for the times. */
  private static Map<String, String> standing(Job job) throws Exception {
    job.refresh();
    var standing = new HashMap<String, String>();
    job.state()
        .setups()
        .forEach(
            (code, status) ->
                standing.put(
                    code, status.state() + " " + status.signedOffBy() + " " + status.reason()));
    job.state().onSet().ifPresent(set -> standing.put("on set", set.setup() + set.view()));
    return standing;
  }

  @Test
  void aTickOnAPhonePassesTheChecksOfTheAppAndIsToldInTheSameWords() throws Exception {
    var here = job("here");
    var there = job("there");
    var app = new StepHistory(here);
    try (var queue = Executors.newSingleThreadExecutor();
        var live = LiveJob.begin(there, Progress.NONE, queue).orElseThrow();
        var server =
            ShareServer.start(
                live,
                new ShareOptions(
                    Optional.of(InetAddress.getLoopbackAddress()),
                    0,
                    Optional.empty(),
                    folder.resolve("settings")));
        var phone = PlayedDevice.paired(server.invite(Role.ASSISTANT).link(), "Ines' phone");
        var tablet = PlayedDevice.paired(server.invite(Role.CLIENT).link(), "Ada's tablet")) {
      int refused = 0;
      for (var tick : ASSISTANTS) {
        var told = inTheApp(app, tick);
        assertThat(onThePhone(phone, tick)).as(tick.toString()).isEqualTo(told);
        refused += told.isEmpty() ? 0 : 1;
        assertThat(standing(there)).as(tick.toString()).isEqualTo(standing(here));
      }
      assertThat(refused).isEqualTo(3);
      var agreed = new Tick("002", "signed-off", Map.of("by", "Ada"));
      assertThat(onThePhone(tablet, agreed)).isEqualTo(inTheApp(app, agreed)).isEmpty();
      assertThat(standing(there)).isEqualTo(standing(here));
    }
  }
}
