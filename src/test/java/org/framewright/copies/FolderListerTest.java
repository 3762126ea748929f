package org.framewright.copies;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.framewright.base.Progress;
import org.framewright.base.Sha256;
import org.framewright.base.Text;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FolderListerTest {
  @TempDir Path temp;
  private Path root;

  @BeforeEach
  void makeRoot() throws IOException {
    root = Files.createDirectory(temp.toRealPath().resolve("A1"));
  }

  private Path file(String name, String content) throws IOException {
    var file = root.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, content);
  }

  private Listing list() throws IOException {
    return FolderLister.list(root, Set.of(), new TestVolumes().disk(temp, "card"), Progress.NONE);
  }

  @Test
  void listsEveryRegularFileHiddenOnesAndOtherPeoplesToo() throws IOException {
    for (var name :
        new String[] {
          "DCIM/100EOS/IMG_1.CR3",
          "DCIM/100EOS/IMG_1.WAV",
          "DCIM/100EOS/IMG_2.tmp",
          "MISC/INDEX.CTG",
          ".hidden/.deeper/IMG_9.JPG",
          "FOUND.000/FILE0000.CHK",
          "LOST.DIR/12",
          ".Trashes/501/IMG_3.JPG",
          "$RECYCLE.BIN/IMG_4.JPG",
          "PRIVATE/AVCHD/BDMV/INDEX.BDM"
        }) {
      file(name, name);
    }
    var listing = list();
    assertThat(listing.isWhole()).isTrue();
    assertThat(listing.litter()).isEmpty();
    assertThat(listing.files()).hasSize(10).extracting(Listed::name).contains("LOST.DIR/12");
  }

  @Test
  void onlyWhatSystemsMakeByExactNameIsLitter() throws IOException {
    file(".DS_Store", "x");
    file("DCIM/Thumbs.db", "x");
    file("desktop.ini", "x");
    file(".Spotlight-V100/store", "x");
    file("System Volume Information/IndexerVolumeGuid", "x");
    file("DCIM/THUMBS.DB", "not the exact name");
    file("DCIM/.Spotlight-V100/IMG_1.JPG", "not at the top");
    file(".fseventsd/IMG_2.JPG", "a picture, wherever it lies");
    var listing = list();
    assertThat(listing.litter())
        .containsExactly(
            ".DS_Store",
            ".Spotlight-V100/",
            ".fseventsd/",
            "DCIM/Thumbs.db",
            "System Volume Information/",
            "desktop.ini");
    assertThat(listing.files())
        .extracting(Listed::name)
        .containsExactly(
            ".fseventsd/IMG_2.JPG", "DCIM/.Spotlight-V100/IMG_1.JPG", "DCIM/THUMBS.DB");
  }

  /**
   * What a comparison leaves out a copy leaves out too, and the other way round; so that no copy of
   * a card lacks a file that a comparison asks for.
   */
  @Test
  void aCopyLeavesOutWhatAComparisonLeavesOut() throws IOException {
    for (var name :
        new String[] {
          "lost+found/#12",
          "FOUND.000/FILE0000.CHK",
          ".Trashes/501/IMG_3.JPG",
          ".framewright/log/other.jsonl",
          "DCIM/.framewright/kept",
          "DCIM/.fseventsd/IMG_1.JPG",
          "DCIM/System Volume Information/x",
          "System Volume Information/IndexerVolumeGuid",
          "System Volume Information/IMG_8.JPG",
          ".Spotlight-V100/Store-V2/0.index",
          "DCIM/.DS_Store",
          "thumbs.db",
          ".framewright-copy-00112233445566aa-7.part",
          ".framewright-copy-7.part"
        }) {
      file(name, name);
    }
    file("IMG_1.JPG", "x");
    file("._IMG_1.JPG", "\0\5\26\7 and more");
    file("._IMG_2.JPG", "a picture with an odd name");
    var listing = list();
    var plan = CopyPlan.of(root, List.of(temp.resolve("copy")));
    assertThat(plan.files())
        .extracting(file -> file.path().toString().replace('\\', '/'))
        .containsExactlyInAnyOrderElementsOf(listing.files().stream().map(Listed::name).toList())
        .contains("lost+found/#12", "DCIM/.fseventsd/IMG_1.JPG", "thumbs.db", "._IMG_2.JPG")
        .contains(".framewright/log/other.jsonl", ".framewright-copy-7.part")
        .doesNotContain("DCIM/.DS_Store", "._IMG_1.JPG");
    assertThat(plan.litter())
        .isEqualTo(listing.litter())
        .contains(".framewright-copy-00112233445566aa-7.part", "System Volume Information/");
    assertThat(plan.leftOut()).isEqualTo(listing.troubles());
  }

  /** What such a file begins with: RFC 1740, appendix B. */
  @Test
  void aDotUnderscoreFileIsLitterOnlyBesideItsFileAndOnlyIfItIsOne() throws IOException {
    file("IMG_1.JPG", "x");
    file("._IMG_1.JPG", "\0\5\26\7 and more");
    file("IMG_2.JPG", "x");
    file("._IMG_2.JPG", "a picture with an odd name");
    file("._IMG_3.JPG", "\0\5\26\7 whose file is gone");
    var listing = list();
    assertThat(listing.litter()).containsExactly("._IMG_1.JPG");
    assertThat(listing.files()).extracting(Listed::name).contains("._IMG_2.JPG", "._IMG_3.JPG");
  }

  @Test
  void linksAndPipesAreNamedAndMakeTheListingDoubtful() throws Exception {
    file("IMG_1.JPG", "x");
    SymbolicLinks.make(root.resolve("link"), temp);
    SymbolicLinks.make(root.resolve("loop"), root);
    var listing = list();
    assertThat(listing.isWhole()).isFalse();
    assertThat(listing.troubles()).hasSize(2).allMatch(one -> one.what().contains("a link"));
    assertThat(listing.files()).hasSize(1);
  }

  @Test
  void aFolderThatCannotBeOpenedIsTold() throws IOException {
    Assumptions.assumeFalse(
        "root".equals(System.getProperty("user.name")), "nothing is locked for root");
    file("DCIM/IMG_1.JPG", "x");
    Files.setPosixFilePermissions(root.resolve("DCIM"), Set.of());
    try {
      assertThat(list().isWhole()).isFalse();
    } finally {
      Files.setPosixFilePermissions(
          root.resolve("DCIM"), PosixFilePermissions.fromString("rwx------"));
    }
  }

  @Test
  void foldersThatLieTooDeepAreToldAndNotEntered() throws IOException {
    var deep = root;
    for (int i = 0; i < 80; i++) {
      deep = Files.createDirectory(deep.resolve("d"));
    }
    Files.writeString(deep.resolve("IMG_1.JPG"), "x");
    var listing = list();
    assertThat(listing.isWhole()).isFalse();
    assertThat(listing.files()).isEmpty();
  }

  @Test
  void aLaterListingTellsWhatIsNewChangedAndGone() throws IOException {
    file("a.jpg", "x");
    file("b.jpg", "x");
    file("c.jpg", "x");
    var before = list();
    assertThat(before.changeTo(list())).isEmpty();
    var time = Files.getLastModifiedTime(root.resolve("a.jpg"));
    file("a.jpg", "y");
    Files.setLastModifiedTime(
        root.resolve("a.jpg"), FileTime.from(time.toInstant().plusSeconds(2)));
    assertThat(before.changeTo(list())).contains("a.jpg was changed");
    Files.setLastModifiedTime(root.resolve("a.jpg"), time);
    assertThat(before.changeTo(list())).isEmpty();
    file("d.jpg", "x");
    Files.delete(root.resolve("b.jpg"));
    assertThat(before.changeTo(list())).contains("d.jpg is new, and 1 more");
  }

  @Test
  void aListingCanBeStopped() throws IOException {
    var volumes = new TestVolumes().disk(temp, "card");
    var stop =
        new Progress() {
          @Override
          public void step(int done, int total) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    assertThatThrownBy(() -> FolderLister.list(root, Set.of(), volumes, stop))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void theStateOfACardIsTheDigestOfItsSortedLines() {
    var read = Optional.of(new FileFacts.ReadFacts("ab", true));
    var none = Optional.<Text>empty();
    var state =
        CardState.of(
            List.of(
                new FileFacts("b", 2, read, true, none, none),
                new FileFacts("a", 1, read, true, none, none)));
    assertThat(state.bytes()).isEqualTo(3);
    // printf 'a\0001\000ab\nb\0002\000ab\n' | sha256sum
    assertThat(state.digest())
        .isEqualTo("711f22a65f994977cfb95ea2715b1a9300ad0e889c71f7586c2aa5b6270e172d");
  }

  /** Two names of bytes that are no UTF-8, which Linux allows and Java spells alike. */
  @Test
  void filesWhoseNamesCannotBeToldApartAreTold() throws Exception {
    var process =
        new ProcessBuilder(
                "sh", "-c", "printf a > \"$(printf 'x\\377')\"; printf b > \"$(printf 'x\\376')\"")
            .directory(root.toFile())
            .start();
    Assumptions.assumeTrue(process.waitFor() == 0, "this system has no such names");
    try (var files = Files.list(root)) {
      Assumptions.assumeTrue(
          files.map(Path::toString).distinct().count() == 1, "they are spelled differently");
    }
    var listing = list();
    assertThat(listing.files()).hasSize(2);
    assertThat(listing.isWhole()).isFalse();
  }

  /** FIPS 180-4, as NIST's examples of SHA-256 have it. */
  @Test
  void digestsAreThoseOfThePublishedExamples() {
    assertThat(Sha256.of("abc".getBytes(StandardCharsets.US_ASCII)))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(
            Sha256.of(
                "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"
                    .getBytes(StandardCharsets.US_ASCII)))
        .isEqualTo("248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    assertThat(Sha256.of(new byte[0]))
        .isEqualTo("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  }
}
