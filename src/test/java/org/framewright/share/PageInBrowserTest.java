package org.framewright.share;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.framewright.InstalledBrowser;
import org.framewright.frames.OnSetSpan;
import org.framewright.job.Comment;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
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
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.remote.RemoteWebDriver;

/** The page in Chromium, over plain HTTP, with a computer that answers, or does not. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PageInBrowserTest {
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private InstalledBrowser started;
  private RemoteWebDriver browser;
  private PageScene scene;
  private Wire wire;
  private String first;

  @BeforeAll
  void aBrowser(@TempDir Path profile) throws IOException {
    started = InstalledBrowser.start(profile, "--lang=en");
    browser = started.driver();
    first = browser.getWindowHandle();
  }

  @BeforeEach
  void aJobThatIsServed(@TempDir Path folder) throws Exception {
    scene = new PageScene(folder, 12);
    wire = new Wire(scene.server().address(), 1);
    browser.manage().window().setSize(new Dimension(1180, 820));
  }

  @AfterEach
  void nothingIsServed() {
    for (var window : browser.getWindowHandles()) {
      if (!window.equals(first)) {
        browser.switchTo().window(window).close();
      }
    }
    browser.switchTo().window(first).get("about:blank");
    wire.close();
    scene.close();
  }

  @AfterAll
  void noBrowserStays() {
    if (started != null) {
      started.close();
    }
  }

  // How one works with the page

  private void pair(Role role, Wire by) {
    browser.get(by.by(scene.server().invite(role)));
    if (role != Role.VIEWER) {
      until(() -> has("#device-name"));
      click("button.does-it");
    }
    until(() -> has(".status[data-is=connected]"));
  }

  private void pair(Role role) {
    pair(role, wire);
  }

  private boolean has(String selector) {
    return !browser.findElements(By.cssSelector(selector)).isEmpty();
  }

  private void click(String selector) {
    browser.findElement(By.cssSelector(selector)).click();
  }

  private String text(String selector) {
    return String.valueOf(
        browser.executeScript(
            "return document.querySelector(arguments[0])?.textContent ?? ''", selector));
  }

  private String shown() {
    return String.valueOf(browser.executeScript("return document.body.innerText"));
  }

  private void until(Supplier<Boolean> holds) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!holds.get()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("not in " + PATIENCE + "; shown is: " + shown());
      }
      try {
        Thread.sleep(50);
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
  }

  private void untilNothingWaits() {
    until(() -> has(".status[data-is=connected]"));
  }

  private SetupState state(String code) {
    return scene.live().now().state().of(code).state();
  }

  /** What was put on set, in order, after the scene's own. */
  private List<String> putOnSet() {
    return scene.live().now().state().spans().stream().skip(2).map(OnSetSpan::setup).toList();
  }

  private void putOnSet(List<String> codes) {
    browser.executeScript(
        """
        for (const code of arguments[0]) {
          [...document.querySelectorAll('.row')]
            .find(row => row.querySelector('.row-code').textContent === code)
            .querySelector('.row-put').click();
        }
        """,
        codes);
  }

  /** Presses keys at the pace of a scanner, which a driver cannot where the machine is busy. */
  private void scan(String text, String end) {
    browser.executeScript(
        """
        for (const key of [...arguments[0], arguments[1]]) {
          const field = document.activeElement;
          const press = new KeyboardEvent('keydown', {key, bubbles: true, cancelable: true});
          if (field.dispatchEvent(press) && key.length === 1 && field instanceof HTMLInputElement) {
            field.value += key;
            field.dispatchEvent(new Event('input', {bubbles: true}));
          }
        }
        """,
        text,
        end);
  }

  private Object module(String script, Object... arguments) {
    browser.get(wire.address() + "icon.svg");
    return browser.executeAsyncScript(
        "const done = arguments[arguments.length - 1]; const given = arguments;"
            + "(async () => {"
            + script
            + "})().then(done, fault => done('fault: ' + fault));",
        arguments);
  }

  // The tests

  @Test
  void aDeviceIsPairedOnceAndItsAddressKeepsNoSecret() {
    var link = wire.by(scene.server().invite(Role.ASSISTANT));
    browser.get(link);
    until(() -> has("#device-name"));
    assertThat(browser.getCurrentUrl()).isEqualTo(wire.address().toString());
    var field = browser.findElement(By.id("device-name"));
    field.clear();
    field.sendKeys("Ines’ phone", Keys.ENTER);
    untilNothingWaits();
    assertThat(scene.server().devices())
        .singleElement()
        .satisfies(
            device -> {
              assertThat(device.name()).isEqualTo("Ines’ phone");
              assertThat(device.role()).isEqualTo(Role.ASSISTANT);
            });
    assertThat(browser.executeScript("return JSON.stringify(localStorage)").toString())
        .doesNotContain(link.substring(link.indexOf('#') + 1, link.indexOf('#') + 27));
    try (var other = new Wire(scene.server().address(), 2)) {
      browser.get(other.address() + link.substring(link.indexOf('#')));
      until(() -> has("#device-name"));
      click("button.does-it");
      until(() -> shown().contains("Another device was paired with this code."));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void aTapIsATick() {
    pair(Role.ASSISTANT);
    until(() -> text(".set .code").equals("003"));
    click("#shot-next");
    until(() -> state("003") == SetupState.SHOT);
    until(() -> state("004") == SetupState.ON_SET);
    until(() -> text(".set .code").equals("004"));
    click(".view-block:nth-child(2)");
    until(() -> scene.live().now().state().onSet().orElseThrow().view().equals(Optional.of("B")));
    click("#pickup");
    browser.findElement(By.id("asked")).sendKeys("sleeve");
    click("dialog .does-it");
    until(() -> state("004") == SetupState.PICKUP);
    assertThat(scene.live().now().state().of("004").reason()).contains("sleeve");
  }

  @Test
  void theLastStepIsShownAndTakenBack() {
    pair(Role.ASSISTANT);
    until(() -> text(".set .code").equals("003"));
    click("#shot-next");
    until(() -> state("004") == SetupState.ON_SET);
    untilNothingWaits();
    click("#take-back");
    assertThat(text("dialog p")).contains("003: shot", "004: on set");
    click("dialog .does-it");
    until(() -> state("003") == SetupState.ON_SET);
    assertThat(state("004")).isEqualTo(SetupState.TO_SHOOT);
  }

  @Test
  void twoHundredTicksAreKeptOnceEachWhateverHappens(@TempDir Path folder) throws Exception {
    scene.close();
    wire.close();
    scene = new PageScene(folder, 210);
    wire = new Wire(scene.server().address(), 3);
    pair(Role.ASSISTANT);
    var device = scene.device();
    until(() -> has(".row"));
    wire.losing(0.5);
    var codes = new ArrayList<String>();
    for (int i = 4; i <= 203; i++) {
      codes.add(PageScene.code(i));
    }
    var page = browser.getWindowHandle();
    for (int i = 0; i < 60; i += 3) {
      putOnSet(codes.subList(i, i + 3));
      Thread.sleep(30);
    }
    // Another assistant comments meanwhile, by a line of their own.
    try (var other = new Wire(scene.server().address(), 4)) {
      browser.switchTo().newWindow(WindowType.WINDOW);
      pair(Role.ASSISTANT, other);
      other.losing(0.5);
      until(() -> has(".row"));
      click(".row:last-child .row-open");
      for (int i = 1; i <= 10; i++) {
        browser.findElement(By.id("comment")).sendKeys("word " + i);
        click(".comment-form .does-it");
      }
      browser.switchTo().window(page);
      putOnSet(codes.subList(60, 100));

      // The computer is gone while the assistant goes on.
      wire.cut();
      other.cut();
      scene.stopServing();
      until(() -> has(".status[data-is=lost]"));
      putOnSet(codes.subList(100, 150));
      assertThat(text(".status")).contains("no connection since", "ticks waiting");
      scene.change(
          job -> {
            var setups = new ArrayList<Setup>(job.shotList().setups());
            setups.addFirst(PageScene.setup(300, "A hat"));
            job.importList(new ShotList(setups));
            return true;
          });
      scene.serve();
      wire.leadsTo(scene.server().address());
      other.leadsTo(scene.server().address());
      browser.navigate().refresh();
      until(() -> text(".rows").contains("A hat"));
      putOnSet(codes.subList(150, 200));
      untilNothingWaits();
      until(() -> putOnSet().size() >= 200);
      assertThat(putOnSet()).isEqualTo(codes);
      assertThat(scene.job().last(device)).isEqualTo(201);
      assertThat(wire.lostAnswers()).isGreaterThan(5);

      until(() -> scene.job().comments().size() == 10);
      assertThat(scene.job().comments().stream().map(Comment::text).toList())
          .containsExactly(
              "word 1", "word 2", "word 3", "word 4", "word 5", "word 6", "word 7", "word 8",
              "word 9", "word 10");
      System.out.println(
          "ticks 200, kept 200; batches "
              + wire.batches()
              + ", answers lost "
              + wire.lostAnswers());
    }
  }

  @Test
  void aClientSignsOffWithTheirNameAndComments() {
    pair(Role.CLIENT);
    until(() -> text(".client .code").equals("003"));
    until(() -> has("img.picture[src^=blob]"));
    browser.findElement(By.xpath("//button[text()='Comment']")).click();
    browser.findElement(By.id("comment")).sendKeys("collar lower");
    click(".comment-form .does-it");
    until(() -> scene.job().comments().size() == 1);
    var comment = scene.job().comments().getFirst();
    assertThat(comment.text()).isEqualTo("collar lower");
    assertThat(comment.frames()).isNotEmpty();
    until(() -> text(".comments").contains("collar lower"));
    click("#agree");
    browser.findElement(By.id("agree-name")).sendKeys("Odette", Keys.ENTER);
    until(() -> state("003") == SetupState.SIGNED_OFF);
    assertThat(scene.live().now().state().of("003").signedOffBy()).contains("Odette");
    until(() -> text(".standing").contains("signed off by Odette"));
    assertThat(browser.executeScript("return localStorage['framewright.name']"))
        .isEqualTo("\"Odette\"");
  }

  @Test
  void whatIsRefusedIsShownUntilItIsDismissed() {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    wire.cut();
    until(() -> has(".status[data-is=lost]"));
    putOnSet(List.of("005", "006"));
    scene.change(
        job -> {
          var left =
              job.shotList().setups().stream().filter(one -> !one.code().equals("005")).toList();
          job.importList(new ShotList(left));
          return true;
        });
    wire.leadsTo(scene.server().address());
    untilNothingWaits();
    until(() -> has(".notice"));
    assertThat(text(".notice")).contains("Not kept: 005: on set", "005");
    until(() -> state("006") == SetupState.ON_SET);
    browser.navigate().refresh();
    until(() -> has(".notice"));
    browser.executeScript("window.button = document.querySelector('.notice button')");
    scene.change(job -> mark(job, "004", SetupState.ON_SET));
    until(() -> text(".set .code").equals("004"));
    assertThat(browser.executeScript("return window.button.isConnected")).isEqualTo(true);
    click(".notice button");
    until(() -> !has(".notice"));
    assertThat(putOnSet()).containsExactly("006", "004");
  }

  @Test
  void anUnpairedDeviceSaysSoAndItsTicksGoOnWithTheNextPairing() throws IOException {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    scene.server().unpair(scene.device().name());
    until(() -> shown().contains("no longer paired"));
    putOnSet(List.of("005", "006"));
    until(() -> text(".notice").contains("2 ticks wait"));
    pair(Role.ASSISTANT);
    until(() -> state("006") == SetupState.ON_SET);
    assertThat(putOnSet()).containsExactly("005", "006");
  }

  @Test
  void aPairedDeviceThatIsInvitedAgainGoesOnOrGetsTheOtherRole() {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    assertThat(scene.server().devices()).hasSize(1);
    wire.cut();
    until(() -> has(".status[data-is=lost]"));
    putOnSet(List.of("005", "006"));
    wire.leadsTo(scene.server().address());
    pair(Role.CLIENT);
    until(() -> text(".client .code").equals("006"));
    assertThat(putOnSet()).containsExactly("005", "006");
    assertThat(scene.server().devices()).hasSize(2);
  }

  @Test
  void anOwnCommentCanBeTakenBack() {
    pair(Role.CLIENT);
    until(() -> text(".client .code").equals("003"));
    browser.findElement(By.xpath("//button[text()='Comment']")).click();
    browser.findElement(By.id("comment")).sendKeys("collar lower");
    click(".comment-form .does-it");
    until(() -> scene.job().comments().size() == 1);
    untilNothingWaits();
    click(".comment .slight");
    until(() -> scene.job().comments().isEmpty());
    until(() -> !has(".comment"));
  }

  @Test
  void anotherTabOffersToTakeOver() {
    pair(Role.ASSISTANT);
    var page = browser.getWindowHandle();
    browser.switchTo().newWindow(WindowType.TAB);
    browser.get(wire.address().toString());
    until(() -> shown().contains("open in another tab"));
    click("button.does-it");
    until(() -> has(".row"));
    browser.switchTo().window(page);
    until(() -> shown().contains("open in another tab"));
  }

  @Test
  void aScannerPutsItsSetupOnSetAndIntoNoField() {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    click(".find");
    scan(PageScene.label(7), "Enter");
    until(() -> state("007") == SetupState.ON_SET);
    assertThat(browser.findElement(By.cssSelector(".find")).getAttribute("value")).isEmpty();
    browser.executeScript("document.activeElement.blur()");
    scan("4012345678901", "Enter");
    until(() -> shown().contains("No setup has this code"));
    assertThat(putOnSet()).containsExactly("007");
  }

  @Test
  void aScanWithoutALineFindsWhatTheListHas() {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    wire.cut();
    until(() -> has(".status[data-is=lost]"));
    scan(PageScene.label(9), "Enter");
    until(() -> text(".set .code").equals("009"));
    assertThat(text(".row[data-state=on-set]")).contains("009", "waiting");
    wire.leadsTo(scene.server().address());
    until(() -> state("009") == SetupState.ON_SET);
  }

  @Test
  void twoSetupsWithOneCodeAreAskedFor() {
    scene.change(
        job -> {
          var setups = new ArrayList<Setup>(job.shotList().setups());
          var same = setups.get(6);
          setups.add(new Setup("301", "Its twin", same.views(), same.wanted(), same.columns()));
          job.importList(new ShotList(setups));
          return true;
        });
    pair(Role.ASSISTANT);
    until(() -> text(".rows").contains("Its twin"));
    scan(PageScene.label(7), "Tab");
    until(() -> has("dialog.told"));
    assertThat(text("dialog.told")).contains("2 setups have this code", "301  Its twin");
    assertThat(putOnSet()).isEmpty();
    click("dialog.told .does-it:last-child");
    until(() -> state("301") == SetupState.ON_SET);
  }

  @Test
  void aTapThatFindsAnotherInItsPlaceIsSentAnewIfAPersonSaysSo() {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    putOnSet(List.of("005"));
    until(() -> state("005") == SetupState.ON_SET);
    untilNothingWaits();
    wire.cut();
    until(() -> has(".status[data-is=lost]"));
    putOnSet(List.of("006", "007"));
    // As if the storage had been copied from another phone.
    browser.executeScript(
        """
        const key = Object.keys(localStorage).find(name => name.startsWith('framewright.queue.'));
        const queue = JSON.parse(localStorage[key]);
        queue.waiting.forEach(event => event.number--);
        localStorage[key] = JSON.stringify(queue);
        """);
    wire.leadsTo(scene.server().address());
    until(() -> text(".notice").contains("something else in the place of: 006: on set"));
    assertThat(putOnSet()).containsExactly("005");
    click(".notice button");
    until(() -> state("007") == SetupState.ON_SET);
    untilNothingWaits();
    assertThat(putOnSet()).containsExactly("005", "006", "007");
    assertThat(has(".notice")).isFalse();
  }

  @Test
  void whatIsChosenUnderMoreStays() {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    click(".more");
    click("dialog fieldset:nth-of-type(2) label:nth-of-type(2)");
    click("dialog fieldset:nth-of-type(1) label:nth-of-type(3)");
    until(() -> text("#shot").equals("Faite"));
    browser.navigate().refresh();
    until(() -> text("#shot").equals("Faite"));
    assertThat(browser.executeScript("return document.documentElement.dataset.look"))
        .isEqualTo("neutral");
    assertThat(browser.executeScript("return document.documentElement.lang")).isEqualTo("fr");
  }

  @Test
  void whoeverGoesBackToAPictureStaysThere() throws Exception {
    pair(Role.CLIENT);
    until(() -> browser.findElements(By.cssSelector(".print")).size() == 3);
    click(".print:nth-child(2)");
    var looked = "return document.querySelector('img.picture').dataset.picture";
    var picture = browser.executeScript(looked);
    scene.shoot("003", "F");
    until(() -> browser.findElements(By.cssSelector(".print")).size() == 4);
    assertThat(browser.executeScript(looked)).isEqualTo(picture);
    browser.findElement(By.xpath("//button[text()='Back to the newest']")).click();
    until(() -> !picture.equals(browser.executeScript(looked)));
    assertThat(text(".print[aria-pressed=true]")).isEqualTo("front 4");
  }

  @Test
  void theSetupThatTheClientIsAskedAboutStays() {
    pair(Role.CLIENT);
    until(() -> text(".client .code").equals("003"));
    click("#agree");
    scene.change(job -> mark(job, "003", SetupState.SHOT));
    scene.change(job -> mark(job, "004", SetupState.ON_SET));
    until(() -> scene.live().now().state().of("004").state() == SetupState.ON_SET);
    browser.findElement(By.id("agree-name")).sendKeys("Odette");
    assertThat(text(".client .code")).isEqualTo("003");
    click(".agree-form .does-it");
    until(() -> state("003") == SetupState.SIGNED_OFF);
    until(() -> text(".client .code").equals("004"));
    assertThat(state("004")).isEqualTo(SetupState.ON_SET);
  }

  private static boolean mark(Job job, String code, SetupState state) throws Exception {
    job.mark(code, state, MarkDetails.by("Timo"));
    return true;
  }

  @Test
  void aRowIsUpdatedWhereItStands() {
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    browser.executeScript("window.row = document.querySelectorAll('.row')[4]");
    putOnSet(List.of("005"));
    until(() -> state("005") == SetupState.ON_SET);
    until(
        () ->
            Boolean.TRUE.equals(
                browser.executeScript(
                    "return window.row === document.querySelectorAll('.row')[4]"
                        + " && window.row.dataset.state === 'on-set'")));
  }

  @Test
  void aTitleIsNeverMoreThanText() {
    pair(Role.ASSISTANT);
    until(() -> text(".rows").contains("<script>document.title='ran'</script>"));
    putOnSet(List.of("008"));
    until(() -> text(".set .title").startsWith("<img"));
    click(".set-open");
    browser.findElement(By.id("comment")).sendKeys("<img src=x onerror=\"document.title='ran'\">");
    click(".comment-form .does-it");
    until(() -> text(".set .comments").contains("<img"));
    assertThat(browser.getTitle()).isEqualTo("Framewright");
    assertThat(browser.findElements(By.cssSelector("script"))).hasSize(1);
  }

  @Test
  void aViewerShowsTheDayAndHasNothingToPress() {
    browser.manage().window().setSize(new Dimension(1920, 1080));
    pair(Role.VIEWER);
    until(() -> text(".wall .code").equals("003"));
    assertThat(browser.findElements(By.cssSelector("button, input, a"))).isEmpty();
    assertThat(text(".wall-next")).contains("004", "005", "006");
    scene.change(
        job -> {
          job.mark("003", SetupState.SHOT, MarkDetails.by("Timo"));
          return true;
        });
    until(() -> text(".wall-number").equals("2 of 11 shot"));
  }

  @ParameterizedTest
  @EnumSource(Role.class)
  void thePageIsForEverybodyInBothLooks(Role role) throws IOException {
    pair(role);
    until(() -> shown().contains("003"));
    for (var look : List.of("neutral", "sunlight")) {
      browser.executeScript("document.documentElement.dataset.look = arguments[0]", look);
      for (var size : List.of(new Dimension(500, 840), new Dimension(1180, 820))) {
        browser.manage().window().setSize(size);
        assertThat(started.axe("violations")).as("%s, %s", look, size).isEmpty();
      }
    }
    if (role == Role.ASSISTANT) {
      click(".set-open");
      assertThat(started.axe("violations")).as("details").isEmpty();
      browser.executeScript("document.querySelector('dialog').close()");
      click(".more");
      assertThat(started.axe("violations")).as("more").isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({"360,740", "390,844", "820,1180", "1180,820"})
  void nothingIsWiderThanTheWindowInAnyLanguage(int width, int height) throws IOException {
    started.screen(width, height, 1);
    try {
      for (var role : List.of(Role.ASSISTANT, Role.CLIENT)) {
        try (var own = new Wire(scene.server().address(), 5)) {
          pair(role, own);
          for (var language : List.of("en", "de", "fr")) {
            browser.executeScript(
                "localStorage['framewright.language'] = JSON.stringify(arguments[0])", language);
            browser.navigate().refresh();
            until(() -> shown().contains("003"));
            assertThat(
                    browser.executeScript(
                        "return document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .as("%s in %s", role, language)
                .isEqualTo(0L);
            assertThat(
                    (List<?>)
                        browser.executeScript(
                            "return [...document.querySelectorAll('button:not(.slight)')].filter(one => one.offsetParent)"
                                + ".filter(one => one.offsetHeight < 56 || one.offsetWidth < 56 || one.scrollWidth > one.clientWidth + 1)"
                                + ".map(one => one.className + ' ' + one.textContent)"))
                .as("buttons in %s", language)
                .isEmpty();
          }
        }
      }
    } finally {
      started.noScreen();
    }
  }

  @Test
  void thePageIsValidHtml() throws Exception {
    assertThat(HtmlMessages.of(PageFiles.ofAJob().at("/").orElseThrow().bytes())).isEmpty();
    pair(Role.ASSISTANT);
    until(() -> has(".row"));
    for (var message : HtmlMessages.of(browser)) {
      assertThat(message.path("type").asText()).as(message.toString()).isEqualTo("info");
    }
  }

  // Modules by themselves

  @Test
  void hashesAreThoseOfFips180() {
    assertThat(
            module(
                """
                const {sha256} = await import('/sha256.js');
                const {hex, utf8} = await import('/signing.js');
                return ['', 'abc', 'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', 'a'.repeat(1e6)]
                  .map(text => hex(sha256(utf8(text))));
                """))
        .isEqualTo(
            List.of(
                "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
                "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"));
  }

  @Test
  void macsAreThoseOfTheComputer() {
    var random = new Random(6);
    var keys = new ArrayList<String>();
    var texts = new ArrayList<String>();
    var wanted = new ArrayList<String>();
    var format = HexFormat.of();
    for (int i = 0; i < 300; i++) {
      byte[] key = new byte[1 + i % 150];
      byte[] text = new byte[i * 7 % 400];
      random.nextBytes(key);
      random.nextBytes(text);
      keys.add(format.formatHex(key));
      texts.add(format.formatHex(text));
      wanted.add(format.formatHex(Hmac.of(key, text)));
    }
    // RFC 4231, test cases 1, 2, 3 and 6.
    keys.addAll(
        List.of(
            "0b".repeat(20),
            format.formatHex("Jefe".getBytes(UTF_8)),
            "aa".repeat(20),
            "aa".repeat(131)));
    texts.addAll(
        List.of(
            format.formatHex("Hi There".getBytes(UTF_8)),
            format.formatHex("what do ya want for nothing?".getBytes(UTF_8)),
            "dd".repeat(50),
            format.formatHex(
                "Test Using Larger Than Block-Size Key - Hash Key First".getBytes(UTF_8))));
    wanted.addAll(
        List.of(
            "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7",
            "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
            "773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe",
            "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54"));
    assertThat(
            module(
                """
                const {hmac} = await import('/sha256.js');
                const {hex, unhex} = await import('/signing.js');
                return given[0].map((key, i) => hex(hmac(unhex(key), unhex(given[1][i]))));
                """,
                keys,
                texts))
        .isEqualTo(wanted);
  }

  @Test
  void anyScheduleOfAnswersKeepsEachTickOnceAndInOrder() {
    assertThat(
            module(
                """
                const {Queue} = await import('/queue.js');
                let seed = 7;
                const chance = () => (seed = (seed * 48271) % 2147483647) / 2147483647;
                for (let round = 0; round < 300; round++) {
                  let stored = null;
                  let queue = new Queue(() => JSON.parse(stored), value => (stored = JSON.stringify(value)));
                  queue.paired(1);
                  const log = [];
                  let made = 0;
                  const wanted = [];
                  for (let step = 0; step < 200; step++) {
                    if (step < 120 && chance() < 0.5) {
                      const state = chance() < 0.1 ? 'bad' : 'shot';
                      queue.add([{do: 'tick', setup: String(++made), state}], step);
                      if (state === 'shot') wanted.push(String(made));
                    } else if (chance() < 0.1) {
                      queue = new Queue(() => JSON.parse(stored), value => (stored = JSON.stringify(value)));
                    } else {
                      const batch = queue.batch();
                      if (batch.length === 0 || chance() < 0.2) continue;
                      let answer = null;
                      for (const event of batch) {
                        const last = 1 + log.length;
                        if (event.number > last + 1) { answer = {last, gap: true}; break; }
                        if (event.number <= last) {
                          if (log[event.number - 2] !== event.setup) { return 'clash in round ' + round; }
                        } else if (event.state === 'bad') {
                          answer = {last, refused: {number: event.number, what: 'no', remedy: ''}};
                          break;
                        } else {
                          log.push(event.setup);
                        }
                      }
                      if (chance() < 0.5) queue.answered(answer ?? {last: 1 + log.length});
                    }
                  }
                  for (let tries = 0; queue.batch().length > 0 && tries < 100; tries++) {
                    let answer = null;
                    for (const event of queue.batch()) {
                      const last = 1 + log.length;
                      if (event.number <= last) continue;
                      if (event.state === 'bad') { answer = {last, refused: {number: event.number, what: 'no', remedy: ''}}; break; }
                      log.push(event.setup);
                    }
                    queue.answered(answer ?? {last: 1 + log.length});
                  }
                  if (log.join() !== wanted.join()) return 'round ' + round + ': ' + log + ' for ' + wanted;
                  if (queue.refused.length !== made - wanted.length) return 'refusals in round ' + round;
                }
                return 'kept';
                """))
        .isEqualTo("kept");
  }

  @Test
  void aStreamIsCutIntoItsEventsWhereverItsPiecesEnd() {
    assertThat(
            module(
                """
                const {EventCutter} = await import('/live.js');
                const text = 'id: 1\\nevent: state\\ndata: {"a":\\ndata: 1}\\n\\n: \\n\\nevent: unpaired\\r\\ndata\\r\\n\\r\\ndata:x\\r\\rdata: y\\n';
                const found = new Set();
                for (let size = 1; size < text.length; size++) {
                  const cutter = new EventCutter();
                  const events = [];
                  for (let at = 0; at < text.length; at += size) {
                    events.push(...cutter.take(text.slice(at, at + size)));
                  }
                  found.add(JSON.stringify(events));
                }
                return [...found];
                """))
        .isEqualTo(
            List.of(
                "[{\"id\":\"1\",\"event\":\"state\",\"data\":\"{\\\"a\\\":\\n1}\"},"
                    + "{\"event\":\"unpaired\",\"data\":\"\"},{\"data\":\"x\"}]"));
  }

  @Test
  void aScannerIsToldFromAPersonByItsPace() {
    assertThat(
            module(
                """
                const {ScanWatch} = await import('/scan.js');
                const typed = (text, gap) => {
                  const watch = new ScanWatch();
                  let now = 1000;
                  for (const sign of text) watch.writes(sign, now += typeof gap === 'function' ? gap() : gap);
                  return watch.ends(now + 5);
                };
                return [typed('4006381333931', 8), typed('4006381333931', 30), typed('4006381333931', 90), typed('abc', 8), typed('SETUP-7', 15)];
                """))
        .isEqualTo(Arrays.asList("4006381333931", "4006381333931", null, null, "SETUP-7"));
  }
}
