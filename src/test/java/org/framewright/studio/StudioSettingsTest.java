package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class StudioSettingsTest {
  @TempDir private Path folder;

  private StudioSettings settings() {
    return new StudioSettings(folder.resolve("settings"));
  }

  private static StoreAddress address(String host) throws Exception {
    return StoreAddress.parse("postgresql://anna@" + host + "/studio");
  }

  @Test
  void whatIsKeptIsReadAgain() throws Exception {
    assertThat(settings().read()).isEmpty();
    settings().keep(address("one.example"), "secret7");
    settings().add(settings().read().orElseThrow(), Path.of("/jobs/a"));
    settings().add(settings().read().orElseThrow(), Path.of("/jobs/a"));
    settings().add(settings().read().orElseThrow(), Path.of("/jobs/b"));
    var kept = settings().read().orElseThrow();
    assertThat(kept.store()).isEqualTo(address("one.example"));
    assertThat(kept.password()).isEqualTo("secret7");
    assertThat(kept.jobs()).containsExactly(Path.of("/jobs/a"), Path.of("/jobs/b"));
    settings().keep(address("two.example"), "other8");
    assertThat(settings().read().orElseThrow().jobs()).hasSize(2);
    assertThat(settings().read().orElseThrow().store()).isEqualTo(address("two.example"));
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void nobodyElseMayLookIntoItsFolder() throws Exception {
    settings().keep(address("one.example"), "secret7");
    assertThat(
            PosixFilePermissions.toString(
                Files.getPosixFilePermissions(settings().file().getParent())))
        .isEqualTo("rwx------");
  }

  @Test
  void noTextOfItHasThePassword() throws Exception {
    settings().keep(address("one.example"), "secret7");
    var kept = settings().read().orElseThrow();
    assertThat(kept.toString() + kept.store() + kept.store().url()).doesNotContain("secret7");
    Files.writeString(settings().file(), "{\"password\":\"secret7\", broken");
    assertThatThrownBy(() -> settings().read())
        .hasMessageContaining(settings().file().toString())
        .hasMessageNotContaining("secret7")
        .hasNoCause();
    settings().keep(address("one.example"), "again");
    assertThat(settings().read().orElseThrow().password()).isEqualTo("again");
  }
}
