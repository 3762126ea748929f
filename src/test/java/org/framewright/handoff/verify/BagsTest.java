package org.framewright.handoff.verify;

import static java.nio.charset.StandardCharsets.UTF_16;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;

/**
 * Bags that the conformance suite lacks. What is right stands in RFC 8493, the section beside the
 * case; the verdict of the reference library stands beside ours, and why they differ.
 */
class BagsTest {
  private static final String MANIFEST = "manifest-sha256.txt";
  private static final String OTHER = "manifest-sha512.txt";
  private static final String TAGS = "tagmanifest-sha256.txt";
  private static final String ZEROS = "0".repeat(64);

  @TempDir private Path folder;

  @FunctionalInterface
  private interface Change {
    void in(BagScene bag) throws Exception;
  }

  /**
   * A bag.
   *
   * @param says what of our answer has to be there; empty where the bag is whole
   * @param differs why the reference library judges otherwise; empty where it does not
   */
  private record Case(String name, Change change, String says, String differs) {
    static Case good(String name, Change change) {
      return new Case(name, change, "", "");
    }

    static Case bad(String name, String says, Change change) {
      return new Case(name, change, says, "");
    }

    /** The reference library judges otherwise. */
    Case but(String why) {
      return new Case(name, change, says, why);
    }
  }

