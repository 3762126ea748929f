package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
class SlatesCommandTest {
  @TempDir private Path folder;
  private Path job;
  private Path file;

  @BeforeEach
  void aJobWithFiveSetups() throws IOException {
    job = Ran.startIn(folder);
    file = folder.resolve("slates.pdf");
    var list =
        Files.writeString(
            folder.resolve("list.csv"),
            "Look;Name;Views\n001;Coat;F\n002;Hat;F\n003;Scarf;F\n004;Shoe;F\n005;Bag;F\n");
    assertThat(run("list", job, "--import", list).status()).isZero();
  }

  private Ran slates(Object... more) {
    var words = new Object[4 + more.length];
    System.arraycopy(new Object[] {"slates", job, "--to", file}, 0, words, 0, 4);
    System.arraycopy(more, 0, words, 4, more.length);
    return run(words);
  }

  @Test
  void aCardASheetOrFourAreWritten() throws IOException {
    var ran = slates("--language", "en");
    assertThat(ran.out()).isEqualTo(file + ": 5 slates, 5 pages" + System.lineSeparator());
    assertThat(Files.readString(file, StandardCharsets.ISO_8859_1)).startsWith("%PDF-1.");
    var four = slates("--per-page", "4", "--replace", "--language", "de", "--json");
    assertThat(four.json().path("slates").asInt()).isEqualTo(5);
    assertThat(four.json().path("pages").asInt()).isEqualTo(2);
    assertThat(four.json().path("bytes").asLong()).isEqualTo(Files.size(file));
  }

  @Test
  void someSetupsAreNamedAndDroppedOnesLeftOut() throws IOException {
    assertThat(slates("--setups", "002..004", "--language", "en").out()).contains("3 slates");
    assertThat(run("mark", job, "005", "dropped").status()).isZero();
    assertThat(slates("--replace", "--language", "en").out()).contains("4 slates");
    assertThat(slates("--replace", "--setups", "005", "--language", "en").out())
        .contains("1 slate, 1 page");
    assertThat(slates("--replace", "--setups", "7").err()).contains("there is no setup \"7\"");
  }

  @Test
  void whatIsThereStaysUnlessItIsToBeReplaced() throws IOException {
    Files.writeString(file, "mine");
    assertThat(slates().status()).isEqualTo(3);
    assertThat(slates().err()).contains("exists already").contains("--replace");
    assertThat(file).hasContent("mine");
  }

  @Test
  void whatItCannotDoItSaysWithARemedy() throws IOException {
    assertThat(slates("--per-page", "2").err()).contains("Say --per-page 1 or 4.");
    assertThat(slates("--language", "it").err()).contains("en, de or fr");
    assertThat(slates("--paper", "b5").status()).isEqualTo(2);
    assertThat(run("slates", job, "--to", folder.resolve("a.html")).err())
        .contains("Give a file that ends in .pdf.");
    assertThat(run("slates", job, "--to", job.resolve("01_frames/a.pdf")).status()).isEqualTo(3);
    assertThat(run("slates", folder, "--to", file).status()).isEqualTo(2);
    assertThat(file).doesNotExist();
  }

  @Test
  void anEmptyListHasNoSlates() throws IOException {
    var empty = Ran.startIn(Files.createDirectory(folder.resolve("other")));
    var ran = run("slates", empty, "--to", file);
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.err()).contains("the shot list is empty").contains("Import a list first.");
    assertThat(file).doesNotExist();
  }

  @Test
  void helpSaysWhatItDoes() {
    var ran = run("slates", "--help");
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("--setups", "--per-page", "--paper", "--language", "--replace");
    assertThat(run("--help").out()).contains("slates");
  }
}
