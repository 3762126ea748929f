package org.framewright.share;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DevicesTest {
  private static final Instant NOW = Instant.parse("2026-11-23T09:00:00Z");
  private static final String ONE = "page-00000001";
  private static final String OTHER = "page-00000002";

  @TempDir private Path root;

  private Devices devices() throws IOException {
    return Devices.of(root.resolve("settings"), "desk-1795680000000-0", new SecureRandom());
  }

  private static byte[] key(int fill) {
    var key = new byte[32];
    key[31] = (byte) fill;
    return key;
  }

  @Test
  void whoWasPairedIsKnownAfterARestart() throws Exception {
    devices().pair(ONE, "Ines’ phone", Role.ASSISTANT, key(1), NOW);
    devices().pair(OTHER, "tablet", Role.CLIENT, key(2), NOW);
    var known = devices().paired();
    assertThat(known.stream().map(Devices.Known::id)).containsExactly(ONE, OTHER);
    assertThat(known.getFirst().name()).isEqualTo("Ines’ phone");
    assertThat(known.getFirst().role()).isEqualTo(Role.ASSISTANT);
    assertThat(known.getFirst().key().orElseThrow()).isEqualTo(key(1));
    assertThat(known.getFirst().seen()).isEqualTo(NOW);
  }

  @Test
  void whoWasUnpairedIsRememberedWithoutItsKey() throws Exception {
    var devices = devices();
    devices.pair(ONE, "phone", Role.CLIENT, key(1), NOW);
    devices.unpair(ONE, NOW);
    for (var one : List.of(devices, devices())) {
      assertThat(one.paired()).isEmpty();
      assertThat(one.known(ONE).orElseThrow().role()).isEqualTo(Role.CLIENT);
      assertThat(one.known(ONE).orElseThrow().isPaired()).isFalse();
    }
  }

  @Test
  void eachJobHasItsOwn() throws Exception {
    devices().pair(ONE, "phone", Role.CLIENT, key(1), NOW);
    var other = Devices.of(root.resolve("settings"), "../desk", new SecureRandom());
    assertThat(other.known(ONE)).isEmpty();
    other.pair(OTHER, "phone", Role.CLIENT, key(1), NOW);
    assertThat(devices().known(OTHER)).isEmpty();
    try (var files = Files.list(root.resolve("settings/share"))) {
      assertThat(files).hasSize(2);
    }
  }

  @Test
  void theKeyOfThePicturesStays() throws Exception {
    var devices = devices();
    devices.keepPort(8470);
    assertThat(devices().pictureKey()).isEqualTo(devices.pictureKey());
    assertThat(devices().port()).isEqualTo(8470);
  }

  @Test
  void whatIsDamagedLetsNobodyIn() throws Exception {
    devices().pair(ONE, "phone", Role.CLIENT, key(1), NOW);
    try (var files = Files.list(root.resolve("settings/share"))) {
      Files.writeString(files.findFirst().orElseThrow(), "{\"pictures\":");
    }
    assertThat(devices().known(ONE)).isEmpty();
  }

  @Test
  void whoCannotBeKeptIsNotPaired() throws Exception {
    var devices = devices();
    Files.createDirectories(root.resolve("settings"));
    Files.writeString(root.resolve("settings/share"), "a file where the folder would be");
    assertThatThrownBy(() -> devices.pair(ONE, "phone", Role.CLIENT, key(1), NOW))
        .isInstanceOf(IOException.class);
    assertThat(devices.known(ONE)).isEmpty();
  }

  @Test
  void whoCannotBeForgottenForEverIsOutAllTheSame() throws Exception {
    var devices = devices();
    devices.pair(ONE, "phone", Role.CLIENT, key(1), NOW);
    try (var files = Files.list(root.resolve("settings/share"))) {
      Files.delete(files.findFirst().orElseThrow());
    }
    Files.delete(root.resolve("settings/share"));
    Files.writeString(root.resolve("settings/share"), "a file where the folder would be");
    assertThatThrownBy(() -> devices.unpair(ONE, NOW)).isInstanceOf(IOException.class);
    assertThat(devices.paired()).isEmpty();
  }

  @Test
  void nobodyButTheOwnerReadsTheKeys() throws Exception {
    assumeThat(root.getFileSystem().supportedFileAttributeViews()).contains("posix");
    devices().pair(ONE, "phone", Role.CLIENT, key(1), NOW);
    var folder = Files.getPosixFilePermissions(root.resolve("settings/share"));
    assertThat(PosixFilePermissions.toString(folder)).isEqualTo("rwx------");
  }

  @Tag("slow")
  @Test
  void thoseThatWereUnpairedFirstAreForgottenFirst() throws Exception {
    var devices = devices();
    for (int i = 0; i <= 500; i++) {
      var id = "page-%08x".formatted(i);
      devices.pair(id, "phone", Role.VIEWER, key(1), NOW);
      if (i < 2) {
        devices.unpair(id, NOW);
      }
    }
    assertThat(devices().known("page-00000000")).isEmpty();
    assertThat(devices().known("page-00000001")).isPresent();
    assertThat(devices().paired()).hasSize(499);
  }
}
