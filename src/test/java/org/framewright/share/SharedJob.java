package org.framewright.share;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.live.LiveJob;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** A job with a list, and the page of it on the loopback address. */
final class SharedJob implements AutoCloseable {
  private static final int MOST_LOOKS = 600;

  /** Events have times in milliseconds: what is done next is later than that a frame came. */
  private static final int LATER = 20;

  static final Station DESK = new Station("desk");

  final Clock clock;
  final Path folder;
  final Path settings;
  private final ExecutorService queue = Executors.newSingleThreadExecutor();
  private final SampleCamera camera =
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
  LiveJob live;
  ShareServer server;

  private SharedJob(Path folder, Path settings, Clock clock) {
    this.folder = folder;
    this.settings = settings;
    this.clock = clock;
  }

  /** With so many setups, 001 and on, of which two frames of one view are wanted. */
  static SharedJob in(Path root, Clock clock, int setups) throws Exception {
    var started =
        (Started.Opened)
            Job.start(
                Templates.fashionDays(),
                root,
                Map.of("day", "2026-11-23", "client", "KVÖ", "title", "look book"),
                clock,
                DESK);
    started
        .job()
        .importList(
            new ShotList(IntStream.rangeClosed(1, setups).mapToObj(SharedJob::setup).toList()));
    var shared = new SharedJob(started.job().folder(), root.resolve("settings"), clock);
    shared.open();
    return shared;
  }

  static SharedJob in(Path root, int setups) throws Exception {
    return in(root, Clock.systemUTC(), setups);
  }

  private static Setup setup(int number) {
    return new Setup(
        "%03d".formatted(number),
        "Look " + number,
        List.of(new View("F", OptionalInt.of(2)), new View("B")),
        OptionalInt.empty(),
        new LinkedHashMap<>(Map.of("Rack", "R" + number, "EAN", "400638133393" + number % 10)));
  }

  private void open() throws Exception {
    live = LiveJob.begin(Job.open(folder, clock, DESK), Progress.NONE, queue).orElseThrow();
    serve(0);
  }

  private void serve(int port) throws IOException {
    server = ShareServer.start(live, loopback(port), clock);
  }

  static InetSocketAddress loopbackAt(int port) {
    return new InetSocketAddress(InetAddress.ofLiteral("127.0.0.1"), port);
  }

  /** The text of every log, to be the same after whatever was tried. */
  Map<String, String> logs() throws Exception {
    var logs = new TreeMap<String, String>();
    try (var files = Files.walk(folder)) {
      for (var file : files.filter(file -> file.toString().endsWith(".jsonl")).toList()) {
        logs.put(file.toString(), Files.readString(file));
      }
    }
    return logs;
  }

  ShareOptions loopback(int port) {
    return new ShareOptions(
        Optional.of(InetAddress.ofLiteral("127.0.0.1")), port, Optional.empty(), settings);
  }

  /** As after a crash of the program: all that is not on the disk is gone. */
  void restart() throws Exception {
    int port = server.address().getPort();
    server.close();
    live.close();
    live = LiveJob.begin(Job.open(folder, clock, DESK), Progress.NONE, queue).orElseThrow();
    serve(port);
  }

  /** Frames of a setup come in, one a second. */
  void shoot(String setup, String view, int frames) throws Exception {
    long before = wholeFrames();
    Thread.sleep(LATER);
    for (int i = 0; i < frames; i++) {
      camera
          .take(Exposure.of(clock.instant().plusSeconds(i), setup, view))
          .writeTo(live.job().framesFolder());
    }
    // One that is still being written when it is looked at is whole at the next look.
    for (int look = 0; look < MOST_LOOKS; look++) {
      live.look();
      live.ask(Job::name).get();
      if (wholeFrames() >= before + frames) {
        Thread.sleep(LATER);
        return;
      }
      Thread.sleep(50);
    }
    throw new AssertionError("The frames of " + setup + " were not seen: " + live.now().scan());
  }

  private long wholeFrames() {
    return live.now().scan().frames().stream().filter(Frame::complete).count();
  }

  /** A phone that was paired just now. */
  Phone paired(Role role) throws Exception {
    var phone = new Phone(server.address());
    phone.pair(server.invite(role), "Ines' phone");
    return phone;
  }

  @Override
  public void close() {
    server.close();
    live.close();
    queue.shutdown();
  }
}
