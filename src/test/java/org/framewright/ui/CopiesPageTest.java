package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import org.framewright.ui.copies.CardScene;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page for copies on the real app, by keys alone. */
@Tag("slow")
class CopiesPageTest {
  @TempDir private Path folder;

  @Test
  void aCardThatIsPutInIsOfferedComparedCopiedAndThenMayBeCleared() throws Exception {
    var scene = new CardScene(Files.createDirectory(folder.resolve("shoot")));
    var settings = Files.createDirectory(folder.resolve("settings"));
    // With slashes, also on Windows, where JSON would read something else in backslashes.
    var two = scene.two.toString().replace(File.separatorChar, '/');
    Files.writeString(
        settings.resolve("preferences.json"),
        "{\"safety.reminded\": \"%s\", \"copies.by\": \"Ines\", \"copies.backups\": [\"%s\"]}"
            .formatted(LocalDate.now(scene.clock()), two));
    var app =
        OpenApp.again(settings, scene.clock(), new Answers(scene.one), Locale.UK, scene.disks());
    try (var uncaught = new Uncaught()) {
      app.openJob(scene.job);
      scene.mounted.add(scene.card);
      app.awaitReading("#card-offered", "Card A1 is in: 4 files, not compared yet.");
      app.press(OpenApp.SHORTCUT, KeyCode.K);
      app.await(() -> app.readsAll(".place-name").contains("A1"));
      app.await(() -> app.reads("#card-offered").isEmpty());
      app.press(KeyCode.INSERT);
      app.await(() -> app.readsAll(".place-name").contains("SSD 1"));
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.awaitReading(".plate-word", "not yet");
      app.press(KeyCode.C);
      app.awaitReading(".dialog-title", "Copy, and prove the copies");
      app.press(KeyCode.ENTER);
      app.await(() -> app.reads("#copied").startsWith("All 4 files are on each of these 2"));
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.awaitReading(".plate-word", "may be cleared");
      app.press(KeyCode.S);
      assertThat(onInterface(() -> Clipboard.getSystemClipboard().getString()))
          .startsWith("Card A1 may be cleared as it was at 18:04: all 4 files are on ");
      app.press(KeyCode.F);
      app.await(() -> app.holdsTheKeys("#files"));
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }

  @Test
  void aBackupIsNamedAFileIsGivenUpAndTheDisksAreCountedByKeys() throws Exception {
    var scene = new CardScene(Files.createDirectory(folder.resolve("shoot")));
    Files.write(scene.card.resolve("DCIM/100STUDI/EMPTY.JPG"), new byte[0]);
    var copy = scene.two.resolve("A1 of Monday");
    scene.copyCardTo(copy.resolve("DCIM/100STUDI"));
    scene.copyCardTo(scene.one);
    var settings = Files.createDirectory(folder.resolve("settings"));
    Files.writeString(
        settings.resolve("preferences.json"),
        "{\"safety.reminded\": \"%s\", \"copies.by\": \"Ines\", \"copies.backups\": [\"%s\"]}"
            .formatted(LocalDate.now(scene.clock()), scene.one));
    var app = OpenApp.again(settings, scene.clock(), new Answers(copy), Locale.UK, scene.disks());
    try (var uncaught = new Uncaught()) {
      app.openJob(scene.job);
      scene.mounted.add(scene.card);
      app.awaitReading("#card-offered", "Card A1 is in: 5 files, not compared yet.");
      app.press(KeyCode.CONTROL, KeyCode.K);
      app.await(() -> app.readsAll(".place-name").contains("A1"));
      app.press(KeyCode.INSERT);
      app.await(() -> app.readsAll(".place-name").contains("A1 of Monday"));
      app.press(KeyCode.P);
      app.press(KeyCode.HOME);
      app.press(KeyCode.DOWN);
      app.press(KeyCode.K);
      app.awaitReading(".dialog-title", "Is A1 of Monday a backup, and no card?");
      app.press(KeyCode.ENTER);
      app.await(() -> app.readsAll(".place-kind").stream().filter("backup"::equals).count() == 2);
      app.press(KeyCode.CONTROL, KeyCode.ENTER);
      app.awaitReading(".plate-word", "not yet");
      app.press(KeyCode.F);
      app.press(KeyCode.W);
      app.awaitReading(".dialog-title", "May this file be lost?");
      app.type("Max");
      app.press(KeyCode.ENTER);
      app.await(() -> app.readsAll(".file-more").contains("need not be kept, says Max"));
      app.await(() -> app.readsAll(".quiet").contains("out of date"));
      app.press(KeyCode.W);
      app.await(() -> app.readsAll(".file-state").contains("damaged"));
      app.await(() -> !app.readsAll(".quiet").contains("out of date"));
      app.press(KeyCode.W);
      app.awaitReading(".dialog-title", "May this file be lost?");
      app.type("Max");
      app.press(KeyCode.ENTER);
      app.await(() -> app.readsAll(".file-state").contains("not kept"));
      app.press(KeyCode.CONTROL, KeyCode.ENTER);
      app.awaitReading(".plate-word", "may be cleared");
      app.press(KeyCode.N);
      app.type("9");
      app.await(() -> app.readsAll(".quiet").contains("out of date"));
      app.press(KeyCode.CONTROL, KeyCode.ENTER);
      app.awaitReading(".plate-word", "not yet");
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }
}
