package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.framewright.base.CoreTexts;
import org.framewright.base.Progress;
import org.framewright.disk.SymbolicLinks;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.Renamer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Folders as they come back: links, pipes, rubbish. */
@Timeout(120)
class ReturnsTest {
  private static final String SELECT = "KVO_001_F_0001";

  @TempDir private Path folder;
  private Job job;
  private Path back;

  @BeforeEach
  void aHandOffOfOneFile() throws Exception {
    job = Scene.ofOneFile(folder).job();
    assertThat(Scene.deliver(job, folder.resolve("out"))).isInstanceOf(Delivery.Delivered.class);
    back = Files.createDirectory(folder.resolve("back"));
  }

  private Returns returns() throws Exception {
    return Returns.of(job, back, OptionalInt.empty());
  }

  private String extra() throws Exception {
    var extras = returns().extras();
    return extras.stream().map(e -> e.file() + ": " + e.why()).collect(Collectors.joining("\n"));
  }

  private Returns.State state() throws Exception {
    return returns().answers().getFirst().state();
  }

  @Test
  void readingTellsHowFarItIsInMebibytesAndToTheEnd() throws Exception {
    Scene.copied(folder.resolve("out"), back.resolve("out"));
    Files.write(back.resolve("out/data/large.tif"), new byte[5 << 20]);
    Files.write(back.resolve("other.tif"), new byte[3 << 20]);
    var packed = back.resolve("out");
    var steps = new ArrayList<String>();
    Returns.read(job, back, OptionalInt.empty(), (done, all) -> steps.add(done + "/" + all));
    assertThat(steps).containsExactly("3/8", "8/8");
    steps.clear();
    Returns.read(job, packed, OptionalInt.empty(), (done, all) -> steps.add(done + "/" + all));
    assertThat(steps).as("a package is read twice").contains("5/10").last().isEqualTo("10/10");
  }

  @Test
  void readingCanBeStoppedAtEachLookAndThenGivesNoAnswer() throws Exception {
    Scene.copied(folder.resolve("out"), back.resolve("out"));
    var at = back.resolve("out");
    for (int looks = 0; ; looks++) {
      var left = new AtomicInteger(looks);
      var read =
          Returns.read(
              job, at, OptionalInt.empty(), Progress.until(() -> left.getAndDecrement() <= 0));
      if (left.get() >= 0) {
        assertThat(read).isPresent();
        assertThat(looks).as("it looks at each file, select and step").isGreaterThan(5);
        break;
      }
      assertThat(read).as("stopped at look " + looks).isEmpty();
    }
  }

  @Test
  void whyAFileAnswersNoSelectIsSaidInOtherLanguagesToo() throws Exception {
    Files.writeString(back.resolve("who.tif"), "who knows");
    var why = returns().extras().getFirst().said();
    assertThat(CoreTexts.in(Locale.GERMAN).say(why))
        .isEqualTo(
            "das ist kein ganzes Bild: die ersten Bytes sind die keines Bilds, das hier bekannt"
                + " ist");
  }

  @Test
  void linksAreNamedAndNotFollowed() throws Exception {
    Files.writeString(folder.resolve("secret"), "secret");
    SymbolicLinks.make(back.resolve(SELECT + "_v01.tif"), folder.resolve("secret"));
    SymbolicLinks.make(back.resolve("round"), back);
    SymbolicLinks.make(back.resolve("nowhere"), Path.of("nowhere"));
    assertThat(extra())
        .contains(SELECT + "_v01.tif: this is a link")
        .contains("round: this is a link")
        .contains("nowhere: this is a link");
    assertThat(state()).isEqualTo(Returns.State.MISSING);
  }

  @Test
  void aFolderThatIsALinkItselfIsLookedInto() throws Exception {
    Pictures.write(back.resolve(SELECT + "_v01.tif"));
    var link = SymbolicLinks.make(folder.resolve("link"), back);
    assertThat(Returns.of(job, link, OptionalInt.empty()).complete()).isTrue();
  }

  @Test
  void whatAnswersNoSelectIsToldByName() throws Exception {
    Files.createFile(back.resolve("zz.tif"));
    Pictures.write(back.resolve("holiday.jpg"));
    assertThat(returns().extras())
        .extracting(Returns.Extra::file)
        .containsExactly("holiday.jpg", "zz.tif");
  }

  @Test
  void aPipeIsNamedAndNotOpened() throws Exception {
    HandOffRecordsTest.pipe(back.resolve(SELECT + ".tif"));
    assertThat(extra()).isEqualTo(SELECT + ".tif: this is neither a file nor a folder");
  }

  @Test
  void anEmptyFileIsNoAnswer() throws Exception {
    Files.createFile(back.resolve(SELECT + "_v01.tif"));
    assertThat(extra()).isEqualTo(SELECT + "_v01.tif: the file is empty");
    assertThat(state()).isEqualTo(Returns.State.MISSING);
  }

