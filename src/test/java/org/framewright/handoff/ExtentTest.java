package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hand-offs of a part of what was chosen. */
class ExtentTest {
  @TempDir private Path folder;
  private Job job;

  /** 001 has two frames rated 4, 002 one rated 5, each with a raw, a JPEG and a sidecar. */
  @BeforeEach
  void aJobWithNamedFrames() throws Exception {
    var scene = Scene.rated(folder);
    scene.rename();
    job = scene.job();
  }

  private HandOff within(List<String> setups, Extent.Pictures pictures, boolean onlyNew)
      throws Exception {
    return Scene.handOff(job).within(new Extent(setups, pictures, onlyNew));
  }

  private static List<String> names(HandOffPlan plan) {
    return plan.selects().stream().map(Select::name).toList();
  }

  private static List<String> files(HandOffPlan plan) {
    return plan.selects().stream().flatMap(select -> select.files().stream()).toList();
  }

  private void handOff(String setup) throws Exception {
    var handOff = within(List.of(setup), Extent.Pictures.ALL, false);
    var delivery = handOff.deliver(handOff.rated(4), folder.resolve("of " + setup), Progress.NONE);
    assertThat(delivery).isInstanceOf(Delivery.Delivered.class);
  }

  @Test
  void onlyTheFramesOfTheNamedSetupsGo() throws Exception {
    var plan = within(List.of("002"), Extent.Pictures.ALL, false).rated(4);
    assertThat(names(plan)).containsExactly("KVO_002_B_0002");
    assertThat(plan.withheld()).isEmpty();
    assertThat(plan.chosenBy()).isEqualTo("rated 4 or higher, of setup 002");
  }

  @Test
  void allFramesOfASetupGoWhereNothingElseIsAsked() throws Exception {
    var plan = within(List.of("001"), Extent.Pictures.ALL, false).every();
    assertThat(names(plan))
        .containsExactly("KVO_001_F_0001", "KVO_001_F_0002", "KVO_001_F_0003", "KVO_001_F_0004");
    assertThat(plan.chosenBy()).isEqualTo("every frame, of setup 001");
  }

  @Test
  void onlyRawPicturesGoWithWhatDescribesThem() throws Exception {
    assertThat(files(within(List.of("002"), Extent.Pictures.RAW, false).rated(4)))
        .containsExactly("KVO_002_B_0002.DNG", "KVO_002_B_0002.xmp");
  }

  @Test
  void onlyJpegPicturesGoWithoutWhatDescribesTheRawAlone() throws Exception {
    var frames = job.framesFolder();
    Files.move(
        frames.resolve("20261123_KVO_002_B_0002.xmp"),
        frames.resolve("20261123_KVO_002_B_0002.DNG.xmp"));
    var plan = within(List.of("002"), Extent.Pictures.JPEG, false).every();
    assertThat(files(plan)).contains("KVO_002_B_0002.JPG").noneMatch(name -> name.contains(".DNG"));
    assertThat(files(within(List.of("002"), Extent.Pictures.RAW, false).every()))
        .contains("KVO_002_B_0002.DNG", "KVO_002_B_0002.DNG.xmp")
        .noneMatch(name -> name.endsWith(".JPG"));
  }

  @Test
  void aFrameWithoutSuchAPictureStaysAndThatIsSaid() throws Exception {
    Files.delete(job.framesFolder().resolve("20261123_KVO_002_B_0002.DNG"));
    var plan = within(List.of(), Extent.Pictures.RAW, false).rated(4);
    assertThat(names(plan)).containsExactly("KVO_001_F_0001", "KVO_001_F_0004");
    assertThat(plan.withheld())
        .extracting(withheld -> withheld.problem().sentence())
        .containsExactly("20261123_KVO_002_B_0002: it has no raw picture");
  }

