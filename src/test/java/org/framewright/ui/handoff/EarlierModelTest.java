package org.framewright.ui.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.framewright.handoff.PastHandOffs.Past;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The hand-offs so far. */
class EarlierModelTest {
  @TempDir private Path folder;

  @Test
  void theNewestComesFirstWithWhatWentBefore() throws Exception {
    try (var scene = new HandOffScene(folder)) {
      var model =
          new EarlierModel(
              scene.session, Tasks.immediate(), HandOffScene.TEXTS, scene.troubles::add);
      model.look();
      assertThat(model.all()).isEmpty();
      assertThat(model.chosen().get()).isNull();
      assertThat(model.sentence()).isEmpty();
      scene.handOff("one");
      scene.handOff("two");
      model.look();
      assertThat(model.all()).extracting(Past::number).containsExactly(2, 1);
      assertThat(model.all()).extracting(Past::again).containsExactly(2, 0);
      assertThat(model.chosen().get().number()).isEqualTo(2);
      assertThat(model.chosen().get().at()).isPresent();
      assertThat(model.sentence()).contains(folder.resolve("two").toString());
      model.chosen().set(model.all().getLast());
      model.look();
      assertThat(model.chosen().get().number()).as("the choice stays").isEqualTo(1);
      Files.writeString(
          scene.job().folder().resolve(".framewright/handoffs/0003.json"), "{ no record");
      model.look();
      assertThat(model.all()).hasSize(2);
      assertThat(model.problem().get().orElseThrow().what()).contains("0003.json");
      assertThat(scene.troubles).isEmpty();
    }
  }
}