  @Test
  void aFileOfAnotherSizeIsNotReadToKnowThatItChanged() throws Exception {
    try (var sparse = new RandomAccessFile(back.resolve(SELECT + ".JPG").toFile(), "rw")) {
      sparse.setLength(1L << 40);
    }
    assertThat(extra()).contains("no whole picture");
    assertThat(state()).isEqualTo(Returns.State.MISSING);
  }

  @Test
  void whatIsNoWholePictureIsNoAnswer() throws Exception {
    for (var format : new String[] {"jpg", "tif", "png", "psd"}) {
      var file = back.resolve(SELECT + "_v01." + format);
      Pictures.write(file);
      assertThat(state()).as(format).isEqualTo(Returns.State.ANSWERED);
      var whole = Files.readAllBytes(file);
      Files.write(file, java.util.Arrays.copyOf(whole, whole.length - 1));
      assertThat(state()).as("cut " + format).isEqualTo(Returns.State.MISSING);
      assertThat(extra()).contains("no whole picture");
      Files.writeString(file, "a text with the name of a picture");
      assertThat(state()).as("text " + format).isEqualTo(Returns.State.MISSING);
      Files.delete(file);
    }
  }

  @Test
  void theNewestVersionCountsAndGapsAreTold() throws Exception {
    for (int version : new int[] {1, 2, 5}) {
      Pictures.write(back.resolve(SELECT + "_v0" + version + ".tif"));
    }
    Pictures.write(back.resolve(SELECT + "_v05.jpg"));
    var answer = returns().answers().getFirst();
    assertThat(answer.newest()).hasValue(5);
    assertThat(answer.newestFiles()).containsExactly(SELECT + "_v05.jpg", SELECT + "_v05.tif");
    assertThat(answer.missing()).containsExactly(3, 4);
    assertThat(HandOffDescription.returned(returns()))
        .contains(
            SELECT
                + ": version 5 counts, KVO_001_F_0001_v05.jpg, KVO_001_F_0001_v05.tif; also here:"
                + " 1, 2; not here: 3, 4");
    assertThat(returns().complete()).isTrue();
  }