  private static List<Case> cases() {
    return List.of(
        Case.good("as it was made", _ -> {}),
        // 2.1.1
        Case.bad(
            "a byte-order mark in bagit.txt",
            "bagit.txt: it begins with a byte-order mark",
            bag -> bag.edit("bagit.txt", "BagIt-V", "\uFEFFBagIt-V")),
        Case.bad("version 9.0", "BagIt 9.0 is not known here", bag -> bag.version("9.0")),
        Case.bad(
            "white space before the colon in 1.0",
            "with no other white space",
            bag -> bag.edit("bagit.txt", "Version:", "Version :")),
        Case.good(
            "white space before the colon in 0.97",
            bag -> {
              bag.version("0.97");
              bag.edit("bagit.txt", "Version:", "Version :");
            }),
        Case.bad(
            "an encoding that nobody knows",
            "the encoding NOVA-8 is not known here",
            bag -> bag.edit("bagit.txt", "UTF-8", "NOVA-8")),
        Case.bad(
            "a third line in bagit.txt",
            "a declaration has two lines",
            bag -> bag.append("bagit.txt", "Contact-Name: Ines\n")),
        Case.good(
            "descriptions in UTF-16, as declared",
            bag -> {
              bag.edit("bagit.txt", "UTF-8", "UTF-16");
              for (var file : List.of("bag-info.txt", MANIFEST)) {
                var text = Files.readString(bag.folder().resolve(file));
                Files.write(bag.folder().resolve(file), text.getBytes(UTF_16));
              }
            }),
        // 2.1.2
        Case.bad(
            "no folder data",
            "the folder of the payload is missing",
            bag -> {
              Files.move(bag.folder().resolve("data"), bag.folder().resolve("elsewhere"));
              bag.write(MANIFEST, "");
              bag.write("bag-info.txt", "Payload-Oxum: 0.0\n");
            }),
        // 2.1.3
        Case.bad(
            "a line that is none",
            MANIFEST + ", line 3: this line is no checksum",
            bag -> bag.append(MANIFEST, "nonsense\n")),
        Case.bad(
            "a checksum of another length",
            MANIFEST + ", line 1: this line is no checksum",
            bag ->
                bag.write(
                    MANIFEST,
                    "0"
                        + bag.line("sha256", BagScene.FIRST)
                        + bag.line("sha256", BagScene.SECOND))),
        Case.bad(
                "a file that is listed twice",
                MANIFEST + ", line 3: this file is listed twice",
                bag -> bag.append(MANIFEST, bag.line("sha256", BagScene.FIRST)))
            .but(
                "It keeps the last line of a name and forgets the others; 2.1.3 says exactly"
                    + " once."),
        Case.bad(
            "a file that is listed twice, the second time wrongly",
            MANIFEST + ", line 3: this file is listed twice, with two checksums",
            bag -> bag.append(MANIFEST, ZEROS + "  " + BagScene.FIRST + "\n")),
        Case.good(
            "a file that is listed twice in 0.97",
            bag -> {
              bag.version("0.97");
              bag.append(MANIFEST, bag.line("sha256", BagScene.FIRST));
            }),
        Case.good(
                "checksums in capital letters",
                bag ->
                    bag.write(
                        MANIFEST,
                        bag.sum("sha256", BagScene.FIRST).toUpperCase(Locale.ROOT)
                            + "  "
                            + BagScene.FIRST
                            + "\n"
                            + bag.line("sha256", BagScene.SECOND)))
            .but("It compares digits as text; 2.1.3 allows capital letters."),
        Case.good("a tab between", bag -> bag.edit(MANIFEST, "  ", "\t")),
        Case.good("one space between", bag -> bag.edit(MANIFEST, "  ", " ")),
        Case.good("an asterisk before names", bag -> bag.edit(MANIFEST, "  data", " *data")),
        Case.good("./ before names", bag -> bag.edit(MANIFEST, "  data", "  ./data")),
        Case.good("lines that end in CR", bag -> bag.edit(MANIFEST, "\n", "\r")),
        Case.bad(
            "a path that leads out",
            MANIFEST + ", line 3: this path leads out",
            bag -> bag.append(MANIFEST, ZEROS + "  ../secret\n")),
        Case.bad(
            "a path in data/ that leads out",
            MANIFEST + ", line 3: this path leads out",
            bag -> {
              Files.writeString(bag.folder().resolveSibling("secret"), "secret");
              bag.append(MANIFEST, bag.sum("sha256", "../secret") + "  data/../../secret\n");
            }),
        Case.bad(
                "a manifest of the payload that names another file",
                MANIFEST + ", line 3: this path is not below data/",
                bag -> bag.append(MANIFEST, bag.line("sha256", "bag-info.txt")))
            .but(
                "It compares a file wherever in the bag it lies; 2.1.3 says none outside of data."),
        Case.good(
                "a percent sign in a name, coded",
                bag -> {
                  bag.write("data/100% wool.JPG", "wool");
                  bag.append(
                      MANIFEST,
                      bag.sum("sha256", "data/100% wool.JPG") + "  data/100%25 wool.JPG\n");
                  bag.write("bag-info.txt", "Payload-Oxum: 21.3\n");
                })
            .but("It does not decode %25, which 2.1.3 asks for."),
        Case.good(
            "a percent sign in a name, as it is",
            bag -> {
              bag.write("data/100% wool.JPG", "wool");
              bag.append(MANIFEST, bag.line("sha256", "data/100% wool.JPG"));
              bag.write("bag-info.txt", "Payload-Oxum: 21.3\n");
            }),
        Case.good(
                "accents written in two parts in the manifest, and in one on the disk",
                bag -> {
                  bag.write("data/Cr\u00EApe.JPG", "crepe");
                  bag.append(
                      MANIFEST,
                      bag.sum("sha256", "data/Cr\u00EApe.JPG") + "  data/Cre\u0302pe.JPG\n");
                  bag.write("bag-info.txt", "Payload-Oxum: 22.3\n");
                })
            .but("It compares names byte by byte; 6.1.1.2 says that systems change them."),
        Case.bad(
            "a byte-order mark in a manifest",
            MANIFEST + ": it begins with a byte-order mark",
            bag ->
                bag.write(MANIFEST, "\uFEFF" + Files.readString(bag.folder().resolve(MANIFEST)))),
        Case.bad(
            "no manifest",
            "there is no manifest of the payload",
            bag -> Files.delete(bag.folder().resolve(MANIFEST))),
        Case.bad(
            "a manifest of a kind that is not known",
            "manifest-nova8.txt: checksums of the kind nova8 are not known here",
            bag ->
                bag.write(
                    "manifest-nova8.txt",
                    "0123456789  " + BagScene.FIRST + "\n9876543210  " + BagScene.SECOND + "\n")),
        Case.bad(
            "a file more",
            "there, not in its manifest: data/raw/more.DNG",
            bag -> {
              bag.write("data/raw/more.DNG", "more");
              bag.write("bag-info.txt", "");
            }),
        Case.bad(
            "a file more in a hidden folder",
            "there, not in its manifest: data/.raw/more.DNG",
            bag -> {
              bag.write("data/.raw/more.DNG", "more");
              bag.write("bag-info.txt", "");
            }),
        Case.bad(
            "a file missing",
            "in its manifest, not there: " + BagScene.FIRST,
            bag -> {
              Files.delete(bag.folder().resolve(BagScene.FIRST));
              bag.write("bag-info.txt", "");
            }),
        Case.bad(
            "a second manifest that is wrong",
            "not what its manifest says: " + BagScene.FIRST,
            bag ->
                bag.write(
                    OTHER,
                    "0".repeat(128)
                        + "  "
                        + BagScene.FIRST
                        + "\n"
                        + bag.line("sha512", BagScene.SECOND))),
        Case.bad(
            "a second manifest that names nothing",
            OTHER + ": 2 files of other manifests are not in it, such as " + BagScene.FIRST,
            bag -> bag.write(OTHER, "")),
        Case.good(
            "a second manifest that names a part in 0.97",
            bag -> {
              bag.version("0.97");
              bag.write(OTHER, bag.line("sha512", BagScene.SECOND));
            }),
        Case.good(
            "manifests of all kinds",
            bag -> {
              for (var kind : List.of("md5", "sha1", "sha512")) {
                bag.write(
                    "manifest-" + kind + ".txt",
                    bag.line(kind, BagScene.FIRST) + bag.line(kind, BagScene.SECOND));
              }
            }),
        Case.bad(
                "a link in the place of a file, to what the file was",
                "this is a link, and links are not followed",
                bag -> {
                  var outside = bag.folder().resolveSibling("outside.JPG");
                  Files.move(bag.folder().resolve(BagScene.FIRST), outside);
                  SymbolicLinks.make(bag.folder().resolve(BagScene.FIRST), outside);
                })
            .but("It follows links; what lies behind one did not come with the package."),
        Case.bad(
            "a folder that is a link",
            "in its manifest, not there: " + BagScene.SECOND,
            bag -> {
              var outside = bag.folder().resolveSibling("outside");
              Files.move(bag.folder().resolve("data/raw"), outside);
              SymbolicLinks.make(bag.folder().resolve("data/raw"), outside);
            }),
        // 2.2.1
        Case.good(
            "a tag manifest",
            bag ->
                bag.write(TAGS, bag.line("sha256", MANIFEST) + bag.line("sha256", "bag-info.txt"))),
        Case.bad(
                "a tag manifest without the manifest",
                TAGS + ": " + MANIFEST + " has to be in it",
                bag -> bag.write(TAGS, bag.line("sha256", "bag-info.txt")))
            .but("It does not look which files a tag manifest names; 2.2.1 says each manifest."),
        Case.bad(
            "a tag manifest that is wrong",
            "not what its manifest says: bag-info.txt",
            bag -> bag.write(TAGS, bag.line("sha256", MANIFEST) + ZEROS + "  bag-info.txt\n")),
        Case.bad(
                "a tag manifest that names the payload",
                TAGS + ", line 2: a tag manifest names nothing below data/",
                bag ->
                    bag.write(
                        TAGS, bag.line("sha256", MANIFEST) + bag.line("sha256", BagScene.FIRST)))
            .but(
                "It does not look which files a tag manifest names; 2.2.1 says none of the"
                    + " payload."),
        // 2.2.2
        Case.bad(
            "a Payload-Oxum that does not fit",
            "bag-info.txt: Payload-Oxum says 18.2, and the payload comes to 17.2",
            bag -> bag.edit("bag-info.txt", "17.2", "18.2")),
        Case.bad(
                "two of them",
                "bag-info.txt, line 3: Payload-Oxum is there twice",
                bag -> bag.append("bag-info.txt", "Payload-Oxum: 17.2\n"))
            .but("It passes over all but the first; 2.2.2 says one."),
        Case.bad(
                "one that is no number",
                "bag-info.txt, line 2: Payload-Oxum is two numbers",
                bag -> bag.edit("bag-info.txt", "17.2", "seventeen"))
            .but("It passes over one that it cannot read; 2.2.2 says two numbers."),
        Case.bad(
            "a line without a label",
            "bag-info.txt, line 3: this line is not a label",
            bag -> bag.append("bag-info.txt", "To whom it may concern\n")),
        // 2.2.3
        Case.bad(
            "a file that is to be fetched",
            "not fetched yet: data/later.DNG",
            bag -> {
              bag.append(MANIFEST, ZEROS + "  data/later.DNG\n");
              bag.write("fetch.txt", "https://example.org/later.DNG 3 data/later.DNG\n");
              bag.write("bag-info.txt", "Payload-Oxum: 20.3\n");
            }),
        Case.good(
            "a file that was fetched",
            bag -> bag.write("fetch.txt", "https://example.org/a.JPG 6 " + BagScene.FIRST + "\n")),
        Case.bad(
            "a file that is to be fetched and that no manifest names",
            "fetch.txt, line 1: this file is not in the manifests",
            bag -> bag.write("fetch.txt", "https://example.org/later.DNG - data/later.DNG\n")),
        Case.bad(
            "an address that is to be put outside",
            "fetch.txt, line 1: this path leads out",
            bag -> bag.write("fetch.txt", "https://example.org/x - data/../../x\n")),
        Case.bad(
            "a line of fetch.txt that is none",
            "fetch.txt, line 1: this line is not an address",
            bag -> bag.write("fetch.txt", "data/later.DNG\n")));
  }

