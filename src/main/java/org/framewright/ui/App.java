package org.framewright.ui;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Locale;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import org.framewright.ui.settings.Places;

/** The toolkit's way in: makes the surroundings of a real run and hands over. */
public final class App extends Application {
  private Composition composition;

  @Override
  public void start(Stage stage) {
    composition =
        new Composition(
            stage,
            Places.usual(),
            Clock.system(ZoneId.systemDefault()),
            Locale.getDefault(),
            Background.threads(),
            Platform::runLater,
            new PlatformChoosers(stage),
            FileManager.here());
    composition.hearTheUncaught();
    composition.open();
    getParameters().getRaw().stream()
        .findFirst()
        .ifPresent(job -> composition.openJob(Path.of(job)));
  }

  @Override
  public void stop() {
    composition.close();
  }
}
