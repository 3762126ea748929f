package org.framewright.handoff.verify;

import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lists of checksums: GNU coreutils manual, "md5sum invocation", and {@code sha256sum} itself. */
class ListsTest {
  /** "abc": FIPS 180-4's examples, RFC 1321, appendix A.5. */
  private static final String SHA256 =
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  private static final String SHA1 = "a9993e364706816aba3e25717850c26c9cd0d89d";
  private static final String MD5 = "900150983cd24fb0d6963f7d28e17f72";

  @TempDir private Path folder;

  @BeforeEach
  void aFolder() throws Exception {
    Files.createDirectory(folder.resolve("data"));
    Files.writeString(folder.resolve("data/a b.JPG"), "abc");
  }

  private PackageCheck check(String list, String text) throws Exception {
    Files.write(folder.resolve(list), text.getBytes(UTF_8));
    return OpenPackage.check(folder).orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "%s  data/a b.JPG\n",
        "%s *data/a b.JPG\n",
        "%s data/a b.JPG",
        "%s\tdata/a b.JPG\n",
        "%s  ./data/a b.JPG\r\n",
        "%s *.\\data\\a b.JPG\r\n",
        "%s  data\\a b.JPG\r\n",
        "# a remark\n\n%s  data/a b.JPG\n",
        "SHA256 (data/a b.JPG) = %s\n",
        "\uFEFF%s  data/a b.JPG\n",
      })
  void theSpellingsThatAreInUseAreRead(String text) throws Exception {
    assertThat(check("SHA256SUMS", text.formatted(SHA256)).whole()).isTrue();
    var check = check("SHA256SUMS", text.formatted(SHA256.toUpperCase(Locale.ROOT)));
    assertThat(check.whole()).isTrue();
    assertThat(check.files()).isEqualTo(1);
    assertThat(check.kind()).isEqualTo(PackageCheck.Kind.SHA256SUM);
    assertThat(check("SHA256SUMS", text.formatted("0".repeat(64))).different())
        .containsExactly("data/a b.JPG");
  }

  @ParameterizedTest
  @CsvSource({
    "MD5SUMS," + MD5,
    "md5sum.txt," + MD5,
    "day.md5," + MD5,
    "SHA1SUMS," + SHA1,
    "sha1sums.TXT," + SHA1,
    "card.sha256," + SHA256,
    "card.sha256sum," + SHA256
  })
  void theNameOfAListSaysItsKind(String name, String sum) throws Exception {
    assertThat(check(name, sum + "  data/a b.JPG\n").whole()).isTrue();
    assertThat(OpenPackage.isPaper(name)).isTrue();
  }

  @Test
  void listsOfTheKindsOfTheFamilyAreRead() throws Exception {
    for (var kind : List.of("sha224", "sha384", "sha512")) {
      var scene = new BagScene(folder.resolve("other " + kind));
      assertThat(
              check(
                      "x." + kind,
                      scene.sum(kind, BagScene.FIRST)
                          + "  other "
                          + kind
                          + "/"
                          + BagScene.FIRST
                          + "\n")
                  .whole())
          .isTrue();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"._x.sha256", "sha256.txt", "x.sha256.jpg", "SHA256", ".sha256", "notes"})
  void whatIsNoListIsNone(String name) throws Exception {
    Files.writeString(folder.resolve(name), SHA256 + "  data/a b.JPG\n");
    assertThat(OpenPackage.in(folder)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"nonsense", "1234  data/a b.JPG", SHA1 + "  data/a b.JPG", SHA256, "x\0y"})
  void aLineThatIsNoneIsAFaultWithItsNumber(String line) throws Exception {
    var check = check("SHA256SUMS", SHA256 + "  data/a b.JPG\n" + line + "\n");
    assertThat(check.faults())
        .extracting(fault -> fault.sentence())
        .containsExactly(
            "SHA256SUMS, line 2: this line is no checksum of the kind sha256 and a path");
    assertThat(check.files()).isEqualTo(1);
  }

  @Test
  void aListThatNamesNothingProvesNothing() throws Exception {
    assertThat(check("SHA256SUMS", "# nothing\n").whole()).isFalse();
  }

  @Test
  void whatNoListNamesIsToldAndBreaksNothing() throws Exception {
    Files.writeString(folder.resolve("notes"), "more");
    Files.writeString(folder.resolve(".DS_Store"), "more");
    var check = check("SHA256SUMS", SHA256 + "  data/a b.JPG\n");
    assertThat(check.unlisted()).containsExactly("notes");
    assertThat(check.whole()).isTrue();
    assertThat(PackageDescription.of(check))
        .containsExactly(
            "list of checksums: SHA256SUMS",
            "1 file is there of which no list says anything: notes",
            "1 file compared, all as they should be: whole");
  }

  @Test
  void whatIsMissingOrALinkIsNotWhole() throws Exception {
    Files.move(folder.resolve("data/a b.JPG"), folder.resolve("data/elsewhere"));
    assertThat(check("SHA256SUMS", SHA256 + "  data/a b.JPG\n").missing())
        .containsExactly("data/a b.JPG");
    SymbolicLinks.make(folder.resolve("data/a b.JPG"), folder.resolve("data/elsewhere"));
    var check = OpenPackage.check(folder).orElseThrow();
    assertThat(check.missing()).containsExactly("data/a b.JPG");
    assertThat(check.faults())
        .extracting(fault -> fault.sentence())
        .containsExactly("data/a b.JPG: this is a link, and links are not followed");
  }

  @Test
  void allListsHaveToBeRight() throws Exception {
    Files.writeString(folder.resolve("x.md5"), "0".repeat(32) + "  data/a b.JPG\n");
    var check = check("SHA256SUMS", SHA256 + "  data/a b.JPG\n");
    assertThat(check.different()).containsExactly("data/a b.JPG");
    assertThat(check.lists()).containsExactly("SHA256SUMS", "x.md5");
  }

  // What the shell of Windows writes where it is not told otherwise; from memory.
  @Test
  void aListInUtf16WithItsMarkIsRead() throws Exception {
    Files.write(folder.resolve("SHA256SUMS"), (SHA256 + "  data/a b.JPG\r\n").getBytes(UTF_16));
    assertThat(OpenPackage.check(folder).orElseThrow().whole()).isTrue();
    Files.write(
        folder.resolve("SHA256SUMS"),
        ("\uFEFF" + SHA256 + "  data/a b.JPG\r\n").getBytes(StandardCharsets.UTF_16LE));
    assertThat(OpenPackage.check(folder).orElseThrow().whole()).isTrue();
  }

  /** Names as no others; the list is what the program itself writes of them. */
  @Tag("slow")
  @Test
  void whatSha256sumWritesOfOddNamesIsRead() throws Exception {
    assumeThat(File.separatorChar).as("names have no such letters here").isEqualTo('/');
    assumeThat(Path.of("/usr/bin/sha256sum")).as("sha256sum is not installed").exists();
    var names = List.of("a\nb", "back\\slash", "cr\rx", "*star", " space", "Cr\u00EApe", "\\n");
    for (var name : names) {
      Files.writeString(folder.resolve("data").resolve(name), name);
    }
    for (var mode : List.of("--text", "--binary", "--tag")) {
      var process =
          new ProcessBuilder("sh", "-c", "find data -type f -exec sha256sum " + mode + " {} +")
              .directory(folder.toFile())
              .redirectOutput(folder.resolve("SHA256SUMS").toFile())
              .start();
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      var check = OpenPackage.check(folder).orElseThrow();
      assertThat(PackageDescription.problems(check)).as(mode).isEmpty();
      assertThat(check.files()).as(mode).isEqualTo(names.size() + 1);
      assertThat(check.unlisted()).as(mode).isEmpty();
    }
  }

  @Test
  void namesAtTheTopMayBeginWithAnAsterisk() throws Exception {
    assumeThat(File.separatorChar).as("names have no such letters here").isEqualTo('/');
    Files.writeString(folder.resolve("*x"), "abc");
    assertThat(check("SHA256SUMS", SHA256 + "  *x\n" + SHA256 + " **x\n").whole()).isTrue();
  }

  @Test
  void otherSpellingsOfAccentsAreFoundWithAWarning() throws Exception {
    Files.writeString(folder.resolve("Cr\u00EApe"), "abc");
    var check = check("SHA256SUMS", SHA256 + "  Cre\u0302pe\n");
    assertThat(check.whole()).isTrue();
    assertThat(check.warnings()).hasSize(1);
  }
}
