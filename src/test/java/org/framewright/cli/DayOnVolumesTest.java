package org.framewright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.framewright.disk.Recording;
import org.framewright.disk.Volume;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A whole invented day, with renames taken back and done again, on volumes that are as a Mac's or
 * those of Windows: no case, no links, no numbers, names of Windows only, times in steps of two
 * seconds.
 */
@Tag("slow")
class DayOnVolumesTest {
  @TempDir(cleanup = CleanupMode.ON_SUCCESS)
  private Path scratch;

  private Volume volume(String type) throws IOException {
    var ntfs = List.of("mkfs.ntfs", "-q", "-F", "-Q");
    return switch (type) {
      case "exfat" ->
          Volume.made(
              scratch,
              type,
              96,
              List.of("mkfs.exfat"),
              List.of("mount", "-t", "exfat-fuse", "-o", "loop"));
      case "ntfs with the names of Windows" ->
          Volume.made(scratch, "ntfs", 96, ntfs, List.of("ntfs-3g", "-o", "windows_names"));
      case "ext4 that folds names" ->
          Volume.loop(
              scratch,
              "ext4",
              96,
              "mkfs.ext4",
              "-q",
              "-F",
              "-O",
              "casefold",
              "-E",
              "encoding=utf8");
      default -> throw new IllegalArgumentException(type);
    };
  }

  @ParameterizedTest
  @ValueSource(strings = {"exfat", "ntfs with the names of Windows", "ext4 that folds names"})
  void theDayIsPlayedToItsEnd(String type) throws Exception {
    try (var volume = volume(type)) {
      var into = Files.createDirectory(volume.root().resolve("shoots"));
      if (type.startsWith("ext4")) {
        // Without the attribute a folder there tells case apart as ever.
        assertThat(Volume.run(List.of("chattr", "+F", into.toString()))).isTrue();
      }
      var ran = Ran.run("demo", "--tiny", "--into", into.toString(), "--json");
      assertThat(ran.status()).as(ran.err()).isZero();
      var job = Path.of(ran.json().at("/folder").asText());
      for (var command : List.of("day", "frames", "batches", "list")) {
        var after = Ran.run(command, job.toString());
        assertThat(after.status()).as(command + ": " + after.err()).isZero();
      }
    }
  }

  /** As on a share of Windows that a Mac sees. */
  @Test
  void theDayIsPlayedToItsEndWhereNothingCanBeLocked() throws Exception {
    Files.createDirectory(scratch.resolve("shoots"));
    var share = Recording.on(scratch);
    share.withoutLocks();
    var ran =
        Ran.on(text -> share.root().resolve(text), "demo", "--tiny", "--into", "shoots", "--json");
    assertThat(ran.status()).as(ran.err()).isZero();
    var job = ran.json().at("/folder").asText();
    for (var command : List.of("day", "frames", "batches", "list")) {
      var after = Ran.on(text -> share.root().resolve(text), command, job);
      assertThat(after.status()).as(command + ": " + after.err()).isZero();
    }
    try (var files = Files.walk(scratch)) {
      assertThat(files.filter(file -> file.toString().endsWith(".owner"))).isEmpty();
    }
  }
}
