package org.framewright.ui;

import static org.framewright.ui.OnInterface.onInterface;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.image.PixelFormat;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;
import org.framewright.ui.look.Look;
import org.framewright.ui.settings.Places;

/**
 * Takes pictures of every screen, in both looks and two sizes: {@code mvn -q -Ppictures}. Those for
 * the papers go to {@code docs/pictures}, all of them to {@code target/pictures}.
 */
final class Pictures {
  private record Size(int width, int height) {}

  private static final Size SMALL = new Size(1000, 700);
  private static final Size LARGE = new Size(1440, 900);
  private static final List<String> LARGE_JOBS_PAGES = List.of("board", "names");
  private static final Path ALL = Path.of("target/pictures");
  private static final Path PAPERS = Path.of("docs/pictures");

  /** Long enough for the background to read frames and their pictures. */
  private static final long SETTLE_MILLIS = 2500;

  private final Path work;
  private final List<String> only;
  private final Clock clock = Clock.system(ZoneId.systemDefault());

  private Pictures(Path work, List<String> only) {
    this.work = work;
    this.only = only;
  }

  /** {@code Pictures [NAME...]}: those named, such as {@code board-neutral-1440}; else all. */
  public static void main(String[] args) throws Exception {
    Locale.setDefault(Locale.ENGLISH);
    Files.createDirectories(ALL);
    Files.createDirectories(PAPERS);
    var work = Files.createTempDirectory("framewright-pictures");
    Platform.startup(() -> {});
    Platform.setImplicitExit(false);
    try {
      new Pictures(work, List.of(args)).takeAll();
      System.exit(0);
    } catch (Exception e) {
      // The toolkit's threads would keep a failed run alive.
      e.printStackTrace();
      System.exit(1);
    }
  }

  private void takeAll() throws Exception {
    var files = SampleFiles.below(Path.of("").toAbsolutePath());
    var sample = SampleJobs.inTheMiddle(files, work.resolve("sample"), clock.instant());
    var large = SampleJobs.large(files, work.resolve("large"), 400, 1200, clock.instant());
    for (var look : Look.values()) {
      for (var size : List.of(SMALL, LARGE)) {
        take(Optional.empty(), look, size);
        take(Optional.of(sample), look, size);
        take(Optional.of(large), look, size);
      }
    }
  }

  private void take(Optional<Path> job, Look look, Size size) throws Exception {
    var settings = work.resolve("settings");
    Files.createDirectories(settings);
    Files.writeString(
        settings.resolve("preferences.json"),
        """
        {"look": "%s", "window.width": %d, "window.height": %d, "safety.reminded": "%s"}
        """
            .formatted(look.word(), size.width(), size.height(), LocalDate.now(clock)));
    var app =
        onInterface(
            () -> {
              var stage = new Stage();
              var composition =
                  new Composition(
                      stage,
                      Places.in(settings),
                      clock,
                      Locale.ENGLISH,
                      Background.threads(),
                      Platform::runLater,
                      new PlatformChoosers(stage));
              composition.open();
              return composition;
            });
    if (job.isEmpty()) {
      settle();
      if (wanted("start", look, size)) {
        write(app::scene, "start", look, size);
      }
    } else {
      onInterface(
          () -> {
            app.openJob(job.get());
            return app;
          });
      settle();
      var kind = job.get().toString().contains("large") ? "large-" : "";
      for (var page : onInterface(app::pageIds)) {
        if ((!kind.isEmpty() && !LARGE_JOBS_PAGES.contains(page))
            || !wanted(kind + page, look, size)) {
          continue;
        }
        onInterface(
            () -> {
              app.show(page);
              return page;
            });
        settle();
        write(app::scene, kind + page, look, size);
      }
      if (kind.isEmpty() && wanted("client", look, size)) {
        onInterface(
            () -> {
              app.turnClient();
              return app;
            });
        settle();
        write(app::clientScene, "client", look, size);
      }
    }
    onInterface(
        () -> {
          app.stage().close();
          app.close();
          return app;
        });
  }

  private boolean wanted(String name, Look look, Size size) {
    return only.isEmpty() || only.contains(file(name, look, size));
  }

  private static String file(String name, Look look, Size size) {
    return "%s-%s-%d".formatted(name, look.word(), size.width());
  }

  private void write(Supplier<Scene> scene, String name, Look look, Size size) throws Exception {
    var picture = onInterface(() -> picture(scene.get()));
    var file = file(name, look, size) + ".png";
    ImageIO.write(picture, "png", ALL.resolve(file).toFile());
    if ((look == Look.NEUTRAL) == size.equals(LARGE)) {
      ImageIO.write(picture, "png", PAPERS.resolve(file).toFile());
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
    Thread.sleep(SETTLE_MILLIS);
    onInterface(() -> "");
  }
}
