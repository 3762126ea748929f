package org.framewright.cli;

import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The check of any package, on one that {@code deliver} made and on others. */
@Tag("slow")
class VerifyCommandTest {
  private static final String FRAME = "data/KVO_001_F_0001.JPG";

  @TempDir private Path folder;
  private Path sent;

  @BeforeEach
  void deliver() throws IOException {
    sent = new CommandScene(folder).place(CommandScene.Case.DELIVER).resolve("first");
    assertThat(sent.resolve(FRAME)).exists();
  }

  private static Ran verify(Object... words) {
    var all = new Object[1 + words.length];
    all[0] = "verify";
    System.arraycopy(words, 0, all, 1, words.length);
    return run(all);
  }

  @Test
  void ourOwnPackageIsWhole() throws Exception {
    var ran = verify(sent);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .isEqualTo(
            """
            BagIt: manifest-sha256.txt, tagmanifest-sha256.txt
            9 files compared, all as they should be: whole
            """
                .replace("\n", System.lineSeparator()));
    var json = verify(sent, "--json").json();
    assertThat(json.path("kind").asText()).isEqualTo("bagit");
    assertThat(json.path("whole").asBoolean()).isTrue();
    assertThat(json.path("files").asInt()).isEqualTo(9);
    for (var key : List.of("missing", "different", "unlisted", "faults")) {
      assertThat(json.path(key).isArray()).as(key).isTrue();
      assertThat(json.path(key)).as(key).isEmpty();
    }
  }

  @Test
  void oneChangedByteIsToldByTheFilesName() throws Exception {
    var bytes = Files.readAllBytes(sent.resolve(FRAME));
    bytes[bytes.length / 2] ^= 1;
    Files.write(sent.resolve(FRAME), bytes);
    var ran = verify(sent);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.out())
        .contains("not what its manifest says: " + FRAME)
        .contains("9 files compared: NOT WHOLE, 1 different");
    var json = verify(sent, "--json").json();
    assertThat(json.path("whole").asBoolean()).isFalse();
    assertThat(json.path("different").get(0).asText()).isEqualTo(FRAME);
  }

  @Test
  void aMissingFileIsKnownBeforeAnythingIsRead() throws Exception {
    Files.delete(sent.resolve(FRAME));
    var ran = verify(sent);
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.err())
        .startsWith("Known before reading: 1 missing, 1 fault of the package itself.");
    assertThat(ran.out())
        .contains("in its manifest, not there: " + FRAME)
        .contains("bag-info.txt: Payload-Oxum says ");
    assertThat(verify(sent, "--json").json().path("missing").get(0).asText()).isEqualTo(FRAME);
  }

  @Test
  void aFileMoreIsTold() throws Exception {
    Files.writeString(sent.resolve("data/more.JPG"), "more");
    var ran = verify(sent, "--json");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.json().path("unlisted").get(0).asText()).isEqualTo("data/more.JPG");
    assertThat(ran.json().path("missing")).isEmpty();
  }

  @Test
  void nothingIsWrittenIntoThePackage() throws Exception {
    var before = CommandScene.contents(sent);
    verify(sent);
    assertThat(CommandScene.contents(sent)).isEqualTo(before);
  }

  @Test
  void aFolderWithoutListsIsNoPackage() throws Exception {
    var ran = verify(sent.resolve("data"));
    assertThat(ran.status()).isEqualTo(2);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err())
        .startsWith("framewright: there is no package in " + sent.resolve("data"))
        .contains("Give the folder that has bagit.txt");
    assertThat(verify(sent.resolve("nothing")).status()).isEqualTo(2);
    var file = verify(sent.resolve("bagit.txt"));
    assertThat(file.status()).isEqualTo(2);
    assertThat(file.err()).contains("this is no folder");
    assertThat(verify().status()).isEqualTo(2);
  }

  @Test
  void aListOfChecksumsAndAMediaHashListAreKindsOfTheirOwn() throws Exception {
    var list = Files.createDirectory(folder.resolve("list"));
    Files.copy(sent.resolve(FRAME), Files.createDirectory(list.resolve("data")).resolve("x"));
    var sums = Files.readAllLines(sent.resolve("SHA256SUMS"));
    var sum = sums.stream().filter(line -> line.endsWith(FRAME)).findFirst().orElseThrow();
    Files.writeString(list.resolve("SHA256SUMS"), sum.replace(FRAME, "data/x") + "\n");
    var ran = verify(list, "--json");
    assertThat(ran.status()).isZero();
    assertThat(ran.json().path("kind").asText()).isEqualTo("sha256sum");

    var place = sent.getParent();
    var copied =
        run(
            "copy",
            place.resolve(CommandScene.JOB),
            "--from",
            place.resolve("card"),
            "--to",
            place.resolve("backup"),
            "--mhl");
    assertThat(copied.status()).as(copied.err()).isZero();
    var mhl = verify(place.resolve("backup"), "--json");
    assertThat(mhl.status()).as(mhl.out()).isZero();
    assertThat(mhl.json().path("kind").asText()).isEqualTo("mhl");
    Files.writeString(place.resolve("backup/DCIM/100STUDA/A_0001.JPG"), "JPEG");
    assertThat(verify(place.resolve("backup")).status()).isEqualTo(1);
  }

  /** What the package itself tells those who have no program of ours. */
  @Test
  void theReadmeTellsOneLineForEachSystem() throws Exception {
    var readme = Files.readString(sent.resolve("README.txt"));
    assertThat(readme.lines())
        .contains("  sha256sum -c SHA256SUMS", "  shasum -a 256 -c SHA256SUMS")
        .filteredOn(line -> line.contains("Get-FileHash"))
        .singleElement()
        .asString()
        .contains("Get-Content SHA256SUMS", "-LiteralPath $name", "-Algorithm SHA256");
  }

  @Test
  void theLineForLinuxFindsAChangedByte() throws Exception {
    assumeThat(Path.of("/usr/bin/sha256sum")).as("sha256sum is not installed").exists();
    assertThat(shell("sha256sum -c SHA256SUMS")).isZero();
    Files.write(sent.resolve(FRAME), "other".getBytes(StandardCharsets.UTF_8));
    assertThat(shell("sha256sum -c SHA256SUMS")).isNotZero();
  }

  private int shell(String line) throws Exception {
    var process =
        new ProcessBuilder("sh", "-c", line)
            .directory(sent.toFile())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("told").toFile())
            .start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return process.exitValue();
  }
}
