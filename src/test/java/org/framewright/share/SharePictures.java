package org.framewright.share;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import org.framewright.InstalledBrowser;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.framewright.live.LiveJob;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * Takes pictures of the pages with the sample job, in the fonts of the app: {@code
 * org.framewright.share.SharePictures FOLDER [LANGUAGE]}.
 */
final class SharePictures {
  private static final ZoneId ZONE = ZoneId.of("+01:00");
  private static final Path RESOURCES =
      Path.of("src/main/resources/org/framewright").toAbsolutePath();

  private final ShareServer server;
  private final InstalledBrowser started;
  private final RemoteWebDriver browser;
  private final Path into;

  private SharePictures(ShareServer server, InstalledBrowser started, Path into) {
    this.server = server;
    this.started = started;
    this.browser = started.driver();
    this.into = into;
  }

  public static void main(String[] arguments) throws Exception {
    var into = Files.createDirectories(Path.of(arguments[0]));
    var language = arguments.length > 1 ? arguments[1] : "en";
    var scratch = Files.createTempDirectory("framewright-share");
    var folder = SampleJobs.inTheMiddle(SampleFiles.find(), scratch.resolve("job"), Instant.now());
    var queue = Executors.newSingleThreadExecutor();
    var here = Optional.of(InetAddress.ofLiteral("127.0.0.1"));
    var options = new ShareOptions(here, 0, Optional.empty(), scratch.resolve("settings"));
    try (var live =
            LiveJob.begin(Job.open(folder, Clock.system(ZONE)), Progress.NONE, queue)
                .orElseThrow();
        var server = ShareServer.start(live, options);
        var browser =
            InstalledBrowser.start(
                Files.createDirectory(scratch.resolve("profile")),
                Map.of("FONTCONFIG_FILE", fonts(scratch).toString(), "TZ", "Europe/Berlin"),
                "--lang=" + language,
                "--force-color-profile=srgb")) {
      var pictures = new SharePictures(server, browser, into);
      pictures.client();
      pictures.assistant();
      pictures.viewer();
    } finally {
      queue.shutdownNow();
    }
  }

  /** The fonts of the app and of its reports, and no others. */
  static Path fonts(Path scratch) throws IOException {
    return Files.writeString(
        scratch.resolve("fonts.conf"),
        """
        <?xml version="1.0"?>
        <!DOCTYPE fontconfig SYSTEM "fonts.dtd">
        <fontconfig><dir>%s</dir><dir>%s</dir><cachedir>%s</cachedir></fontconfig>
        """
            .formatted(
                RESOURCES.resolve("ui/fonts"),
                RESOURCES.resolve("report/fonts"),
                scratch.resolve("cache")));
  }

  private void client() throws Exception {
    started.screen(1180, 820, 1);
    pair(Role.CLIENT);
    run("document.evaluate('//button[.=\"Comment\"]', document, null, 9).singleNodeValue?.click()");
    run(
        "const field = document.getElementById('comment'); field.value = 'collar lower';"
            + "field.form.requestSubmit();");
    Thread.sleep(2_000);
    take("share-client");
  }

  private void assistant() throws Exception {
    started.screen(390, 844, 2);
    pair(Role.ASSISTANT);
    run(
        "localStorage['framewright.look'] = '\"neutral\"'; document.documentElement.dataset.look = 'neutral'");
    take("share-assistant");
    run("document.querySelector('.row[data-state=\"on-set\"]').scrollIntoView({block: 'center'})");
    take("share-assistant-list");
    started.screen(1180, 820, 1);
    take("share-assistant-tablet");
    run("document.documentElement.dataset.look = 'sunlight'");
    started.screen(390, 844, 2);
    run("scrollTo(0, 0)");
    take("share-assistant-sunlight");
  }

  private void viewer() throws Exception {
    started.screen(1920, 1080, 1);
    pair(Role.VIEWER);
    Thread.sleep(2_000);
    take("share-viewer");
  }

  private void run(String script) {
    browser.executeScript(script);
  }

  private void pair(Role role) throws Exception {
    browser.get(server.address().toString());
    run("localStorage.clear()");
    browser.get("about:blank");
    browser.get(server.invite(role).link().toString());
    Thread.sleep(1_000);
    run("document.querySelector('#device-name')?.form.requestSubmit()");
    Thread.sleep(4_000);
  }

  private void take(String name) throws Exception {
    Thread.sleep(1_500);
    var file = into.resolve(name + ".png");
    Files.write(file, browser.getScreenshotAs(OutputType.BYTES));
    System.out.println(file);
  }
}