  @Test
  void everyBagIsJudgedByTheStandard(TestReporter reporter) throws Exception {
    var wrong = new TreeMap<String, String>();
    int same = 0;
    int number = 0;
    for (var one : cases()) {
      var bag = new BagScene(folder.resolve("n" + number++).resolve("bag"));
      one.change().in(bag);
      var problems = bag.problems();
      boolean whole = one.says().isEmpty();
      if (bag.check().whole() != whole
          || !problems.contains(one.says())
          || whole != problems.isEmpty()) {
        wrong.put(one.name(), "ours: " + problems);
      }
      var reference = BagScene.reference(bag.folder());
      if ((reference.isEmpty() == whole) != one.differs().isEmpty()) {
        wrong.merge(one.name(), "reference: " + reference, (a, b) -> a + "; " + b);
      }
      same += one.differs().isEmpty() ? 1 : 0;
    }
    assertThat(wrong).isEmpty();
    reporter.publishEntry(
        "bags", cases().size() + ", judged as the reference library judges them: " + same);
  }

  // RFC 8493, section 2.1.3; the names of Windows cannot have them.
  @Test
  void codedLineEndsInNamesAreRead() throws Exception {
    assumeTrue(File.separatorChar == '/', "names have no line ends here");
    var bag = new BagScene(folder.resolve("bag"));
    bag.write("data/x\ny\rz%0A", "odd");
    bag.append(MANIFEST, bag.sum("sha256", "data/x\ny\rz%0A") + "  data/x%0ay%0Dz%250A\n");
    bag.write("bag-info.txt", "");
    assertThat(bag.problems()).isEmpty();
    assertThat(bag.check().files()).isEqualTo(3);
  }

