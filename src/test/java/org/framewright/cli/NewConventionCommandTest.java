package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NewConventionCommandTest {
  @TempDir private Path folder;

  private static final String NAMES =
      """
      20260301_ABC_012_F_0001.CR3
      20260301_ABC_012_F_0002.CR3
      20260301_ABC_012_0003.CR3
      20260301_ABC_013_B_0001.CR3
      """;

  @Test
  void asksForNamesAndSavesAConventionThatReadsThem() {
    var file = folder.resolve("ours.yaml");
    var ran = Ran.answering(NAMES + "\n\n\n" + file + "\n", "new-convention");
    assertThat(ran.status()).isZero();
    assertThat(ran.err())
        .contains("Names of frames as you have them now")
        .contains("Saved as " + file);
    assertThat(ran.out()).contains("4 of 4 names are read back as they are.");
    assertThat(Ran.run("check", file).status()).isZero();
    assertThat(Ran.run("read", "20260301_ABC_012_F_0002.CR3", "--by", file).status()).isZero();
    assertThat(
            Ran.run(
                    "start",
                    "--by",
                    file,
                    "--in",
                    folder,
                    "day=2026-03-01",
                    "client=abc",
                    "title=Knit")
                .out())
        .contains("20260301_ABC_knit");
  }

  @Test
  void takesCorrectionsUntilAllIsSo() {
    var ran =
        Ran.answering(
            "20260301_kvist_001\n20260301_kvist_002\n\n\nnonsense\n9=client\n2=client\n\n\n",
            "new-convention");
    assertThat(ran.err()).contains("“nonsense” does not say what a piece is");
    assertThat(ran.err()).contains("“9=client” does not say what a piece is");
    assertThat(ran.out()).contains("{day}_{client}_{take}");
  }

  @Test
  void takesEverythingFromTheCommandLine() throws IOException {
    var list = Files.writeString(folder.resolve("names.txt"), NAMES);
    var file = folder.resolve("ours.yaml");
    var ran =
        Ran.run(
            "new-convention",
            "--names",
            list,
            "--job",
            "2026-03-01 ABC knitwear",
            "--title",
            "Knitwear",
            "--save",
            file);
    assertThat(ran.status()).isZero();
    assertThat(ran.err()).doesNotContain("one a line");
    assertThat(Files.readString(file))
        .contains("convention: \"Knitwear\"")
        .contains("{day.job} {client} {title}");
  }

  @Test
  void saysWhichNamesDoNotFitAndWhy() {
    var ran =
        Ran.run(
            "new-convention",
            "20260301_ABC_012_0001",
            "20260301_ABC_012_0002",
            "20260301_ABC_013_0001",
            "20260301_ABC_13_0002");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out())
        .contains("does not fit: 20260301_ABC_13_0002")
        .contains("3 of 4 names are read back as they are.");
  }

  @Test
  void reportsAsJson() throws IOException {
    var json =
        Ran.run("new-convention", "20260301_ABC_012_0001", "--piece", "2=text", "--json").json();
    assertThat(json.get("pieces").get(1).get("role").asText()).isEqualTo("text");
    assertThat(json.get("convention").asText()).contains("{day}_ABC_{setup}_{take}");
    assertThat(json.get("unread")).isEmpty();
    assertThat(json.get("findings")).isNotNull();
  }

  @Test
  void refusesToReplaceAFile() throws IOException {
    var file = Files.writeString(folder.resolve("ours.yaml"), "mine");
    var ran = Ran.run("new-convention", "20260301_ABC_012_0001", "--save", file);
    assertThat(ran.status()).isEqualTo(3);
    assertThat(ran.err()).contains("exists already");
    assertThat(file).hasContent("mine");
  }

  @Test
  void withoutAnyNameThereIsNothingToPropose() {
    var ran = Ran.answering("", "new-convention");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("there is no name of a frame");
  }

  @Test
  void refusesACorrectionThatIsNone() {
    var ran = Ran.run("new-convention", "20260301_ABC_012_0001", "--piece", "2=colour");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err()).contains("such as 2=client");
  }

  @Test
  void refusesARoleThatAPieceCannotHave() {
    var ran = Ran.run("new-convention", "20260301_ABC_012_0001", "--piece", "2=counter");
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.err())
        .contains("piece 2, ABC, is no counter")
        .contains("It can be client, title, setup, view, text or other.");
  }

  @Test
  void asksWhatTheNamesDoNotShow() {
    var ran = Ran.run("new-convention", "20260301_ABC_012_0001", "20260301_ABC_013_0001");
    assertThat(ran.out())
        .contains("    ? It is the same in all of them: does it change with the job,");
  }

  @Test
  void looksAtSoManyNamesAndSaysSo() throws IOException {
    var list = Files.writeString(folder.resolve("names.txt"), "A_001_0001\n".repeat(10_002));
    var ran = Ran.run("new-convention", "--names", list);
    assertThat(ran.err()).contains("only the first 10000 names are looked at; 2 are left out");
  }
}
