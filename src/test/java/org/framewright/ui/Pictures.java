package org.framewright.ui;

import static org.framewright.ui.OnInterface.onInterface;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.PixelFormat;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.framewright.base.Progress;
import org.framewright.copies.device.Volumes;
import org.framewright.frames.FrameId;
import org.framewright.frames.slate.Slate;
import org.framewright.job.Asked;
import org.framewright.job.Device;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Numbered;
import org.framewright.job.TestClock;
import org.framewright.renaming.Renamer;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;
import org.framewright.share.Invitation;
import org.framewright.share.PairedDevice;
import org.framewright.share.Role;
import org.framewright.shotlist.SetupState;
import org.framewright.studio.OverviewFollower.Heard;
import org.framewright.ui.copies.Disks;
import org.framewright.ui.look.Theme;
import org.framewright.ui.page.FileChoosers;
import org.framewright.ui.sets.InventedSets;
import org.framewright.ui.sets.SetsSource;
import org.framewright.ui.share.Sharing;

/**
 * Takes pictures of every screen, in both looks and two sizes: {@code mvn -q -Ppictures}. Those for
 * the papers go to {@code docs/pictures}, all of them to {@code target/pictures}.
 */
final class Pictures {
  private record Size(int width, int height) {}

  private static final Size SMALL = new Size(1000, 700);
  private static final Size LARGE =
      new Size(
          Integer.getInteger("pictures.width", 1440), Integer.getInteger("pictures.height", 900));
  private static final List<String> PAGES = List.of("board", "names", "client");

  /** The frames of a job, then three of them side by side, then at full size. */
  private static final List<String> FRAMES = List.of("frames", "compare", "full-size");

  private static final List<String> BEFORE_A_JOB =
      List.of("start", "convention", "proposal", "proposal-scripts");
  private static final List<String> SETTINGS = List.of("settings", "settings-scripts");
  private static final List<String> LARGE_JOBS_PAGES = List.of("board", "names", "day");

  /** The place of the convention for fashion over several days among those in templates. */
  private static final int FASHION = 2;

  /** A convention whose names run together. */
  private static final String RUN_TOGETHER =
      """
      convention: Run together
      fields:
        day:    {type: date, pattern: uuuu-MM-dd}
        client: {type: code, length: 2-4}
        title:  {type: words, length: 1-12}
        setup:  {type: number, digits: 3}
        take:   {type: counter, digits: 2, restarts: setup}
      names:
        job:    "{day}_{client}{title}"
        frame:  "{client}_{setup}_{take}"
        select: "{client}_{setup}_{take}"
      folders:
        frames: 01_frames
      travels-to: [windows, macos, linux, cloud]
      """;

  /** What somebody at an invented client wrote. */
  private static final String CLIENT_WROTE =
      """
      Hello Ines, we took our time; these are the ones:
      - 001_F_0001 and 001_F_0002
      - IMG 0009, 0011-0013
      - KVO_002_F_0999.jpg (the one with the hat)
      - 003_F_0021 ?
      \u0627\u0644\u0642\u0645\u064a\u0635 \u0627\u0644\u0643\u062a\u0627\u0646\u064a \u0627\u0644\u0623\u062d\u0645\u0631 \u0628\u0623\u0643\u0645\u0627\u0645 \u0637\u0648\u064a\u0644\u0629: IMG_0030
      \u8d64\u3044\u30ea\u30cd\u30f3\u306e\u9577\u8896\u30b7\u30e3\u30c4 IMG_0031
      """;

  /** Names of an invented studio, of which one was typed by hand. */
  private static final String IN_USE =
      """
      20261102_KVO_001_F_0001.CR3
      20261102_KVO_001_F_0002.CR3
      20261102_KVO_001_B_0003.CR3
      20261102_KVO_002_0001.CR3
      20261103_NOVA_017_F_0001.CR3
      20261103_NOVA_17_F_0002.CR3
      """;

  /** The same in other scripts, and longer than most. */
  private static final String IN_OTHER_SCRIPTS =
      """
      20261102_\u682a\u5f0f\u4f1a\u793e\u5317\u65b9_\u8d64\u3044\u30ea\u30cd\u30f3\u306e\u9577\u8896\u30b7\u30e3\u30c4_0001.CR3
      20261102_\u682a\u5f0f\u4f1a\u793e\u5317\u65b9_\u0642\u0645\u064a\u0635\u0643\u062a\u0627\u0646\u0623\u062d\u0645\u0631_0002.CR3
      20261102_\u682a\u5f0f\u4f1a\u793e\u5317\u65b9_long-red-linen-shirt-with-long-sleeves_0003.CR3
      20261102_\u682a\u5f0f\u4f1a\u793e\u5317\u65b9_\u0e40\u0e2a\u0e37\u0e49\u0e2d_0004.CR3
      \u0642\u0645\u064a\u0635 \u0623\u062d\u0645\u0631 0005
      """;