  // Drafts before RFC 8493 coded line ends and left percent signs alone.
  @Test
  void aDraftsNameThatLooksCodedIsTakenAsItIs() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    bag.version("0.97");
    bag.write("data/100%25.JPG", "wool");
    bag.append(MANIFEST, bag.line("sha256", "data/100%25.JPG"));
    bag.write("bag-info.txt", "");
    assertThat(bag.problems()).isEmpty();
  }

  @Test
  void bytesThatAreNoTextAreAFaultOfTheirLine() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    bag.append(MANIFEST, "x\0y\n");
    assertThat(bag.problems())
        .isEqualTo("in its manifest: manifest-sha256.txt, line 3: this line is no text in UTF-8");
  }

  @Test
  void whatIsOddAndBreaksNothingIsWarnedOf() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    bag.write(MANIFEST, Files.readString(bag.folder().resolve(MANIFEST)).strip());
    bag.edit(MANIFEST, "  ", " *");
    assertThat(bag.check().whole()).isTrue();
    assertThat(bag.check().warnings())
        .extracting(one -> one.sentence())
        .containsExactly(
            "manifest-sha256.txt: its last line has no end",
            "manifest-sha256.txt: asterisks or ./ stand before names, as no bag has them");
  }

  @Test
  void namesThatSomeDisksTakeForOneAreWarnedOf() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    bag.append(MANIFEST, ZEROS + "  data/A B.jpg\n" + ZEROS + "  data/raw/Thumbs.db\n");
    assertThat(bag.check().warnings())
        .extracting(one -> one.sentence())
        .containsExactly(
            "manifest-sha256.txt, line 3: some disks take this name and data/a b.JPG for one and"
                + " the same",
            "manifest-sha256.txt, line 4: computers make and remove files of this name by"
                + " themselves");
  }

  @Test
  void aHoleOfUnknownSizeLeavesTheSumOfThePayloadOpen() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    bag.append(MANIFEST, ZEROS + "  data/later.DNG\n");
    bag.write("fetch.txt", "https://example.org/later.DNG - data/later.DNG\n");
    assertThat(bag.problems()).isEqualTo("not fetched yet: data/later.DNG");
    assertThat(bag.check().missing()).isEmpty();
    assertThat(bag.check().whole()).isFalse();
  }

  // RFC 8493, section 2.4: small letters and digits.
  @Test
  void theKindInAManifestsNameIsWrittenInOneWay() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    Files.move(bag.folder().resolve(MANIFEST), bag.folder().resolve("manifest-SHA-256.txt"));
    assertThat(bag.problems())
        .isEqualTo(
            "in its manifest: manifest-SHA-256.txt: the kind in a manifest’s name has small"
                + " letters and digits only");
    bag.version("0.96");
    assertThat(bag.problems()).isEmpty();
  }

  @Test
  void aFolderWithAManifestOfAPayloadIsABagWithoutItsDeclaration() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    Files.delete(bag.folder().resolve("bagit.txt"));
    assertThat(bag.problems())
        .isEqualTo("in its manifest: bagit.txt: the declaration of the bag is missing");
    Files.delete(bag.folder().resolve(MANIFEST));
    assertThat(OpenPackage.in(bag.folder())).isEmpty();
  }

  @Test
  void anEmptyPayloadIsWhole() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    Files.delete(bag.folder().resolve(BagScene.FIRST));
    Files.delete(bag.folder().resolve(BagScene.SECOND));
    bag.write(MANIFEST, "");
    bag.write("bag-info.txt", "Payload-Oxum: 0.0\n");
    assertThat(bag.check().whole()).isTrue();
    assertThat(bag.check().files()).isZero();
  }

  @Test
  void whatIsKnownBeforeReadingIsAllButTheContent() throws Exception {
    var bag = new BagScene(folder.resolve("bag"));
    Files.write(bag.folder().resolve(BagScene.FIRST), "PIXELS".getBytes(UTF_8));
    var opened = OpenPackage.in(bag.folder()).orElseThrow();
    assertThat(opened.known().whole()).isTrue();
    assertThat(bag.problems()).isEqualTo("not what its manifest says: " + BagScene.FIRST);
    Files.delete(bag.folder().resolve(BagScene.SECOND));
    assertThat(OpenPackage.in(bag.folder()).orElseThrow().known().missing())
        .containsExactly(BagScene.SECOND);
  }
}
