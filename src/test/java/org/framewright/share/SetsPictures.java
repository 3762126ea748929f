package org.framewright.share;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import org.framewright.InstalledBrowser;
import org.openqa.selenium.OutputType;

/**
 * Takes a picture of the page of all sets, with invented ones, in the fonts of the app: {@code
 * org.framewright.share.SetsPictures FILE [LANGUAGE]}.
 */
final class SetsPictures {
  private SetsPictures() {}

  public static void main(String[] arguments) throws Exception {
    var file = Path.of(arguments[0]);
    var language = arguments.length > 1 ? arguments[1] : "en";
    var scratch = Files.createTempDirectory("framewright-sets");
    try (var sets =
            new PlayedSets(scratch.resolve("settings"), PlayedSets.sets(18, Instant.now()));
        var started =
            InstalledBrowser.start(
                Files.createDirectory(scratch.resolve("profile")),
                Map.of(
                    "FONTCONFIG_FILE",
                    SharePictures.fonts(scratch).toString(),
                    "TZ",
                    "Europe/Berlin"),
                "--lang=" + language,
                "--force-color-profile=srgb")) {
      started.screen(1440, 900, 1);
      var browser = started.driver();
      browser.get(sets.server.invite(Role.VIEWER).link().toString());
      Thread.sleep(5_000);
      Files.write(file, browser.getScreenshotAs(OutputType.BYTES));
    }
  }
}