  private static final List<String> NOT_IN_THE_PAPERS =
      List.of(
          "large-names",
          "notice",
          "trouble",
          "answered",
          "lost",
          "order",
          "proposal-scripts",
          "full-size",
          "settings-scripts",
          "list-asked",
          "list-wide",
          "copies-before",
          "copies-work",
          "copies-stop-using",
          "copies-waive",
          "copies-again",
          "copies-backup",
          "hand-off-before",
          "check-before",
          "check-whole",
          "returns-before",
          "returns-full",
          "returns-client",
          "returns-names",
          "day-evening",
          "day-empty",
          "day-scripts",
          "sets-join",
          "scan-unknown",
          "scan-not-now",
          "scan-several",
          "slates",
          "slates-ask",
          "slates-hand-off",
          "phones-off",
          "comments",
          "comment-asked",
          "help-found",
          "help-start",
          "large-day");

  private static final List<String> AT_THE_LIST = List.of("answered", "setup", "find", "lost");
  private static final List<String> COPIES =
      List.of(
          "card",
          "copies-before",
          "copies",
          "copies-work",
          "copies-copy",
          "copied",
          "copies-stop-using",
          "copies-waive",
          "copies-again",
          "copies-backup");
  private static final List<String> HAND_OFF =
      List.of(
          "hand-off-before",
          "hand-off",
          "handed",
          "went",
          "check-before",
          "check",
          "check-whole",
          "returns-before",
          "returns",
          "returns-full",
          "returns-client",
          "returns-names");
  private static final List<String> DAY = List.of("day", "day-evening");
  private static final List<String> SCANS = List.of("scan-unknown", "scan-not-now", "scan-several");
  private static final List<String> SLATES = List.of("slates", "slates-ask", "slates-hand-off");
  private static final List<String> PHONES =
      List.of("phones-off", "phones", "comments", "comment-asked");
  private static final List<String> HELP = List.of("help", "help-found", "help-start", "about");
  private static final List<String> LISTS = List.of("list", "list-asked", "list-wide");
  private static final Path ALL = Path.of("target/pictures");
  private static final Path PAPERS = Path.of("docs/pictures");

  /** Long enough for the background to read frames and their pictures. */
  private static final long SETTLE_MILLIS = 9000;

  private static final int PATIENCE = 10;

  /** Those in another language than English are not for the papers. */
  private static final Locale LANGUAGE =
      Locale.forLanguageTag(System.getProperty("pictures.language", "en-GB"));

  private final Path work;
  private final List<String> only;
  private Clock clock = Clock.system(ZoneId.systemDefault());
  private List<String> recent = List.of();
  private Disks disks = new Disks(Volumes.ofThisSystem(), List::of);
  private Optional<FileChoosers> choosers = Optional.empty();
  private SetsSource sets = toldOnce(new Heard.NoStore());

  private Pictures(Path work, List<String> only) {
    this.work = work;
    this.only = only;
  }

  /** {@code Pictures [NAME...]}: those named, such as {@code board-neutral-1440}; else all. */
  public static void main(String[] args) throws Exception {
    Locale.setDefault(LANGUAGE);
    Files.createDirectories(ALL);
    Files.createDirectories(PAPERS);
    var work = place();
    Platform.startup(() -> {});
    Platform.setImplicitExit(false);
    try {
      new Pictures(work, List.of(args)).takeAll();
      delete(work);
      System.exit(0);
    } catch (Exception e) {
      // The toolkit's threads would keep a failed run alive.
      e.printStackTrace();
      delete(work);
      System.exit(1);
    }
  }

  /** A place such as people have, where this system lets one make it: pages show it. */
  private static Path place() throws IOException {
    try {
      return Files.createDirectory(Path.of("/shoots"));
    } catch (IOException e) {
      return Files.createTempDirectory("shoots");
    }
  }

  private static void delete(Path folder) throws IOException {
    try (var all = Files.walk(folder)) {
      for (var one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(one);
      }
    }
  }

