package org.framewright.shotlist;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.framewright.base.FileProblems;
import org.framewright.disk.CutDisk;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A list is written whole, whenever the program dies and whatever the disk refuses. */
class ListWriterDiskTest {
  private static final String OLD = "the client's own list";
  private static final ShotList LIST =
      new ShotList(IntStream.range(0, 50).mapToObj(i -> new Setup("A" + i, "Coat")).toList());

  @TempDir private Path folder;
  private int runs;

  private interface Disturbance {
    void on(Recording disk, int op);
  }

  private Path fresh(String name, boolean there) throws IOException {
    var fresh = Files.createDirectory(folder.resolve("run" + runs++));
    if (there) {
      Files.writeString(fresh.resolve(name), OLD);
    }
    return fresh;
  }

  private static void write(Path file, boolean replace) throws IOException {
    var problem =
        replace
            ? ListWriter.replace(file, LIST, _ -> new LinkedHashMap<>())
            : ListWriter.create(file, LIST, _ -> new LinkedHashMap<>());
    assertThat(problem).isEmpty();
  }

  /** The old file or the new one, whole; or none, where there was none. */
  private static void assertWhole(Path file, boolean there) throws IOException {
    if (!Files.exists(file)) {
      assertThat(there).isFalse();
    } else if (there && Files.size(file) == OLD.length()) {
      assertThat(file).hasContent(OLD);
    } else {
      assertThat(ListReader.read(file))
          .isInstanceOfSatisfying(
              ListReading.Understood.class, read -> assertThat(read.list()).isEqualTo(LIST));
    }
  }

  private List<DiskOp> undisturbed(String name, boolean there) throws IOException {
    var disk = Recording.on(fresh(name, there));
    write(disk.root().resolve(name), there);
    return disk.ops();
  }

  private int tryEach(String name, boolean there, Disturbance disturbance) throws IOException {
    int ops = undisturbed(name, there).size();
    for (int op = 0; op < ops; op++) {
      var real = fresh(name, there);
      var disk = Recording.on(real);
      disturbance.on(disk, op);
      var file = disk.root().resolve(name);
      try {
        write(file, there);
      } catch (IOException e) {
        assertThat(FileProblems.of(e).remedy()).isNotEmpty();
      } catch (Killed e) {
        assertThat(disk.isKilled()).isTrue();
      }
      assertWhole(real.resolve(name), there);
      // The same again, on a disk that works, leaves nothing but the file.
      write(real.resolve(name), there || Files.exists(real.resolve(name)));
      assertThat(ListReader.read(real.resolve(name))).isInstanceOf(ListReading.Understood.class);
      assertThat(real.toFile().list()).containsExactly(name);
    }
    return ops;
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {"list.csv", "list.xlsx"})
  void isTheOldFileOrTheNewOneAfterAKillOrAFailureAtEveryChange(String name) throws IOException {
    var failures =
        List.<Function<DiskOp, IOException>>of(Fault::noSpace, Fault::inputOutput, Fault::readOnly);
    int points = 0;
    for (boolean there : new boolean[] {false, true}) {
      points += tryEach(name, there, Recording::killAt);
      points += tryEach(name, there, Recording::killWithin);
      for (var failure : failures) {
        points += tryEach(name, there, (disk, op) -> disk.failAt(op, failure));
        points += tryEach(name, there, (disk, op) -> disk.failFrom(op, failure));
        points +=
            tryEach(
                name,
                there,
                (disk, op) -> disk.fail(Fault.onceAt(op, failure).afterHalfTheBytes()));
      }
    }
    System.out.println("list --export to " + name + ": " + points + " kills and failures");
    assertThat(points).isGreaterThan(50);
  }

  @Test
  void survivesAPowerCutOnceItIsWritten() throws IOException {
    for (boolean there : new boolean[] {false, true}) {
      var disk = Recording.on(fresh("list.csv", there));
      var cut = disk.cutDisk();
      write(disk.root().resolve("list.csv"), there);
      for (var names : CutDisk.Names.values()) {
        var after = cut.afterPowerCut(folder.resolve(there + " " + names), names);
        var read = (ListReading.Understood) ListReader.read(after.resolve("list.csv"));
        assertThat(read.list()).isEqualTo(LIST);
      }
    }
  }

  @Test
  void neverUnlinksAFileThatItReplaces() throws IOException {
    var ops = new ArrayList<>(undisturbed("list.csv", true));
    ops.removeIf(op -> !op.path().equals("list.csv"));
    assertThat(ops).isEmpty();
  }

  @Test
  void leavesAFileThatCameMeanwhile() throws IOException {
    var there = fresh("list.csv", true).resolve("list.csv");
    assertThatThrownBy(() -> write(there, false))
        .isInstanceOf(java.nio.file.FileAlreadyExistsException.class);
    assertThat(there).hasContent(OLD);
  }
}
