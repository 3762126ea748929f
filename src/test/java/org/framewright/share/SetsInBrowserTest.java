package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.framewright.InstalledBrowser;
import org.framewright.studio.Overview;
import org.framewright.studio.SetNow;
import org.framewright.studio.SetRow;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.remote.RemoteWebDriver;

/** The page of all sets in Chromium. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SetsInBrowserTest {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Instant now = Instant.now();
  private InstalledBrowser started;
  private RemoteWebDriver browser;
  private PlayedSets sets;

  @BeforeAll
  void aBrowser(@TempDir Path profile) throws Exception {
    started = InstalledBrowser.start(profile, "--lang=en");
    browser = started.driver();
  }

  @BeforeEach
  void fiftySets(@TempDir Path settings) throws Exception {
    sets = new PlayedSets(settings, PlayedSets.sets(50, now));
    started.screen(1440, 900, 1);
  }

  @AfterEach
  void nothingIsServed() {
    browser.get("about:blank");
    sets.close();
  }

  @AfterAll
  void noBrowserStays() {
    if (started != null) {
      started.close();
    }
  }

  private void pair(Role role) {
    browser.get(sets.server.invite(role).link().toString());
    if (role != Role.VIEWER) {
      until(() -> has("#device-name"));
      browser.findElement(By.cssSelector("button.does-it")).click();
    }
    until(() -> has(".sets-line"));
  }

  private boolean has(String selector) {
    return !browser.findElements(By.cssSelector(selector)).isEmpty();
  }

  private List<String> names() {
    return strings(
        "return [...document.querySelectorAll('.sets-name')].map((one) => one.textContent)");
  }

  private List<String> strings(String script) {
    var strings = new ArrayList<String>();
    ((List<?>) browser.executeScript(script)).forEach(one -> strings.add(String.valueOf(one)));
    return strings;
  }

  private String focused() {
    return String.valueOf(
        browser.executeScript(
            "return document.activeElement.querySelector('.sets-name')?.textContent"
                + " ?? document.activeElement.className"));
  }

  private String text(String selector) {
    return String.valueOf(
        browser.executeScript(
            "return document.querySelector(arguments[0])?.textContent ?? ''", selector));
  }

  private void press(CharSequence... keys) {
    browser.switchTo().activeElement().sendKeys(keys);
  }

  private void until(Supplier<Boolean> holds) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!holds.get()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("not in " + PATIENCE + "; shown is: " + text("body"));
      }
      try {
        Thread.sleep(50);
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
  }

  @Test
  void allSetsAreThereInTheOrderOfWhatNeedsAPerson() {
    pair(Role.ASSISTANT);
    assertThat(names())
        .containsExactlyElementsOf(
            PlayedSets.sets(50, now).sets().stream().map(SetRow::name).toList());
    assertThat(text(".sets-summary")).startsWith("50 sets · ");
    assertThat(text(".sets-line")).contains("the frames still planned do not fit on the disk");
    assertThat(has(".sets-line[data-need=silent]")).isTrue();
    assertThat(text(".sets-line[data-need=silent]")).contains("silent since ");
    assertThat(has(".sets-line[data-need=silent] .sets-silence:not([hidden])")).isTrue();
    assertThat(has(".sets-line[data-need=nothing] .sets-silence:not([hidden])")).isFalse();
  }

  @Test
  void aSetThatChangesStaysTheSameElement() {
    pair(Role.ASSISTANT);
    browser.executeScript(
        "[...document.querySelectorAll('.sets-line')].forEach((line) => line.seen = true)");
    sets.live.show(
        new Overview(
            PlayedSets.sets(50, now).sets().stream()
                .map(row -> row.name().endsWith("-14") ? PlayedSets.set(14, 19, now) : row)
                .toList()));
    until(() -> text(".sets-list").contains("19 of 24 shot") && text("body").contains("Set-14"));
    assertThat(
            browser.executeScript(
                "return [...document.querySelectorAll('.sets-line')].every((line) => line.seen)"))
        .isEqualTo(true);
  }

  @Test
  void aWordFindsSetsAndTheKeysGoThroughThem() {
    pair(Role.ASSISTANT);
    press("/");
    assertThat(focused()).contains("find");
    press("coat lined");
    until(() -> names().size() < 50);
    assertThat(names()).hasSize(8);
    press(Keys.ARROW_DOWN);
    assertThat(focused()).isEqualTo(names().getFirst());
    press(Keys.ARROW_DOWN);
    assertThat(focused()).isEqualTo(names().get(1));
    press(Keys.ARROW_UP);
    press(Keys.ARROW_UP);
    assertThat(focused()).contains("find");
    press("zzz");
    until(() -> names().isEmpty());
    assertThat(text(".none")).isEqualTo("No set has this.");
    press(Keys.ESCAPE);
    until(() -> names().size() == 50);
  }

  @Test
  void thatTheStoreIsNotReachedIsSaid() {
    pair(Role.VIEWER);
    sets.live.lost(now);
    until(() -> text(".notice").contains("The store has not been reached since "));
    sets.live.show(PlayedSets.sets(50, now));
    until(() -> !has(".notice"));
  }

  @Test
  void whatIsWrittenInANameIsOnlyText() {
    var evil = "<img src=x onerror=\"document.title='ran'\">";
    sets.live.show(new Overview(List.of(PlayedSets.row(evil, Optional.<SetNow>empty(), now, now))));
    pair(Role.VIEWER);
    assertThat(names()).containsExactly(evil);
    assertThat(browser.getTitle()).isEqualTo("Framewright");
  }

  @ParameterizedTest
  @CsvSource({"360, 740", "820, 1180", "1440, 900", "1920, 1080"})
  void everybodyCanUseItOnEveryScreen(int width, int height) throws Exception {
    started.screen(width, height, 1);
    pair(Role.ASSISTANT);
    for (var language : List.of("en", "de", "fr")) {
      browser.executeScript(
          "localStorage['framewright.language'] = JSON.stringify(arguments[0])", language);
      browser.navigate().refresh();
      until(() -> has(".sets-line"));
      for (var look : List.of("neutral", "sunlight")) {
        browser.executeScript("document.documentElement.dataset.look = arguments[0]", look);
        assertThat(browser.executeScript("return document.documentElement.scrollWidth"))
            .as("the width of the page, %s, %s", language, look)
            .isEqualTo((long) width);
        if (language.equals("en")) {
          assertThat(started.axe("violations")).as("%s, %s", width, look).isEmpty();
        }
        var folder = System.getProperty("framewright.pictures");
        if (folder != null) {
          Files.write(
              Path.of(folder, "sets-" + width + "-" + language + "-" + look + ".png"),
              browser.getScreenshotAs(OutputType.BYTES));
        }
      }
    }
    browser.executeScript("localStorage.removeItem('framewright.language')");
  }

  @Test
  void thePageIsValidHtml() throws Exception {
    assertThat(HtmlMessages.of(PageFiles.ofAllSets().at("/").orElseThrow().bytes())).isEmpty();
    pair(Role.ASSISTANT);
    for (var message : HtmlMessages.of(browser)) {
      assertThat(message.path("type").asText()).as(message.toString()).isEqualTo("info");
    }
  }
}
