package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.framewright.base.Progress;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.renaming.Renamer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Clients' lists against a real job, whose frames were renamed. */
class ClientNamesTest {
  @TempDir private Path folder;
  private Scene scene;
  private Job job;

  /** A camera's names: IMG_9998, IMG_9999, IMG_0001, ... */
  @BeforeEach
  void aJob() throws Exception {
    scene = Scene.rated(folder);
    job = scene.job();
  }

  private ClientNames read(String text) throws Exception {
    return Scene.handOff(job).names(Files.writeString(folder.resolve("names.txt"), text));
  }

  private List<String> named(String text) throws Exception {
    var names = read(text);
    return names.read().frames().stream().map(names::called).toList();
  }

  @Test
  void aCamerasNameCountsBeforeAndAfterTheRename() throws Exception {
    var camera = job.scan().frames().stream().map(frame -> frame.stem()).sorted().toList();
    assertThat(named(String.join("\n", camera))).containsExactlyInAnyOrderElementsOf(camera);
    scene.rename();
    var now = job.scan().frames().stream().map(frame -> frame.stem()).toList();
    assertThat(named(String.join(", ", camera))).containsExactlyInAnyOrderElementsOf(now);
    assertThat(read(camera.getFirst() + ".JPG").read().lines().getFirst().pieces().getFirst().why())
        .contains("before a rename, " + camera.getFirst());
  }

  @Test
  void aNameThatWasTakenBackIsForgottenAndOneBeforeItIsNot() throws Exception {
    var camera = job.scan().frames().getFirst().stem();
    scene.rename();
    var renamed = job.scan().frames().getFirst().stem();
    var renamer = Renamer.in(job.folder());
    var batch = renamer.nextUndo().orElseThrow().id();
    renamer.undo(batch, Progress.NONE);
    assertThat(read(renamed).unclear()).hasSize(1);
    assertThat(named(camera)).containsExactly(camera);
    renamer.undo(renamer.nextRedo().orElseThrow().id(), Progress.NONE);
    assertThat(named(renamed)).containsExactly(renamed);
    assertThat(named(camera)).hasSize(1);
  }

  @Test
  void aNameThatTwoFramesHadIsAskedAboutWithBoth() throws Exception {
    scene.rename();
    var files = job.scan().frames().stream().limit(2).map(frame -> frame.stem()).toList();
    swap(files.getFirst(), files.getLast());
    var names = read(files.getFirst());
    assertThat(names.frames()).isEmpty();
    assertThat(HandOffDescription.names(names))
        .anyMatch(line -> line.contains("several frames fit") && line.contains(files.getLast()));
  }

  private void swap(String one, String other) throws Exception {
    var renamer = Renamer.in(job.folder());
    var requests = new java.util.ArrayList<org.framewright.renaming.RenameRequest>();
    for (var frame : job.scan().frames()) {
      var to = frame.stem().equals(one) ? other : frame.stem().equals(other) ? one : "";
      if (!to.isEmpty()) {
        for (var file : frame.files()) {
          var name = file.path().getFileName().toString().replace(frame.stem(), to);
          requests.add(
              new org.framewright.renaming.RenameRequest(
                  job.folder().relativize(file.path()),
                  job.folder().relativize(file.path().resolveSibling(name)),
                  frame.stem()));
        }
      }
    }
    assertThat(renamer.apply(renamer.plan(requests), Progress.NONE))
        .isInstanceOf(org.framewright.renaming.Outcome.Applied.class);
  }

  @Test
  void aSelectsNameCounts() throws Exception {
    scene.rename();
    assertThat(Scene.deliver(job, folder.resolve("out"))).isInstanceOf(Delivery.Delivered.class);
    assertThat(named("KVO_001_F_0004_v01.tif")).containsExactly("20261123_KVO_001_F_0004");
  }

  @Test
  void journalsThatCannotBeReadAreToldAndStopNothing() throws Exception {
    scene.rename();
    var now = job.scan().frames().getFirst().stem();
    try (var journals = Files.list(job.folder().resolve(".framewright/renames"))) {
      for (var journal : journals.filter(file -> file.toString().endsWith(".jsonl")).toList()) {
        Files.writeString(journal, "{\"framewright\":\"renames\"}\n");
      }
    }
    var names = read(now);
    assertThat(names.frames()).hasSize(1);
    assertThat(names.remarks())
        .anyMatch(remark -> remark.what().startsWith("the names that files had before the rename"));
  }

  @Test
  void theFramesThatAListNamesAreHandedOff() throws Exception {
    scene.rename();
    var plan = Scene.handOff(job).named(read("KVO_002_B_0002, please"));
    assertThat(plan.chosenBy()).isEqualTo("named in names.txt");
    assertThat(plan.selects()).extracting(Select::name).containsExactly("KVO_002_B_0002");
    assertThat(plan.withheld()).isEmpty();
  }

  @Test
  void aListOfAnotherEncodingIsReadAndSaysSo() throws Exception {
    var file = folder.resolve("names.txt");
    Files.write(file, "schön!".getBytes(java.nio.charset.Charset.forName("windows-1252")));
    assertThat(Scene.handOff(job).names(file).remarks())
        .anyMatch(remark -> remark.what().contains("read as Windows-1252"));
  }

  @Test
  void whatWasReadBeforeARenameIsOfOtherFrames() throws Exception {
    var before = Scene.handOff(job).lists();
    assertThat(before.knowsTheSameFrames(Scene.handOff(job).lists())).isTrue();
    scene.rename();
    assertThat(before.knowsTheSameFrames(Scene.handOff(job).lists())).isFalse();
  }

  @Test
  void whatIsNoTextIsRefused() throws Exception {
    var file = Files.write(folder.resolve("names.docx"), new byte[] {'P', 'K', 3, 4, 0});
    assertThatThrownBy(() -> Scene.handOff(job).names(file))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("document or a workbook");
    var large = Files.write(folder.resolve("large.txt"), new byte[5 << 20]);
    assertThatThrownBy(() -> Scene.handOff(job).names(large))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("larger than any list");
  }

  @Test
  void aPastedTextIsReadAsAFileIsAndCalledByItsName() throws Exception {
    var camera = job.scan().frames().getFirst().stem();
    var lists = Scene.handOff(job).lists();
    var pasted = lists.read(camera + "\n", "a pasted list");
    assertThat(pasted.file()).isEqualTo("a pasted list");
    assertThat(pasted.read()).isEqualTo(read(camera + "\n").read());
    assertThatThrownBy(() -> lists.read("nobody_98765.jpg\n".repeat(1100), "a pasted list"))
        .isInstanceOfSatisfying(
            JobException.class, e -> assertThat(e.problem().where()).isEqualTo("a pasted list"));
  }
}
