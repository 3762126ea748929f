package org.framewright.job;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.naming.Convention;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a sign-off was about, and how it is proved later. */
class SignOffTest {
  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final SampleCamera camera =
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
  private Job job;
  private Path log;

  @BeforeEach
  void aJobWithTwoSetupsOfWhichOneIsShot() throws Exception {
    var text = Files.readString(Path.of("templates/fashion-days.yaml"));
    var convention = ((Convention.Parsed.Sound) Convention.parse(text, "test.yaml")).convention();
    job =
        ((Started.Opened)
                Job.start(
                    convention,
                    parent,
                    Map.of("day", "2026-11-23", "client", "KVO", "title", "Wool"),
                    clock,
                    new Station("desk")))
            .job();
    log = job.folder().resolve(".framewright/log/desk.jsonl");
    job.importList(
        new ShotList(List.of(JobTest.setup("001", "Coat", "F"), JobTest.setup("002", "Hat"))));
    job.mark("001", SetupState.ON_SET, MarkDetails.by("Timo"));
    frame();
    frame();
    job.mark("001", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
  }

  private void frame() throws Exception {
    clock.pass(Duration.ofMinutes(1));
    camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
    job.recordArrivals(job.scan());
    clock.pass(Duration.ofMinutes(1));
  }

  private SignOff signOff() throws Exception {
    return job.signOffs(job.scan()).getFirst();
  }

  @Test
  void tellsWhoApprovedWhatAndWhen() throws Exception {
    var told = signOff();
    assertThat(told.setup().code()).isEqualTo("001");
    assertThat(told.by()).isEqualTo("Odette");
    assertThat(told.at()).isEqualTo("2026-11-23T09:04:00Z");
    assertThat(job.signOffs(job.scan())).hasSize(1);
  }

  @Test
  void framesThatCameLaterAreCountedApart() throws Exception {
    frame();
    assertThat(signOff().frames()).hasSize(2);
    assertThat(signOff().later()).isEqualTo(1);
  }

  @Test
  void framesThatWereMovedThereLaterAreCountedApart() throws Exception {
    job.mark("002", SetupState.ON_SET, MarkDetails.by("Timo"));
    frame();
    var third = job.inOrder(job.scan()).getLast();
    job.moveFrames(List.of(third.id()), "001", Optional.empty(), "Timo");
    assertThat(signOff().frames()).hasSize(2);
    assertThat(signOff().later()).isEqualTo(1);
  }

  @Test
  void framesThatWereMovedAwayLaterAreStillPartOfIt() throws Exception {
    var first = job.inOrder(job.scan()).getFirst();
    clock.pass(Duration.ofMinutes(1));
    job.moveFrames(List.of(first.id()), "002", Optional.empty(), "Timo");
    assertThat(signOff().frames()).hasSize(2).contains(first);
    assertThat(signOff().movedAway()).isEqualTo(1);
    assertThat(signOff().later()).isZero();
    job.takeBackMove();
    assertThat(signOff().movedAway()).isZero();
  }

  @Test
  void framesThatWereMovedAwayAndRenamedAreStillPartOfIt() throws Exception {
    var first = job.inOrder(job.scan()).getFirst();
    clock.pass(Duration.ofMinutes(1));
    job.moveFrames(List.of(first.id()), "002", Optional.empty(), "Timo");
    var file = first.primary().path();
    Files.move(file, file.resolveSibling("20261123_KVO_002_0001.jpg"));
    assertThat(signOff().frames()).hasSize(2);
    assertThat(signOff().movedAway()).isEqualTo(1);
  }

  @Test
  void framesThatWereMovedThereBeforeItArePartOfItAfterTheyWent() throws Exception {
    job.mark("002", SetupState.ON_SET, MarkDetails.by("Timo"));
    frame();
    var third = job.inOrder(job.scan()).getLast();
    job.moveFrames(List.of(third.id()), "001", Optional.empty(), "Timo");
    clock.pass(Duration.ofMinutes(1));
    job.mark("001", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    clock.pass(Duration.ofMinutes(1));
    job.moveFrames(List.of(third.id()), "002", Optional.empty(), "Timo");
    assertThat(signOff().frames()).hasSize(3);
    assertThat(signOff().movedAway()).isEqualTo(1);
  }

  @Test
  void framesThatAreGoneAreCountedAsFarAsTheLogKnowsThem() throws Exception {
    assertThat(signOff().notThere()).isZero();
    Files.delete(job.inOrder(job.scan()).getFirst().primary().path());
    assertThat(signOff().frames()).hasSize(1);
    assertThat(signOff().notThere()).isEqualTo(1);
    assertThat(signOff().timeless()).isZero();
  }

  @Test
  void theDigestIsThatOfTheLogUpToItsLine() throws Exception {
    var lines = Files.readAllLines(log, UTF_8);
    assertThat(lines.getLast()).contains("signed-off");
    var bytes = String.join("\n", lines).getBytes(UTF_8);
    var proof = signOff().proof().orElseThrow();
    assertThat(proof.file()).isEqualTo(".framewright/log/desk.jsonl");
    assertThat(proof.bytes()).isEqualTo(bytes.length);
    assertThat(proof.sha256())
        .isEqualTo(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
  }

  @Test
  void theDigestStaysAsTheLogGoesOn() throws Exception {
    var before = signOff().proof();
    frame();
    job.mark("002", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    assertThat(signOff().proof()).isEqualTo(before);
    assertThat(job.signOffs(job.scan()).getLast().proof()).isNotEqualTo(before);
  }

  @Test
  void theDigestStaysWhereTheLineFeedOfItsLineWasMissing() throws Exception {
    var before = signOff().proof();
    var bytes = Files.readAllBytes(log);
    Files.write(log, Arrays.copyOf(bytes, bytes.length - 1));
    job = Job.open(job.folder(), clock, new Station("desk"));
    assertThat(signOff().proof()).isEqualTo(before);
    frame();
    assertThat(signOff().proof()).isEqualTo(before);
  }

  @Test
  void aLogThatWasChangedBeforeItGivesAnotherDigest() throws Exception {
    var before = signOff().proof().orElseThrow();
    Files.writeString(log, Files.readString(log).replace("Coat", "Boat"));
    job = Job.open(job.folder(), clock, new Station("desk"));
    assertThat(signOff().proof().orElseThrow().sha256()).isNotEqualTo(before.sha256());
  }

  /** The command that is printed, run by a shell with the coreutils' sha256sum. */
  @Test
  @Tag("slow")
  void theCommandThatIsPrintedComputesTheDigest() throws Exception {
    assumeThat(onPath("sha256sum")).as("sha256sum is not installed").isTrue();
    frame();
    var proof = signOff().proof().orElseThrow();
    var process =
        new ProcessBuilder("sh", "-c", proof.command()).directory(job.folder().toFile()).start();
    assertThat(new String(process.getInputStream().readAllBytes(), UTF_8))
        .startsWith(proof.sha256() + " ");
    assertThat(process.waitFor()).isZero();
  }

  @Test
  void aSignOffThatWasTakenBackIsNone() throws Exception {
    job.takeBack();
    assertThat(job.signOffs(job.scan())).isEmpty();
  }

  @Test
  void aLogOfAnOddNameIsNoProofAndNoCommand() throws Exception {
    Files.move(log, log.resolveSibling("a;touch x.jsonl"));
    job = Job.open(job.folder(), clock, new Station("desk"));
    assertThat(signOff().by()).isEqualTo("Odette");
    assertThat(signOff().proof()).isEmpty();
  }

  @Test
  void whatIsNoEventDoesNoHarm() throws Exception {
    Files.write(log, new byte[300_000], StandardOpenOption.APPEND);
    Files.writeString(log, "\n{\"type\":\"marked\"}\n", StandardOpenOption.APPEND);
    assertThat(signOff().proof()).isPresent();
    assertThat(job.logProofs()).hasSize(1);
    assertThat(job.logProofs().getFirst().bytes()).isEqualTo(Files.size(log) - 1);
  }

  @Test
  void theListIsToldAsItStoodAtATime() throws Exception {
    var before = clock.instant();
    clock.pass(Duration.ofHours(1));
    job.importList(new ShotList(List.of(JobTest.setup("001", "Long coat", "F"))));
    assertThat(job.listAt(before).setups())
        .extracting(setup -> setup.title())
        .contains("Coat", "Hat");
    assertThat(job.listAt(clock.instant()).setups())
        .extracting(setup -> setup.title())
        .containsExactly("Long coat");
  }

  @Test
  void aSetupIsFinishedWhenTheNextComesOnSet() throws Exception {
    job.mark("002", SetupState.ON_SET, MarkDetails.by("Timo"));
    clock.pass(Duration.ofMinutes(30));
    job.mark("002", SetupState.SHOT, MarkDetails.by("Timo"));
    clock.pass(Duration.ofHours(2));
    job.mark("002", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    assertThat(job.finished().keySet()).containsExactly("001", "002");
    assertThat(job.finished().get("001")).isEqualTo("2026-11-23T09:04:00Z");
  }

  private static boolean onPath(String program) {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .anyMatch(place -> Files.isExecutable(Path.of(place, program)));
  }
}
