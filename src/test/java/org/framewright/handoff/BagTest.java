package org.framewright.handoff;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.framewright.base.Problem;
import org.framewright.handoff.verify.OpenPackage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BagTest {
  private static final List<String> NAMES =
      List.of("KVO_001_F_0001.DNG", "KVO_001_F_0001.JPG", "Two words.JPG", "Crêpe.JPG");

  @TempDir private Path folder;
  private Path bag;

  @BeforeEach
  void makeABag() throws Exception {
    bag = bag("bag", NAMES);
  }

  private Path bag(String called, List<String> names) throws Exception {
    var made = folder.resolve(called);
    var making = new Bag(made);
    for (var name : names) {
      assertThat(making.add(Files.writeString(folder.resolve(name), "pixels of " + name), name))
          .isTrue();
    }
    making.tag("README.txt", "For the retoucher.\n");
    var info = new LinkedHashMap<String, String>();
    info.put("External-Identifier", "sample");
    making.close(info);
    return made;
  }

  // RFC 8493; the verifier is the reference library of the Library of Congress.
  @Test
  void theReferenceLibraryFindsTheBagCompleteAndValid() throws Exception {
    var read = new BagReader().read(bag);
    try (var verifier = new BagVerifier()) {
      verifier.isComplete(read, false);
      verifier.isValid(read, false);
      assertThatCode(() -> BagVerifier.quicklyVerify(read)).doesNotThrowAnyException();
    }
    assertThat(read.getMetadata().get("Payload-Oxum"))
        .containsExactly(
            NAMES.stream()
                    .mapToLong(
                        name -> ("pixels of " + name).getBytes(StandardCharsets.UTF_8).length)
                    .sum()
                + "."
                + NAMES.size());
  }

  // RFC 8493, section 2.1.1: two lines; the digest of those 54 bytes was computed apart.
  @Test
  void theDeclarationIsTheTwoLinesOfTheStandard() throws Exception {
    assertThat(Files.size(bag.resolve("bagit.txt"))).isEqualTo(54);
    assertThat(Checksum.of(bag.resolve("bagit.txt")))
        .isEqualTo("1712ecfb074bf29c4188ad3421032509159a09739fd604f8fe57038b4ddefcc9");
  }

  @Test
  void sha256sumAcceptsTheSums() throws Exception {
    assumeThat(onPath("sha256sum")).as("sha256sum is not installed").isTrue();
    assumeThat(isOfGnu()).as("this sha256sum is not that of GNU and has no --strict").isTrue();
    assertThat(check()).isZero();
    flip(bag.resolve("data/KVO_001_F_0001.JPG"));
    assertThat(check()).isNotZero();
  }

  @Test
  void oneFlippedByteNamesExactlyThatFile() throws Exception {
    assertThat(OpenPackage.check(bag).orElseThrow().whole()).isTrue();
    flip(bag.resolve("data/Two words.JPG"));
    var check = OpenPackage.check(bag).orElseThrow();
    assertThat(check.different()).containsExactly("data/Two words.JPG");
    assertThat(check.missing()).isEmpty();
    assertThat(check.unlisted()).isEmpty();
  }

  @Test
  void tellsWhatIsMissingAndWhatIsNotListed() throws Exception {
    Files.delete(bag.resolve("data/Crêpe.JPG"));
    Files.writeString(bag.resolve("data/other.JPG"), "more");
    Files.writeString(bag.resolve("README.txt"), "Changed.\n");
    var check = OpenPackage.check(bag).orElseThrow();
    assertThat(check.missing()).containsExactly("data/Crêpe.JPG");
    assertThat(check.unlisted()).containsExactly("data/other.JPG");
    assertThat(check.different()).containsExactly("README.txt");
  }

  // RFC 8493, section 2.1.3, asks for %25; the reference library in its version 5.2.0 does not
  // decode it, so this one name is checked without it.
  @Test
  void aPercentSignInANameComesBack() throws Exception {
    var made = bag("percent", List.of("100% wool.JPG"));
    assertThat(made.resolve("manifest-sha256.txt")).content().contains("data/100%25 wool.JPG");
    assertThat(OpenPackage.check(made).orElseThrow().whole()).isTrue();
  }

  @Test
  void aManifestCannotPointOutOfItsFolder() throws Exception {
    Files.writeString(folder.resolve("secret"), "secret");
    Files.writeString(
        bag.resolve("manifest-sha256.txt"),
        Checksum.of(folder.resolve("secret")) + "  ../secret\n");
    var check = OpenPackage.check(bag).orElseThrow();
    assertThat(check.faults())
        .extracting(Problem::sentence)
        .containsExactly("manifest-sha256.txt, line 1: this path leads out of the package");
    assertThat(check.whole()).isFalse();
  }

  private int check() throws Exception {
    var process =
        new ProcessBuilder("sha256sum", "--strict", "--quiet", "-c", "SHA256SUMS")
            .directory(bag.toFile())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("told").toFile())
            .start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return process.exitValue();
  }

  private static boolean isOfGnu() throws Exception {
    var process = new ProcessBuilder("sha256sum", "--version").redirectErrorStream(true).start();
    return new String(process.getInputStream().readAllBytes(), UTF_8).contains("GNU");
  }

  private static void flip(Path file) throws Exception {
    var bytes = Files.readAllBytes(file);
    bytes[3] ^= 1;
    Files.write(file, bytes);
  }

  private static boolean onPath(String tool) {
    return Pattern.compile(File.pathSeparator)
        .splitAsStream(System.getenv().getOrDefault("PATH", ""))
        // Windows may have entries in quotation marks.
        .map(place -> place.replace("\"", ""))
        .anyMatch(place -> Files.isExecutable(Path.of(place, tool)));
  }
}
