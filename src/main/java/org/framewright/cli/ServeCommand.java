package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.SettingsFolder;
import org.framewright.live.LiveJob;
import org.framewright.share.Role;
import org.framewright.share.ShareOptions;
import org.framewright.share.ShareServer;
import org.framewright.studio.SetFollower;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Follows a job and gives it to phones and tablets on the studio's network. */
@Command(
    name = "serve",
    description = {
      "The list and the client's screen for phones and tablets on the studio's network, until",
      "Ctrl-C or the end of the input. Each device is paired by a code of its own. While it runs,",
      "a line assistant, client or viewer makes another code; devices lists who is there;",
      "unpair NAME sends one away."
    },
    addMethodSubcommands = false)
final class ServeCommand implements Callable<Integer> {
  /** How often it looks whether it is to end, in milliseconds. */
  private static final long LOOK = 100;

  private static final Duration OTHER_STATIONS = Duration.ofSeconds(2);

  @Mixin private Output output;
  @Mixin private NetworkOptions network;
  @ParentCommand private Framewright program;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Option(
      names = "--role",
      paramLabel = "ROLE",
      description = {
        "Print a code for an assistant (the default), a client or a viewer; also several times."
      })
  private List<String> roles = List.of();

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      description = "Go on for that long, also when the input has ended.")
  private Optional<Long> seconds = Optional.empty();

  @Override
  public Integer call() throws IOException, JobException, CommandFailure, InterruptedException {
    var invited = roles();
    if (seconds.filter(given -> given < 0).isPresent()) {
      throw CommandFailure.badInput(
          "--for " + seconds.get(), "Give a number of seconds from 0 up.");
    }
    var options = network.options();
    var job = JobFolder.open(folder, output);
    try (var interruption = new Interruption();
        var queue =
            Executors.newSingleThreadExecutor(Thread.ofPlatform().name("job").daemon().factory())) {
      var live = LiveJob.begin(job, interruption, queue);
      if (live.isEmpty()) {
        return ExitStatus.DONE.code();
      }
      try (var followed = live.get()) {
        followed.watch();
        serve(job, followed, options, invited, interruption);
      }
    }
    return ExitStatus.DONE.code();
  }

  private void serve(
      Job job, LiveJob live, ShareOptions options, List<Role> invited, Interruption interruption)
      throws IOException, InterruptedException {
    try (var server = ShareServer.start(live, options)) {
      var talk = ServeTalk.ofAJob(output, server, job.name(), ZoneId.systemDefault());
      live.listen(talk);
      talk.begin(invited);
      var _ = server.listen(talk::devicesChanged);
      talk.devicesChanged(); // Who was paired between the two.
      try (var studio = studio(live, talk)) {
        live.listen(_ -> studio.changed());
        untilTheEnd(live, talk, interruption);
      }
      talk.end();
    }
  }

  /** What is done on devices reaches the studio's store, where this computer goes by one. */
  private SetFollower studio(LiveJob live, ServeTalk talk) {
    return SetFollower.begin(
        SettingsFolder.usual(),
        live,
        HoursOptions.set(output),
        Clock.system(ZoneId.systemDefault()),
        new StudioRemarks(live, talk));
  }

  /** What is typed is done in the turn in which it comes; between, others are listened to. */
  private void untilTheEnd(LiveJob live, ServeTalk talk, Interruption interruption)
      throws InterruptedException {
    var typed = TypedLines.of(program.input());
    long begun = System.nanoTime();
    long refreshed = begun;
    boolean open = true;
    while (!interruption.cancelled() && (open || isForLonger(begun))) {
      var line = typed.poll(LOOK, TimeUnit.MILLISECONDS);
      if (line != null) {
        open = line.isPresent();
        line.ifPresent(talk::typed);
      }
      if (seconds.isPresent() && !isForLonger(begun)) {
        return;
      }
      if (System.nanoTime() - refreshed > OTHER_STATIONS.toNanos()) {
        refreshed = System.nanoTime();
        live.refresh();
      }
    }
  }

  private boolean isForLonger(long begun) {
    return seconds
        .filter(given -> System.nanoTime() - begun < TimeUnit.SECONDS.toNanos(given))
        .isPresent();
  }

  private List<Role> roles() throws CommandFailure {
    if (roles.isEmpty()) {
      return List.of(Role.ASSISTANT);
    }
    var wanted = new ArrayList<Role>();
    for (var word : roles) {
      wanted.add(
          Role.of(word)
              .orElseThrow(
                  () ->
                      CommandFailure.badInput(
                          "\"" + word + "\" is no role", "Say assistant, client or viewer.")));
    }
    return List.copyOf(wanted);
  }
}
