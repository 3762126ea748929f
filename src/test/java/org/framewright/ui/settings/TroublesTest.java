package org.framewright.ui.settings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Locale;
import org.framewright.job.JobException;
import org.framewright.ui.look.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TroublesTest {
  @TempDir private Path folder;

  private Troubles troubles() {
    return new Troubles(
        Texts.in(Locale.ENGLISH),
        new LogFile(
            folder.resolve("framewright.log"),
            Clock.fixed(Instant.parse("2026-11-23T12:00:00Z"), ZoneOffset.UTC)));
  }

  @Test
  void saysWhichFileIsMissingAndWhatMendsIt() {
    var trouble = troubles().explain(new NoSuchFileException("/jobs/gone"));
    assertThat(trouble.what()).isEqualTo("There is no /jobs/gone.");
    assertThat(trouble.remedy()).contains("plugged in");
  }

  @Test
  void aRefusalOfTheJobKeepsItsOwnWords() {
    var trouble =
        troubles().explain(new JobException("a sign-off needs a name", "setup 017", "Say who."));
    assertThat(trouble)
        .isEqualTo(new Trouble("setup 017: a sign-off needs a name", "Say who.", ""));
  }

  @Test
  void aBraceInAFileNameIsNoPlaceholder() {
    var trouble = troubles().explain(new AccessDeniedException("/jobs/{1}'s"));
    assertThat(trouble.what()).contains("/jobs/{1}'s");
  }

  @Test
  void theUnforeseenGoesToTheLogThatTheMessageNames() throws IOException {
    var trouble = troubles().explain(new IllegalStateException("a nut is loose"));
    assertThat(trouble.remedy()).contains(folder.resolve("framewright.log").toString());
    assertThat(trouble.what() + trouble.remedy() + trouble.detail()).doesNotContain("\tat ");
    assertThat(Files.readString(folder.resolve("framewright.log")))
        .startsWith("2026-11-23T12:00Z")
        .contains("a nut is loose", "\tat ");
  }

  @Test
  void theForeseenLeavesNoLog() {
    troubles().explain(new NoSuchFileException("/jobs/gone"));
    assertThat(folder).isEmptyDirectory();
  }
}
