package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Recording;
import org.framewright.disk.Volume;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.ITypeConverter;

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
    playedOn(share, "shoots");
    try (var files = Files.walk(scratch)) {
      assertThat(files.filter(file -> file.toString().endsWith(".owner"))).isEmpty();
    }
  }

  /** As on a stick with FAT that a Mac sees. */
  @Test
  void theDayIsPlayedToItsEndWhereThereAreNoLinksAndTimesInTwoSeconds() throws Exception {
    var stick = Recording.on(scratch);
    stick.ofType("msdos");
    stick.withoutLinks();
    stick.withTimesInSteps(Duration.ofSeconds(2));
    stick.withMacNames();
    Files.createDirectory(stick.root().resolve("Caf\u00e9"));
    playedOn(stick, "caf\u00e9");
    assertThat(scratch.toFile().list()).containsExactly("Cafe\u0301");
    assertThat(stick.ops()).noneMatch(DiskOp.Link.class::isInstance);
    assertThat(renames(stick)).isNotEmpty().allMatch(DiskOp.Move::replacing);
  }

  /** As on HFS+, with the links that it has. */
  @Test
  void theDayIsPlayedToItsEndWhereNamesAreListedDecomposedAndCaseIsOne() throws Exception {
    var disk = Recording.on(scratch);
    disk.ofType("hfs");
    disk.withTimesInSteps(Duration.ofSeconds(1));
    disk.withMacNames();
    Files.createDirectory(disk.root().resolve("Caf\u00e9"));
    playedOn(disk, "caf\u00e9");
    assertThat(scratch.toFile().list()).containsExactly("Cafe\u0301");
    assertThat(renames(disk)).isEmpty();
  }

  /** The renames of frames, as the recording saw them; by second links they are none. */
  private static List<DiskOp.Move> renames(Recording disk) {
    return disk.ops().stream()
        .filter(DiskOp.Move.class::isInstance)
        .map(DiskOp.Move.class::cast)
        .filter(move -> move.from().contains("/01_frames/") && move.from().endsWith(".DNG"))
        .toList();
  }

  private static void playedOn(Recording disk, String into) throws IOException {
    ITypeConverter<Path> paths = text -> disk.root().resolve(text);
    var ran = Ran.on(paths, "demo", "--tiny", "--into", into, "--json");
    assertThat(ran.status()).as(ran.err()).isZero();
    var job = ran.json().at("/folder").asText();
    for (var command : List.of("day", "frames", "batches", "list")) {
      var after = Ran.on(paths, command, job);
      assertThat(after.status()).as(command + ": " + after.err()).isZero();
    }
  }
}
