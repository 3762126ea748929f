package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import org.framewright.renaming.CraftedFolder;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands of renames on input that somebody made to do harm. */
class HostileRenamesTest {
  private static final Duration HANGS = Duration.ofMinutes(20);

  @TempDir Path scratch;

  @Test
  @Tag("slow")
  void noCraftedFolderOfJournalsMakesACommandFailUnsaid() throws Exception {
    var pipe = CraftedFolder.pipe(scratch);
    var map = Files.writeString(scratch.resolve("map.csv"), "from,to\nc,d\n");
    assertTimeoutPreemptively(
        HANGS,
        () -> {
          for (long seed = 5_000; seed < 5_040; seed++) {
            try (var crafted = CraftedFolder.make(scratch, pipe, seed)) {
              var outside = crafted.outside();
              var inside = crafted.inside();
              assertSaid(seed, Ran.run("batches", crafted.root()));
              assertSaid(seed, Ran.run("undo", crafted.root()));
              assertSaid(seed, Ran.run("undo", crafted.root(), "--batch", "1"));
              assertSaid(seed, Ran.run("recover", crafted.root()));
              assertSaid(seed, Ran.run("rename", "--map", map, "--in", crafted.root()));
              assertSaid(seed, Ran.run("batches", crafted.root(), "--drop-before", "2030-01-01"));
              assertThat(crafted.outside()).as("seed " + seed).isEqualTo(outside);
              assertThat(crafted.inside()).as("seed " + seed).isEqualTo(inside);
            }
          }
        });
  }

  private static void assertSaid(long seed, Ran ran) {
    var all = ran.out() + ran.err();
    assertThat(ran.status()).as(seed + ": " + all).isBetween(0, 4);
    assertThat(all).as("seed " + seed).doesNotContain("fault of the program", "Exception");
    assertThat(all.chars().filter(c -> c != '\n' && Character.isISOControl(c)).boxed())
        .as("what acts on a terminal, seed " + seed)
        .isEmpty();
    if (ran.status() >= 2) {
      assertThat(ran.err().lines()).as(seed + ": " + all).hasSizeBetween(2, 3);
    }
  }

  @Test
  void aMapThatNeverEndsIsRefused() throws IOException {
    var zero = Path.of("/dev/zero");
    Assumptions.assumeTrue(Files.exists(zero), "there is no such device here");
    var ran =
        assertTimeoutPreemptively(HANGS, () -> Ran.run("rename", "--map", zero, "--in", scratch));
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("/dev/zero").contains("larger than any map");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "from,to\na,\"b\n",
        "from,to\na,b\u0000c\n",
        "from,to\n\u0000,b\n",
        "\u0000",
        "",
        "from,to\n,\n",
        "from,from\na,b\n"
      })
  void aBadMapIsSaidToBeBadAndNothingIsChanged(String text) throws IOException {
    Files.writeString(scratch.resolve("a"), "a");
    var map = Files.write(scratch.resolve("map.csv"), text.getBytes(StandardCharsets.UTF_8));
    var ran = Ran.run("rename", "--map", map, "--in", scratch);
    assertThat(ran.status()).as(ran.err()).isEqualTo(2);
    assertThat(ran.err()).contains("map.csv, line").doesNotContain("fault of the program");
    assertThat(scratch.resolve("a")).exists();
    assertThat(scratch.resolve(".framewright")).doesNotExist();
  }

  @Test
  void aFolderAsAMapIsSaidToBeAFolder() {
    var ran = Ran.run("rename", "--map", scratch, "--in", scratch);
    assertThat(ran.status()).isIn(2, 4);
    assertThat(ran.err()).contains("this is a folder, a file was meant");
  }

  @Test
  void namesThatLookLikeFormulasComeBackFromACsvPreviewAsTheyWere() throws IOException {
    for (var name : new String[] {"=1+1", "'=x", "-a", "@b", "+c", "'d"}) {
      Files.writeString(scratch.resolve(name), name);
    }
    var map =
        Files.writeString(
            scratch.resolve("map.csv"), "from,to\n'=1+1,1\n''=x,2\n'-a,3\n'@b,4\n'+c,5\n'd,=6\n");
    var preview = Ran.run("rename", "--map", map, "--in", scratch, "--preview", "--csv");
    assertThat(preview.status()).as(preview.err()).isZero();
    assertThat(preview.out().lines().skip(1))
        .extracting(line -> line.substring(0, line.indexOf(',')).replace("\"", ""))
        .containsExactly("'=1+1", "''=x", "'-a", "'@b", "'+c", "'d");
    Files.writeString(map, preview.out());
    assertThat(Ran.run("rename", "--map", map, "--in", scratch).status()).isZero();
    assertThat(scratch.resolve("1")).hasContent("=1+1");
    assertThat(scratch.resolve("2")).hasContent("'=x");
    assertThat(scratch.resolve("=6")).hasContent("'d");
  }

  @Test
  void aNameThatActsOnATerminalIsShownByItsCode() throws IOException {
    try {
      Files.writeString(scratch.resolve("a\u001b[2J\nb"), "x");
    } catch (InvalidPathException | IOException e) {
      Assumptions.abort("no such name can be given here");
    }
    var map = Files.writeString(scratch.resolve("map.csv"), "from,to\n\"a\u001b[2J\nb\",plain\n");
    var ran = Ran.run("rename", "--map", map, "--in", scratch, "--preview");
    assertThat(ran.out()).contains("ready      a\\u{1B}[2J\\u{A}b  plain");
  }
}
