package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.framewright.base.Text;
import org.framewright.handoff.metadata.MetadataMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PastHandOffsTest {
  @TempDir private Path folder;

  @Test
  void whatWasHandedOffIsToldWithHowItWasChosen() throws Exception {
    var job = Scene.ofOneFile(Files.createDirectory(folder.resolve("shoot"))).job();
    Scene.deliver(job, folder.resolve("one"));
    Scene.deliver(job, folder.resolve("two"));

    var past = PastHandOffs.of(job);

    assertThat(past.problems()).isEmpty();
    assertThat(past.all()).extracting(PastHandOffs.Past::number).containsExactly(2, 1);
    var first = past.of(1).orElseThrow();
    assertThat(first.state()).isEqualTo(PastHandOffs.State.OUT);
    assertThat(PastHandOffs.folder(first)).contains(folder.resolve("one"));
    assertThat(first.chosenBy()).isEqualTo(Text.of("rated {0} or higher", "4"));
    assertThat(first.selects()).isEqualTo(1);
    assertThat(first.again()).isZero();
    assertThat(past.of(2).orElseThrow().again()).isEqualTo(1);
    assertThat(first.digest().orElseThrow())
        .isEqualTo(Checksum.of(folder.resolve("one/tagmanifest-sha256.txt")));
    assertThat(past.of(3)).isEmpty();
  }

  @Test
  void aRecordThatCannotBeUsedHidesNoOther() throws Exception {
    var job = Scene.ofOneFile(Files.createDirectory(folder.resolve("shoot"))).job();
    Scene.deliver(job, folder.resolve("one"));
    Files.writeString(job.folder().resolve(".framewright/handoffs/0007.json"), "{");
    var past = PastHandOffs.of(job);
    assertThat(past.all()).hasSize(1);
    assertThat(past.problems()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "chosen in the job",
        "every frame",
        "rated 4 or higher",
        "labelled “Rot, of setup 3”",
        "named in list of Tuesday.txt",
        "rated 5 or higher, of setup 001",
        "every frame, of setups 001, 002, 003",
        "every frame, of setups 001, 002, 003 and 37 more, only JPEG",
        "chosen in the job, only what no earlier hand-off had",
        "came back in back from Bram",
        "something that a later version writes"
      })
  void howFramesWereChosenIsReadBack(String words) {
    assertThat(ChosenBy.said(words).english())
        .isEqualTo(words.replace("of setups", "of the setups"));
  }

  @Test
  void theExtentIsReadBackAsItIsWritten() {
    var words =
        new Extent(List.of("001", "002"), Extent.Pictures.RAW, true).after("rated 3 or higher");
    assertThat(ChosenBy.said(words).english())
        .isEqualTo(
            "rated 3 or higher, of the setups 001, 002, only raw pictures,"
                + " only what no earlier hand-off had");
  }

  @Test
  void theRoomThatPartsNeedIsThatOfThoseThatAreNotThereYet() throws Exception {
    var job = Scene.rated(Files.createDirectory(folder.resolve("shoot"))).job();
    var scene = Scene.handOff(job);
    var parts = scene.rated(2).parts(1);
    var target = folder.resolve("parts");
    var all = scene.room(parts, target, MetadataMode.NONE);
    assertThat(all.lack()).isEmpty();
    assertThat(all.in()).isEqualTo(folder.toRealPath());
    Files.createDirectory(folder.resolve("parts-1"));
    if (parts.size() > 1) {
      assertThat(scene.room(parts, target, MetadataMode.NONE).needed()).isLessThan(all.needed());
    }
    assertThat(scene.problemAt(job.framesFolder().resolve("here"))).isPresent();
    assertThat(scene.problemAt(target)).isEmpty();
  }
}
