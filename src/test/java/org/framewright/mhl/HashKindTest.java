package org.framewright.mhl;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HashKindTest {
  @TempDir Path temp;

  private static String of(HashKind kind, byte[] bytes) {
    var hash = kind.begin();
    hash.update(ByteBuffer.wrap(bytes));
    return kind.text(hash.value());
  }

  private static String of(HashKind kind, String text) {
    return of(kind, text.getBytes(StandardCharsets.UTF_8));
  }

  /** SMPTE ST 2114, as ASC MHL 1.0 and the public descriptions of C4 quote it. */
  @Test
  void theC4OfNothingIsThePublishedOne() {
    assertThat(of(HashKind.C4, ""))
        .isEqualTo(
            "c459dsjfscH38cYeXXYogktxf4Cd9ibshE3BHUo6a58hBXmRQdZrAkZzsWcbWtDg5oQstpDuni4Hirj75GEmTc1sFT");
  }

  /**
   * The files of the worked examples of ASC MHL 1.0, scenario 3: their XXH64 and MD5 in {@code
   * 0002_A002R2EC_2020-01-17_143000Z.mhl}, whose files hold the texts {@code abcd\n} and {@code
   * def\n}.
   */
  @ParameterizedTest
  @CsvSource({
    "XXH64,0ea03b369a463d9d,7680e5f98f4a80fd",
    "MD5,f5ac8127b3b6b85cdc13f237c6005d80,614dd0e977becb4c6f7fa99e64549b12"
  })
  void theExamplesOfTheStandardHaveTheirHashes(HashKind kind, String first, String second) {
    assertThat(of(kind, "abcd\n")).isEqualTo(first);
    assertThat(of(kind, "def\n")).isEqualTo(second);
  }

  /** The xxHash repository, tests/sanity_test_vectors: of nothing, with the seed 0. */
  @ParameterizedTest
  @CsvSource({
    "XXH64,ef46db3751d8e999",
    "XXH3,2d06800538d394c2",
    "XXH128,99aa06d3014798d86001c324468d497f"
  })
  void theHashesOfNothingAreThePublishedOnes(HashKind kind, String value) {
    assertThat(of(kind, "")).isEqualTo(value);
  }

  /** The reference program of the xxHash repository. */
  @ParameterizedTest
  @ValueSource(ints = {1, 3, 4, 8, 16, 17, 31, 32, 33, 128, 129, 240, 241, 1024, 70_001, 1_000_003})
  void theHashesAreThoseOfXxhsum(int size) throws Exception {
    var bytes = new byte[size];
    new Random(size).nextBytes(bytes);
    var file = Files.write(temp.resolve("file"), bytes);
    assertThat(of(HashKind.XXH64, bytes)).isEqualTo(xxhsum("-H1", file));
    assertThat(of(HashKind.XXH128, bytes)).isEqualTo(xxhsum("-H2", file));
  }

  private static String xxhsum(String kind, Path file) throws Exception {
    Process process;
    try {
      process = new ProcessBuilder("xxhsum", kind, file.toString()).start();
    } catch (IOException e) {
      return Assumptions.abort("xxhsum is not here; the hashes are not compared with its");
    }
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return said.substring(0, said.indexOf(' '));
  }

  @Test
  void piecesOfAnySizeAndPlaceMakeTheSameHash() {
    var random = new Random(5);
    var bytes = new byte[200_000];
    random.nextBytes(bytes);
    var running = new RunningHashes(EnumSet.allOf(HashKind.class));
    var direct = ByteBuffer.allocateDirect(bytes.length);
    for (int at = 0; at < bytes.length; ) {
      int length = Math.min(bytes.length - at, random.nextInt(at % 2 == 0 ? 50 : 70_000));
      var piece = direct.clear().put(bytes, at, length).flip().asReadOnlyBuffer();
      running.update(piece);
      assertThat(piece.remaining()).isEqualTo(length);
      at += length;
    }
    var values = running.values();
    for (var kind : HashKind.values()) {
      assertThat(values).containsEntry(kind, of(kind, bytes));
    }
  }

  @Test
  void whatIsWrittenIsReadBackAndOtherTextIsNoHash() {
    for (var kind : HashKind.values()) {
      var hash = kind.begin();
      hash.update(ByteBuffer.wrap(new byte[] {7}));
      var value = hash.value();
      assertThat(kind.bytes(kind.text(value))).contains(value);
      for (var wrong : List.of("", "zz", kind.text(value) + "00", "c4" + "0".repeat(88))) {
        assertThat(kind.bytes(wrong)).as(kind + " " + wrong).isEmpty();
      }
    }
    // 58 to the 88th power is larger than any SHA-512.
    assertThat(HashKind.C4.bytes("c4" + "z".repeat(88))).isEmpty();
    assertThat(HashKind.C4.bytes("c4" + "1".repeat(88))).contains(new byte[64]);
  }
}
