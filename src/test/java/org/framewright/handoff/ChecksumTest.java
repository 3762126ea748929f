package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.assertj.core.api.Assertions;
import org.framewright.base.Sha256;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChecksumTest {
  private static final String SOME = "0".repeat(64);

  @TempDir private Path folder;

  // The examples of FIPS 180 for SHA-256, and the digest of the empty message.
  @ParameterizedTest
  @CsvSource({
    "'', e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
    "abc, ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq,"
        + " 248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
  })
  void agreesWithTheExamplesOfFips180(String text, String published) throws Exception {
    var bytes = text.getBytes(StandardCharsets.US_ASCII);
    var file = Files.write(folder.resolve("example"), bytes);
    assertThat(Sha256.of(bytes)).isEqualTo(published);
    assertThat(Checksum.of(file)).isEqualTo(published);
    assertThat(Checksum.copy(file, folder.resolve("copy"))).isEqualTo(published);
  }

  // FIPS 180 also gives the digest of a million times the letter a.
  @Test
  void agreesWithTheLongExampleOfFips180() throws Exception {
    var file = Files.writeString(folder.resolve("million"), "a".repeat(1_000_000));
    assertThat(Checksum.of(file))
        .isEqualTo("cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
  }

  @Test
  void aCopyIsWhatItWasMadeFromAndKeepsItsTime() throws Exception {
    var bytes = new byte[1_000_003];
    new Random(1).nextBytes(bytes);
    var file = Files.write(folder.resolve("frame"), bytes);
    var copy = folder.resolve("copy");
    Checksum.copy(file, copy);
    assertThat(copy).hasSameBinaryContentAs(file);
    assertThat(Files.getLastModifiedTime(copy)).isEqualTo(Files.getLastModifiedTime(file));
  }

  @Test
  void aCopyNeverReplacesAFile() throws Exception {
    var file = Files.writeString(folder.resolve("frame"), "new");
    var there = Files.writeString(folder.resolve("there"), "old");
    Assertions.assertThatThrownBy(() -> Checksum.copy(file, there))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(there).hasContent("old");
  }

  // GNU coreutils manual, "md5sum invocation", and RFC 8493, section 2.1.3: where the two differ.
  @Test
  void theTwoFormatsEscapeNamesEachInItsOwnWay() {
    assertThat(Sha256.sumLine(SOME, "data/A_1.DNG")).isEqualTo(SOME + "  data/A_1.DNG\n");
    assertThat(Checksum.bagLine(SOME, "data/A_1.DNG")).isEqualTo(SOME + "  data/A_1.DNG\n");
    assertThat(Sha256.sumLine(SOME, "a\\b\nc%")).isEqualTo("\\" + SOME + "  a\\\\b\\nc%\n");
    assertThat(Checksum.bagLine(SOME, "a\\b\nc%")).isEqualTo(SOME + "  a\\b%0Ac%25\n");
  }
}
