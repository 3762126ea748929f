package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import org.framewright.base.NameKey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The collision key against file systems that fold names; and which names are legal where. */
class CollisionTest {

  /**
   * Pairs that are one name somewhere: Unicode case folding and canonical equivalence (UAX #15).
   */
  @ParameterizedTest
  @CsvSource({
    "IMG.JPG, img.jpg",
    "straße, STRASSE",
    "\u00e9, e\u0301",
    "\u00c5, \u212b",
    "\u00c9, e\u0301",
    "\ufb01n, FIN",
    "ΣΑΣ, σας",
    "a\u200bb, AB",
  })
  void whatIsOneNameSomewhereHasOneKey(String one, String other) {
    assertThat(NameKey.of(one)).isEqualTo(NameKey.of(other));
  }

  @ParameterizedTest
  @CsvSource({"a, b", "a1, a2", "e, \u00e9", "o, ö", "img_1, img-1"})
  void whatIsTwoNamesEverywhereHasTwoKeys(String one, String other) {
    assertThat(NameKey.of(one)).isNotEqualTo(NameKey.of(other));
  }

  @Tag("slow")
  @Property(tries = 1_000)
  void whatAFoldingFileSystemTakesForOneNameHasOneKey(
      @ForAll("names") String one, @ForAll("names") String other) throws IOException {
    for (var configuration : List.of(Configuration.windows(), Configuration.osX())) {
      try (var jimfs = Jimfs.newFileSystem(configuration)) {
        var folder = jimfs.getRootDirectories().iterator().next();
        Files.createFile(folder.resolve(one));
        boolean collides = false;
        try {
          Files.createFile(folder.resolve(other));
        } catch (FileAlreadyExistsException e) {
          collides = true;
        }
        if (collides) {
          assertThat(NameKey.of(one)).isEqualTo(NameKey.of(other));
        }
      }
    }
  }

  @Provide
  Arbitrary<String> names() {
    return Arbitraries.of("a", "A", "b", "B", "é", "e\u0301", "É", "E\u0301", "ö", "Ö")
        .list()
        .ofMinSize(1)
        .ofMaxSize(2)
        .map(parts -> String.join("", parts));
  }

  @ParameterizedTest
  @ValueSource(strings = {"windows", "mac"})
  void plansOnAFoldingFileSystemFindTheCollisions(String system) throws IOException {
    var configuration = system.equals("windows") ? Configuration.windows() : Configuration.osX();
    try (var jimfs = Jimfs.newFileSystem(configuration)) {
      var root = Files.createDirectory(jimfs.getRootDirectories().iterator().next().resolve("job"));
      for (var name : List.of("img.jpg", "Taken.jpg", "free.jpg", "\u00e9.jpg")) {
        Files.createFile(root.resolve(name));
      }
      var planned =
          new Planner(new NioDisk(root, List.of()), root, false)
              .plan(
                  List.of(
                      request(jimfs.getPath("img.jpg"), "IMG.jpg"),
                      request(jimfs.getPath("free.jpg"), "TAKEN.jpg"),
                      request(jimfs.getPath("\u00e9.jpg"), "E\u0301.jpg")),
                  (index, file, seen) -> null);
      assertThat(planned)
          .extracting(PlannedRename::status)
          .containsExactly(Status.READY, Status.BLOCKED, Status.READY);
    }
  }

  private static RenameRequest request(Path from, String to) {
    return new RenameRequest(from, from.getFileSystem().getPath(to));
  }

  // ---- legal names

  /** Microsoft, "Naming Files, Paths, and Namespaces". */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "CON", "con.jpg", "Aux.tar.gz", "NUL", "COM1", "lpt9.txt", "COM¹", "a<b", "a>b", "a:b",
        "a\"b", "a|b", "a?b", "a*b", "a\\b", "a/b", "end.", "end ", "\u0001", "tab\t"
      })
  void whatWindowsForbidsIsReportedThere(String name) {
    assertThat(LegalName.trouble(name, Traits.of("ntfs", false))).isPresent();
    assertThat(LegalName.trouble(name, Traits.of("exfat", false))).isPresent();
  }

  @ParameterizedTest
  @ValueSource(strings = {"CONSOLE.jpg", "COM0", "a.b", ".hidden", "a b", "ü", "lpt10"})
  void whatWindowsAllowsIsNotReported(String name) {
    assertThat(LegalName.trouble(name, Traits.of("ntfs", false))).isEmpty();
  }

  /** 255 bytes on ext4 and its like (measured), 255 UTF-16 units on NTFS (MS-FSCC 2.1.5.2). */
  @Test
  void lengthsAreCountedAsTheVolumeCountsThem() {
    var ext4 = Traits.of("ext4", false);
    var ntfs = Traits.of("ntfs", false);
    assertThat(LegalName.trouble("ü".repeat(127), ext4)).isEmpty();
    assertThat(LegalName.trouble("ü".repeat(128), ext4)).isPresent();
    assertThat(LegalName.trouble("ü".repeat(255), ntfs)).isEmpty();
    assertThat(LegalName.trouble("ü".repeat(256), ntfs)).isPresent();
  }
}
