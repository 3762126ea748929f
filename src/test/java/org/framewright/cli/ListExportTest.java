package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where {@code list --export} writes, and where it does not. */
class ListExportTest {
  @TempDir private Path folder;
  private Path job;

  @BeforeEach
  void aJobWithAListAndAFrame() throws IOException {
    job = Ran.startIn(folder);
    var list = Files.writeString(folder.resolve("list.csv"), "Look,Name\n1,Coat\n2,Hat\n");
    assertThat(Ran.run("list", job, "--import", list).status()).isZero();
    Files.writeString(frames().resolve("IMG_0001.jpg"), "a frame");
  }

  private Path frames() {
    return job.resolve("01_frames");
  }

  private Map<String, String> everyFile() throws IOException {
    var files = new TreeMap<String, String>();
    try (var paths = Files.walk(folder)) {
      for (var path : paths.filter(Files::isRegularFile).toList()) {
        files.put(folder.relativize(path).toString(), Files.readString(path));
      }
    }
    return files;
  }

  private void refuses(Path file, int status, String... words) throws IOException {
    var before = everyFile();
    for (var replace : List.of(List.<String>of(), List.of("--replace"))) {
      var args = new java.util.ArrayList<Object>(List.of("list", job, "--export", file));
      args.addAll(replace);
      var ran = Ran.run(args.toArray());
      assertThat(ran.status()).isEqualTo(status);
      assertThat(ran.err()).contains(words).doesNotContain("Exception");
      assertThat(everyFile()).isEqualTo(before);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"list.csv", "list.xlsx"})
  void replacesAFileOnlyWhenAsked(String name) throws IOException {
    var file = Files.writeString(folder.resolve("client " + name), "the client's own");
    var refused = Ran.run("list", job, "--export", file);
    assertThat(refused.status()).isEqualTo(3);
    assertThat(refused.err()).contains(file.toString(), "--replace");
    assertThat(file).hasContent("the client's own");

    assertThat(Ran.run("list", job, "--export", file, "--replace").status()).isZero();
    assertThat(Ran.run("list", job, "--import", file).out())
        .contains("The list is the one that the job has.");
  }

  @Test
  void refusesBeforeItImports() throws IOException {
    var list = Files.writeString(folder.resolve("new.csv"), "Look,Name\n1,Coat\n3,Scarf\n");
    var there = Files.writeString(folder.resolve("there.csv"), "there");
    assertThat(Ran.run("list", job, "--import", list, "--export", there).status()).isEqualTo(3);
    assertThat(Ran.run("list", job).out()).contains("Hat").doesNotContain("Scarf");
  }

  @Test
  void leavesTheFoldersThatHoldTheJobAlone() throws IOException {
    refuses(frames().resolve("IMG_0001.jpg"), 3, "frames");
    refuses(frames().resolve("new.csv"), 3, "frames");
    refuses(Files.createDirectory(frames().resolve("card")).resolve("new.csv"), 3, "frames");
    refuses(job.resolve(".framewright").resolve("new.csv"), 3, ".framewright");
    refuses(job.resolve(".framewright").resolve("convention.yaml"), 3, ".framewright");
    refuses(job.resolve("x/../01_frames/new.csv").normalize(), 3, "frames");
    refuses(job.resolve(".framewright/../01_frames/new.csv"), 3, "frames");
  }

  @Test
  void leavesThemAloneBehindLinksToo() throws IOException {
    var link = SymbolicLinks.make(folder.resolve("desk"), frames());
    refuses(link.resolve("new.csv"), 3, "frames");
    var two = SymbolicLinks.make(folder.resolve("two"), folder.resolve("desk"));
    refuses(two.resolve("new.csv"), 3, "frames");
    var ours = SymbolicLinks.make(folder.resolve("ours"), job.resolve(".framewright/log"));
    refuses(ours.resolve("new.csv"), 3, ".framewright");
    var file = SymbolicLinks.make(folder.resolve("out.csv"), frames().resolve("IMG_0001.jpg"));
    refuses(file, 3, "out.csv");
    var dangling = SymbolicLinks.make(folder.resolve("gone.csv"), frames().resolve("new.csv"));
    refuses(dangling, 3, "gone.csv");
  }

  @Test
  void leavesThemAloneBeforeTheyAreThere() throws IOException {
    Files.delete(frames().resolve("IMG_0001.jpg"));
    Files.delete(frames());
    refuses(frames(), 3, "frames");
    refuses(job.resolve("01_FRAMES"), 3, "frames");
  }

  @Test
  void leavesAnotherJobsFoldersAlone() throws IOException {
    var other = Files.createDirectories(folder.resolve("other/.FrameWright/log"));
    refuses(other.resolve("new.csv"), 3, ".FrameWright");
  }

  @Test
  void saysWhatIsWrongWithAPlaceThatTakesNoFile() throws IOException {
    refuses(folder, 2, "folder");
    refuses(Path.of("/"), 2, "folder");
    refuses(folder.resolve("none/out.csv"), 2, folder.resolve("none").toString());
    refuses(folder.resolve("list.csv/out.csv"), 2, "list.csv");
    assertThat(Ran.run("list", job, "--replace").status()).isEqualTo(2);
  }

  @Test
  void keepsThePermissionsOfAFileAndGivesANewOneTheUsualOnes() throws IOException {
    assumeTrue(folder.getFileSystem().supportedFileAttributeViews().contains("posix"));
    var usual = Files.getPosixFilePermissions(Files.writeString(folder.resolve("usual"), ""));
    var file = folder.resolve("out.csv");
    assertThat(Ran.run("list", job, "--export", file).status()).isZero();
    assertThat(Files.getPosixFilePermissions(file)).isEqualTo(usual);

    var kept = PosixFilePermissions.fromString("rw-rw-r--");
    Files.setPosixFilePermissions(file, kept);
    assertThat(Ran.run("list", job, "--export", file, "--replace").status()).isZero();
    assertThat(Files.getPosixFilePermissions(file)).isEqualTo(kept);
  }

  @Test
  void showsTitlesInOneLineAndKeepsThemAsTheyAre() throws IOException {
    var title = "Coat\u001B[2J \u202Egnp.exe";
    var list = Files.writeString(folder.resolve("odd.csv"), "Look,Name\n1," + title + "\n");
    assertThat(Ran.run("list", job, "--import", list).out()).doesNotContain("\u001B", "\u202E");
    assertThat(Ran.run("list", job).out()).doesNotContain("\u001B", "\u202E").contains("\\u{1B}");
    assertThat(Ran.run("list", job, "--json").json().get(0).get("title").asText()).isEqualTo(title);
    var file = folder.resolve("out.csv");
    assertThat(Ran.run("list", job, "--export", file).status()).isZero();
    assertThat(file).content().contains(title);
  }
}
