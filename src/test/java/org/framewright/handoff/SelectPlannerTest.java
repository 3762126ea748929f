package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.Templates;
import org.framewright.base.Problem;
import org.framewright.job.Job;
import org.framewright.naming.Convention;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames that cannot go as they are, and names of retouched files by other conventions. */
class SelectPlannerTest {
  @TempDir private Path folder;

  private Convention convention(String... replaced) throws Exception {
    var text = Files.readString(Path.of("templates/fashion-days.yaml"));
    for (int i = 0; i < replaced.length; i += 2) {
      assertThat(text).contains(replaced[i]);
      text = text.replace(replaced[i], replaced[i + 1]);
    }
    return Templates.read(Files.writeString(folder.resolve("convention.yaml"), text));
  }

  private static List<String> withheld(Job job) throws Exception {
    return Scene.handOff(job).rated(0).withheld().stream()
        .map(Withheld::problem)
        .map(Problem::what)
        .toList();
  }

  @Test
  void twoFramesOfWhichTheSelectNamesAreOneDoNotBothGo() throws Exception {
    var job = Scene.rated(folder, convention()).job();
    var frames = job.framesFolder();
    var other = Files.createDirectory(frames.resolve("B"));
    for (var ending : List.of(".JPG", ".xmp")) {
      Files.move(
          frames.resolve("20261123_KVO_001_F_0004" + ending),
          other.resolve("20261123_KVO_001_F_0001" + ending));
    }
    var plan = Scene.handOff(job).rated(4);
    assertThat(plan.selects())
        .extracting(Select::name)
        .containsExactly("KVO_001_F_0001", "KVO_002_B_0002");
    assertThat(plan.withheld()).hasSize(1);
    var problem = plan.withheld().getFirst().problem();
    assertThat(problem.what())
        .isEqualTo("it would have the same name as 20261123_KVO_001_F_0001: KVO_001_F_0001");
    assertThat(problem.where()).isEqualTo("B/20261123_KVO_001_F_0001");
    assertThat(problem.remedy()).contains("Check the convention");
  }

  @Test
  void aFrameOfWhichTwoFilesWouldHaveOneNameDoesNotGo() throws Exception {
    var job = Scene.ofOneFile(folder).job();
    var file = Scene.handOff(job).rated(4).selects().getFirst().frame().files().getFirst().path();
    for (var ending : List.of(".xmp", ".XMP")) {
      Files.writeString(file.resolveSibling(stem(file) + ending), "<x/>");
    }
    assertThat(withheld(job))
        .containsExactly("two of its files would have the same name: KVO_001_F_0001.xmp");
  }

  private static String stem(Path file) {
    return file.getFileName().toString().replaceFirst("[.].*", "");
  }

  @Test
  void aFrameThatIsCutShortDoesNotGo() throws Exception {
    var job = Scene.ofOneFile(folder).job();
    var file = Scene.handOff(job).rated(4).selects().getFirst().frame().files().getFirst().path();
    var times = Files.getLastModifiedTime(file);
    var whole = Files.readAllBytes(file);
    Files.write(file, java.util.Arrays.copyOf(whole, whole.length - 2));
    Files.setLastModifiedTime(file, times);
    assertThat(withheld(job))
        .containsExactly("it is not complete: a file is cut short or still being written");
  }

  private static Optional<String> retouched(Job job, String original) {
    return new RetouchedNames(job).of("KVO_001_F_0001", original, 2);
  }

  @Test
  void aRetouchedNameIsMadeOfWhatTheSelectSays() throws Exception {
    var job = Scene.ofOneFile(folder).job();
    assertThat(retouched(job, "A/20261123_KVO_001_F_0001")).contains("KVO_001_F_0001_v02");
    assertThat(retouched(job, "A/IMG_4711")).contains("KVO_001_F_0001_v02");
    assertThat(new RetouchedNames(job).of("holiday", "A/IMG_4711", 2)).isEmpty();
  }

  @Test
  void aRetouchedNameMayRepeatWhatOnlyTheFramesNameSays() throws Exception {
    var convention =
        convention(
            "retouched: \"{select}_v{version}\"", "retouched: \"{select}_{lens}_v{version}\"",
            "_{take}\"\n  select", "_{lens}_{take}\"\n  select",
            "fields:\n", "fields:\n  lens:    {type: code, letters: upper, length: 1-3}\n");
    var job = Scene.named(folder, convention, Map.of("lens", "L")).job();
    assertThat(retouched(job, "A/20261123_KVO_001_F_WA_0001")).contains("KVO_001_F_0001_WA_v02");
    assertThat(retouched(job, "A/IMG_4711")).isEmpty();
    var select = Scene.handOff(job).rated(4).selects().getFirst();
    assertThat(PackagePapers.retouched(convention, select).orElseThrow())
        .matches("KVO_001_F_0001_[A-Z]{1,3}_v01");
    assertThat(new RetouchedNames(job).version(Map.of("lens", "7", "version", "03"))).hasValue(3);
  }

  @Test
  void whereTheConventionNamesNoRetouchedFilesNoNameOfOneIsGiven() throws Exception {
    var convention = convention("  retouched: \"{select}_v{version}\"\n", "");
    var job = Scene.named(folder, convention, Map.of()).job();
    assertThat(new RetouchedNames(job).exist()).isFalse();
    assertThat(retouched(job, "A/20261123_KVO_001_F_0001")).isEmpty();
    assertThat(new RetouchedNames(job).first()).isEqualTo(1);
    assertThat(Scene.deliver(job, folder.resolve("out"))).isInstanceOf(Delivery.Delivered.class);
    var back = Files.createDirectory(folder.resolve("back"));
    Pictures.write(back.resolve("holiday.jpg"));
    assertThat(Returns.of(job, back, OptionalInt.empty()).extras())
        .extracting(Returns.Extra::why)
        .containsExactly("this is not the name of a select that was handed off");
  }
}
