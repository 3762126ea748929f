package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.time.Duration;
import java.util.List;
import org.framewright.base.OwnFolder;
import org.framewright.job.TestClock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Ten invented sets on a server of their own. */
@Tag("slow")
@Timeout(120)
class TrialTest {
  private final TestClock clock = new TestClock("2026-11-23T12:00:00Z");

  private static ServerPrograms programs() throws Exception {
    var installed = PlayedServer.programs();
    assumeTrue(!installed.isEmpty(), "PostgreSQL can not be started here");
    return ServerPrograms.find(new ServerPlaces(installed, List.of()));
  }

  private static List<SetRow.Need> needs(Overview overview) {
    return overview.sets().stream().map(SetRow::need).toList();
  }

  @Test
  void tenSetsAreShownEachWithItsStoryAndChangeTickByTick() throws Exception {
    var programs = programs();
    var folder = Files.createTempDirectory("trial");
    try (var trial = Trial.begin(programs, folder, clock)) {
      var first = trial.overview();
      assertThat(first.sets()).hasSize(10);
      assertThat(needs(first))
          .startsWith(SetRow.Need.SIGN_OFF, SetRow.Need.PICKUP, SetRow.Need.TROUBLE)
          .contains(SetRow.Need.SILENT)
          .endsWith(SetRow.Need.NOTHING)
          .doesNotContain(SetRow.Need.URGENT);
      assertThat(first.sets().getFirst().name()).isEqualTo("set_01");
      assertThat(first.sets().getFirst().now().flatMap(SetNow::pace)).isPresent();
      clock.pass(Duration.ofSeconds(3));
      for (int tick = 0; tick < 9; tick++) {
        assertThat(trial.play()).isTrue();
      }
      var onSet =
          trial.overview().sets().stream()
              .filter(row -> row.now().flatMap(SetNow::onSet).isPresent())
              .toList();
      assertThat(onSet).hasSize(9);
      assertThat(trial.server()).contains("PostgreSQL " + programs.version());
    }
    assertThat(folder).doesNotExist();
  }

  @Test
  void aServerThatDoesNotStartIsToldAndNothingIsLeft() throws Exception {
    var folder = Files.createTempDirectory("trial");
    var broken = Files.createTempDirectory("broken");
    try {
      for (var name : List.of("initdb", "pg_ctl")) {
        var program =
            Files.writeString(broken.resolve(name), "#!/bin/sh\necho no memory\nexit 1\n");
        assumeTrue(program.toFile().setExecutable(true, false), "no programs can be made here");
      }
      assumeTrue(broken.toFile().setReadable(true, false), "nobody else can read it here");
      assumeTrue(broken.toFile().setExecutable(true, false), "nobody else can read it here");
      assertThatThrownBy(() -> Trial.begin(new ServerPrograms(broken, 17), folder, clock))
          .isInstanceOf(StoreException.class)
          .hasMessageContaining("initdb of PostgreSQL 17 failed: no memory");
      assertThat(folder).doesNotExist();
    } finally {
      OwnFolder.remove(broken);
    }
  }
}
