package org.framewright.ui.settings;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Locale;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.job.JobException;
import org.framewright.ui.look.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
  void saysWhichFileIsMissingAndItsRemedyAsTheCommandLineDoes() {
    var failure = new NoSuchFileException("/jobs/gone");
    assertThat(troubles().explain(failure))
        .isEqualTo(new Explanation(FileProblems.of(failure), ""));
    assertThat(troubles().explain(failure).problem().sentence())
        .isEqualTo("/jobs/gone: there is no such file or folder");
  }

  /** The words of strerror(3) for ENOSPC, EROFS and EIO, as the system's provider hands them on. */
  @ParameterizedTest
  @CsvSource({
    "No space left on device, the disk is full",
    "Read-only file system, the disk can only be read",
    "Input/output error, the disk could not read or write it"
  })
  void whatADiskRefusesHasItsRemedy(String reason, String words) {
    var failure = new FileSystemException("/jobs/one", null, reason);
    var problem = troubles().explain(failure).problem();
    assertThat(problem.sentence()).isEqualTo("/jobs/one: " + words);
    assertThat(problem.remedy()).isNotBlank();
    assertThat(troubles().explain(new UncheckedIOException(failure)).problem()).isEqualTo(problem);
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void aRefusalOfTheJobKeepsItsOwnWords() {
    var trouble =
        troubles()
            .explain(
                new JobException(
                    Text.of("a sign-off needs a name"), "setup 017", Text.of("Say who.")));
    assertThat(trouble)
        .isEqualTo(
            new Explanation(new Problem("a sign-off needs a name", "setup 017", "Say who."), ""));
  }

  @Test
  void aBraceInAFileNameIsNoPlaceholder() {
    var trouble = troubles().explain(new AccessDeniedException("/jobs/{1}'s"));
    assertThat(trouble.problem().sentence()).contains("/jobs/{1}'s");
  }

  @Test
  void anErrorOfTheMachineIsInWordsAndLogged() {
    var trouble = troubles().explain(new OutOfMemoryError("Java heap space"));
    assertThat(trouble.problem().sentence()).contains("not enough memory");
    assertThat(folder.resolve("framewright.log")).content().contains("Java heap space");
  }

  @Test
  void theUnforeseenGoesToTheLogThatTheMessageNames() throws IOException {
    var trouble = troubles().explain(new IllegalStateException("a nut is loose"));
    assertThat(trouble.problem().remedy()).contains(folder.resolve("framewright.log").toString());
    assertThat(trouble.problem() + trouble.detail()).doesNotContain("\tat ");
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
