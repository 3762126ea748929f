package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.framewright.base.Progress;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MountedCardsTest {
  @TempDir Path temp;
  private CopiesScene scene;
  private final List<Path> mounted = new ArrayList<>();
  private MountedCards cards;

  @BeforeEach
  void makeScene() throws Exception {
    scene = new CopiesScene(temp);
    mounted.addAll(List.of(scene.one, scene.card, scene.laptop));
    cards = new MountedCards(scene.job, () -> mounted, scene.volumes, Progress.NONE);
  }

  @Test
  void aVolumeWithTheFolderOfCamerasIsACardAndIsListedButNotRead() throws Exception {
    var found = cards.look();
    assertThat(found).extracting(MountedCards.Card::name).containsExactly("A1");
    assertThat(found.getFirst().files()).isEqualTo(4);
    assertThat(found.getFirst().notOnTwo()).as("never compared").isEmpty();
    assertThat(scene.volumes.read()).isEmpty();
  }

  @Test
  void whatWasComparedSaysHowManyFilesAreNotOnTwoDisks() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.compare(scene.card, scene.one);
    assertThat(cards.look().getFirst().notOnTwo()).isEqualTo(OptionalInt.of(4));
    scene.copyCardTo(scene.two, "renamed_");
    scene.later();
    scene.compare(scene.card, scene.one, scene.two);
    assertThat(cards.look().getFirst().notOnTwo()).isEqualTo(OptionalInt.of(0));
  }

  @Test
  void twoFoldersOfOneDiskAreOneDisk() throws Exception {
    scene.copyCardTo(scene.one.resolve("a"), "");
    scene.copyCardTo(scene.one.resolve("b"), "");
    scene.compare(scene.card, scene.one.resolve("a"), scene.one.resolve("b"));
    assertThat(cards.look().getFirst().notOnTwo()).isEqualTo(OptionalInt.of(4));
  }

  @Test
  void aFrameThatWasShotSinceIsNotOnTwoDisks() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.compare(scene.card, scene.one, scene.two);
    Files.writeString(scene.card.resolve("DCIM/100STUDI/LATE.JPG"), "late");
    scene.volumes.again(scene.card);
    var card = cards.look().getFirst();
    assertThat(card.files()).isEqualTo(5);
    assertThat(card.notOnTwo()).isEqualTo(OptionalInt.of(1));
  }

  @Tag("slow")
  @Test
  void evidenceThatSomebodyChangedSaysNothing() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    var compared = scene.compare(scene.card, scene.one, scene.two);
    var evidence = compared.evidence().orElseThrow();
    Files.writeString(evidence, Files.readString(evidence).replace("# by Ines", "# by Odette"));
    assertThat(cards.look().getFirst().notOnTwo()).isEmpty();
  }

  @Test
  void aCardIsListedOnceForEachTimeThatItIsPutIn() throws Exception {
    assertThat(cards.look().getFirst().files()).isEqualTo(4);
    Files.writeString(scene.card.resolve("DCIM/100STUDI/LATE.JPG"), "late");
    assertThat(cards.look().getFirst().files()).isEqualTo(4);
    mounted.remove(scene.card);
    assertThat(cards.look()).isEmpty();
    mounted.add(scene.card);
    assertThat(cards.look().getFirst().files()).isEqualTo(5);
  }

  @Test
  void theVolumeOfTheJobIsNoCard() throws Exception {
    Files.createDirectory(scene.laptop.resolve("DCIM"));
    assertThat(cards.look()).extracting(MountedCards.Card::name).containsExactly("A1");
  }

  @Test
  void whatCannotBeReachedIsPassedOver() throws Exception {
    mounted.addFirst(temp.resolve("gone"));
    assertThat(cards.look()).hasSize(1);
  }
}
