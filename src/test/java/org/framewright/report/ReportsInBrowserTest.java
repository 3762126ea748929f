package org.framewright.report;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.framewright.InstalledBrowser;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * The pages in Chromium, with titles in many scripts, as axe-core finds them: by its rules of WCAG
 * and of good practice. Only what is installed is started, and nothing comes from the network.
 */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReportsInBrowserTest {
  /** A window of a computer, and one below the width at which the style sheet changes. */
  private static final List<Dimension> WINDOWS =
      List.of(new Dimension(1200, 900), new Dimension(500, 800));

  private ReportScene scene;
  private InstalledBrowser started;
  private RemoteWebDriver browser;

  @BeforeAll
  void aJobAndABrowser(@TempDir Path folder, @TempDir Path profile) throws Exception {
    scene = new ReportScene(folder);
    started = InstalledBrowser.start(profile);
    browser = started.driver();
  }

  @AfterAll
  void noBrowserStays() {
    if (started != null) {
      started.close();
    }
  }

  /** What axe-core finds that it calls by that word, each with the element that it is about. */
  private List<String> found(Path page, String called) throws IOException {
    browser.get(page.toUri().toString());
    return started.axe(called);
  }

  @ParameterizedTest
  @EnumSource
  void aPageIsForEverybody(ReportKind kind) throws IOException {
    var page = scene.written(kind, ReportForm.HTML, "en");
    for (var window : WINDOWS) {
      browser.manage().window().setSize(window);
      assertThat(found(page, "violations")).as("in %s", window).isEmpty();
      // It cannot see what is behind the words of a drawing; ChartSvgTest reckons that.
      assertThat(found(page, "incomplete"))
          .as("for a person, in %s", window)
          .allMatch(one -> one.startsWith("color-contrast <text"));
    }
  }

  @ParameterizedTest
  @EnumSource
  void noPageIsWiderThanANarrowWindow(ReportKind kind) throws IOException {
    browser.manage().window().setSize(WINDOWS.getLast());
    browser.get(scene.written(kind, ReportForm.HTML, "de").toUri().toString());
    var wider =
        browser.executeScript(
            "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assertThat(wider).isEqualTo(0L);
  }

  /** Else the others would be green whatever stands there. */
  @Test
  void aPageThatIsNotForEverybodyIsFound(@TempDir Path other) throws IOException {
    var page =
        Files.writeString(
            other.resolve("page.html"),
            "<!DOCTYPE html><html><head><title>x</title></head><body>"
                + "<img src='data:image/gif;base64,R0lGODlhAQABAAAAACw='><p style='color:#ccc'>pale</p>");
    var rules = found(page, "violations").stream().map(one -> one.split(" ", 2)[0]).toList();
    assertThat(rules)
        .containsAll(Stream.of("html-has-lang", "image-alt", "color-contrast").toList());
  }
}