  private void takeAll() throws Exception {
    var files = SampleFiles.below(Path.of("").toAbsolutePath());
    var sample = SampleJobs.inTheMiddle(files, work.resolve("sample"), clock.instant());
    var named = SampleJobs.inTheMiddle(files, work.resolve("named"), clock.instant());
    chooseSelects(named);
    var large = SampleJobs.large(files, work.resolve("large"), 400, 1200, clock.instant());
    recent =
        List.of(
            named.toString(),
            large.toString(),
            "/shoots/2026-11-02_KVO_aw-look-book",
            sample.toString());
    for (var look : Theme.values()) {
      for (var size : List.of(SMALL, LARGE)) {
        if (anyWanted("", SETTINGS, look, size)) {
          take(look, size, Optional.empty(), this::settings);
        }
        if (wanted("sets-join", look, size)) {
          take(look, size, Optional.empty(), shot -> allSets(shot, "sets-join"));
        }
        if (wanted("sets", look, size)) {
          takeSets(look, size);
        }
        if (anyWanted("", BEFORE_A_JOB, look, size)) {
          take(look, size, Optional.empty(), this::beforeAJob);
        }
        if (anyWanted("", PAGES, look, size)) {
          take(look, size, Optional.of(sample), shot -> pages(shot, "", PAGES));
        }
        if (wanted("order", look, size)) {
          take(look, size, Optional.of(sample), this::order);
        }
        if (anyWanted("", FRAMES, look, size)) {
          take(look, size, Optional.of(named), this::frames);
        }
        if (anyWanted("", HAND_OFF, look, size)) {
          takeHandOff(files, look, size);
        }
        if (wanted("client-list", look, size)) {
          take(look, size, Optional.of(named), this::clientList);
        }
        if (anyWanted("", LISTS, look, size)) {
          take(
              look,
              size,
              Optional.of(sample),
              this::lists,
              Path.of("samples/shot-list-noon.csv"),
              Path.of("src/test/resources/lists/sizes.csv"),
              wideList());
        }
        if (anyWanted("", AT_THE_LIST, look, size)) {
          take(look, size, Optional.of(named), this::atTheList);
        }
        if (wanted("notice", look, size) || wanted("trouble", look, size)) {
          take(look, size, Optional.of(named), this::whatGoesWrong);
        }
        if (anyWanted("", HELP, look, size)) {
          take(look, size, Optional.of(named), this::help);
        }
        if (anyWanted("", COPIES, look, size)) {
          takeCopies(files, look, size);
        }
        if (anyWanted("", DAY, look, size)) {
          takeDay(files, look, size);
        }
        if (wanted("day-empty", look, size)) {
          var bare = FreshJob.titled(Files.createTempDirectory(work, "bare"), clock, List.of());
          take(
              look,
              size,
              Optional.of(bare.folder()),
              shot -> pages(shot, "day-", List.of("empty")));
        }
        if (wanted("day-scripts", look, size)) {
          take(
              look,
              size,
              Optional.of(inScripts(Files.createTempDirectory(work, "scripts"))),
              shot -> pages(shot, "day-", List.of("scripts")));
        }
        if (anyWanted("", SCANS, look, size)) {
          var scripts = inScripts(Files.createTempDirectory(work, "scans"));
          giveCodes(scripts);
          take(look, size, Optional.of(scripts), this::scans);
        }
        if (anyWanted("", SLATES, look, size)) {
          var slated = slated(Files.createTempDirectory(work, "slates"));
          take(look, size, Optional.of(slated), this::slates);
        }
        if (anyWanted("", PHONES, look, size)) {
          take(
              look,
              size,
              Optional.of(commented(files, Files.createTempDirectory(work, "phones"))),
              this::phones);
        }
        if (anyWanted("large-", LARGE_JOBS_PAGES, look, size)) {
          take(look, size, Optional.of(large), shot -> pages(shot, "large-", LARGE_JOBS_PAGES));
        }
      }
    }
  }

  /** The app as it is for one picture after the other. */
  private record Shot(Composition app, Theme look, Size size) {
    Node find(String selector) {
      return app.scene().getRoot().lookup(selector);
    }
  }

  /** What is done to the app for its pictures. */
  @FunctionalInterface
  private interface Sitting {
    void sit(Shot shot) throws Exception;
  }

  /**
   * @param files the answers where the app asks for one
   */
  private void take(Theme look, Size size, Optional<Path> job, Sitting sitting, Path... files)
      throws Exception {
    var settings = work.resolve("settings");
    Files.createDirectories(settings);
    Files.writeString(
        settings.resolve("preferences.json"),
        """
        {"look": "%s", "window.width": %d, "window.height": %d, "safety.reminded": "%s", "copies.by": "Ines",
         "scale": %s, "recent.places": ["/shoots"], "recent.jobs": ["%s"]}
        """
            .formatted(
                look.word(),
                size.width(),
                size.height(),
                LocalDate.now(clock),
                System.getProperty("pictures.scale", "1"),
                String.join("\", \"", recent)));
    var app =
        onInterface(
            () -> {
              var stage = new Stage();
              var composition =
                  OpenApp.composed(
                      stage,
                      settings,
                      clock,
                      choosers.orElseGet(
                          () ->
                              files.length == 0
                                  ? new PlatformChoosers(stage)
                                  : new Answers(work, files)),
                      LANGUAGE,
                      disks,
                      (_, _, _) -> InventedNetwork::new,
                      sets);
              composition.open();
              job.ifPresent(composition::openJob);
              return composition;
            });
    settle();
    sitting.sit(new Shot(app, look, size));
    onInterface(
        () -> {
          app.stage().close();
          app.close();
          return app;
        });
  }

  private static SetsSource toldOnce(Heard heard) {
    return listener -> {
      listener.accept(heard);
      return () -> {};
    };
  }

  /** Sets in the middle of an afternoon, by a clock that stands there. */
  private void takeSets(Theme look, Size size) throws Exception {
    var now = Instant.parse("2026-11-23T14:00:00Z");
    var before = clock;
    clock = Clock.fixed(now, ZoneId.of("+01:00"));
    sets = toldOnce(new Heard.Sets(InventedSets.of(now), Map.of()));
    try {
      take(look, size, Optional.empty(), shot -> allSets(shot, "sets"));
    } finally {
      clock = before;
      sets = toldOnce(new Heard.NoStore());
    }
  }

  private void allSets(Shot shot, String name) throws Exception {
    show(shot, "sets");
    settle(2000);
    onInterface(
        () -> {
          if (shot.find("#sets") instanceof ListView<?> list && !list.getItems().isEmpty()) {
            list.getSelectionModel().select(1);
          }
          return shot;
        });
    settle(1000);
    write(shot.app()::scene, name, shot);
  }

  /** Noon of the second day, by a clock that stands there. */
  private void takeDay(SampleFiles files, Theme look, Size size) throws Exception {
    var noon = Instant.parse("2026-11-03T11:40:00Z");
    var place = Files.createDirectory(work.resolve("day"));
    var job = SampleJobs.inTheMiddle(files, place.resolve("job"), noon);
    var before = clock;
    clock = Clock.fixed(noon, ZoneId.of("+01:00"));
    try {
      take(look, size, Optional.of(job), this::day);
    } finally {
      clock = before;
      delete(place);
    }
  }

