package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code list --export}, killed or failed at every change of the disk that it makes. */
@Tag("slow")
class ListExportKillsTest {
  private static final String OLD = "the client's own";

  @TempDir private Path folder;
  private Path template;
  private String job;
  private int runs;

  private interface Disturbance {
    void on(Recording disk, int op);
  }

  private void aJobWithAList() throws IOException {
    template = Files.createDirectory(folder.resolve("template"));
    var made = Ran.startIn(template);
    job = made.getFileName().toString();
    var list = Files.writeString(folder.resolve("list.csv"), "Look,Name\n1,Coat\n2,Hat\n");
    assertThat(Ran.run("list", made, "--import", list).status()).isZero();
  }

  private Path copy(boolean there) throws IOException {
    var copy = folder.resolve("run" + runs++);
    try (var paths = Files.walk(template)) {
      for (var path : paths.toList()) {
        Files.copy(path, copy.resolve(template.relativize(path).toString()));
      }
    }
    if (there) {
      Files.writeString(copy.resolve("out.csv"), OLD);
    }
    return copy;
  }

  private Ran export(Recording disk, boolean there) {
    var words = new ArrayList<Object>(List.of("list", job, "--export", "out.csv"));
    if (there) {
      words.add("--replace");
    }
    return Ran.on(text -> disk.root().resolve(text), words.toArray());
  }

  private int tryEach(boolean there, Disturbance disturbance) throws IOException {
    var whole = Recording.on(copy(there));
    assertThat(export(whole, there).status()).isZero();
    var expected = Files.readString(whole.real(whole.root().resolve("out.csv")));
    int ops = whole.ops().size();
    for (int op = 0; op < ops; op++) {
      var real = copy(there);
      var disk = Recording.on(real);
      disturbance.on(disk, op);
      try {
        var ran = export(disk, there);
        assertThat(ran.err()).doesNotContain("Exception", "fault of the program");
      } catch (Killed e) {
        assertThat(disk.isKilled()).isTrue();
      }
      var out = real.resolve("out.csv");
      if (Files.exists(out)) {
        assertThat(Files.readString(out)).isIn(there ? List.of(OLD, expected) : List.of(expected));
      } else {
        assertThat(there).isFalse();
      }
      var again = Ran.run("list", real.resolve(job), "--export", out, "--replace");
      assertThat(again.status()).isZero();
      assertThat(out).hasContent(expected);
      assertThat(real.toFile().list()).containsExactlyInAnyOrder("out.csv", job);
    }
    return ops;
  }

  @Test
  void leavesTheOldFileOrTheNewOneAndSucceedsTheNextTime() throws IOException {
    aJobWithAList();
    var failures =
        List.<Function<DiskOp, IOException>>of(Fault::noSpace, Fault::inputOutput, Fault::readOnly);
    int points = 0;
    for (boolean there : new boolean[] {false, true}) {
      points += tryEach(there, Recording::killAt);
      points += tryEach(there, Recording::killWithin);
      for (var failure : failures) {
        points += tryEach(there, (disk, op) -> disk.failAt(op, failure));
        points += tryEach(there, (disk, op) -> disk.failFrom(op, failure));
      }
    }
    System.out.println("framewright list --export: " + points + " kills and failures");
    assertThat(points).isGreaterThan(50);
  }
}