  private Returns.Likely likely() throws Exception {
    return returns().extras().getFirst().likely().orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    "kvo_001_f_0001_v01.tif, KVO_001_F_0001_v01.tif, letters",
    "KVO_001_F_0001_v2.tif, KVO_001_F_0001_v02.tif, zeros",
    "KVO_001_F_0001 copy.jpg, KVO_001_F_0001_v01.jpg, copy",
    "KVO_001_F_0001_v01 copy.jpg, KVO_001_F_0001_v01.jpg, copy",
    "KVO_001_F_0001_final FINAL 2.jpg, KVO_001_F_0001_v01.jpg, final FINAL 2",
    "KVO_001_F_0001.psd, KVO_001_F_0001_v01.psd, another format",
    "KVO_001_F_0001.tif, KVO_001_F_0001_v01.tif, no version",
    "KVO-001-F-0001-v3.png, KVO_001_F_0001_v03.png, other signs",
    "20261123_KVO_001_F_0001_v01.tif, KVO_001_F_0001_v01.tif, name of the frame",
    "001_F_0001_v01.tif, KVO_001_F_0001_v01.tif, a part",
    "KVO_001_F_0001/final.jpg, KVO_001_F_0001_v01.jpg, its folder",
  })
  void aWronglyNamedPictureIsLikelyOfItsSelect(String file, String right, String reason)
      throws Exception {
    Files.createDirectories(back.resolve(file).getParent());
    Pictures.write(back.resolve(file));
    assertThat(likely().select()).isEqualTo(SELECT);
    assertThat(likely().name()).contains(right);
    assertThat(likely().reason()).contains(reason);
    assertThat(returns().renames()).hasSize(1);
  }

  @Test
  void whatMayBeAnyVersionGetsNoName() throws Exception {
    Pictures.write(back.resolve(SELECT + " copy.jpg"));
    Pictures.write(back.resolve(SELECT + "_final.jpg"));
    assertThat(returns().extras()).allMatch(extra -> extra.likely().orElseThrow().name().isEmpty());
    Files.delete(back.resolve(SELECT + "_final.jpg"));
    Pictures.write(back.resolve(SELECT + "_v01.jpg"));
    assertThat(likely().name()).isEmpty();
    Pictures.write(back.resolve(SELECT + "_V1.jpg"));
    assertThat(returns().renames()).isEmpty();
  }

  @Test
  void aNameThatIsMerelyAlikeIsToldAndNotGiven() throws Exception {
    Pictures.write(back.resolve("KVO_001_F_0007_v01x.jpg"));
    Pictures.write(back.resolve("holiday.jpg"));
    assertThat(returns().renames()).isEmpty();
    assertThat(returns().extras().getLast().likely()).isEmpty();
  }

  @Test
  void aSidecarGoesWithItsPictureAndAloneItIsTold() throws Exception {
    Pictures.write(back.resolve(SELECT + "_v01.tif"));
    Files.writeString(back.resolve(SELECT + "_v01.xmp"), "<x/>");
    assertThat(returns().complete()).isTrue();
    Files.writeString(back.resolve("alone.xmp"), "<x/>");
    assertThat(extra()).isEqualTo("alone.xmp: a sidecar without its picture");
  }

  @Test
  void theRightNamesAreGivenByTheRenamerAndTakenBack() throws Exception {
    var wrong = Files.createDirectory(back.resolve("finals"));
    Pictures.write(wrong.resolve(SELECT + " copy.tif"));
    Files.writeString(wrong.resolve(SELECT + " copy.tif.xmp"), "<x/>");
    Files.writeString(wrong.resolve(SELECT + " copy.xmp"), "<y/>");
    var before = Scene.contents(back);
    var renamer = Renamer.in(back);
    var plan = renamer.plan(returns().renames());
    assertThat(plan.ready()).isEqualTo(3);
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
    assertThat(returns().complete()).isTrue();
    assertThat(returns().answers().getFirst().files())
        .containsExactly("finals/" + SELECT + "_v01.tif");
    assertThat(wrong.resolve(SELECT + "_v01.tif.xmp")).exists();
    assertThat(wrong.resolve(SELECT + "_v01.xmp")).exists();
    renamer.undo(renamer.nextUndo().orElseThrow().id(), Progress.NONE);
    assertThat(Scene.contents(back)).containsAllEntriesOf(before);
  }

  @Test
  void aFileOfTheSameSizeIsCompared() throws Exception {
    var copy = folder.resolve("out/data").resolve(SELECT + ".JPG");
    var bytes = Files.readAllBytes(copy);
    Files.write(back.resolve(SELECT + ".JPG"), bytes);
    assertThat(state()).isEqualTo(Returns.State.UNTOUCHED);
    bytes[bytes.length / 2] ^= 1;
    Files.write(back.resolve(SELECT + ".JPG"), bytes);
    assertThat(state()).isEqualTo(Returns.State.CHANGED);
  }

  @Test
  void foldersBelowAreLookedIntoAndHiddenOnesAndPapersAreNot() throws Exception {
    Pictures.write(Files.createDirectories(back.resolve("a/b")).resolve(SELECT + "_v01.tif"));
    for (var hidden : new String[] {".Trashes", "System Volume Information", "$RECYCLE.BIN"}) {
      Files.writeString(Files.createDirectory(back.resolve(hidden)).resolve("x.tif"), "x");
    }
    for (var paper : new String[] {"README.txt", "Index.csv", ".DS_Store", "SHA256SUMS"}) {
      Files.writeString(back.resolve(paper), "x");
    }
    assertThat(extra()).isEmpty();
    assertThat(returns().answers().getFirst().files())
        .containsExactly("a/b/" + SELECT + "_v01.tif");
    assertThat(returns().complete()).isTrue();
  }

  @Test
  void aFolderThatIsTooDeepIsNamed() throws Exception {
    var deep = back;
    for (int i = 0; i < 80; i++) {
      deep = Files.createDirectory(deep.resolve("d"));
    }
    assertThat(extra()).contains("this folder is too deep");
  }

  @Test
  void namesThatAreNotUtf8AreNamed() throws Exception {
    var made =
        new ProcessBuilder("sh", "-c", "printf x > \"$(printf 'a\\377.tif')\"")
            .directory(back.toFile())
            .start();
    assertThat(made.waitFor()).isZero();
    assertThat(returns().extras()).hasSize(1);
  }

  @Test
  void nothingIsWritten() throws Exception {
    Pictures.write(back.resolve(SELECT + "_v01.tif"));
    var recording = org.framewright.disk.Recording.on(folder);
    var seen = Scene.open(recording.root().resolve(job.name()));
    recording.clear();
    Returns.of(seen, recording.root().resolve("back"), OptionalInt.empty());
    assertThat(recording.ops()).isEmpty();
  }

  @Test
  void aSelectThatWasHandedOffTwiceIsKnownByBothItsCopies() throws Exception {
    var frame = Scene.handOff(job).rated(4).selects().getFirst().frame().files().getFirst();
    Files.writeString(frame.path().resolveSibling(frame.path().getFileName() + ".xmp"), "<x/>");
    var second = Scene.deliver(job, folder.resolve("second"));
    assertThat(second).isInstanceOf(Delivery.Delivered.class);
    Files.copy(folder.resolve("out/data").resolve(SELECT + ".JPG"), back.resolve(SELECT + ".JPG"));
    assertThat(returns().answers()).hasSize(1);
    assertThat(state()).isEqualTo(Returns.State.UNTOUCHED);
  }

  @Test
  void aJobThatHandedNothingOffSaysSo() throws Exception {
    var other = Scene.ofOneFile(Files.createDirectory(folder.resolve("other"))).job();
    assertThatThrownBy(() -> Returns.of(other, back, OptionalInt.empty()))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("nothing was handed off");
    assertThatThrownBy(() -> Returns.of(job, back, OptionalInt.of(5)))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no hand-off 5");
  }

  @Test
  void aManifestThatCameBackIsCheckedToo() throws Exception {
    var returns = Returns.of(job, folder.resolve("out"), OptionalInt.empty());
    assertThat(returns.bag()).isPresent();
    assertThat(returns.bag().get().whole()).isTrue();
    assertThat(returns().bag()).isEmpty();
  }
}
