package org.framewright.handoff.verify;

import static org.assertj.core.api.Assumptions.assumeThat;
import static org.framewright.AssertThat.assertThat;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.framewright.base.Progress;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Packages that are made to do harm: they are answered for, within bounds. */
@Tag("slow")
@net.jqwik.api.Tag("slow")
class HostilePackagesTest {
  private static final String MANIFEST = "manifest-sha256.txt";

  @TempDir private Path folder;
  private BagScene bag;

  @BeforeEach
  void aBag() throws Exception {
    bag = new BagScene(folder.resolve("bag"));
  }

  private static void pipe(Path path) throws Exception {
    assumeThat(File.separatorChar).as("there are no pipes here").isEqualTo('/');
    assertThat(new ProcessBuilder("mkfifo", path.toString()).start().waitFor()).isZero();
  }

  @Test
  void faultsAreBounded() throws Exception {
    bag.append(MANIFEST, "x\n".repeat(100_000));
    assertThat(bag.check().faults()).hasSize(100);
    assertThat(bag.check().whole()).isFalse();
  }

  @Test
  void warningsAreBounded() throws Exception {
    bag.version("0.97");
    bag.append(MANIFEST, bag.line("sha256", BagScene.FIRST).repeat(1_000));
    assertThat(bag.check().warnings()).hasSize(100);
    assertThat(bag.check().whole()).isTrue();
  }

  @Test
  void aManifestThatIsLargerThanAnyIsNotRead() throws Exception {
    Files.write(bag.folder().resolve(MANIFEST), new byte[(64 << 20) + 1]);
    assertThat(bag.problems()).contains(MANIFEST + ": this file is larger than 65536 kB");
  }

  @Test
  void aDeclarationThatIsLargerThanAnyIsNotRead() throws Exception {
    bag.append("bagit.txt", "\n".repeat(1 << 16));
    assertThat(bag.problems()).contains("bagit.txt: this file is larger than 64 kB");
  }

  @Test
  void aManifestThatIsAPipeOrAFolderIsAFault() throws Exception {
    Files.createDirectory(bag.folder().resolve("tagmanifest-sha256.txt"));
    assertThat(bag.problems())
        .isEqualTo(
            "in its manifest: tagmanifest-sha256.txt: this is a folder, and a plain file is needed"
                + " here");
    Files.delete(bag.folder().resolve("tagmanifest-sha256.txt"));
    pipe(bag.folder().resolve("tagmanifest-sha256.txt"));
    assertThat(bag.problems())
        .isEqualTo("in its manifest: tagmanifest-sha256.txt: this is neither a file nor a folder");
  }

  /** Reading a pipe would wait for whoever writes into it. */
  @Test
  void aPipeInThePlaceOfAFrameIsNotOpened() throws Exception {
    Files.delete(bag.folder().resolve(BagScene.FIRST));
    pipe(bag.folder().resolve(BagScene.FIRST));
    assertThat(bag.check().missing()).containsExactly(BagScene.FIRST);
    assertThat(bag.problems()).contains(BagScene.FIRST + ": this is neither a file nor a folder");
  }

  /** Nobody could read to the end of it. */
  @Test
  void whatIsBehindALinkIsNeverRead() throws Exception {
    assumeThat(Path.of("/dev/zero")).exists();
    var links = List.of(BagScene.FIRST, "bag-info.txt", "tagmanifest-sha512.txt");
    for (var link : links) {
      Files.deleteIfExists(bag.folder().resolve(link));
      SymbolicLinks.make(bag.folder().resolve(link), Path.of("/dev/zero"));
    }
    assertThat(bag.check().faults()).hasSize(3);
    assertThat(bag.problems()).contains("bag-info.txt: this is a link, and links are not followed");
    for (var link : links) {
      Files.delete(bag.folder().resolve(link));
    }
  }

  @Test
  void linksThatLeadRoundAreNotFollowed() throws Exception {
    SymbolicLinks.make(bag.folder().resolve("data/round"), bag.folder());
    assertThat(bag.problems())
        .isEqualTo("in its manifest: data/round: this is a link, and links are not followed");
  }

  @Test
  void aTagManifestThatNamesAFileBehindALinkFindsNothing() throws Exception {
    var outside = Files.createDirectory(folder.resolve("outside"));
    Files.writeString(outside.resolve("x"), "pixels");
    SymbolicLinks.make(bag.folder().resolve("out"), outside);
    bag.write("tagmanifest-sha256.txt", bag.line("sha256", MANIFEST) + bag.line("sha256", "out/x"));
    assertThat(bag.check().missing()).containsExactly("out/x");
  }

