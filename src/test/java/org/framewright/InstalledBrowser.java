package org.framewright;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * The Chromium that is installed here, without a window. It reaches this computer and nothing else;
 * a test is skipped where it or its driver is missing.
 */
public final class InstalledBrowser implements AutoCloseable {
  private static final String FINDINGS =
      """
      const done = arguments[arguments.length - 1];
      axe.run(document, {resultTypes: [arguments[0]]}).then(
        found => done(found[arguments[0]].flatMap(
          rule => rule.nodes.map(node => rule.id + ' ' + node.html + ' ' + (node.failureSummary || '')))),
        fault => done(['fault: ' + fault]));
      """;

  private final ChromeDriverService service;
  private final RemoteWebDriver driver;

  private InstalledBrowser(ChromeDriverService service, RemoteWebDriver driver) {
    this.service = service;
    this.driver = driver;
  }

  /**
   * Starts one.
   *
   * @param profile an empty folder
   * @param more arguments for Chromium
   */
  public static InstalledBrowser start(Path profile, String... more) throws IOException {
    return start(profile, Map.of(), more);
  }

  /**
   * Starts one.
   *
   * @param profile an empty folder
   * @param environment what it finds there besides our own
   * @param more arguments for Chromium
   */
  public static InstalledBrowser start(
      Path profile, Map<String, String> environment, String... more) throws IOException {
    var chromedriver = installed("chromedriver");
    var chromium = installed("chromium");
    assumeThat(chromedriver).as("chromedriver is not installed").isPresent();
    assumeThat(chromium).as("chromium is not installed").isPresent();
    var options =
        new ChromeOptions()
            .setBinary(chromium.get().toString())
            .addArguments(
                "--headless=new",
                "--user-data-dir=" + profile,
                "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-dev-shm-usage",
                "--disable-extensions",
                "--disable-gpu",
                "--no-first-run")
            .addArguments(List.of(more));
    if (System.getProperty("user.name").equals("root")) {
      options.addArguments("--no-sandbox"); // which Chromium refuses to be for root
    }
    var service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(chromedriver.get().toFile())
            .usingAnyFreePort()
            .withEnvironment(environment)
            .withSilent(true)
            .build();
    service.start();
    try {
      var driver = new RemoteWebDriver(service.getUrl(), options, false);
      driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(5));
      return new InstalledBrowser(service, driver);
    } catch (RuntimeException e) {
      service.stop();
      throw e;
    }
  }

  /**
   * What axe-core finds on the page that is shown, each with the element that it is about.
   *
   * @param called what it calls it: {@code violations}, or {@code incomplete}
   */
  public List<String> axe(String called) throws IOException {
    try (var in = InstalledBrowser.class.getResourceAsStream("/axe.min.js")) {
      driver.executeScript(new String(in.readAllBytes(), UTF_8));
    }
    return ((List<?>) driver.executeAsyncScript(FINDINGS, called))
        .stream().map(Object::toString).toList();
  }

  /** What drives it. */
  public RemoteWebDriver driver() {
    return driver;
  }

  /**
   * Takes a screen of this size, which may be smaller than any window of Chromium's.
   *
   * @param scale pixels to a CSS pixel
   */
  public void screen(int width, int height, double scale) throws IOException {
    devtools(
        "Emulation.setDeviceMetricsOverride",
        "{\"width\":%d,\"height\":%d,\"deviceScaleFactor\":%s,\"mobile\":true}"
            .formatted(width, height, Double.toString(scale)));
  }

  /** Takes the window as the screen again. */
  public void noScreen() throws IOException {
    devtools("Emulation.clearDeviceMetricsOverride", "{}");
  }

  /** A command of the Chrome DevTools Protocol, for which a remote driver has no method. */
  private void devtools(String command, String parameters) throws IOException {
    var address = service.getUrl() + "/session/" + driver.getSessionId() + "/goog/cdp/execute";
    var body = "{\"cmd\":\"" + command + "\",\"params\":" + parameters + "}";
    try (var client = HttpClient.newHttpClient()) {
      var request =
          HttpRequest.newBuilder(URI.create(address))
              .POST(HttpRequest.BodyPublishers.ofString(body))
              .build();
      var answer = client.send(request, HttpResponse.BodyHandlers.ofString());
      if (answer.statusCode() != 200) {
        throw new IOException(answer.body());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  @Override
  public void close() {
    try {
      driver.quit();
    } finally {
      service.stop();
    }
  }

  private static Optional<Path> installed(String program) {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .map(place -> Path.of(place, program))
        .filter(Files::isExecutable)
        .findFirst();
  }
}
