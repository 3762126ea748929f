package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Folders as they come back: links, pipes, rubbish. */
@Timeout(120)
class ReturnsTest {
  private static final String SELECT = "KVO_001_F_0001";

  @TempDir private Path folder;
  private Job job;
  private Path back;

  @BeforeEach
  void aHandOffOfOneFile() throws Exception {
    job = Scene.ofOneFile(folder).job();
    assertThat(Scene.deliver(job, folder.resolve("out"))).isInstanceOf(Delivery.Delivered.class);
    back = Files.createDirectory(folder.resolve("back"));
  }

  private Returns returns() throws Exception {
    return Returns.of(job, back, OptionalInt.empty());
  }

  private String extra() throws Exception {
    var extras = returns().extras();
    return extras.stream().map(e -> e.file() + ": " + e.why()).collect(Collectors.joining("\n"));
  }

  private Returns.State state() throws Exception {
    return returns().answers().getFirst().state();
  }

  @Test
  void linksAreNamedAndNotFollowed() throws Exception {
    Files.writeString(folder.resolve("secret"), "secret");
    Files.createSymbolicLink(back.resolve(SELECT + "_v01.tif"), folder.resolve("secret"));
    Files.createSymbolicLink(back.resolve("round"), back);
    Files.createSymbolicLink(back.resolve("nowhere"), Path.of("nowhere"));
    assertThat(extra())
        .contains(SELECT + "_v01.tif: this is a link")
        .contains("round: this is a link")
        .contains("nowhere: this is a link");
    assertThat(state()).isEqualTo(Returns.State.MISSING);
  }

  @Test
  void aFolderThatIsALinkItselfIsLookedInto() throws Exception {
    Files.writeString(back.resolve(SELECT + "_v01.tif"), "retouched");
    var link = Files.createSymbolicLink(folder.resolve("link"), back);
    assertThat(Returns.of(job, link, OptionalInt.empty()).complete()).isTrue();
  }

  @Test
  void aPipeIsNamedAndNotOpened() throws Exception {
    HandOffRecordsTest.pipe(back.resolve(SELECT + ".tif"));
    assertThat(extra()).isEqualTo(SELECT + ".tif: this is neither a file nor a folder");
  }

  @Test
  void anEmptyFileIsNoAnswer() throws Exception {
    Files.createFile(back.resolve(SELECT + "_v01.tif"));
    assertThat(extra()).isEqualTo(SELECT + "_v01.tif: the file is empty");
    assertThat(state()).isEqualTo(Returns.State.MISSING);
  }

  @Test
  void aFileOfAnotherSizeIsNotReadToKnowThatItChanged() throws Exception {
    try (var sparse = new RandomAccessFile(back.resolve(SELECT + ".JPG").toFile(), "rw")) {
      sparse.setLength(1L << 40);
    }
    assertThat(state()).isEqualTo(Returns.State.CHANGED);
  }

  @Test
  void aFileOfTheSameSizeIsCompared() throws Exception {
    var copy = folder.resolve("out/data").resolve(SELECT + ".JPG");
    var bytes = Files.readAllBytes(copy);
    Files.write(back.resolve(SELECT + ".JPG"), bytes);
    assertThat(state()).isEqualTo(Returns.State.UNTOUCHED);
    bytes[bytes.length / 2] ^= 1;
    Files.write(back.resolve(SELECT + ".JPG"), bytes);
    assertThat(state()).isEqualTo(Returns.State.CHANGED);
  }

  @Test
  void foldersBelowAreLookedIntoAndHiddenOnesAndPapersAreNot() throws Exception {
    Files.writeString(
        Files.createDirectories(back.resolve("a/b")).resolve(SELECT + "_v01.tif"), "x");
    for (var hidden : new String[] {".Trashes", "System Volume Information", "$RECYCLE.BIN"}) {
      Files.writeString(Files.createDirectory(back.resolve(hidden)).resolve("x.tif"), "x");
    }
    for (var paper : new String[] {"README.txt", "Index.csv", ".DS_Store", "SHA256SUMS"}) {
      Files.writeString(back.resolve(paper), "x");
    }
    assertThat(extra()).isEmpty();
    assertThat(returns().answers().getFirst().files())
        .containsExactly("a/b/" + SELECT + "_v01.tif");
    assertThat(returns().complete()).isTrue();
  }

  @Test
  void aFolderThatIsTooDeepIsNamed() throws Exception {
    var deep = back;
    for (int i = 0; i < 80; i++) {
      deep = Files.createDirectory(deep.resolve("d"));
    }
    assertThat(extra()).contains("this folder is too deep");
  }

  @Test
  void namesThatAreNotUtf8AreNamed() throws Exception {
    var made =
        new ProcessBuilder("sh", "-c", "printf x > \"$(printf 'a\\377.tif')\"")
            .directory(back.toFile())
            .start();
    assertThat(made.waitFor()).isZero();
    assertThat(returns().extras()).hasSize(1);
  }

  @Test
  void nothingIsWritten() throws Exception {
    Files.writeString(back.resolve(SELECT + "_v01.tif"), "retouched");
    var recording = org.framewright.disk.Recording.on(folder);
    var seen = Scene.open(recording.root().resolve(job.name()));
    recording.clear();
    Returns.of(seen, recording.root().resolve("back"), OptionalInt.empty());
    assertThat(recording.ops()).isEmpty();
  }

  @Test
  void aSelectThatWasHandedOffTwiceIsKnownByBothItsCopies() throws Exception {
    var frame = Scene.handOff(job).rated(4).selects().getFirst().frame().files().getFirst();
    Files.writeString(frame.path().resolveSibling(frame.path().getFileName() + ".xmp"), "<x/>");
    var second = Scene.deliver(job, folder.resolve("second"));
    assertThat(second).isInstanceOf(Delivery.Delivered.class);
    Files.copy(folder.resolve("out/data").resolve(SELECT + ".JPG"), back.resolve(SELECT + ".JPG"));
    assertThat(returns().answers()).hasSize(1);
    assertThat(state()).isEqualTo(Returns.State.UNTOUCHED);
  }

  @Test
  void aJobThatHandedNothingOffSaysSo() throws Exception {
    var other = Scene.ofOneFile(Files.createDirectory(folder.resolve("other"))).job();
    assertThatThrownBy(() -> Returns.of(other, back, OptionalInt.empty()))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("nothing was handed off");
    assertThatThrownBy(() -> Returns.of(job, back, OptionalInt.of(5)))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no hand-off 5");
  }

  @Test
  void aManifestThatCameBackIsCheckedToo() throws Exception {
    var returns = Returns.of(job, folder.resolve("out"), OptionalInt.empty());
    assertThat(returns.bag()).isPresent();
    assertThat(returns.bag().get().clean()).isTrue();
    assertThat(returns().bag()).isEmpty();
  }
}
