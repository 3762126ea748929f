package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FoundPlaceTest {
  @TempDir Path temp;
  private CopiesScene scene;

  @BeforeEach
  void makeScene() throws Exception {
    scene = new CopiesScene(temp);
  }

  @Test
  void aCardIsToldByItsFolderOfImages() {
    var card = FoundPlace.of(scene.card, scene.volumes);
    assertThat(card.there()).isTrue();
    assertThat(card.looksLikeCard()).isTrue();
    assertThat(card.name()).isEqualTo("A1");
    assertThat(card.device()).isEqualTo("disk card");
    assertThat(card.total()).isGreaterThanOrEqualTo(card.free());
    assertThat(scene.volumes.read()).isEmpty();
    assertThat(FoundPlace.of(scene.one, scene.volumes).looksLikeCard()).isFalse();
  }

  /** What is on a card is no copy, in whatever folder of it. */
  @Test
  void aDiskThatLooksLikeACardIsNoBackupAndAFolderThatDoesMayBeOne() throws Exception {
    assertThat(FoundPlace.of(scene.card, scene.volumes).noBackup()).isPresent();
    assertThat(FoundPlace.of(scene.card.resolve("DCIM"), scene.volumes).noBackup()).isPresent();
    Files.createDirectories(scene.one.resolve("card A1/DCIM"));
    var copied = FoundPlace.of(scene.one.resolve("card A1"), scene.volumes);
    assertThat(copied.looksLikeCard()).isTrue();
    assertThat(copied.noBackup()).isEmpty();
    assertThat(copied.mount()).isEqualTo(scene.volumes.mountOf(scene.one));
  }

  @Test
  void whatIsNotConnectedIsNotThere() throws Exception {
    var away = FoundPlace.of(temp.resolve("SSD 3"), scene.volumes);
    assertThat(away.there()).isFalse();
    assertThat(away.name()).isEqualTo("SSD 3");
    var file = Files.writeString(temp.resolve("file"), "");
    assertThat(FoundPlace.of(file, scene.volumes).there()).as("a file").isFalse();
  }
}
