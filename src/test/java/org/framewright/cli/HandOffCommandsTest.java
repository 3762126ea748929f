package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.framewright.handoff.Pictures;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The commands around the sample job, which is played once by the first of them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Tag("slow")
class HandOffCommandsTest {
  private Path folder;
  private String story;
  private String job;

  @BeforeAll
  void playTheDemo(@TempDir Path given) {
    folder = given;
    var ran = run("demo", "--tiny", "--into", folder.resolve("demo"));
    assertThat(ran.err()).isEmpty();
    assertThat(ran.status()).isZero();
    story = ran.out();
    job = story.strip().lines().toList().getLast().replace("The job folder: ", "").strip();
  }

  @Test
  void theDemoEndsWithTheJobFoldersPath() {
    assertThat(Path.of(job)).isDirectory();
    assertThat(story).contains("1. The job folder").contains("How the job stands");
  }

  @Test
  void aDemoIntoTheSameFolderIsRefusedInOneOrTwoLines() {
    var again = run("demo", "--tiny", "--into", folder.resolve("demo"));
    assertThat(again.status()).isEqualTo(2);
    assertThat(again.err().strip().lines()).hasSizeLessThanOrEqualTo(2);
    assertThat(again.err()).contains("exists already");
  }

  @Test
  void deliverPreviewsWithoutWriting() throws Exception {
    var target = folder.resolve("preview");
    var ran = run("deliver", job, "--to", target, "--rating", 5, "--preview", "--json");
    assertThat(ran.status()).isZero();
    assertThat(ran.json().path("delivered").asBoolean()).isFalse();
    assertThat(ran.json().path("selects")).isNotEmpty();
    assertThat(target).doesNotExist();
  }

  @Test
  void deliverWritesAPackageAndReturnsReadsWhatComesBack() throws Exception {
    var target = folder.resolve("package");
    var delivered = run("deliver", job, "--to", target, "--rating", 5, "--json");
    assertThat(delivered.status()).isZero();
    var json = delivered.json();
    assertThat(json.path("handOff").asInt()).isGreaterThan(1);
    assertThat(Path.of(json.path("folder").asText()).resolve("bagit.txt")).exists();

    var back = Files.createDirectory(folder.resolve("back"));
    for (var select : json.path("selects")) {
      Pictures.write(back.resolve(select.path("select").asText() + "_v01.tif"));
    }
    var number = json.path("handOff").asInt();
    var complete = run("returns", job, back, "--hand-off", number, "--json");
    assertThat(complete.status()).isZero();
    assertThat(complete.json().path("complete").asBoolean()).isTrue();

    Files.writeString(back.resolve("final.tif"), "who knows");
    var extra = run("returns", job, back, "--hand-off", number);
    assertThat(extra.status()).isEqualTo(1);
    assertThat(extra.out()).contains("extra: final.tif: it is no whole picture");
  }

  @Test
  void aContactSheetAndAListLieInThePackageOnRequest() throws Exception {
    var target = folder.resolve("with papers");
    var ran =
        run(
            "deliver",
            job,
            "--to",
            target,
            "--rating",
            5,
            "--contact-sheet",
            "--list",
            "csv",
            "--json");
    assertThat(ran.status()).isZero();
    assertThat(ran.json().path("papers").toString())
        .isEqualTo("[\"contact-sheet.pdf\",\"list.csv\"]");
    assertThat(target.resolve("contact-sheet.pdf")).isNotEmptyFile();
    var first = ran.json().path("selects").get(0);
    assertThat(target.resolve("list.csv"))
        .content()
        .contains("\r\n1," + first.path("select").asText(), first.path("original").asText());
    assertThat(target.resolve("README.txt"))
        .content()
        .contains("contact-sheet.pdf shows", "list.csv has a line for each");
    assertThat(run("verify", target).status()).isZero();
    assertThat(run("deliver", job, "--to", target, "--rating", 5, "--list", "odt").status())
        .isEqualTo(2);
  }

  @Test
  void returnsGivesTheRightNamesAndUndoTakesThemBack() throws Exception {
    var target = folder.resolve("renamed package");
    var delivered = run("deliver", job, "--to", target, "--rating", 5, "--json").json();
    var number = delivered.path("handOff").asInt();
    var name = delivered.path("selects").get(0).path("select").asText();
    var back = Files.createDirectory(folder.resolve("renamed"));
    var file = Pictures.write(back.resolve(name + " copy.tif"));

    var told = run("returns", job, back, "--hand-off", number);
    assertThat(told.status()).isEqualTo(1);
    assertThat(told.out()).contains("likely " + name).contains("1 file can be renamed right");
    var preview = run("returns", job, back, "--hand-off", number, "--rename", "--preview");
    assertThat(preview.status()).isZero();
    assertThat(preview.out()).contains(name + "_v01.tif");
    assertThat(file).exists();
    assertThat(run("returns", job, back, "--hand-off", number, "--rename").status()).isZero();
    assertThat(back.resolve(name + "_v01.tif")).exists();
    assertThat(run("undo", back).status()).isZero();
    assertThat(file).exists();
    assertThat(run("returns", job, back, "--preview").status()).isEqualTo(2);
  }

