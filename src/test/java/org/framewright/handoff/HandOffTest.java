package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.type;
import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandOffTest {
  @TempDir private Path folder;
  private Scene scene;
  private Job job;

  @BeforeEach
  void aJobWithRatedFrames() throws Exception {
    scene = Scene.rated(folder);
    job = scene.job();
  }

  private void rename() throws Exception {
    scene.rename();
  }

  private HandOff handOff() throws Exception {
    var scan = job.scan();
    return HandOff.of(job, scan, job.tally(scan));
  }

  private Path deliver() throws Exception {
    var target = folder.resolve("for Bram");
    var handOff = handOff();
    assertThat(handOff.deliver(handOff.rated(4), target, Progress.NONE))
        .isInstanceOf(Delivery.Delivered.class);
    return target;
  }

  private Map<String, String> contents(Path where) throws Exception {
    try (var files = Files.walk(where)) {
      var contents = new TreeMap<String, String>();
      for (var file : files.filter(Files::isRegularFile).toList()) {
        contents.put(where.relativize(file).toString(), Checksum.of(file));
      }
      return contents;
    }
  }

  @Test
  void theRatedFramesBecomeSelectsUnderTheConventionsNames() throws Exception {
    rename();
    var plan = handOff().rated(4);
    assertThat(plan.withheld()).isEmpty();
    assertThat(plan.selects())
        .extracting(Select::name)
        .containsExactly("KVO_001_F_0001", "KVO_001_F_0004", "KVO_002_B_0002");
    assertThat(plan.selects().getFirst().original()).isEqualTo("20261123_KVO_001_F_0001");
    assertThat(plan.selects().getFirst().files())
        .containsExactly("KVO_001_F_0001.DNG", "KVO_001_F_0001.JPG", "KVO_001_F_0001.xmp");
    assertThat(plan.files()).isEqualTo(9);
    assertThat(HandOffDescription.planned(plan))
        .containsExactly(
            "20261123_KVO_001_F_0001  ->  KVO_001_F_0001",
            "20261123_KVO_001_F_0004  ->  KVO_001_F_0004",
            "20261123_KVO_002_B_0002  ->  KVO_002_B_0002",
            "3 selects in 9 files");
  }

  @Test
  void aRatingSaidInTheJobPrevailsOverThatOfTheFrame() throws Exception {
    rename();
    var rated = handOff().rated(4).selects();
    job.rate(rated.getFirst().frame().knownAs(), 2, "Ines");
    job.rate(rated.get(1).frame().knownAs(), 5, "Ines");
    var plan = handOff().rated(4);
    assertThat(plan.selects())
        .extracting(Select::name)
        .containsExactly("KVO_001_F_0004", "KVO_002_B_0002");
    assertThat(plan.selects().getFirst().rating()).hasValue(5);
    assertThat(PackagePapers.index(plan, List.of(), ZoneOffset.UTC).lines().toList().get(1))
        .startsWith("001,F,20261123_KVO_001_F_0004,KVO_001_F_0004,5,");
  }

  @Test
  void aFieldOfTheSelectIsFoundInTheListByItsLabelToo() throws Exception {
    var template = Files.readString(Path.of("templates/fashion-days.yaml"));
    var file = folder.resolve("labels.yaml");
    Files.writeString(
        file,
        template
            .replace(
                "fields:\n", "fields:\n  colour: {type: words, length: 1-20, label: Farbton}\n")
            .replace("select:    \"{client}_", "select:    \"{client}_{colour}_"));
    var shoot = Files.createDirectory(folder.resolve("labels"));
    job = Scene.named(shoot, Templates.read(file), Map.of("Farbton", "moss green")).job();

    var plan = handOff().rated(4);

    assertThat(plan.withheld()).isEmpty();
    assertThat(plan.selects())
        .extracting(Select::name)
        .containsExactly("KVO_moss-green_001_F_0001");
  }

  @Test
  void aFrameWithoutItsNameIsWithheldWithTheReason() throws Exception {
    var plan = handOff().rated(4);
    assertThat(plan.selects()).isEmpty();
    assertThat(plan.withheld()).hasSize(3);
    assertThat(plan.withheld().getFirst().problem().what()).contains("does not have its name");
    assertThat(plan.withheld().getFirst().problem().remedy()).contains("Rename the frames first");
    assertThat(handOff().deliver(plan, folder.resolve("for Bram"), Progress.NONE))
        .isInstanceOf(Delivery.Refused.class);
    assertThat(folder.resolve("for Bram")).doesNotExist();
  }

  // RFC 8493, by the reference library; the checksums by this runtime's own SHA-256.
  @Test
  void thePackageIsAValidBagOfTheSameBytesAndTheFramesAreUntouched() throws Exception {
    rename();
    var before = contents(job.framesFolder());
    var target = deliver();
    assertThat(target.resolve("bag-info.txt"))
        .content()
        .contains("External-Description: 3 selects of 2 setups, rated 4 or higher\n");
    try (var verifier = new BagVerifier()) {
      verifier.isValid(new BagReader().read(target), false);
    }
    assertThat(contents(job.framesFolder())).isEqualTo(before);
    var copied = contents(target.resolve("data"));
    assertThat(before.values()).containsAll(copied.values());
    assertThat(copied).hasSize(9);
    assertThat(folder.toFile().list()).noneMatch(name -> name.startsWith(".framewright-"));
  }

  // RFC 4180, read by another reader.
  @Test
  void theIndexTellsSetupViewOriginalSelectRatingAndTime() throws Exception {
    rename();
    var originals = contents(job.framesFolder());
    var target = deliver();
    try (var rows =
        new CsvMapper()
            .readerForMapOf(String.class)
            .with(CsvSchema.emptySchema().withHeader())
            .<Map<String, String>>readValues(target.resolve("index.csv").toFile())) {
      assertThat(rows.readAll())
          .hasSize(3)
          .contains(
              Map.of(
                  "setup", "002",
                  "view", "B",
                  "original", "20261123_KVO_002_B_0002",
                  "select", "KVO_002_B_0002",
                  "rating", "5",
                  "captured", "2026-11-23T10:01:02.400+01:00",
                  "files", "KVO_002_B_0002.DNG KVO_002_B_0002.JPG KVO_002_B_0002.xmp",
                  "went-in-hand-off", "",
                  "slate", "",
                  "sha256-original",
                      Stream.of("DNG", "JPG", "xmp")
                          .map(ending -> originals.get("20261123_KVO_002_B_0002." + ending))
                          .collect(Collectors.joining(" "))));
    }
    assertThat(target.resolve("README.txt"))
        .content(StandardCharsets.UTF_8)
        .contains("KVO_001_F_0001_v01  for  KVO_001_F_0001")
        .contains("sha256sum -c SHA256SUMS");
  }

  @Test
  void aTargetThatExistsIsRefusedAndLeftAsItIs() throws Exception {
    rename();
    var target = Files.createDirectory(folder.resolve("for Bram"));
    Files.writeString(target.resolve("other"), "other");
    var handOff = handOff();
    assertThat(handOff.deliver(handOff.rated(4), target, Progress.NONE))
        .asInstanceOf(type(Delivery.Refused.class))
        .satisfies(refused -> assertThat(refused.problem().what()).contains("is there already"));
    assertThat(target.toFile().list()).containsExactly("other");
  }

  @Test
  void aTargetInTheFramesFolderIsRefused() throws Exception {
    rename();
    var handOff = handOff();
    assertThat(
            handOff.deliver(handOff.rated(4), job.framesFolder().resolve("selects"), Progress.NONE))
        .isInstanceOf(Delivery.Refused.class);
    assertThat(job.framesFolder().resolve("selects")).doesNotExist();
  }

  @Test
  void cancellingLeavesNothingBehind() throws Exception {
    rename();
    var handOff = handOff();
    var before = Set.of(folder.toFile().list());
    var outcome =
        handOff.deliver(
            handOff.rated(4),
            folder.resolve("for Bram"),
            new Progress() {
              private int seen;

              @Override
              public void step(int done, int total) {
                seen = done;
              }

              @Override
              public boolean cancelled() {
                return seen == 4;
              }
            });
    assertThat(outcome).isInstanceOf(Delivery.Cancelled.class);
    assertThat(Set.of(folder.toFile().list())).isEqualTo(before);
  }

  @Test
  void aFrameThatChangedSinceTheScanIsNotHandedOff() throws Exception {
    rename();
    var handOff = handOff();
    var plan = handOff.rated(4);
    var file = plan.selects().getFirst().frame().files().getFirst().path();
    Files.write(file, new byte[] {1, 2, 3});
    assertThat(handOff.deliver(plan, folder.resolve("for Bram"), Progress.NONE))
        .asInstanceOf(type(Delivery.Failed.class))
        .satisfies(failed -> assertThat(failed.problem().what()).contains("changed while"));
    assertThat(folder.resolve("for Bram")).doesNotExist();
  }

  @Test
  void framesThatWereMarkedAsSelectsInTheJobGoToo() throws Exception {
    rename();
    var frame = job.scan().frames().getFirst();
    job.select(List.of(frame.id()), true, "Ines");
    assertThat(handOff().selects().selects())
        .extracting(select -> select.frame().id())
        .containsExactly(frame.id());
  }

  @Test
  void whatComesBackIsReadAgainstWhatWasHandedOff() throws Exception {
    rename();
    var target = deliver();
    var back = Files.createDirectory(folder.resolve("back"));
    Pictures.write(back.resolve("KVO_001_F_0001_v01.tif"));
    Pictures.write(back.resolve("kvo_001_f_0001_v02.tif"));
    Files.copy(target.resolve("data/KVO_002_B_0002.JPG"), back.resolve("KVO_002_B_0002.JPG"));
    Pictures.write(back.resolve("KVO_001_F_0009_v01.tif"));
    Files.writeString(back.resolve("final.tif"), "who knows");
    Files.writeString(back.resolve(".DS_Store"), "not a picture");

    var returns = Returns.of(job, back, OptionalInt.empty());

    assertThat(
            returns.answers().stream()
                .collect(Collectors.toMap(Returns.Answer::select, Returns.Answer::state)))
        .isEqualTo(
            Map.of(
                "KVO_001_F_0001", Returns.State.ANSWERED,
                "KVO_001_F_0004", Returns.State.MISSING,
                "KVO_002_B_0002", Returns.State.UNTOUCHED));
    assertThat(returns.extras())
        .extracting(Returns.Extra::file)
        .contains("KVO_001_F_0009_v01.tif", "final.tif");
    assertThat(returns.complete()).isFalse();
  }

  @Test
  void aSelectThatCameBackUnderItsOwnNameWithOtherContentIsTold() throws Exception {
    rename();
    deliver();
    var back = Files.createDirectory(folder.resolve("back"));
    Files.write(back.resolve("KVO_001_F_0001.DNG"), Pictures.of("tif"));
    var returns = Returns.of(job, back, OptionalInt.empty());
    assertThat(returns.answers().getFirst().state()).isEqualTo(Returns.State.CHANGED);
  }

  @Test
  void everySelectAnsweredIsComplete() throws Exception {
    rename();
    deliver();
    var back = Files.createDirectory(folder.resolve("back"));
    var handOff = handOff();
    for (var select : handOff.rated(4).selects()) {
      Pictures.write(back.resolve(handOff.retouchedName(select).orElseThrow() + ".tif"));
    }
    assertThat(Returns.of(job, back, OptionalInt.of(1)).complete()).isTrue();
    assertThatThrownBy(() -> Returns.of(job, back, OptionalInt.of(2)))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no hand-off 2");
  }

  @Test
  void handOffsAreCounted() throws Exception {
    rename();
    deliver();
    var handOff = handOff();
    assertThat(handOff.deliver(handOff.rated(5), folder.resolve("second"), Progress.NONE))
        .asInstanceOf(type(Delivery.Delivered.class))
        .satisfies(done -> assertThat(done.number()).isEqualTo(2));
    assertThat(HandOff.nextNumber(job)).isEqualTo(3);
  }
}