  private void day(Shot shot) throws Exception {
    for (var i = 0; i < PATIENCE && shot.find("#look-lines .look-what") == null; i++) {
      show(shot, "day");
    }
    press(shot, "#look-lines", KeyCode.A, false);
    press(shot, "#look-lines", KeyCode.SPACE, false);
    settle(1000);
    write(shot.app()::scene, "day", shot);
    fire(shot, "#day-evening");
    settle();
    settle();
    write(shot.app()::scene, "day-evening", shot);
  }

  /** Setups that are long and in other scripts, in the middle of a day. */
  private Path inScripts(Path place) throws Exception {
    var now = new TestClock("2026-11-23T09:00:00Z");
    var titles =
        List.of(
            "معطف صوفي طويل من القماش الأزرق الداكن مع حزام",
            "ウールコート、ダブルブレスト、ロング丈、裏地付き",
            "Wool coat, double-breasted, with a storm flap and a belt that is sewn on",
            "เสื้อคลุมผ้าไหมยาวมีเข็มขัด",
            "מעיל צמר ארוך עם חגורה",
            "Шерстяное пальто",
            "真丝衬衫，立领",
            "Évasé skirt");
    var job = FreshJob.titled(place, now, titles);
    for (int i = 1; i <= 6; i++) {
      var code = "%03d".formatted(i);
      job.mark(code, SetupState.ON_SET, MarkDetails.NONE);
      now.pass(Duration.ofMinutes(i == 3 ? 90 : 10 + i));
      job.mark(
          code,
          i == 2 ? SetupState.PICKUP : SetupState.SHOT,
          MarkDetails.NONE.andReason(titles.get(i)));
    }
    return job.folder();
  }

