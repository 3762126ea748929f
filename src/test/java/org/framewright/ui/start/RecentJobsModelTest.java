package org.framewright.ui.start;

import static org.framewright.AssertThat.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.framewright.base.Problem;
import org.framewright.disk.SymbolicLinks;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.naming.Convention;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.start.RecentJob.Found;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecentJobsModelTest {
  private static final Instant NOW = Instant.parse("2026-11-25T09:00:00Z");

  @TempDir private Path folder;
  private final Clock clock = Clock.fixed(NOW, ZoneOffset.UTC);

  private RecentJobsModel model(Tasks tasks) {
    return new RecentJobsModel(tasks, clock, failure -> new Problem(failure.getMessage(), ""));
  }

  private Job job(String title) throws Exception {
    var sound =
        (Convention.Parsed.Sound) Convention.read(Path.of("templates/image-receivers.yaml"));
    var started =
        (Started.Opened)
            Job.start(
                sound.convention(),
                folder,
                Map.of("day", "2026-11-25", "client", "KVO", "title", title, "photographer", "Ana"),
                clock,
                new Station("set"));
    var job = started.job();
    job.importList(
        new ShotList(
            List.of(new Setup("01", "Coat"), new Setup("02", "Hat"), new Setup("03", ""))));
    job.mark("01", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    job.mark("02", SetupState.SHOT, MarkDetails.NONE);
    return job;
  }

  private static void picture(Path file, int width, String time) throws IOException {
    Files.createDirectories(file.getParent());
    ImageIO.write(new BufferedImage(width, 60, BufferedImage.TYPE_INT_RGB), "jpg", file.toFile());
    Files.setLastModifiedTime(file, FileTime.from(Instant.parse(time)));
  }

  private static Map<Path, String> contents(Path of) throws IOException {
    var all = new TreeMap<Path, String>();
    try (var files = Files.walk(of)) {
      for (var file : files.toList()) {
        all.put(
            file,
            Files.getLastModifiedTime(file)
                + (Files.isRegularFile(file) ? " " + Files.size(file) : ""));
      }
    }
    return all;
  }

  @Test
  void eachJobSaysHowFarItIsAndShowsItsLastPicture() throws Exception {
    var job = job("autumn");
    picture(job.framesFolder().resolve("a.jpg"), 90, "2026-11-25T09:10:00Z");
    picture(job.framesFolder().resolve("later/b.jpg"), 50, "2026-11-25T09:20:00Z");
    Files.writeString(job.framesFolder().resolve("note.txt"), "the newest, and no picture");
    var model = model(Tasks.immediate());
    model.show(List.of(job.folder()));
    var shown = model.jobs().getFirst();
    var progress = ((Found.Read) shown.found()).progress();
    assertThat(progress.states())
        .containsExactly(SetupState.SIGNED_OFF, SetupState.SHOT, SetupState.TO_SHOOT);
    assertThat(progress.signedOff()).isEqualTo(1);
    assertThat(progress.last()).contains(NOW);
    assertThat(shown.picture().orElseThrow().getWidth()).isEqualTo(50);
  }

  @Test
  void lookingAtAJobChangesNothingInIt() throws Exception {
    var job = job("autumn");
    picture(job.framesFolder().resolve("a.jpg"), 90, "2026-11-25T09:10:00Z");
    var before = contents(job.folder());
    model(Tasks.immediate()).show(List.of(job.folder()));
    assertThat(contents(job.folder())).isEqualTo(before);
  }

  @Test
  void aJobThatIsNotThereOrIsNoneSaysSo() throws Exception {
    var none = Files.createDirectory(folder.resolve("none"));
    var model = model(Tasks.immediate());
    model.show(List.of(folder.resolve("unplugged/KVO"), none));
    assertThat(model.jobs().get(0).found()).isInstanceOf(Found.Gone.class);
    assertThat(model.jobs().get(1).found()).isInstanceOf(Found.Unreadable.class);
  }

  @Test
  void aDriveThatDoesNotAnswerKeepsNoOtherWaitingAndWhatWasKnownStands() throws Exception {
    var first = job("autumn");
    var second = job("winter");
    var work = new ArrayDeque<Runnable>();
    var model = model(new Tasks(work::add, Runnable::run));
    model.show(List.of(first.folder(), second.folder()));
    assertThat(model.jobs()).extracting(RecentJob::found).containsOnly(new Found.NotYet());
    var slow = work.remove();
    work.remove().run();
    assertThat(model.jobs().get(0).found()).isEqualTo(new Found.NotYet());
    assertThat(model.jobs().get(1).found()).isInstanceOf(Found.Read.class);
    model.show(List.of(second.folder(), first.folder()));
    assertThat(model.jobs().get(0).found()).isInstanceOf(Found.Read.class);
    slow.run();
    assertThat(model.jobs().get(1).found()).isInstanceOf(Found.Read.class);
    var rest = new ArrayList<>(work);
    rest.forEach(Runnable::run);
  }

  @Test
  void noLinkIsFollowedInSearchOfAPicture() throws Exception {
    var outside = folder.resolve("outside");
    picture(outside.resolve("a.jpg"), 90, "2026-11-25T09:10:00Z");
    var frames = Files.createDirectory(folder.resolve("frames"));
    SymbolicLinks.make(frames.resolve("link"), outside);
    SymbolicLinks.make(frames.resolve("b.jpg"), outside.resolve("a.jpg"));
    assertThat(LastPicture.in(frames)).isEmpty();
    picture(frames.resolve(".hidden/c.jpg"), 90, "2026-11-25T09:10:00Z");
    assertThat(LastPicture.in(frames)).isEmpty();
    assertThat(LastPicture.in(folder.resolve("gone"))).isEmpty();
  }
}
