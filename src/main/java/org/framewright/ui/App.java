package org.framewright.ui;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Locale;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.framewright.ui.copies.Disks;
import org.framewright.ui.sets.SetsSource;
import org.framewright.ui.settings.Places;

/** The toolkit's way in: makes the surroundings of a real run and hands over. */
public final class App extends Application {
  private Composition composition;

  @Override
  public void start(Stage stage) {
    var places = Places.usual();
    var clock = Clock.system(ZoneId.systemDefault());
    composition =
        new Composition(
            stage,
            places,
            clock,
            systemLocale(),
            Background.threads(),
            Platform::runLater,
            new PlatformChoosers(stage),
            FileManager.here(),
            AwakeDisplay.here(),
            Disks.ofThisComputer(),
            JobOnDevices.usual(),
            SetsSource.of(places.folder(), clock));
    composition.hearTheUncaught();
    composition.open();
    getParameters().getRaw().stream()
        .findFirst()
        .ifPresent(job -> composition.openJob(Path.of(job)));
  }

  /** The language that the system shows, written as the system writes dates and numbers. */
  private static Locale systemLocale() {
    return new Locale.Builder()
        .setLanguage(Locale.getDefault(Locale.Category.DISPLAY).getLanguage())
        .setRegion(Locale.getDefault(Locale.Category.FORMAT).getCountry())
        .build();
  }

  @Override
  public void stop() {
    composition.close();
  }
}