  /** Slates of which the second contradicts what is on set. */
  private Path slated(Path place) throws Exception {
    var now = new TestClock("2026-11-23T09:00:00Z");
    var job = Job.open(inScripts(place), now);
    now.pass(Duration.ofHours(5));
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.SMALL, SampleCamera.Writes.JPEG, 410);
    var key = job.slateKey();
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    for (var slate : List.of("001", "002", "003")) {
      for (int i = 0; i < 4; i++) {
        now.pass(Duration.ofSeconds(10));
        var exposure = Exposure.of(now.instant(), slate, "F");
        camera
            .take(i == 0 ? exposure.with(Slate.of(key, slate)) : exposure)
            .writeTo(job.framesFolder());
        now.pass(Duration.ofSeconds(1));
        job.recordArrivals(job.scan());
      }
    }
    return job.folder();
  }

  /** Frames in doubt, the question of which setup one is the slate, and slates that go along. */
  private void slates(Shot shot) throws Exception {
    show(shot, "frames");
    settle();
    press(shot, "#grid", KeyCode.END, false);
    for (int i = 0; i < 4; i++) {
      press(shot, "#grid", KeyCode.LEFT, false);
    }
    settle(2000);
    write(shot.app()::scene, "slates", shot);
    press(shot, "#grid", KeyCode.T, false);
    settle(1000);
    onInterface(
        () -> {
          type(shot, "#setup-typed", "معطف");
          return shot;
        });
    settle(1000);
    write(shot.app()::scene, "slates-ask", shot);
    press(shot, "#setup-typed", KeyCode.ESCAPE, false);
    show(shot, "handoff");
    settle(2000);
    write(shot.app()::scene, "slates-hand-off", shot);
  }

  /** Two setups get one code; the product number is an example of GS1. */
  private void giveCodes(Path folder) throws Exception {
    var job = Job.open(folder, clock);
    for (var code : List.of("001", "003", "004")) {
      var setup = job.shotList().setup(code).orElseThrow();
      job.changeSetup(FreshJob.with(setup, "EAN", "614141000012"));
    }
  }

  /** A code that no setup has, one that is scanned meanwhile, and one that several have. */
  private void scans(Shot shot) throws Exception {
    KeyStroke.scan(shot.app().scene(), "9506000134352");
    settle(2000);
    onInterface(
        () -> {
          type(shot, "#setup-typed", "معطف");
          return shot;
        });
    settle(1000);
    write(shot.app()::scene, "scan-unknown", shot);
    KeyStroke.scan(shot.app().scene(), "614141000012");
    settle(1000);
    write(shot.app()::scene, "scan-not-now", shot);
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
    KeyStroke.scan(shot.app().scene(), "614141000012");
    settle(2000);
    write(shot.app()::scene, "scan-several", shot);
  }

  /** Three cards of a job, of which each gets another answer, and what copying comes to. */
  private void takeCopies(SampleFiles files, Theme look, Size size) throws Exception {
    var place = Files.createDirectory(work.resolve("copies"));
    var job = SampleJobs.inTheMiddle(files, place.resolve("job"), clock.instant());
    var shoot = new CopiesShoot(place, Job.open(job, clock));
    shoot.compareBefore();
    disks = shoot.disks();
    choosers = Optional.of(shoot.choosers());
    try {
      take(look, size, Optional.of(job), shot -> copies(shot, shoot));
    } finally {
      disks = new Disks(Volumes.ofThisSystem(), List::of);
      choosers = Optional.empty();
      delete(place);
    }
  }

  private void copies(Shot shot, CopiesShoot shoot) throws Exception {
    settle();
    write(shot.app()::scene, "card", shot);
    shoot.pullAll();
    show(shot, "copies");
    write(shot.app()::scene, "copies-before", shot);
    for (int place = 0; place < shoot.places(); place++) {
      fire(shot, "#copies-add");
      settle(1000);
    }
    fire(shot, "#copies-compare");
    settle();
    write(shot.app()::scene, "copies", shot);
    waive(shot);
    shoot.slow(true);
    fire(shot, "#copies-compare");
    settle();
    write(shot.app()::scene, "copies-work", shot);
    fire(shot, "#copies-stop");
    shoot.slow(false);
    settle(3000);
    fire(shot, "#copies-copy");
    settle(2000);
    write(shot.app()::scene, "copies-copy", shot);
    fire(shot, "#dialog-confirm");
    settle();
    write(shot.app()::scene, "copied", shot);
    shoot.fail();
    fire(shot, "#copies-copy");
    settle(2000);
    fire(shot, "#dialog-confirm");
    settle();
    write(shot.app()::scene, "copies-stop-using", shot);
    shoot.copyACard();
    fire(shot, "#copies-add");
    settle(1000);
    onInterface(
        () -> {
          if (shot.find("#places") instanceof ListView<?> places) {
            places.getSelectionModel().select(shoot.copiedCardAt());
          }
          return shot;
        });
    fire(shot, "#copies-turn");
    settle(1000);
    write(shot.app()::scene, "copies-backup", shot);
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
  }

  /** A file that the card broke off need not be kept. */
  private void waive(Shot shot) throws Exception {
    onInterface(
        () -> {
          if (shot.find("#files") instanceof ListView<?> files) {
            files.getSelectionModel().selectFirst();
          }
          return shot;
        });
    press(shot, "#files", KeyCode.W, false);
    settle(1000);
    onInterface(
        () -> {
          if (shot.find("#waive-by") instanceof TextField person) {
            person.setText("Ines");
          }
          return shot;
        });
    settle(1000);
    write(shot.app()::scene, "copies-waive", shot);
    fire(shot, "#dialog-confirm");
    settle(1000);
    write(shot.app()::scene, "copies-again", shot);
  }

  private void pages(Shot shot, String kind, List<String> pages) throws Exception {
    for (var page : pages) {
      if (!wanted(kind + page, shot.look(), shot.size())) {
        continue;
      }
      if (page.equals("client")) {
        onInterface(
            () -> {
              shot.app().turnClient();
              return shot;
            });
        settle();
        write(shot.app()::clientScene, page, shot);
      } else {
        show(shot, kind.equals("day-") ? "day" : page);
        write(shot.app()::scene, kind + page, shot);
      }
    }
  }

  /** Another order of what is left. */
  private void order(Shot shot) throws Exception {
    show(shot, "board");
    press(shot, KeyCode.W);
    settle();
    write(shot.app()::scene, "order", shot);
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
  }

  /** The sample job, of which people said something. */
  private Path commented(SampleFiles files, Path in) throws Exception {
    var folder = SampleJobs.inTheMiddle(files, in, clock.instant());
    var job = Job.open(folder, clock);
    var set = job.state().onSet().orElseThrow().setup();
    var frames = job.tally().places().entrySet();
    var frame = frames.stream().filter(one -> one.getValue().setup().equals(set)).findFirst();
    var tablet = new Device("page-0a1b2c3d");
    long number = 0;
    for (var asked :
        List.of(
            new Asked.Named("Odette's tablet"),
            said(set, List.of(), "The belt in every picture, please"),
            said(set, frame.map(one -> List.of(one.getKey())).orElse(List.of()), "collar lower"),
            said("001", List.of(), "This one is for the cover"))) {
      job.receive(tablet, new Numbered(++number, clock.instant(), asked));
    }
    return folder;
  }

  private static Asked said(String setup, List<FrameId> frames, String text) {
    return new Asked.Commented(setup, frames, text, "Odette");
  }

  /** Phones and tablets, and what is said on them. */
  private void phones(Shot shot) throws Exception {
    show(shot, "board");
    press(shot, KeyCode.HOME);
    settle();
    write(shot.app()::scene, "comments", shot);
    press(shot, KeyCode.M);
    settle();
    write(shot.app()::scene, "comment-asked", shot);
    dismiss(shot);
    fire(shot, "#phones");
    settle();
    write(shot.app()::scene, "phones-off", shot);
    fire(shot, "#share-turn");
    settle();
    fire(shot, "#share-show");
    settle();
    write(shot.app()::scene, "phones", shot);
    dismiss(shot);
  }

  private static void dismiss(Shot shot) throws Exception {
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
  }

  /** An invented network, so that no picture shows a real one. */
  private final class InventedNetwork implements Sharing.Page {
    private static final URI ADDRESS = URI.create("http://192.168.1.20:8470/");

    @Override
    public URI address() {
      return ADDRESS;
    }

    @Override
    public Invitation invite(Role role) {
      return new Invitation(
          URI.create(ADDRESS + "#K7Q2M4XJ3ZD5T6WBNCRVYHAEGP." + role.word().charAt(0)),
          role,
          clock.instant().plus(Duration.ofMinutes(10)));
    }

    @Override
    public void withdraw(Invitation code) {}

    @Override
    public List<PairedDevice> devices() {
      var now = clock.instant();
      return List.of(
          new PairedDevice("page-00000001", "Ines' phone", Role.ASSISTANT, true, now),
          new PairedDevice("page-00000002", "Odette's tablet", Role.CLIENT, true, now),
          new PairedDevice(
              "page-00000003",
              "Timo's phone",
              Role.ASSISTANT,
              false,
              now.minus(Duration.ofMinutes(42))),
          new PairedDevice("page-00000004", "Screen at the door", Role.VIEWER, true, now));
    }

    @Override
    public void unpair(String id) {}

    @Override
    public AutoCloseable listen(Runnable changed) {
      return () -> {};
    }

    @Override
    public void close() {}
  }

  /** Lists that are looked at: the one of noon, one that asks, and one with many columns. */
  private void lists(Shot shot) throws Exception {
    for (var name : LISTS) {
      var button = name.equals("list") ? "#new-list" : "#another";
      for (var i = 0; i < PATIENCE && shot.find(button) == null; i++) {
        settle();
      }
      fire(shot, button);
      settle();
      if (name.equals("list-wide") && shot.find("#step-columns") instanceof ToggleButton step) {
        onInterface(
            () -> {
              step.fire();
              return step;
            });
        settle();
      }
      write(shot.app()::scene, name, shot);
    }
  }

  private static void fire(Shot shot, String button) throws Exception {
    onInterface(
        () -> {
          if (shot.find(button) instanceof Button found) {
            found.fire();
          }
          return shot;
        });
  }

  /** Thirty columns, headed in several scripts. */
  private Path wideList() throws Exception {
    var headings =
        List.of(
            "Look",
            "品名",
            "اسم القطعة الطويل جدا (مقاس)",
            "撮影カット",
            "Farbe",
            "Prix de vente conseillé TTC");
    var cells =
        List.of(
            "ウールコート、ダブルブレスト、ロング丈",
            "معطف طويل من الصوف الأزرق مع حزام",
            "front",
            "rot",
            "1.200,00 €");
    var lines = new ArrayList<String>();
    for (var line = 0; line <= 60; line++) {
      var row = new ArrayList<String>();
      for (var column = 0; column < 30; column++) {
        var title = headings.get(column % headings.size());
        row.add(
            line == 0
                ? column < headings.size() ? title : title + " " + column
                : column == 0 ? "" + (100 + line) : cells.get((column - 1) % cells.size()));
      }
      lines.add(String.join(";", row));
    }
    return Files.writeString(work.resolve("منتجات – 秋冬コレクション 2026.csv"), String.join("\n", lines));
  }

  private static void show(Shot shot, String page) throws Exception {
    onInterface(
        () -> {
          shot.app().show(page);
          return page;
        });
    settle();
  }

  /** The filled-in form, and a convention with what is wrong with it. */
  private void beforeAJob(Shot shot) throws Exception {
    onInterface(
        () -> {
          if (shot.find("#convention") instanceof ComboBox<?> conventions) {
            conventions.getSelectionModel().select(FASHION);
          }
          return shot;
        });
    settle();
    onInterface(
        () -> {
          type(shot, "#field-client", "Kvistbjörk & Ödde");
          type(shot, "#field-title", "Spring — früh");
          shot.find("#field-title").requestFocus();
          return shot;
        });
    settle();
    write(shot.app()::scene, "start", shot);
    show(shot, "convention");
    onInterface(
        () -> {
          if (shot.find("#convention-text") instanceof TextArea text) {
            text.setText(RUN_TOGETHER);
          }
          type(shot, "#frames-planned", "400");
          return shot;
        });
    settle();
    write(shot.app()::scene, "convention", shot);
    show(shot, "proposal");
    paste(shot, IN_USE);
    write(shot.app()::scene, "proposal", shot);
    paste(shot, IN_OTHER_SCRIPTS);
    write(shot.app()::scene, "proposal-scripts", shot);
  }

  /** Filled in as a studio would, then in other scripts and with what does not hold. */
  private void settings(Shot shot) throws Exception {
    show(shot, "settings");
    settings(shot, "Ines Vander", "Studio Nova, Antwerp", "\u00a9 2026 Ines Vander", "18:00", "45");
    write(shot.app()::scene, "settings", shot);
    settings(
        shot,
        "\u0625\u064a\u0646\u0627\u0633 \u0641\u0627\u0646\u062f\u0631"
            + " (\u0628\u064a\u0631\u0648\u062a)",
        "\u682a\u5f0f\u4f1a\u793e\u5317\u65b9\u5199\u771f\u30b9\u30bf\u30b8\u30aa \u00b7 Nova"
            + " Photographic Productions International, Antwerp and Beirut",
        "\u00a9 2026 \u0625\u064a\u0646\u0627\u0633 \u0641\u0627\u0646\u062f\u0631, all rights"
            + " reserved, in every country and for every use that is not named below",
        "8",
        "an hour");
    write(shot.app()::scene, "settings-scripts", shot);
  }

  private static void settings(
      Shot shot, String photographer, String studio, String notice, String until, String minutes)
      throws Exception {
    onInterface(
        () -> {
          type(shot, "#setting-studio-photographer", photographer);
          type(shot, "#setting-studio-studio", studio);
          type(shot, "#setting-studio-copyright", notice);
          type(shot, "#setting-until", until);
          type(shot, "#setting-minutes-1", minutes);
          for (var field :
              List.of(
                  "#setting-studio-photographer",
                  "#setting-studio-studio",
                  "#setting-studio-copyright",
                  "#setting-minutes-1",
                  "#setting-studio-credit")) {
            shot.find(field).requestFocus();
          }
          return shot;
        });
    settle();
  }

  private static void paste(Shot shot, String names) throws Exception {
    onInterface(
        () -> {
          if (shot.find("#example-names") instanceof TextArea text) {
            text.setText(names);
          }
          return shot;
        });
    settle();
    settle();
  }

  private static void type(Shot shot, String field, String text) {
    switch (shot.find(field)) {
      case TextField typed -> typed.setText(text);
      case ComboBox<?> typed -> typed.getEditor().setText(text);
      case null, default -> throw new IllegalStateException("no field " + field);
    }
  }

  /** Selects of which most have their names; the last two are not renamed yet. */
  private void chooseSelects(Path folder) throws Exception {
    var job = Job.open(folder, clock);
    var renamer = Renamer.in(folder, clock);
    var all = job.frameNames(job.scan()).requests();
    renamer.apply(renamer.plan(all.subList(0, all.size() - 6)), Progress.NONE);
    var frames = job.scan().frames();
    var chosen = new ArrayList<FrameId>();
    for (var i = 0; i < frames.size(); i += 6) {
      chosen.add(frames.get(i).id());
    }
    frames.stream()
        .filter(frame -> frame.stem().startsWith("IMG_"))
        .limit(2)
        .forEach(frame -> chosen.add(frame.id()));
    job.select(chosen, true, "Ines");
    for (var i = 0; i < frames.size(); i++) {
      job.rate(List.of(frames.get(i).id()), i * 7 % 6, "Ines");
    }
  }

  private void frames(Shot shot) throws Exception {
    show(shot, "frames");
    for (var i = 0; i < 2; i++) {
      press(shot, "#grid", KeyCode.RIGHT, true);
    }
    settle();
    write(shot.app()::scene, "frames", shot);
    press(shot, "#grid", KeyCode.ENTER, false);
    press(shot, "#compared", KeyCode.RIGHT, false);
    settle();
    write(shot.app()::scene, "compare", shot);
    press(shot, "#compared", KeyCode.F, false);
    settle();
    write(shot.app()::scene, "full-size", shot);
  }

  private static void press(Shot shot, String on, KeyCode key, boolean shift) throws Exception {
    onInterface(
        () -> {
          var node = shot.find(on);
          KeyStroke.on(node, key, shift);
          return node;
        });
  }

  /** A hand-off, a package that lost files on its way, and what came back of it. */
  private void takeHandOff(SampleFiles files, Theme look, Size size) throws Exception {
    var place = Files.createDirectory(work.resolve("handed"));
    var job = SampleJobs.inTheMiddle(files, place.resolve("job"), clock.instant());
    chooseSelects(job);
    var shoot = new HandOffShoot(place, job);
    choosers = Optional.of(shoot);
    try {
      take(look, size, Optional.of(job), shot -> handOff(shot, shoot));
    } finally {
      choosers = Optional.empty();
      delete(place);
    }
  }

  private void handOff(Shot shot, HandOffShoot shoot) throws Exception {
    settle();
    show(shot, "handoff");
    write(shot.app()::scene, "hand-off", shot);
    fire(shot, "#hand-off");
    for (var i = 0; i < PATIENCE && shot.find("#handed-word") == null; i++) {
      settle();
    }
    write(shot.app()::scene, "handed", shot);
    shoot.handed();
    part(shot, "went");
    write(shot.app()::scene, "went", shot);
    part(shot, "check");
    write(shot.app()::scene, "check-before", shot);
    shoot.next(shoot.whole());
    fire(shot, "#check-choose");
    settle();
    write(shot.app()::scene, "check-whole", shot);
    shoot.next(shoot.broken());
    fire(shot, "#check-choose");
    settle();
    write(shot.app()::scene, "check", shot);
    part(shot, "back");
    write(shot.app()::scene, "returns-before", shot);
    shoot.next(shoot.back());
    fire(shot, "#returns-choose");
    settle();
    onInterface(
        () -> {
          if (shot.find("#returned") instanceof ListView<?> lines) {
            lines.getSelectionModel().selectLast();
            lines.scrollTo(lines.getItems().size());
          }
          return shot;
        });
    settle();
    write(shot.app()::scene, "returns", shot);
    press(shot, "#returned", KeyCode.F, false);
    settle();
    write(shot.app()::scene, "returns-full", shot);
    press(shot, "#returned", KeyCode.F, false);
    fire(shot, "#returns-deliver");
    settle();
    write(shot.app()::scene, "returns-client", shot);
    press(shot, "#client-lines", KeyCode.ESCAPE, false);
    fire(shot, "#returns-rename");
    settle();
    write(shot.app()::scene, "returns-names", shot);
  }

  private static void part(Shot shot, String word) throws Exception {
    onInterface(
        () -> {
          if (shot.find("#hand-part-" + word) instanceof ToggleButton button) {
            button.fire();
          }
          return shot;
        });
    settle(2000);
  }

  private void clientList(Shot shot) throws Exception {
    settle();
    show(shot, "frames");
    onInterface(
        () -> {
          if (shot.find("#hand-off-by-list") instanceof Button button) {
            button.fire();
          }
          return shot;
        });
    settle();
    onInterface(
        () -> {
          if (shot.find("#client-list-text") instanceof TextArea text) {
            text.setText(CLIENT_WROTE);
          }
          return shot;
        });
    settle();
    settle();
    write(shot.app()::scene, "client-list", shot);
  }

  /** A frame that is cut short, shown in the notice line, and a failure that nobody foresaw. */
  private void whatGoesWrong(Shot shot) throws Exception {
    var cut = shot.app().session().job().framesFolder().resolve("A/IMG_9000.JPG");
    Files.write(cut, new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff});
    settle();
    settle();
    write(shot.app()::scene, "notice", shot);
    shot.app().trouble(new IllegalStateException("a nut is loose"));
    settle();
    write(shot.app()::scene, "trouble", shot);
    Files.delete(cut);
  }

  /** What a tick is answered with, a setup that is added, and a job whose folder is gone. */
  private void atTheList(Shot shot) throws Exception {
    press(shot, KeyCode.T);
    settle();
    write(shot.app()::scene, "answered", shot);
    press(shot, KeyCode.BACK_SPACE);
    press(shot, KeyCode.I);
    settle();
    write(shot.app()::scene, "setup", shot);
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
    find(shot, "ta");
    write(shot.app()::scene, "find", shot);
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
    var folder = shot.app().session().job().folder();
    var away = folder.resolveSibling("unplugged");
    Files.move(folder, away);
    settle();
    write(shot.app()::scene, "lost", shot);
    Files.move(away, folder);
  }

  /** Help on the page Copies, what is found in it, help on a form, and what the program is. */
  private void help(Shot shot) throws Exception {
    show(shot, "copies");
    for (var i = 0; i < PATIENCE && shot.find("#places") == null; i++) {
      show(shot, "copies");
    }
    press(shot, "#places", KeyCode.F1, false);
    settle();
    write(shot.app()::scene, "help", shot);
    onInterface(
        () -> {
          type(shot, "#help-search", "card clear");
          return shot;
        });
    settle();
    write(shot.app()::scene, "help-found", shot);
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
    show(shot, "start");
    press(shot, "#field-day", KeyCode.F1, false);
    settle();
    write(shot.app()::scene, "help-start", shot);
    onInterface(
        () -> {
          shot.app().dialogs().dismiss();
          return shot;
        });
    show(shot, "settings");
    fire(shot, "#about");
    settle();
    write(shot.app()::scene, "about", shot);
  }

  private static void find(Shot shot, String typed) throws Exception {
    fire(shot, "#find");
    onInterface(
        () -> {
          if (shot.find("#find-anything") instanceof TextField field) {
            field.setText(typed);
          }
          return shot;
        });
    settle();
  }

  private static void press(Shot shot, KeyCode key) throws Exception {
    onInterface(
        () -> {
          var list = shot.find("#setups");
          KeyStroke.on(list, key, false);
          return list;
        });
  }

  private boolean anyWanted(String kind, List<String> pages, Theme look, Size size) {
    return pages.stream().anyMatch(page -> wanted(kind + page, look, size));
  }

  private boolean wanted(String name, Theme look, Size size) {
    return only.isEmpty() || only.contains(file(name, look, size));
  }

  private static String file(String name, Theme look, Size size) {
    return "%s-%s-%d".formatted(name, look.word(), size.width());
  }

  private void write(Supplier<Scene> scene, String name, Shot shot) throws Exception {
    var look = shot.look();
    var size = shot.size();
    if (!wanted(name, look, size)) {
      return;
    }
    var picture =
        onInterface(
            () -> {
              hideTheMachine(scene.get());
              return picture(scene.get());
            });
    var english = LANGUAGE.getLanguage().equals("en");
    var file = file(name, look, size) + (english ? "" : "-" + LANGUAGE.getLanguage()) + ".png";
    ImageIO.write(picture, "png", ALL.resolve(file).toFile());
    if (english
        && (look == Theme.NEUTRAL) == size.equals(LARGE)
        && !NOT_IN_THE_PAPERS.contains(name)) {
      ImageIO.write(picture, "png", PAPERS.resolve(file).toFile());
    }
  }

  /** No path of this machine is in a picture. */
  private void hideTheMachine(Scene scene) {
    for (var node : scene.getRoot().lookupAll(".job-where")) {
      if (node instanceof Label label && label.getText().startsWith(work.toString())) {
        label.setText("/shoots");
      }
    }
  }

  private static BufferedImage picture(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    var image = scene.snapshot(null);
    var width = (int) image.getWidth();
    var height = (int) image.getHeight();
    var pixels = new int[width * height];
    image
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
    var picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    picture.setRGB(0, 0, width, height, pixels, 0, width);
    return picture;
  }

  private static void settle() throws Exception {
    settle(SETTLE_MILLIS);
  }

  private static void settle(long millis) throws Exception {
    Thread.sleep(millis);
    onInterface(() -> "");
  }
}