  @Test
  void pathsThatLeadOutAreFaultsInEveryKindOfList() throws Exception {
    var sum = "0".repeat(64);
    for (var path :
        List.of(
            "../secret",
            "/etc/passwd",
            "data/../../secret",
            "data/%2E%2E/../../secret",
            "~/secret",
            "..\\secret",
            "C:\\secret",
            "\\\\server\\share",
            "data//x",
            "data/./x")) {
      var other = new BagScene(folder.resolve("bag" + path.hashCode()));
      other.append(MANIFEST, sum + "  " + path + "\n");
      assertThat(other.problems())
          .as(path)
          .isEqualTo(
              "in its manifest: manifest-sha256.txt, line 3: this path leads out of the"
                  + " package");
      var list = Files.createDirectory(folder.resolve("list" + path.hashCode()));
      Files.writeString(list.resolve("SHA256SUMS"), sum + "  " + path + "\n");
      assertThat(OpenPackage.check(list).orElseThrow().faults())
          .as(path)
          .extracting(fault -> fault.what())
          .containsExactly("this path leads out of the package");
    }
  }

  @Test
  void foldersInFoldersAreLookedIntoToABound() throws Exception {
    bag.write("data/" + "d/".repeat(80) + "x", "deep");
    bag.write("bag-info.txt", "");
    assertThat(bag.problems()).contains("this folder is too deep to look into");
  }

  @Test
  void filesAreLookedAtToABound() throws Exception {
    var listing = Listing.of(bag.folder(), 3);
    assertThat(listing.isAll()).isFalse();
    assertThat(listing.files().size() + listing.folders().size()).isEqualTo(3);
    assertThat(Listing.of(bag.folder()).isAll()).isTrue();
  }

  @Test
  void aPathThatIsLongerThanAnyIsAFault() throws Exception {
    bag.append(MANIFEST, "0".repeat(64) + "  data/" + "x".repeat(1 << 16) + "\n");
    assertThat(bag.problems())
        .isEqualTo(
            "in its manifest: manifest-sha256.txt, line 3: this path leads out of the package");
  }

  @Test
  void aFileThatMayNotBeReadIsAFaultAndTheOthersAreCompared() throws Exception {
    var locked = bag.folder().resolve(BagScene.FIRST).toFile();
    assumeThat(locked.setReadable(false) && !Files.isReadable(locked.toPath()))
        .as("whoever runs this may read everything")
        .isTrue();
    assertThat(bag.problems()).isEqualTo("in its manifest: data/a b.JPG: no permission for it");
    assertThat(bag.check().files()).isEqualTo(1);
  }

  @Test
  void whoeverStopsItGetsNoVerdict() throws Exception {
    var opened = OpenPackage.in(bag.folder()).orElseThrow();
    assertThat(opened.read(Progress.until(() -> true))).isEqualTo(new Verified.Cancelled());
    var asked = new int[1];
    assertThat(opened.read(Progress.until(() -> ++asked[0] > 1)))
        .as("within the first file")
        .isEqualTo(new Verified.Cancelled());
    assertThat(opened.read(Progress.NONE)).isInstanceOf(Verified.Read.class);
  }

  @Test
  void howFarItIsIsToldInMebibytesToTheEnd() throws Exception {
    Files.write(bag.folder().resolve(BagScene.FIRST), new byte[(3 << 20) + 5]);
    var steps = new ArrayList<String>();
    OpenPackage.in(bag.folder())
        .orElseThrow()
        .read((done, total) -> steps.add(done + " of " + total));
    assertThat(steps).containsExactly("1 of 3", "2 of 3", "3 of 3");
  }

  /** Whatever the bytes of a list: an answer, and no file of another folder in it. */
  @Property(tries = 60)
  void anyBytesGetAnAnswer(@ForAll @Size(max = 200) byte[] bytes) throws Exception {
    var place = Files.createTempDirectory("hostile");
    try {
      var made = new BagScene(place.resolve("bag"));
      for (var file :
          List.of("bagit.txt", "bag-info.txt", "fetch.txt", MANIFEST, "tagmanifest-md5.txt")) {
        var before = Files.readAllBytes(place.resolve("bag/bagit.txt"));
        Files.write(made.folder().resolve(file), bytes);
        assertThat(made.check().whole()).isIn(true, false);
        Files.write(made.folder().resolve("bagit.txt"), before);
      }
      var list = Files.createDirectory(place.resolve("list"));
      Files.write(list.resolve("x.sha256"), bytes);
      assertThat(OpenPackage.check(list).orElseThrow().files()).isZero();
    } finally {
      remove(place.toFile());
    }
  }

  private static void remove(File file) {
    for (var inside : Objects.requireNonNullElse(file.listFiles(), new File[0])) {
      remove(inside);
    }
    assertThat(file.delete()).isTrue();
  }

  @Test
  void namesThatActOnATerminalAreTakenAsTheyAre() throws Exception {
    assumeThat(File.separatorChar).as("names have no such letters here").isEqualTo('/');
    bag.write("data/\u001B[2J.JPG", "odd");
    bag.write("bag-info.txt", "");
    assertThat(bag.check().unlisted()).containsExactly("data/\u001B[2J.JPG");
  }

  @Test
  void aListInAnotherEncodingThanItSaysIsAFault() throws Exception {
    Files.write(
        bag.folder().resolve(MANIFEST), "x  data/\u00E9\n".getBytes(StandardCharsets.ISO_8859_1));
    assertThat(bag.problems())
        .contains("manifest-sha256.txt, line 1: this line is no text in UTF-8");
  }
}