  @Test
  void framesAreChosenByTheTextOfTheirLabel() throws Exception {
    var sidecar = job.framesFolder().resolve("20261123_KVO_002_B_0002.xmp");
    var time = Files.getLastModifiedTime(sidecar);
    Files.writeString(
        sidecar,
        Files.readString(sidecar).replace("xmp:Rating=", "xmp:Label=\"Second\" xmp:Rating="));
    Files.setLastModifiedTime(sidecar, time);
    var handOff = Scene.handOff(job);
    assertThat(names(handOff.labelled("Second"))).containsExactly("KVO_002_B_0002");
    assertThat(handOff.labelled("second").selects()).isEmpty();
    assertThat(handOff.labelled("Second").chosenBy()).isEqualTo("labelled “Second”");
  }

  @Test
  void whatWentBeforeIsKnownWithItsHandOff() throws Exception {
    handOff("001");
    handOff("002");
    var plan = Scene.handOff(job).rated(4);
    assertThat(plan.before())
        .containsExactlyInAnyOrderEntriesOf(
            Map.of("KVO_001_F_0001", 1, "KVO_001_F_0004", 1, "KVO_002_B_0002", 2));
    assertThat(plan.again()).isEqualTo(3);
  }

  @Test
  void onlyWhatIsNewGoesIfAsked() throws Exception {
    handOff("001");
    var plan = within(List.of(), Extent.Pictures.ALL, true).rated(4);
    assertThat(names(plan)).containsExactly("KVO_002_B_0002");
    assertThat(plan.left()).isEqualTo(2);
    assertThat(HandOffDescription.planned(plan))
        .containsExactly(
            "20261123_KVO_002_B_0002  ->  KVO_002_B_0002",
            "1 selects in 3 files",
            "2 selects went before and stay");
  }

  @Test
  void thePlanSaysWhatIsNew() throws Exception {
    handOff("002");
    assertThat(HandOffDescription.planned(Scene.handOff(job).rated(4)))
        .containsExactly(
            "20261123_KVO_001_F_0001  ->  KVO_001_F_0001",
            "20261123_KVO_001_F_0004  ->  KVO_001_F_0004",
            "20261123_KVO_002_B_0002  ->  KVO_002_B_0002  (went in hand-off 1)",
            "3 selects in 9 files",
            "2 of them are new; 1 went before and go again");
  }

  @Test
  void aHandOffThatCameToNothingDoesNotCount() throws Exception {
    var handOff = Scene.handOff(job);
    var cancelling =
        new Progress() {
          @Override
          public void step(int done, int total) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    assertThat(handOff.deliver(handOff.rated(4), folder.resolve("never"), cancelling))
        .isInstanceOf(Delivery.Cancelled.class);
    assertThat(Scene.handOff(job).rated(4).before()).isEmpty();
  }

  @Test
  void aFrameThatWasRenamedSinceIsKnownByItsSelect() throws Exception {
    handOff("002");
    for (var ending : List.of(".DNG", ".JPG", ".xmp")) {
      var other = Files.createDirectories(job.framesFolder().resolve("B"));
      Files.move(
          job.framesFolder().resolve("20261123_KVO_002_B_0002" + ending),
          other.resolve("20261123_KVO_002_B_0002" + ending));
    }
    assertThat(Scene.handOff(job).rated(4).before()).containsEntry("KVO_002_B_0002", 1);
  }

  @Test
  void aPlanIsSplitInItsOrderAndNothingIsLost() throws Exception {
    var plan = Scene.handOff(job).rated(4);
    long one = plan.selects().getFirst().bytes();
    var parts = plan.parts(plan.bytes() - 1);
    assertThat(parts).hasSize(2);
    assertThat(parts.stream().flatMap(part -> part.selects().stream()).toList())
        .isEqualTo(plan.selects());
    assertThat(plan.parts(plan.bytes())).containsExactly(plan);
    assertThat(plan.parts(one + plan.selects().get(1).bytes()))
        .extracting(part -> part.selects().size())
        .containsExactly(2, 1);
    assertThat(plan.parts(1)).extracting(part -> part.selects().size()).containsExactly(1, 1, 1);
  }
}
