package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

class PictureDigestTest {
  private static final int FLIPS = 250;

  /** Most files of the collections have their picture data stripped, so the floor is taken away. */
  private static final int NO_FLOOR = 0;

  /** Endings of which nothing is claimed. */
  private static final Set<String> NONE = Set.of("raf", "iiq", "xmp", "png");

  @TempDir Path temp;

  private static Optional<PictureDigest> digest(byte[] file) throws IOException {
    try {
      return PictureDigest.of(Bytes.of(file), NO_FLOOR);
    } catch (Malformed e) {
      return Optional.empty();
    }
  }

  private static String ending(Path file) {
    return Endings.of(file.getFileName().toString());
  }

  private static Stream<DynamicTest> each(RealFile check) throws IOException {
    return RealFrames.found().stream()
        .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> check.of(file)));
  }

  private interface RealFile {
    void of(Path file) throws Exception;
  }

  /** Rewritten by a program that knows nothing of this one. */
  @TestFactory
  Stream<DynamicTest> aDescriptionThatIsRewrittenLeavesTheDigest() throws IOException {
    return each(
        file -> {
          Assumptions.assumeFalse(NONE.contains(ending(file)), "nothing is claimed of this kind");
          var copy = temp.resolve(file.getFileName().toString());
          Files.copy(file, copy);
          run(
              "exiftool",
              "-q",
              "-m",
              "-overwrite_original",
              "-Rating=5",
              "-Label=Yes",
              "-Artist=Ines Invented",
              "-ImageDescription=A coat, front",
              copy.toString());
          assertThat(Files.mismatch(file, copy)).isNotNegative();
          assertThat(digest(Files.readAllBytes(file))).isPresent();
          assertThat(digest(Files.readAllBytes(copy))).isEqualTo(digest(Files.readAllBytes(file)));
        });
  }

  /** The program of libjpeg-turbo decodes; that what it decodes is the same is what we claim. */
  @TestFactory
  Stream<DynamicTest> whatHasOneDigestHasTheSamePixels() throws IOException {
    return each(
        file -> {
          Assumptions.assumeTrue(ending(file).equals("jpg"), "djpeg decodes JPEG");
          var copy = temp.resolve(file.getFileName().toString());
          Files.copy(file, copy);
          run("exiftool", "-q", "-m", "-overwrite_original", "-Rating=3", copy.toString());
          assertThat(Files.mismatch(file, copy)).isNotNegative();
          assertThat(digest(Files.readAllBytes(copy))).isEqualTo(digest(Files.readAllBytes(file)));
          var before = temp.resolve("before.pnm");
          var after = temp.resolve("after.pnm");
          run("djpeg", "-pnm", "-outfile", before.toString(), file.toString());
          run("djpeg", "-pnm", "-outfile", after.toString(), copy.toString());
          assertThat(Files.mismatch(before, after)).isEqualTo(-1);
          assertThat(Files.size(before)).isGreaterThan(100);
        });
  }

  /** No flip of a bit behind the start of a JPEG's picture goes unnoticed, up to its end. */
  @TestFactory
  Stream<DynamicTest> aFlippedBitOfThePictureIsNoticed() throws IOException {
    return each(
        file -> {
          Assumptions.assumeTrue(ending(file).equals("jpg"), "flips are told for JPEG");
          var bytes = Files.readAllBytes(file);
          var before = digest(bytes);
          int scan = startOfScan(bytes);
          var random = new Random(17);
          for (int i = 0; i < FLIPS; i++) {
            int at = scan + random.nextInt(bytes.length - scan);
            int bit = 1 << random.nextInt(8);
            bytes[at] ^= (byte) bit;
            assertThat(digest(bytes)).as("byte " + at + " bit " + bit).isNotEqualTo(before);
            bytes[at] ^= (byte) bit;
          }
          assertThat(digest(bytes)).isEqualTo(before);
        });
  }

  /** Where the last scan's data begin. ITU-T T.81, B.2.3: FF DA. */
  private static int startOfScan(byte[] jpeg) {
    for (int i = jpeg.length - 2; i > 0; i--) {
      if (jpeg[i] == (byte) 0xFF && jpeg[i + 1] == (byte) 0xDA) {
        return i;
      }
    }
    throw new AssertionError("no scan");
  }

  @TestFactory
  Stream<DynamicTest> hostileFilesAreReadWithinBounds() throws IOException {
    return each(
        file -> {
          var bytes = Files.readAllBytes(file);
          var random = new Random(18);
          for (int i = 0; i < FLIPS; i++) {
            var hostile = Arrays.copyOf(bytes, 1 + random.nextInt(bytes.length));
            for (int k = 0; k < 8; k++) {
              hostile[random.nextInt(Math.min(hostile.length, 4096))] = (byte) random.nextInt();
            }
            // It says something or nothing; it does not throw anything else, and ends.
            assertThat(digest(hostile)).isNotNull();
          }
        });
  }

  @Test
  void aShellOfAFileHasNoDigest() throws IOException {
    var whole = TestContainers.all().get("a.jpg");
    assertThat(digest(whole)).isPresent();
    var file = Files.write(temp.resolve("a.jpg"), whole);
    assertThat(PictureDigest.of(file)).isPresent();
    // 100 million pixels of a few kilobytes.
    var frame = new byte[] {(byte) 0xFF, (byte) 0xC0};
    var shell = whole.clone();
    for (int i = 0; i + 8 < shell.length; i++) {
      if (shell[i] == frame[0] && shell[i + 1] == frame[1]) {
        shell[i + 5] = 0x27;
        shell[i + 6] = 0x10;
        shell[i + 7] = 0x27;
        shell[i + 8] = 0x10;
      }
    }
    assertThat(PictureDigest.of(Files.write(temp.resolve("shell.jpg"), shell))).isEmpty();
  }

  @Test
  void aFileWithoutItsEndHasNone() throws IOException {
    var whole = TestContainers.all().get("a.jpg");
    assertThat(digest(Arrays.copyOf(whole, whole.length - 2))).isEmpty();
    assertThat(PictureDigest.of(temp.resolve("nothing.jpg"))).isEmpty();
  }

  @Test
  void whatFollowsTheEndCounts() throws IOException {
    var whole = TestContainers.all().get("a.jpg");
    var more = Arrays.copyOf(whole, whole.length + 3);
    more[whole.length + 1] = 7;
    assertThat(digest(more)).isPresent().isNotEqualTo(digest(whole));
  }

  private static void run(String... command) throws IOException, InterruptedException {
    Process process;
    try {
      process =
          new ProcessBuilder(new ArrayList<>(List.of(command))).redirectErrorStream(true).start();
    } catch (IOException e) {
      Assumptions.abort(command[0] + " is not installed");
      return;
    }
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
    Assumptions.assumeTrue(process.exitValue() == 0, said);
  }
}
