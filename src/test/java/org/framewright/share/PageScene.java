package org.framewright.share;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.job.Device;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.live.LiveJob;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** A job that is served on this computer, with titles in many scripts, and something on set. */
final class PageScene implements AutoCloseable {
  /** Invented; the last one tries to be more than text. */
  private static final List<String> TITLES =
      List.of(
          "Évasé skirt, “früh” Łagodny",
          "معطف صوفي طويل 12",
          "מעיל צמר ארוך",
          "羊毛のコート、ダブルボタン",
          "เสื้อคลุมผ้าไหม",
          "ऊनी कोट",
          "A very long title, as clients write them: trench coat, storm flap, detachable lining",
          "<img src=x onerror=\"document.title='ran'\"><script>document.title='ran'</script>");

  private final SampleCamera camera =
      new SampleCamera(
          SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG_RATED_INSIDE, 1);
  private final Path settings;
  private final ExecutorService queue = Executors.newSingleThreadExecutor();
  private final Job job;
  private final LiveJob live;
  private ShareServer server;

  /**
   * @param folder an empty one
   * @param setups how many are on the list, at least 8
   */
  PageScene(Path folder, int setups) throws Exception {
    settings = folder.resolve("settings");
    var values =
        Map.of(
            "day",
            LocalDate.now(ZoneId.systemDefault()).toString(),
            "client",
            "KVO",
            "title",
            "look book");
    var parent = Files.createDirectories(folder.resolve("jobs"));
    var clock = Clock.system(ZoneId.systemDefault());
    job = ((Started.Opened) Job.start(Templates.fashionDays(), parent, values, clock)).job();
    var list = new ArrayList<Setup>();
    for (int i = 1; i <= setups; i++) {
      list.add(setup(i, TITLES.get((i - 1) % TITLES.size())));
    }
    job.importList(new ShotList(list));
    job.mark("001", SetupState.ON_SET, MarkDetails.by("Timo").andView("F"));
    job.mark("001", SetupState.SHOT, MarkDetails.by("Timo"));
    job.mark("001", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    job.mark("002", SetupState.DROPPED, MarkDetails.by("Timo").andReason("not here"));
    job.mark("003", SetupState.ON_SET, MarkDetails.by("Timo").andView("F"));
    for (int i = 0; i < 3; i++) {
      take("003", "F");
    }
    job.recordArrivals(job.scan());
    live = LiveJob.begin(job, Progress.NONE, queue).orElseThrow();
    serve();
  }

  private void take(String setup, String view) throws IOException {
    var exposure = Exposure.of(Instant.now(), setup, view).heldUpright();
    camera.take(exposure).writeTo(job.framesFolder());
  }

  /** A frame arrives while the job is followed. */
  void shoot(String setup, String view) throws IOException {
    take(setup, view);
    live.look();
  }

  static Setup setup(int number, String title) {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Rack", "B" + number % 4);
    columns.put(
        "EAN", String.format(Locale.ROOT, "%012d", 400_638_133_000L + number) + check(number));
    var views = List.of(new View("F"), new View("B"), new View("D"));
    return new Setup(code(number), title, views, OptionalInt.of(6), columns);
  }

  /** The product number that a setup's label bears. */
  static String label(int number) {
    return String.format(Locale.ROOT, "%012d", 400_638_133_000L + number) + check(number);
  }

  /** The check digit of GTIN-13 (GS1 General Specifications, 7.9). */
  private static int check(int number) {
    var digits = String.format(Locale.ROOT, "%012d", 400_638_133_000L + number);
    int sum = 0;
    for (int i = 0; i < digits.length(); i++) {
      sum += (digits.charAt(i) - '0') * (i % 2 == 0 ? 1 : 3);
    }
    return (10 - sum % 10) % 10;
  }

  static String code(int number) {
    return String.format(Locale.ROOT, "%03d", number);
  }

  Job job() {
    return job;
  }

  LiveJob live() {
    return live;
  }

  ShareServer server() {
    return server;
  }

  /** Changes the job as the app would. */
  void change(LiveJob.Change<?> change) {
    live.ask(change).join();
  }

  /** The only device that is paired. */
  Device device() {
    return new Device(server.devices().getFirst().id());
  }

  void serve() throws IOException {
    var here = Optional.of(InetAddress.ofLiteral("127.0.0.1"));
    server = ShareServer.start(live, new ShareOptions(here, 0, Optional.empty(), settings));
  }

  void stopServing() {
    server.close();
  }

  @Override
  public void close() {
    server.close();
    live.close();
    queue.shutdownNow();
  }
}
