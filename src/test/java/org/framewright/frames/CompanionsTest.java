package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which files go with a frame, which are frames of their own, and which are neither. */
class CompanionsTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);

  @TempDir Path root;
  private final TestCamera camera = new TestCamera("Studio Body A", "A-1001");
  private Instant now = Instant.now().plusSeconds(3600);
  private FrameScanner scanner;

  private void write(String name, byte[] content) throws IOException {
    var file = root.resolve(name);
    Files.createDirectories(file.getParent());
    Files.write(file, content);
  }

  private void write(String... names) throws IOException {
    for (var name : names) {
      write(name, new byte[] {1, 2, 3});
    }
  }

  private FrameScan scan() throws IOException {
    if (scanner == null) {
      scanner = new FrameScanner(root, () -> now);
    }
    now = now.plusSeconds(10);
    return scanner.scan();
  }

  private static List<String> names(Frame frame) {
    return frame.files().stream().map(file -> file.path().getFileName().toString()).toList();
  }

  private static List<String> notUnderstood(FrameScan scan) {
    return scan.notUnderstood().stream().map(one -> one.file().getFileName().toString()).toList();
  }

  @Test
  void everyFileThatBearsAFramesNameGoesWithIt() throws IOException {
    write("A_0001.CR2", camera.raw(NOON, 300));
    write("A_0001.JPG", camera.jpeg(NOON));
    write("A_0001.xmp", TestCamera.sidecar("3"));
    write("A_0001.CR2.xmp", TestCamera.sidecar("4"));
    write("A_0001.WAV", "a_0001.txt", "A_0001.CR2.settings", "A_0001.JPG.out.xml", "A_0001");
    var scan = scan();
    var frame = scan.frames().getFirst();
    assertThat(names(frame))
        .containsExactly(
            "A_0001.CR2",
            "A_0001.JPG",
            "A_0001.CR2.xmp",
            "A_0001.xmp",
            "A_0001",
            "A_0001.CR2.settings",
            "A_0001.JPG.out.xml",
            "A_0001.WAV",
            "a_0001.txt");
    assertThat(frame.files().stream().map(frame::ending))
        .containsExactly(
            ".CR2",
            ".JPG",
            ".CR2.xmp",
            ".xmp",
            "",
            ".CR2.settings",
            ".JPG.out.xml",
            ".WAV",
            ".txt");
    assertThat(frame.complete()).isTrue();
    assertThat(frame.isClip()).isFalse();
    assertThat(scan.files()).isEqualTo(9);
    assertThat(scan.notUnderstood()).isEmpty();
    assertThat(scan.problems()).isEmpty();
  }

  @Test
  void namesThatOnlyBeginLikeAFramesDoNotGoWithIt() throws IOException {
    write("A_0001.JPG", camera.jpeg(NOON));
    write("A_00010.WAV", "A_0001-b.txt", "B_0001.WAV", "A_0001M01.XML");
    write("sub/A_0001.WAV");
    var scan = scan();
    assertThat(names(scan.frames().getFirst())).containsExactly("A_0001.JPG");
    assertThat(notUnderstood(scan))
        .containsExactlyInAnyOrder(
            "A_00010.WAV", "A_0001-b.txt", "B_0001.WAV", "A_0001M01.XML", "A_0001.WAV");
  }

  @Test
  void aCompanionWaitsForItsFrameAndStaysBehindWhenThatGoes() throws IOException {
    write("A_0001.CR2.settings", "A_0001.WAV", "A_0001.notes.txt");
    assertThat(notUnderstood(scan())).hasSize(3);
    write("A_0001.CR2", camera.raw(NOON, 300));
    var there = scan();
    assertThat(there.notUnderstood()).isEmpty();
    assertThat(there.frames()).singleElement().returns(4, frame -> frame.files().size());
    Files.delete(root.resolve("A_0001.notes.txt"));
    assertThat(scan().frames()).singleElement().returns(3, frame -> frame.files().size());
    Files.delete(root.resolve("A_0001.CR2"));
    var gone = scan();
    assertThat(gone.frames()).isEmpty();
    assertThat(gone.files()).isZero();
    assertThat(notUnderstood(gone)).hasSize(2);
    Files.delete(root.resolve("A_0001.WAV"));
    assertThat(notUnderstood(scan())).containsExactly("A_0001.CR2.settings");
  }

  @Test
  void aWrittenCompanionIsSeenAnewAndNeverMakesTheFrameIncomplete() throws IOException {
    write("A_0001.JPG", camera.jpeg(NOON));
    write("A_0001.WAV");
    scan();
    write("A_0001.WAV", new byte[5000]);
    var frame = scan().frames().getFirst();
    assertThat(frame.complete()).isTrue();
    assertThat(frame.files().getLast().size()).isEqualTo(5000);
  }

  @Test
  void aClipIsAFrameOfItsOwnKind() throws IOException {
    write("A_0001.JPG", camera.jpeg(NOON));
    write("C0001.MP4", TestFormats.clips().get("a.mp4"));
    write("C0001M01.XML", "C0001.THM");
    write("D_0001.xmp", TestCamera.sidecar("5"));
    write("D_0001.MXF", TestFormats.clips().get("a.mxf"));
    var scan = scan();
    assertThat(scan.frames()).extracting(Frame::stem).containsExactly("A_0001", "C0001", "D_0001");
    assertThat(scan.frames()).extracting(Frame::isClip).containsExactly(false, true, true);
    assertThat(names(scan.frames().get(1)))
        .containsExactly("C0001.MP4", "C0001.THM", "C0001M01.XML");
    assertThat(scan.frames().get(1).ending(scan.frames().get(1).files().get(2)))
        .isEqualTo("M01.XML");
    assertThat(scan.frames().get(2).capture().rating()).isEqualTo(OptionalInt.of(5));
    var tally =
        Attribution.assign(
            scan.frames(),
            Map.of(),
            List.of(),
            List.of(),
            frame ->
                Optional.of(
                    new Place(frame.stem().startsWith("D") ? "002" : "001", Optional.of("F"))));
    assertThat(tally.frames()).isEqualTo(1);
    assertThat(tally.clips()).isEqualTo(2);
    assertThat(tally.files()).isEqualTo(6);
    assertThat(tally.bySetup().get("001").frames()).isEqualTo(1);
    assertThat(tally.bySetup().get("001").byView()).containsEntry("F", 1);
    assertThat(tally.bySetup().get("001").clips()).isEqualTo(1);
    assertThat(tally.bySetup().get("002").frames()).isZero();
    assertThat(tally.bySetup().get("002").byView()).isEmpty();
    assertThat(tally.bySetup().get("002").clips()).isEqualTo(1);
  }

  /** As telephones write them: a picture, and the seconds around it under the same name. */
  @Test
  void aClipThatBearsAPicturesNameIsAPartOfItsFrame() throws IOException {
    write("A_0001.HEIC", TestContainers.heif());
    write("A_0001.MOV", TestFormats.clips().get("keys.mov"));
    var scan = scan();
    assertThat(scan.frames())
        .singleElement()
        .returns(false, Frame::isClip)
        .returns(true, Frame::complete)
        .returns(2, frame -> frame.knownAs().size())
        .returns(Optional.of(TestContainers.TIME), frame -> frame.capture().time());
    write("A_0001.MOV", new byte[] {0, 0, 0, 8, 'w', 'i', 'd', 'e', 0, 0, 9, 0, 'm'});
    assertThat(scan().frames()).singleElement().returns(false, Frame::complete);
  }

  @Test
  void whatIsNotUnderstoodIsNamedWithItsReason() throws IOException {
    write("a.xyz", "b.xmp", "c.wav", "noending", "d.JPG.part", "e.averyveryverylongending");
    Files.createDirectory(root.resolve("folder"));
    write("folder/IMG_1.heicx");
    var why =
        scan().notUnderstood().stream()
            .collect(
                java.util.stream.Collectors.toMap(
                    one -> one.file().getFileName().toString(), NotUnderstood::why));
    assertThat(why.get("a.xyz"))
        .isEqualTo(
            "no picture or clip that is known here ends in .XYZ, and no frame here has its"
                + " name");
    assertThat(why.get("b.xmp")).contains("sidecar");
    assertThat(why.get("c.wav")).contains("voice memo");
    assertThat(why.get("noending")).contains("no ending");
    assertThat(why.get("d.JPG.part")).contains("not copied to its end");
    assertThat(why.get("e.averyveryverylongending")).contains(".AVERYVERYVER...");
    assertThat(why.get("IMG_1.heicx")).contains(".HEICX");
    assertThat(why).hasSize(7);
  }

  @Test
  void whatIsBeingCopiedIsNobodysCompanion() throws IOException {
    write("A_0001.JPG", camera.jpeg(NOON));
    write("A_0001.CR2.part", "A_0001.JPG.crdownload");
    var scan = scan();
    assertThat(scan.files()).isEqualTo(1);
    assertThat(notUnderstood(scan)).hasSize(2);
    Files.move(root.resolve("A_0001.CR2.part"), root.resolve("A_0001.CR2"));
    assertThat(notUnderstood(scan())).containsExactly("A_0001.JPG.crdownload");
  }

  @Test
  void linksAreNamedAndNotFollowed() throws IOException {
    write("real/A_0001.JPG", camera.jpeg(NOON));
    Path link = root.resolve("A_0001.JPG");
    try {
      SymbolicLinks.make(link, root.resolve("real/A_0001.JPG"));
      SymbolicLinks.make(root.resolve("again"), root.resolve("real"));
    } catch (IOException | UnsupportedOperationException e) {
      assumeTrue(false, "this system makes no links");
    }
    var scan = scan();
    assertThat(scan.frames()).hasSize(1);
    assertThat(notUnderstood(scan)).containsExactly("A_0001.JPG", "again");
    assertThat(scan.notUnderstood().getFirst().why()).contains("link");
    Files.delete(link);
    write("A_0001.JPG", camera.jpeg(NOON.plusSeconds(1)));
    assertThat(scan().frames()).hasSize(2);
    assertThat(notUnderstood(scan())).containsExactly("again");
    Files.delete(root.resolve("again"));
    assertThat(scan().notUnderstood()).isEmpty();
  }

  @Test
  void whatSystemsLeaveBehindIsNoMatter() throws IOException {
    write(
        ".DS_Store",
        "._A_0001.JPG",
        "Thumbs.db",
        "desktop.ini",
        "x.tmp",
        "M0100.CTG",
        "AUTPRINT.MRK",
        "NC_FLLST.DAT",
        ".hidden/a.xyz",
        "@eaDir/A_0001.JPG/thumb.jpg",
        "$RECYCLE.BIN/A_0002.JPG",
        "#recycle/A_0003.JPG",
        "System Volume Information/a.dat",
        "__MACOSX/A_0004.JPG");
    var scan = scan();
    assertThat(scan.frames()).isEmpty();
    assertThat(scan.notUnderstood()).isEmpty();
  }

  @Test
  void aRawOfUnknownContentIsAFrameWithoutATime() throws IOException {
    int size = 3000;
    for (var name : List.of("a.kdc", "b.RAW", "c.bay", "d.mts", "e.r3d", "f.dcs")) {
      write(name, TestContainers.filled(size++));
    }
    var scan = scan();
    assertThat(scan.frames()).hasSize(6).allMatch(Frame::complete);
    assertThat(scan.frames()).extracting(Frame::id).doesNotHaveDuplicates();
    assertThat(scan.problems())
        .hasSize(6)
        .allMatch(problem -> problem.what().contains("capture time cannot be read"));
  }

  @Test
  void aRawOfUnknownContentThatIsEmptyOrHollowIsNotWhole() throws IOException {
    write("a.kdc", new byte[0]);
    write("b.kdc", new byte[3000]);
    write("c.cr2", TestContainers.filled(3000));
    assertThat(scan().frames()).hasSize(3).noneMatch(Frame::complete);
  }

  @Test
  void twoFilesWhoseNamesDifferInLetterCaseOnlyKeepTheirCompanionsApart() throws IOException {
    write("a.jpg", camera.jpeg(NOON));
    write("A.jpg", camera.jpeg(NOON.plusSeconds(1)));
    write("a.wav", "A.wav");
    assumeTrue(
        root.toFile().list().length == 4, "this file system does not distinguish letter case");
    write("a.jpg.settings");
    var scan = scan();
    assertThat(scan.frames()).extracting(Frame::stem).containsExactly("A", "a");
    assertThat(names(scan.frames().get(0))).containsExactly("A.jpg", "A.wav");
    assertThat(names(scan.frames().get(1))).containsExactly("a.jpg", "a.jpg.settings", "a.wav");
    write("aA.jpg", camera.jpeg(NOON.plusSeconds(2)));
    write("Aa.jpg", camera.jpeg(NOON.plusSeconds(3)));
    write("AA.wav");
    assertThat(notUnderstood(scan())).containsExactly("AA.wav");
  }

  @Test
  void aStemInOtherLettersThatAreTheSameToADiskGivesTheEnding() {
    var frame = new Frame(new FrameId("x"), root, "caf\u00E9.1", List.of(), Capture.UNKNOWN, true);
    assertThat(frame.ending(file("cafe\u0301.1.CR3.xmp"))).isEqualTo(".CR3.xmp");
    assertThat(frame.ending(file("CAF\u00C9.1.wav"))).isEqualTo(".wav");
    assertThat(frame.ending(file("cafe\u0301.1"))).isEmpty();
    assertThat(frame.ending(file("other.wav"))).isEqualTo(".wav");
  }

  private FrameFile file(String name) {
    return new FrameFile(root.resolve(name), 1, now, FileRole.COMPANION);
  }
}
