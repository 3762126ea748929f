package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.framewright.base.Problem;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Manifests as others write them, RFC 8493, section 2.1.3. */
class BagCheckTest {
  @TempDir private Path bag;
  private String sum;

  @BeforeEach
  void aBagOfOneFile() throws Exception {
    Files.createDirectory(bag.resolve("data"));
    sum = Checksum.of(Files.writeString(bag.resolve("data/a b.JPG"), "pixels"));
    Files.writeString(bag.resolve("bagit.txt"), "BagIt-Version: 1.0\n");
    manifest(sum + "  data/a b.JPG\n");
  }

  private void manifest(String text) throws Exception {
    Files.writeString(bag.resolve("manifest-sha256.txt"), text);
  }

  private String faults() throws Exception {
    var faults = BagCheck.of(bag).faults().stream().map(Problem::sentence).toList();
    assertThat(BagCheck.of(bag).clean()).isEqualTo(faults.isEmpty());
    return String.join("\n", faults);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "%s  data/a b.JPG",
        "%s data/a b.JPG\n",
        "%s\tdata/a b.JPG\r\n",
        "%s *data/a b.JPG\r",
        "%s  ./data/a b.JPG\n\n",
      })
  void theSpellingsThatAreInUseAreRead(String line) throws Exception {
    manifest(line.formatted(sum));
    assertThat(faults()).isEmpty();
    manifest(line.formatted(sum.toUpperCase(java.util.Locale.ROOT)));
    assertThat(faults()).isEmpty();
    assertThat(BagCheck.of(bag).files()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"nonsense", "1234  data/x", "  data/x", "\uFEFFabc  data/x"})
  void aLineThatIsNoneIsAFaultWithItsNumber(String line) throws Exception {
    manifest(sum + "  data/a b.JPG\n" + line + "\n");
    assertThat(faults())
        .isEqualTo("manifest-sha256.txt, line 2: this line is not a SHA-256 and a path");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../secret",
        "/etc/passwd",
        "data/../../secret",
        "~/secret",
        "..\\secret",
        "C:\\secret",
        "\\\\server\\share",
        "data//x",
        "data/./x",
      })
  void aPathThatLeadsElsewhereIsAFaultAndIsNotRead(String path) throws Exception {
    manifest(sum + "  data/a b.JPG\n" + sum + "  " + path + "\n");
    assertThat(faults())
        .isEqualTo("manifest-sha256.txt, line 2: this path leads out of the package");
    assertThat(BagCheck.of(bag).files()).isEqualTo(1);
  }

  @Test
  void aFileThatIsListedTwiceIsAFault() throws Exception {
    manifest(sum + "  data/a b.JPG\n" + "0".repeat(64) + "  data/a b.JPG\n");
    assertThat(faults()).isEqualTo("manifest-sha256.txt, line 2: this file is listed twice");
    assertThat(BagCheck.of(bag).different()).isEmpty();
  }

  @Test
  void bytesThatAreNoTextAreAFaultOfTheirLine() throws Exception {
    manifest(sum + "  data/a b.JPG\nx\0y\n");
    assertThat(faults()).isEqualTo("manifest-sha256.txt, line 2: this line is no UTF-8 text");
    Files.write(
        bag.resolve("manifest-sha256.txt"),
        (sum + "  data/\u00E9\n").getBytes(StandardCharsets.ISO_8859_1));
    assertThat(faults()).startsWith("manifest-sha256.txt, line 1: this line is no UTF-8 text");
  }

  // RFC 8493, section 2.1.3: %0A, %0D and %25, in letters of either case.
  @Test
  void codedLineEndsInNamesAreRead() throws Exception {
    var odd = Files.writeString(bag.resolve("data/x\ny\rz%0A"), "odd");
    manifest(sum + "  data/a b.JPG\n" + Checksum.of(odd) + "  data/x%0ay%0Dz%250A\n");
    assertThat(faults()).isEmpty();
    assertThat(BagCheck.of(bag).clean()).isTrue();
  }

  @Test
  void aLinkIsNoFileOfTheBag() throws Exception {
    Files.move(bag.resolve("data/a b.JPG"), bag.resolve("elsewhere"));
    SymbolicLinks.make(bag.resolve("data/a b.JPG"), bag.resolve("elsewhere"));
    assertThat(BagCheck.of(bag).missing()).containsExactly("data/a b.JPG");
    assertThat(BagCheck.of(bag).faults()).isNotEmpty();
  }

  @Test
  void aFolderOfTheBagThatIsALinkOutOfItIsNotRead(@TempDir Path outside) throws Exception {
    Files.writeString(outside.resolve("x"), "pixels");
    SymbolicLinks.make(bag.resolve("data/out"), outside);
    manifest(sum + "  data/a b.JPG\n" + sum + "  data/out/x\n");
    assertThat(BagCheck.of(bag).missing()).containsExactly("data/out/x");
  }

  @Test
  void aManifestThatIsNoFileIsAFault() throws Exception {
    Files.createDirectory(bag.resolve("tagmanifest-sha256.txt"));
    assertThat(faults()).startsWith("tagmanifest-sha256.txt: ");
    Files.delete(bag.resolve("tagmanifest-sha256.txt"));
    HandOffRecordsTest.pipe(bag.resolve("tagmanifest-sha256.txt"));
    assertThat(faults()).startsWith("tagmanifest-sha256.txt: ");
  }

  @Test
  void faultsAreBounded() throws Exception {
    manifest("x\n".repeat(100_000));
    assertThat(BagCheck.of(bag).faults()).hasSize(100);
    Files.write(bag.resolve("manifest-sha256.txt"), new byte[(32 << 20) + 1]);
    assertThat(faults()).isEqualTo("manifest-sha256.txt: this manifest is too large");
  }

  @Test
  void itIsABagOnlyWithItsDeclarationAndAManifest() throws Exception {
    assertThat(BagCheck.isBag(bag)).isTrue();
    Files.delete(bag.resolve("bagit.txt"));
    assertThat(BagCheck.isBag(bag)).isFalse();
    Files.createDirectory(bag.resolve("bagit.txt"));
    assertThat(BagCheck.isBag(bag)).isFalse();
  }
}
