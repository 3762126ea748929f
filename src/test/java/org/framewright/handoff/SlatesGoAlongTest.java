package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.frames.slate.Slate;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.job.Job;
import org.framewright.job.SlateWord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames IMG_9998 to IMG_0002 of setup 001, IMG_0003 and IMG_0004 of 002; some are slates. */
class SlatesGoAlongTest {
  private static final MetadataOptions DESCRIBED =
      new MetadataOptions(MetadataMode.SIDECAR, false, Studio.NOTHING);

  @TempDir private Path folder;
  private Job job;

  /** A job in which these frames are the slates of these setups; the others have their names. */
  private void slates(Scene scene, String... pairs) throws Exception {
    job = scene.job();
    for (int i = 0; i < pairs.length; i += 2) {
      say(pairs[i], new SlateWord.OfSetup(pairs[i + 1]));
    }
    scene.rename();
  }

  private void slates(String... pairs) throws Exception {
    slates(Scene.rated(Files.createDirectories(folder.resolve("job"))), pairs);
  }

  private Frame say(String stem, SlateWord word) throws Exception {
    var scan = job.scan();
    var frame =
        scan.frames().stream().filter(one -> one.stem().equals(stem)).findFirst().orElseThrow();
    job.saySlate(frame, word, "Ines", scan);
    return frame;
  }

  private HandOff with(String... setups) throws Exception {
    return Scene.handOff(job).within(new Extent(List.of(setups), Extent.Pictures.ALL, false, true));
  }

  private static List<String> names(HandOffPlan plan) {
    return plan.selects().stream().map(Select::name).toList();
  }

  private Path delivered(HandOff handOff, HandOffPlan plan, String name) {
    var target = folder.resolve(name);
    assertThat(handOff.deliver(plan, target, DESCRIBED, Progress.NONE))
        .isInstanceOf(Delivery.Delivered.class);
    return target;
  }

  @Test
  void aSlateGoesOnlyWhereItIsAskedFor() throws Exception {
    slates("IMG_9999", "001");
    assertThat(names(Scene.handOff(job).rated(4)))
        .containsExactly("KVO_001_F_0001", "KVO_001_F_0003", "KVO_002_B_0002");
    var plan = with().rated(4);
    assertThat(names(plan))
        .containsExactly("IMG_9999", "KVO_001_F_0001", "KVO_001_F_0003", "KVO_002_B_0002");
    assertThat(plan.slates()).isEqualTo(1);
    assertThat(plan.pictures()).isEqualTo(3);
    assertThat(plan.chosenBy()).isEqualTo("rated 4 or higher, with the slates");
    assertThat(ChosenBy.said(plan.chosenBy()).english()).isEqualTo(plan.chosenBy());
    assertThat(ChosenBy.said(plan.chosenBy()).many()).isEqualTo("{0}, with the slates");
  }

  @Test
  void onlyTheSlatesOfTheSetupsOfWhichFramesGo() throws Exception {
    slates("IMG_9999", "001", "IMG_0003", "002");
    assertThat(names(with("002").every())).containsExactly("IMG_0003", "KVO_002_B_0001");
    assertThat(names(with("001").rated(4)))
        .containsExactly("IMG_9999", "KVO_001_F_0001", "KVO_001_F_0003");
    assertThat(names(Scene.handOff(job).every())).noneMatch(name -> name.startsWith("IMG"));
    assertThat(Scene.handOff(job).every().withheld()).isEmpty();
  }

  /** IMG_0004 is rated 5. */
  @Test
  void aSlateThatWasChosenItselfIsToldWhereNoneIsAskedFor() throws Exception {
    slates("IMG_0004", "002");
    var plan = Scene.handOff(job).rated(5);
    assertThat(plan.selects()).isEmpty();
    assertThat(plan.withheld())
        .extracting(one -> one.problem().what())
        .containsExactly("it is a slate, which is not handed off");
    assertThat(names(with().rated(5))).containsExactly("IMG_0004");
    assertThat(names(with("002").rated(5))).containsExactly("IMG_0004");
    assertThat(names(with("001").rated(5))).isEmpty();
  }

  @Test
  void thePackageSaysThatItIsASlateAndThatItNeedNotComeBack() throws Exception {
    slates("IMG_9999", "001");
    var handOff = with();
    var target = delivered(handOff, handOff.rated(4), "package");
    assertThat(target.resolve("index.csv"))
        .content(StandardCharsets.UTF_8)
        .contains("went-in-hand-off,slate\r\n")
        .containsPattern("001,,IMG_9999,IMG_9999,[^\\r]*,yes\\r\\n")
        .containsPattern("001,F,[^\\r]*,KVO_001_F_0001,[^\\r]*,\\r\\n");
    assertThat(target.resolve("README.txt"))
        .content(StandardCharsets.UTF_8)
        .contains("3 selects and 1 slate in ")
        .contains("They need not come back.\n")
        .contains("KVO_001_F_0001_v01  for  KVO_001_F_0001");
    assertThat(target.resolve("bag-info.txt"))
        .content(StandardCharsets.UTF_8)
        .contains("3 selects and 1 slate of 2 setups");
    assertThat(target.resolve("data/IMG_9999.xmp"))
        .content(StandardCharsets.UTF_8)
        .contains("IMG_9999 (slate)")
        .contains("<rdf:li>slate</rdf:li>")
        .doesNotContain("Please send it back");
    assertThat(OpenPackage.check(target).orElseThrow()).matches(PackageCheck::whole);
    var record = HandOffRecords.of(job).read().usable().get(1);
    assertThat(record.selects())
        .filteredOn(HandOffRecord.Entry::slate)
        .singleElement()
        .satisfies(entry -> assertThat(entry.select()).isEqualTo("IMG_9999"));
    assertThat(PastHandOffs.of(job).of(1).orElseThrow().selects()).isEqualTo(3);
  }

