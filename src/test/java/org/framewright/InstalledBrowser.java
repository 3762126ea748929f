package org.framewright;

import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.remote.RemoteWebDriver;

/**
 * The Chromium that is installed here, without a window. It reaches this computer and nothing else;
 * a test is skipped where it or its driver is missing.
 */
public final class InstalledBrowser implements AutoCloseable {
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

  /** What drives it. */
  public RemoteWebDriver driver() {
    return driver;
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
