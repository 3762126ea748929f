package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.base.Text;
import org.framewright.job.MarkDetails;
import org.framewright.job.MovedSetup;
import org.framewright.job.OtherJob;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** However many devices there are, the JSON of a moment is made once. */
class FoldsTest {
  @TempDir private Path root;
  private SharedJob job;
  private Folds folds;

  @BeforeEach
  void aJob() throws Exception {
    job = SharedJob.in(root, 3);
    var tokens = new PictureTokens(new byte[32]);
    folds = new Folds(job.live.job(), tokens, new Codes(job.live.job()), _ -> false);
  }

  @AfterEach
  void end() {
    job.close();
  }

  private Moment moment(long number) {
    return new Moment(number, job.live.now(), false, DayNow.NONE);
  }

  private void mark(String setup, SetupState state) throws Exception {
    job.live.ask(it -> it.mark(setup, state, MarkDetails.NONE)).get();
  }

  @Test
  void aMomentIsFoldedOnceForARole() {
    var fold = folds.of(Role.ASSISTANT, moment(1));
    assertThat(folds.of(Role.ASSISTANT, moment(1))).isSameAs(fold);
    assertThat(folds.of(Role.VIEWER, moment(1))).isNotSameAs(fold);
  }

  @Test
  void whoComesWithAnEarlierMomentGetsTheLaterOne() {
    var later = folds.of(Role.ASSISTANT, moment(2));
    assertThat(folds.of(Role.ASSISTANT, moment(1))).isSameAs(later);
  }

  @Test
  void aSetupThatDidNotChangeIsNotFoldedAnew() throws Exception {
    var before = folds.of(Role.ASSISTANT, moment(1));
    mark("002", SetupState.SHOT);
    var now = folds.of(Role.ASSISTANT, moment(2));
    assertThat(now.setups().get("001")).isSameAs(before.setups().get("001"));
    assertThat(now.setups().get("002")).isNotEqualTo(before.setups().get("002"));
    assertThat(now.saysTheSameAs(before)).isFalse();
  }

  @Test
  void aMomentWithoutNewsSaysTheSame() {
    var before = folds.of(Role.ASSISTANT, moment(1));
    assertThat(folds.of(Role.ASSISTANT, moment(2)).saysTheSameAs(before)).isTrue();
    var lost = new Moment(3, job.live.now(), true, DayNow.NONE);
    assertThat(folds.of(Role.ASSISTANT, lost).saysTheSameAs(before)).isFalse();
    var day = new DayNow(Optional.empty(), Optional.empty(), Optional.of(Text.of("why")));
    var reckoned = new Moment(4, job.live.now(), false, day);
    assertThat(folds.of(Role.ASSISTANT, reckoned).saysTheSameAs(before)).isFalse();
  }

  @Test
  void theDayIsToldWithItsForecastAndInWords() {
    var from = Instant.parse("2026-11-23T15:00:00Z");
    var day =
        new DayNow(
            Optional.of(Duration.ofMinutes(7)),
            Optional.of(new DayNow.Finish(from, from.plusSeconds(3600))),
            Optional.empty());
    var fold = folds.of(Role.VIEWER, new Moment(1, job.live.now(), false, day));
    var message =
        Message.of(Optional.empty(), fold, "page-00000000", 1, from, text -> "said: " + text);
    assertThat(message)
        .endsWith(
            "\"day\":{\"done\":0,\"planned\":3,\"signedOff\":0,\"frames\":0,\"pace\":420,"
                + "\"finish\":{\"from\":1795446000000,\"to\":1795449600000},\"why\":null}}");
  }

  @Test
  void whatCameFromAnotherSetAndWhatWentThereIsTold() throws Exception {
    var other = new OtherJob(new UUID(1, 1), "set_02");
    var coat = new MovedSetup(new Setup("019", "Coat"), List.of(), new LinkedHashMap<>());
    var mine = new MovedSetup(job.live.now().list().setups().getFirst(), List.of(), coat.codes());
    job.live
        .ask(
            it -> {
              it.take(new UUID(2, 1), "019", coat, other);
              it.give(new UUID(2, 2), mine, other, "Mara");
              return true;
            })
        .get();
    var fold = folds.of(Role.ASSISTANT, moment(1));
    assertThat(fold.order()).isEqualTo("[\"002\",\"003\",\"019\"]");
    assertThat(fold.setups().get("019")).contains("\"from\":\"set_02\"");
    assertThat(fold.setups().get("002")).doesNotContain("\"from\"");
    assertThat(fold.day())
        .endsWith("\"given\":[{\"code\":\"001\",\"to\":\"set_02\",\"arrived\":false}]");
    assertThat(folds.of(Role.VIEWER, moment(2)).day()).doesNotContain("given");
  }

  @Test
  void aMessageIsOneLineWhateverTheListSays() throws Exception {
    job.live
        .ask(it -> it.changeSetup(new Setup("001", "a\nb\r\n\ndata: x\u2028\"</script>")))
        .get();
    var fold = folds.of(Role.ASSISTANT, moment(1));
    var message = Message.of(Optional.empty(), fold, "", 1, Instant.EPOCH, Text::english);
    assertThat(message).doesNotContain("\n", "\r");
    assertThat(Phone.JSON.readTree(message).path("setups").path(0).path("title").asText())
        .contains("data: x");
  }
}