  @Test
  void nothingIsSaidOfASlateThatComesBackOrDoesNot() throws Exception {
    slates("IMG_9999", "001");
    var handOff = with();
    var target = delivered(handOff, handOff.rated(4), "package");
    var back = Files.createDirectory(folder.resolve("back"));
    var without = Returns.of(job, back, OptionalInt.empty());
    assertThat(without.answers()).hasSize(3).noneMatch(one -> one.select().equals("IMG_9999"));
    Files.copy(target.resolve("data/IMG_9999.JPG"), back.resolve("IMG_9999.JPG"));
    Files.copy(target.resolve("data/IMG_9999.xmp"), back.resolve("IMG_9999.xmp"));
    assertThat(Returns.of(job, back, OptionalInt.empty()).extras()).isEmpty();
    Pictures.write(back.resolve("IMG_9999.JPG"));
    assertThat(Returns.of(job, back, OptionalInt.empty()).extras())
        .extracting(Returns.Extra::file)
        .containsExactly("IMG_9999.JPG");
  }

  @Test
  void theSameAgainIsDoneAlreadyAndOnlyWhatIsNewLeavesTheSlateToo() throws Exception {
    slates("IMG_9999", "001");
    var handOff = with("001");
    var plan = handOff.rated(4);
    var target = delivered(handOff, plan, "package");
    var again = handOff.deliver(plan, target, DESCRIBED, Progress.NONE);
    assertThat(((Delivery.Delivered) again).slates()).isEqualTo(1);
    assertThat(((Delivery.Delivered) again).selects()).isEqualTo(2);
    var fresh =
        Scene.handOff(job)
            .within(new Extent(List.of("001"), Extent.Pictures.ALL, true, true))
            .every();
    assertThat(names(fresh)).containsExactly("KVO_001_F_0002");
    assertThat(fresh.before()).containsKey("IMG_9999");
  }

  @Test
  void aSlateHasTheNameOfItsOwnKindWhereTheConventionHasOne() throws Exception {
    var text =
        Files.readString(Path.of("templates/fashion-days.yaml"))
            .replace("  select:", "  slate: \"{client}_{setup}_slate_{take}\"\n  select:");
    var convention = Templates.read(Files.writeString(folder.resolve("convention.yaml"), text));
    var scene = Scene.rated(Files.createDirectories(folder.resolve("job")), convention);
    job = scene.job();
    var named = "20261123_KVO_001_F_0002";
    say(named, new SlateWord.OfSetup("001"));
    var plan = with().rated(4);
    assertThat(plan.withheld())
        .extracting(one -> one.problem().what())
        .containsExactly("it does not have its name by the convention yet");
    assertThat(plan.withheld().getFirst().tool()).isEqualTo(Withheld.Tool.RENAMING);
    scene.rename();
    assertThat(with().rated(4).selects())
        .filteredOn(Select::slate)
        .singleElement()
        .satisfies(
            select -> {
              assertThat(select.name()).matches("KVO_001_slate_000\\d");
              assertThat(select.fields()).containsEntry("setup", "001");
            });
  }

  @Test
  void ofTwoSlatesWithOneNameTheSecondIsTold() throws Exception {
    var scene = Scene.rated(Files.createDirectories(folder.resolve("job")));
    job = scene.job();
    say("IMG_9999", new SlateWord.OfSetup("001"));
    say("IMG_0001", new SlateWord.OfSetup("001"));
    var other = Files.createDirectory(job.framesFolder().resolve("B"));
    try (var files = Files.newDirectoryStream(job.framesFolder(), "IMG_0001*")) {
      for (var file : files) {
        Files.move(file, other.resolve(file.getFileName().toString().replace("0001", "9999")));
      }
    }
    scene.rename();
    var plan = with().rated(4);
    assertThat(plan.slates()).isEqualTo(1);
    assertThat(plan.withheld())
        .extracting(one -> one.problem().what())
        .containsExactly("it would have the same name as IMG_9999: IMG_9999");
    assertThat(plan.withheld().getFirst().problem().remedy()).contains("convention name slates");
  }

  @Test
  void aSlateOfACodeThatTheListDoesNotHaveDoesNotGo() throws Exception {
    job = Scene.rated(Files.createDirectories(folder.resolve("job"))).job();
    var frame =
        job.scan().frames().stream()
            .filter(one -> one.stem().equals("IMG_0004"))
            .findFirst()
            .orElseThrow();
    var slate = Slate.of(job.slateKey(), "099").print();
    job.recordLooks(Map.of(frame, Optional.of(slate)));
    var plan = with().rated(5);
    assertThat(plan.withheld())
        .extracting(one -> one.problem().what())
        .containsExactly("it is a slate of no setup of the list");
  }
}
