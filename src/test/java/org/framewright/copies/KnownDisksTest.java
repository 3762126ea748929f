package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.framewright.copies.KnownDisks.Disk;
import org.framewright.job.CopyRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The disks that matter to a job besides its own. */
class KnownDisksTest {
  @TempDir Path temp;
  private CopiesScene scene;
  private final List<Path> mounted = new ArrayList<>();
  private final List<Path> looked = new ArrayList<>();

  @BeforeEach
  void makeScene() throws Exception {
    scene = new CopiesScene(temp);
    mounted.addAll(List.of(scene.one, scene.two, scene.card, scene.laptop));
  }

  /** Each mounted folder is a volume; its free bytes are the length of its name. */
  private List<Disk> disks() {
    return KnownDisks.of(scene.job, () -> mounted, this::volume);
  }

  private KnownDisks.Volume volume(Path folder) throws IOException {
    looked.add(folder);
    if (!Files.exists(folder)) {
      throw new IOException(folder + " is gone");
    }
    var top = mounted.stream().filter(folder::startsWith).findFirst();
    return new KnownDisks.Volume(top.orElse(folder), folder.getFileName().toString().length());
  }

  private static Disk of(Path folder, boolean card) {
    var name = folder.getFileName().toString();
    return new Disk(card, name, name.length());
  }

  @Test
  void aCardThatIsInIsOneAndADiskWithoutCopiesIsNot() {
    assertThat(disks()).containsExactly(of(scene.card, true));
  }

  @Test
  void aDiskOfCopiesIsKnownByWhatWasCompared() throws Exception {
    scene.copyCardTo(scene.one.resolve("monday"), "");
    scene.copyCardTo(scene.one.resolve("tuesday"), "");
    scene.compare(scene.card, scene.one.resolve("monday"), scene.one.resolve("tuesday"));
    assertThat(disks()).containsExactly(of(scene.one, false), of(scene.card, true));
  }

  @Test
  void aDiskOfCopiesIsKnownByWhatWasCopied() throws Exception {
    var target = Files.createDirectory(scene.two.resolve("monday"));
    var copied = new CopyRecord.Target(target.toString(), "SSD", "", "", "", 4, 0);
    scene.job.record(new CopyRecord(scene.card.toString(), 4, 4_000, List.of(copied)));
    assertThat(disks()).containsExactly(of(scene.two, false), of(scene.card, true));
    Files.delete(target);
    assertThat(disks()).containsExactly(of(scene.card, true));
  }

  @Test
  void whatIsNotMountedIsNotLookedAt() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.compare(scene.card, scene.one);
    mounted.remove(scene.one);
    looked.clear();
    assertThat(disks()).containsExactly(of(scene.card, true));
    assertThat(looked).noneMatch(scene.one::equals);
  }

  @Test
  void aDiskThatIsPulledOutMeanwhileIsNotAmongThem() throws Exception {
    mounted.add(temp.resolve("gone"));
    assertThat(disks()).containsExactly(of(scene.card, true));
    assertThat(
            KnownDisks.of(
                scene.job,
                () -> {
                  throw new IOException("no table of mounts");
                },
                this::volume))
        .isEmpty();
  }
}