  @Test
  void whatCameBackIsComparedWithWhatTheClientAsksAndDelivered() throws Exception {
    var target = folder.resolve("asked package");
    var delivered = run("deliver", job, "--to", target, "--rating", 5, "--json").json();
    var number = delivered.path("handOff").asInt();
    var back = Files.createDirectory(folder.resolve("asked"));
    for (var select : delivered.path("selects")) {
      Pictures.write(back.resolve(select.path("select").asText() + "_v01.tif"));
    }
    var first = delivered.path("selects").get(0).path("select").asText();
    Files.delete(back.resolve(first + "_v01.tif"));
    Pictures.write(back.resolve(first + "_v01.png"));
    var asked = folder.resolve("asked.yaml");
    Files.writeString(asked, "specification: Shop\nall: {kinds: tiff}\n");

    var told = run("returns", job, back, "--hand-off", number, "--spec", asked);
    assertThat(told.status()).isEqualTo(1);
    int count = delivered.path("selects").size();
    assertThat(told.out())
        .contains(count - 1 + " of " + count + " are as “Shop” asks")
        .contains("  " + first + "_v01.png: it is of the kind png; asked: tiff")
        .contains("    Save it as tiff.");
    var json = run("returns", job, back, "--hand-off", number, "--spec", asked, "--json").json();
    assertThat(json.path("specification").asText()).isEqualTo("Shop");
    assertThat(json.path("asAsked").asBoolean()).isFalse();
    var one = json.path("selects").get(0);
    assertThat(one.path("frame").get(0).asText()).startsWith(job);
    assertThat(one.path("findings").get(0).path("rule").asText()).isEqualTo("kinds");
    assertThat(one.path("findings").get(0).path("remedy").asText()).isEqualTo("Save it as tiff.");

    var client = folder.resolve("client");
    var all = new Object[] {"deliver", job, "--to", client, "--returned", back, "--spec", asked};
    var words = new java.util.ArrayList<>(Arrays.asList(all));
    words.add("--preview");
    var preview = run(words.toArray());
    assertThat(preview.status()).isEqualTo(1);
    assertThat(preview.out()).contains(count - 1 + " pictures in " + (count - 1) + " files");
    assertThat(preview.err())
        .contains("withheld: " + first + ": " + first + "_v01.png: it is of the kind png");
    assertThat(client).doesNotExist();
    words.set(words.size() - 1, "--with-findings");
    words.add("--json");
    var done = run(words.toArray());
    assertThat(done.status()).as(done.err()).isZero();
    assertThat(done.json().path("selects")).hasSize(count);
    assertThat(done.json().path("sidecars").asInt()).isZero();
    assertThat(done.json().path("selects").get(0).path("returned").get(0).asText())
        .isEqualTo(first + "_v01.png");
    assertThat(run("verify", client).status()).isZero();
  }

  @Test
  void whatIsOfReturnsOnlyIsRefusedElsewhereAndAFaultySpecificationIsNotUsed() throws Exception {
    var target = folder.resolve("never");
    for (var word : List.of("--with-findings", "--spec=x.yaml")) {
      var ran = run("deliver", job, "--to", target, "--rating", 5, word);
      assertThat(ran.status()).isEqualTo(2);
      assertThat(ran.err()).contains("Use it with --returned FOLDER.");
    }
    assertThat(run("deliver", job, "--to", target, "--returned", folder.resolve("no")).status())
        .isEqualTo(2);
    var faulty = folder.resolve("faulty.yaml");
    Files.writeString(faulty, "specification: Shop\nall: {bits: 7, bit: 8}\n");
    var back = Files.createDirectory(folder.resolve("nothing back"));
    var ran = run("returns", job, back, "--spec", faulty);
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("line 2, column 13").contains("shows all 2 faults");
    var check = run("check", faulty);
    assertThat(check.status()).isEqualTo(2);
    assertThat(check.out())
        .contains("“bit” has no meaning here")
        .contains("Remedy: Is “bits” meant?")
        .endsWith("2 errors\n");
    var sound = run("check", "samples/delivery-product-images.yaml");
    assertThat(sound.status()).isZero();
    assertThat(sound.out())
        .contains("    long-side: 900 to 2400 pixels")
        .contains("No fault found");
    var asJson = run("check", "samples/delivery-product-images.yaml", "--json").json();
    assertThat(asJson.path("asked").path("").path("bits").asText()).isEqualTo("8");
    assertThat(target).doesNotExist();
  }

