package org.framewright.mhl;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.framewright.Standards;
import org.framewright.base.FileProblemException;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MhlFolderTest {
  private static final Instant AT = Instant.parse("2026-11-23T18:04:00Z");

  @TempDir Path temp;
  private Path folder;

  @BeforeEach
  void makeFolder() throws IOException {
    folder = Files.createDirectory(temp.toRealPath().resolve("SSD 1 & co"));
    file("DCIM/100STUDI/A_0001.RAW", "raw");
    file("DCIM/100STUDI/A_0001.JPG", "jpeg <&> \"");
    file("Übersicht [1].txt", "text");
    file("copied-2026-11-23T180400Z.sha256", "our own list");
  }

  private void file(String name, String content) throws IOException {
    var file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, content);
  }

  private NewGeneration.Sealed sealed(Path file, Set<HashKind> kinds) throws IOException {
    var hashes = new RunningHashes(kinds);
    hashes.update(ByteBuffer.wrap(Files.readAllBytes(file)));
    return new NewGeneration.Sealed(
        folder.relativize(file).toString().replace('\\', '/'),
        Files.size(file),
        Files.getLastModifiedTime(file).toInstant(),
        hashes.values());
  }

  private NewGeneration generation(Set<HashKind> kinds) throws IOException {
    var all = new ArrayList<NewGeneration.Sealed>();
    try (var files = Files.walk(folder)) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        all.add(sealed(file, kinds));
      }
    }
    return new NewGeneration(AT, NewGeneration.Work.TRANSFER, "set-1", all);
  }

  private MhlFolder.Added add(Set<HashKind> kinds) throws IOException {
    return add(generation(kinds));
  }

  private MhlFolder.Added add(NewGeneration generation) throws IOException {
    return MhlFolder.add(folder, generation, folder.resolve(".part")).orElseThrow();
  }

  private static Set<HashKind> usual() {
    return EnumSet.of(MhlFolder.KIND);
  }

  private MhlHistory history() throws IOException {
    return MhlHistory.read(folder).orElseThrow();
  }

  @Test
  void aListHasTheNameOfTheStandardAndCoversEveryFileButOurLists() throws IOException {
    var added = add(usual());
    assertThat(added.list())
        .isEqualTo(folder.resolve("ascmhl/0001_SSD 1 & co_2026-11-23_180400Z.mhl"));
    assertThat(added.whole()).isTrue();
    assertThat(history().claims().keySet())
        .containsExactlyInAnyOrder(
            "DCIM/100STUDI/A_0001.RAW", "DCIM/100STUDI/A_0001.JPG", "Übersicht [1].txt");
    var list = history().generations().getFirst();
    assertThat(list.process()).isEqualTo("transfer");
    assertThat(list.folders())
        .extracting(Generation.FolderEntry::path)
        .containsExactly("DCIM/100STUDI", "DCIM");
    assertThat(list.root()).isPresent();
    assertThat(folder.resolve(".part")).doesNotExist();
  }

  @Test
  void aSecondGenerationVerifiesTheFirstAndLeavesItAsItWas() throws IOException {
    var first = Files.readAllBytes(add(usual()).list());
    var second = add(usual());
    assertThat(second.list().getFileName().toString()).startsWith("0002_");
    assertThat(second.failed()).isEmpty();
    var links = history().chain().links();
    assertThat(links).hasSize(2);
    assertThat(Files.readAllBytes(folder.resolve("ascmhl").resolve(links.getFirst().name())))
        .isEqualTo(first);
    for (var file : history().generations().getLast().files()) {
      assertThat(file.hashes().get(HashKind.XXH128).action()).isEqualTo(Generation.Action.VERIFIED);
    }
  }

  @Test
  void aFileThatIsAnotherNowFailsAndTheFirstHashStaysTheClaim() throws IOException {
    add(usual());
    var claimed = history().claims().get("Übersicht [1].txt").hashes();
    file("Übersicht [1].txt", "other");
    var added = add(usual());
    assertThat(added.failed()).containsExactly("Übersicht [1].txt");
    assertThat(history().claims().get("Übersicht [1].txt").hashes()).isEqualTo(claimed);
    assertThat(history().generations().getLast().root()).isEmpty();
    file("Übersicht [1].txt", "text");
    assertThat(add(usual()).failed()).isEmpty();
  }

  /** As scenario 3 of the standard's examples has it: both kinds are verified then. */
  @Test
  void aHistoryOfAnotherKindIsContinuedWithBoth() throws IOException {
    add(EnumSet.of(HashKind.XXH128, HashKind.MD5));
    var both = EnumSet.of(HashKind.MD5, HashKind.XXH128);
    add(both);
    for (var file : history().generations().getLast().files()) {
      assertThat(file.hashes().keySet()).containsExactly(HashKind.MD5, HashKind.XXH128);
      assertThat(file.hashes().values())
          .allMatch(hash -> hash.action() == Generation.Action.VERIFIED);
    }
  }

  @Test
  void aFolderThatHoldsMoreThanIsListedGetsNoHashOfFolders() throws IOException {
    var generation = generation(usual());
    file("DCIM/other", "x");
    var added = add(generation);
    assertThat(added.whole()).isFalse();
    assertThat(history().generations().getFirst().folders()).isEmpty();
    assertThat(history().generations().getFirst().root()).isEmpty();
    assertThat(history().generations().getFirst().files()).hasSize(3);
  }

  @Test
  void anEmptyFolderIsPartOfTheWhole() throws IOException {
    Files.createDirectory(folder.resolve("empty"));
    assertThat(add(usual()).whole()).isTrue();
    assertThat(history().generations().getFirst().folders())
        .extracting(Generation.FolderEntry::path)
        .contains("empty");
  }

  @Test
  void aHistoryFurtherInKeepsItsFilesForItself() throws IOException {
    var generation = generation(usual());
    Files.createDirectory(folder.resolve("DCIM/ascmhl"));
    assertThatThrownBy(() -> add(generation))
        .isInstanceOfSatisfying(
            FileProblemException.class, e -> assertThat(e.problem().where()).endsWith("DCIM"));
    assertThat(folder.resolve("ascmhl")).doesNotExist();
    var rest = generation.files().stream().filter(file -> !file.path().startsWith("DCIM")).toList();
    assertThat(add(new NewGeneration(AT, NewGeneration.Work.TRANSFER, "set-1", rest)).whole())
        .isFalse();
  }

  /** A kill between the list and the chain. */
  @Test
  void aWholeListThatTheChainDoesNotNameYetIsBroughtIn() throws IOException {
    add(usual());
    var chain = Files.readAllBytes(folder.resolve("ascmhl").resolve(Chain.FILE));
    add(usual());
    Files.write(folder.resolve("ascmhl").resolve(Chain.FILE), chain);
    assertThat(add(usual()).list().getFileName().toString()).startsWith("0003_");
    assertThat(history().chain().links()).hasSize(3);
    Files.delete(folder.resolve("ascmhl").resolve(Chain.FILE));
    assertThatThrownBy(() -> add(usual())).isInstanceOf(FileProblemException.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"changed", "gone", "cut", "a folder"})
  void toADamagedHistoryNothingIsAdded(String damage) throws IOException {
    add(usual());
    var list = add(usual()).list();
    var chain = folder.resolve("ascmhl").resolve(Chain.FILE);
    switch (damage) {
      case "changed" -> Files.writeString(list, Files.readString(list) + "\n");
      case "gone" -> Files.delete(list);
      case "cut" -> Files.writeString(chain, Files.readString(chain).substring(0, 200));
      default -> {
        Files.delete(list);
        Files.createDirectory(list);
      }
    }
    var before = names();
    assertThatThrownBy(() -> add(usual())).isInstanceOf(IOException.class);
    assertThat(names()).isEqualTo(before);
  }

  private Set<String> names() throws IOException {
    try (var files = Files.walk(folder)) {
      var names = new TreeSet<String>();
      files.forEach(file -> names.add(file.toString()));
      return names;
    }
  }

  @Test
  void aNameThatXmlCannotHoldIsToldAndNothingIsWritten() throws IOException {
    var odd =
        new NewGeneration.Sealed(
            "a\u0001b", 1, AT, generation(usual()).files().getFirst().hashes());
    var generation = new NewGeneration(AT, NewGeneration.Work.IN_PLACE, "set-1", List.of(odd));
    assertThatThrownBy(() -> add(generation)).isInstanceOf(FileProblemException.class);
    assertThat(folder.resolve("ascmhl")).doesNotExist();
  }

  @Test
  void aLongNameOfAFolderIsCutInTheNameOfTheList() throws IOException {
    var longer = Files.createDirectory(temp.toRealPath().resolve("ü".repeat(120)));
    folder = longer;
    file("a", "x");
    var name = add(usual()).list().getFileName().toString();
    assertThat(name.getBytes(StandardCharsets.UTF_8).length).isBetween(250, 255);
    assertThat(name).startsWith("0001_üü").endsWith("ü_2026-11-23_180400Z.mhl");
    assertThat(add(usual()).failed()).isEmpty();
  }

  /** The schema of the standard, by libxml2. */
  @Test
  void listsAndChainFollowTheSchema() throws Exception {
    file("tab\tand \u00e9 'quotes'", "x");
    add(EnumSet.allOf(HashKind.class));
    var list = add(usual()).list();
    var schema = Standards.mhl().resolve("xsd");
    xmllint(schema.resolve("ASCMHL.xsd"), list);
    // The schema of the chain looks the other one up in the network; they are given together.
    xmllint(schema.resolve("ASCMHLDirectory__combined.xsd"), list.resolveSibling(Chain.FILE));
    assertThat(history().claims()).containsKey("tab\tand \u00e9 'quotes'");
  }

  private static void xmllint(Path schema, Path document) throws Exception {
    Process process;
    try {
      process =
          new ProcessBuilder(
                  "xmllint",
                  "--nonet",
                  "--noout",
                  "--schema",
                  schema.toString(),
                  document.toString())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      Assumptions.abort("xmllint is not here; the schema is not checked");
      return;
    }
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
  }
}
