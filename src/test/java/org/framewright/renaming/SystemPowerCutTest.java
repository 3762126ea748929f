package org.framewright.renaming;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toSet;
import static org.framewright.AssertThat.assertThat;
import static org.framewright.renaming.SystemVolume.MAC_APFS;
import static org.framewright.renaming.SystemVolume.MAC_EXFAT;
import static org.framewright.renaming.SystemVolume.MAC_FAT;
import static org.framewright.renaming.SystemVolume.MAC_HFS;
import static org.framewright.renaming.SystemVolume.MAC_SMB;
import static org.framewright.renaming.SystemVolume.WINDOWS_EXFAT;
import static org.framewright.renaming.SystemVolume.WINDOWS_NTFS;
import static org.framewright.renaming.SystemVolume.WINDOWS_REFS;
import static org.framewright.renaming.SystemVolume.WINDOWS_SMB;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The {@link SystemPowerCutLaws} on a few hundred cases, always the same ones, in seconds. */
@Tag("slow")
class SystemPowerCutTest {
  private static final int CASES = 120;

  private final Set<String> noted = new HashSet<>();

  private final SystemPowerCutLaws laws =
      new SystemPowerCutLaws() {
        @Override
        void note(String label, Object value) {
          noted.add(label + ": " + value);
        }
      };

  @ParameterizedTest
  @EnumSource
  void afterAPowerCutAndAnotherOneInTheRecoveryABatchIsWhole(SystemVolume volume)
      throws IOException {
    for (int seed = 0; seed < CASES; seed++) {
      var random = new Random(seed);
      laws.afterAPowerCutAndAnotherOneInTheRecoveryABatchIsWhole(
          volume,
          targets(random),
          random.nextInt(4) == 0,
          random.nextBoolean(),
          random.nextInt(41),
          seed);
    }
    assertThat(noted)
        .contains(
            "renamed by: " + volume + " [" + volume.guarantee() + "]",
            "last recovery: " + volume + " Nothing",
            "last recovery: " + volume + " RolledBack",
            "first cut: hit",
            "second cut: hit");
  }

  /** The first cut comes between the reserving of a journal's name and its rename, if ever. */
  @Test
  void whatReservedAJournalsNameIsOffTheDiskBeforeTheJournalThatWasNotBegun() throws IOException {
    var seeds = new Random(1);
    for (int i = 0; i < 1_000; i++) {
      laws.afterAPowerCutAndAnotherOneInTheRecoveryABatchIsWhole(
          MAC_FAT, List.of(15), false, false, 3, seeds.nextLong());
    }
    assertThat(noted).contains("second cut: hit");
  }

  @Test
  void whatAPowerCutTearsIsToldAndNothingElseIsTouched() throws IOException {
    for (int seed = 0; seed < 3 * CASES; seed++) {
      var random = new Random(seed);
      laws.whatAPowerCutTearsIsToldAndNothingElseIsTouched(
          seed % 3, targets(random), random.nextBoolean(), seed);
    }
    assertThat(noted)
        .contains(
            "torn: MAC_EXFAT some, Stuck",
            "torn: MAC_FAT some, Stuck",
            "torn: WINDOWS_EXFAT some, Stuck",
            "torn: MAC_FAT nothing, RolledBack");
  }

  @ParameterizedTest
  @EnumSource
  void aReadyPlanNeverMeetsATakenNameAndUndoTakesItBack(SystemVolume volume) throws IOException {
    for (int seed = 0; seed < CASES / 2; seed++) {
      var random = new Random(seed);
      laws.aReadyPlanNeverMeetsATakenNameAndUndoTakesItBack(
          volume, targets(random), random.nextInt(4) == 0, seed);
    }
    assertThat(noted).contains("ready: true");
  }

  /** As far as renames go, NTFS, ReFS and a share are one to a program on Windows. */
  @Test
  void theVolumesDiffer() {
    var alike =
        Stream.of(SystemVolume.values())
            .collect(groupingBy(SystemPowerCutTest::behaviour, toSet()));
    assertThat(alike.values())
        .containsExactlyInAnyOrder(
            Set.of(MAC_APFS),
            Set.of(MAC_HFS),
            Set.of(MAC_EXFAT),
            Set.of(MAC_FAT),
            Set.of(MAC_SMB),
            Set.of(WINDOWS_NTFS, WINDOWS_REFS, WINDOWS_SMB),
            Set.of(WINDOWS_EXFAT));
  }

  private static List<Object> behaviour(SystemVolume volume) {
    var model = ModelVolume.of(volume);
    return List.of(
        model.guarantee(),
        model.flush(),
        model.traits().atomicRename(),
        model.numbers(),
        model.timeStepNanos(),
        model.listed().apply("\u00e9"),
        model.key().apply("\u00e9").equals(model.key().apply("e\u0301")));
  }

  private static List<Integer> targets(Random random) {
    return IntStream.range(0, 1 + random.nextInt(10)).mapToObj(_ -> random.nextInt(17)).toList();
  }
}