  @Test
  void deliverIntoAFolderThatExistsIsRefused() {
    var ran = run("deliver", job, "--to", folder, "--rating", 4);
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.err()).contains("is there already");
    assertThat(ran.out()).isEmpty();
  }

  @Test
  void deliverWantsARatingOrNames() {
    assertThat(run("deliver", job, "--to", folder.resolve("new")).status()).isEqualTo(2);
    assertThat(run("deliver", job, "--to", folder.resolve("new"), "--rating", 9).status())
        .isEqualTo(2);
    var missing = run("deliver", job, "--to", folder.resolve("new"), "--names", "none.txt");
    assertThat(missing.status()).isEqualTo(2);
    assertThat(missing.err()).contains("none.txt");
  }

  @Test
  void deliverTakesSomeSetupsOrOnlyOneKindOfPictureOrWhatIsNew() throws Exception {
    var target = folder.resolve("some");
    var some =
        run("deliver", job, "--to", target, "--setups", "001..002, 004", "--preview", "--json");
    assertThat(some.json().path("selects")).isNotEmpty();
    for (var select : some.json().path("selects")) {
      assertThat(select.path("setup").asText()).isIn("001", "002", "004");
    }
    var raw =
        run(
            "deliver",
            job,
            "--to",
            target,
            "--rating",
            4,
            "--pictures",
            "raw",
            "--preview",
            "--json");
    assertThat(raw.json().path("selects")).isNotEmpty();
    for (var select : raw.json().path("selects")) {
      assertThat(select.path("files").toString()).doesNotContain(".JPG");
    }
    var before = run("deliver", job, "--to", target, "--rating", 4, "--preview");
    assertThat(before.out()).contains("(went in hand-off 1)");
    var fresh = run("deliver", job, "--to", target, "--rating", 4, "--new", "--preview", "--json");
    assertThat(fresh.json().path("selects")).isEmpty();
    assertThat(fresh.json().path("wentBefore").size()).isPositive();
    assertThat(run("deliver", job, "--to", target, "--setups", "999").status()).isEqualTo(2);
  }

  @Test
  void aHandOffInPartsGoesOnWhereItWasStopped() throws Exception {
    var target = folder.resolve("parts");
    var plan = run("deliver", job, "--to", target, "--rating", 5, "--preview", "--json").json();
    int size = (int) (plan.path("bytes").asLong() / 1000 * 2 / 3);
    var command =
        new Object[] {"deliver", job, "--to", target, "--rating", 5, "--split", size + "KB"};
    assertThat(run(append(command, "--preview")).out()).containsPattern("a package of \\d+ select");

    var inTheWay = Files.createDirectory(folder.resolve("parts-2"));
    var stopped = run(command);
    assertThat(stopped.status()).isEqualTo(4);
    assertThat(stopped.err()).contains("is delivered: " + folder.resolve("parts-1"));
    Files.delete(inTheWay);

    var json = run(append(command, "--json")).json();
    assertThat(json.path("packages").size()).isGreaterThan(1);
    var selects = 0;
    for (var one : json.path("packages")) {
      var verified = run("verify", one.path("folder").asText(), "--json");
      assertThat(verified.status()).isZero();
      selects +=
          (int)
              Files.readAllLines(Path.of(one.path("folder").asText(), "index.csv")).stream()
                  .skip(1)
                  .count();
    }
    assertThat(selects).isEqualTo(plan.path("selects").size());
  }

  @Test
  void aPartThatIsTooSmallForASelectOrNoSizeIsRefused() {
    var target = folder.resolve("never");
    var small = run("deliver", job, "--to", target, "--rating", 5, "--split", "1KB");
    assertThat(small.status()).isEqualTo(2);
    assertThat(small.err()).contains("more than --split allows");
    for (var size : List.of("0GB", "many", "20", "-5GB")) {
      var bad = run("deliver", job, "--to", target, "--rating", 5, "--split", size);
      assertThat(bad.status()).isEqualTo(2);
      assertThat(bad.err()).contains("is not a size such as 500MB");
    }
    assertThat(target).doesNotExist();
  }

  private static Object[] append(Object[] words, Object more) {
    var all = Arrays.copyOf(words, words.length + 1);
    all[words.length] = more;
    return all;
  }

  @Test
  void aListIsPreviewedLineByLine() throws Exception {
    var names =
        Files.writeString(
            folder.resolve("clear.txt"), "Hi Ines,\n- 001_F_0001.jpg (lovely)\n002 F 0001\n");
    var target = folder.resolve("named preview");
    var ran = run("deliver", job, "--to", target, "--names", names, "--preview");
    assertThat(ran.err()).isEmpty();
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .contains("line 1: Hi Ines,  (names no frame)")
        .contains("line 2: - 001_F_0001.jpg (lovely)")
        .contains(
            "  001_F_0001.jpg = A/20261102_KVO_001_F_0001 (a part of its name and of no other)")
        .contains("2 frames named without a doubt")
        .contains("A/20261102_KVO_001_F_0001  ->  KVO_001_F_0001");
    assertThat(target).doesNotExist();
    var json = run("deliver", job, "--to", target, "--names", names, "--preview", "--json").json();
    assertThat(json.path("unclear").asInt()).isZero();
    assertThat(json.path("names").get(1).path("parts").get(0).path("outcome").asText())
        .isEqualTo("taken");
    assertThat(json.path("names").get(1).path("parts").get(0).path("frames").get(0).asText())
        .isEqualTo("A/20261102_KVO_001_F_0001");
  }

  @Test
  void aListWithSomethingUnclearHandsNothingOffUntilAPersonSaysSo() throws Exception {
    var names =
        Files.writeString(folder.resolve("names.txt"), "20261102_KVO_001_F_0001\nIMG_19999\n001\n");
    var target = folder.resolve("named");
    var ran = run("deliver", job, "--to", target, "--names", names);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).contains("IMG_19999 ? no frame has this name").contains("001 ? several");
    assertThat(ran.err()).contains("are settled: 2, 3").contains("--skip-unclear");
    assertThat(target).doesNotExist();

    var json = run("deliver", job, "--to", target, "--names", names, "--json");
    assertThat(json.status()).isEqualTo(1);
    assertThat(json.json().path("delivered").asBoolean()).isFalse();
    assertThat(json.json().path("unclear").asInt()).isEqualTo(2);

    var some = run("deliver", job, "--to", target, "--names", names, "--skip-unclear");
    assertThat(some.status()).isEqualTo(1);
    assertThat(some.out()).contains("1 selects in");
    assertThat(target.resolve("data/KVO_001_F_0001.JPG")).exists();
  }

  @Test
  void aListThatNamesNothingHandsNothingOff() throws Exception {
    var names = Files.writeString(folder.resolve("quoted.txt"), "> 20261102_KVO_001_F_0001\n");
    var target = folder.resolve("nothing");
    var ran = run("deliver", job, "--to", target, "--names", names, "--skip-unclear");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out()).contains("passed over: quoted from an earlier message");
    assertThat(ran.err()).contains("No line of quoted.txt names a frame");
    assertThat(target).doesNotExist();
  }

  @Test
  void theOldSpellingsAreGone() {
    for (var option : new String[] {"--picks", "--chosen"}) {
      assertThat(run("deliver", job, "--to", folder.resolve("new"), option, "x").status())
          .isEqualTo(2);
    }
    assertThat(
            run("deliver", job, "--to", folder.resolve("new"), "--rating", 4, "--skip-unclear")
                .status())
        .isEqualTo(2);
  }

  @Test
  void daySaysStatesPaceAndSpace() throws Exception {
    var ran = run("day", job, "--json");
    var json = ran.json();
    assertThat(json.path("setups").path("signed-off").asInt()).isEqualTo(38);
    assertThat(json.path("pace").path("setupsShot").asInt()).isEqualTo(38);
    assertThat(json.path("all").path("setups").asInt()).isEqualTo(2);
    assertThat(json.path("left").asInt()).isEqualTo(2);
    assertThat(json.path("likely").path("earliest").asText())
        .isLessThan(json.path("likely").path("latest").asText());
    assertThat(json.path("whyNoRange").isNull()).isTrue();
    assertThat(json.path("space").path("framesPlanned").asInt()).isEqualTo(12);
    assertThat(run("day", job).out()).contains("38 signed off");
  }

  @Test
  void dayRefusesHoursThatAreNone() {
    var ran = run("day", job, "--hours", "18:00-09:00");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("A day ends after it begins");
    assertThat(run("day", job, "--break", "lunch").status()).isEqualTo(2);
    assertThat(run("day", folder).status()).isEqualTo(2);
  }
}
