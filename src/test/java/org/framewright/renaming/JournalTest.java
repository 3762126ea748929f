package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.NotEmpty;
import net.jqwik.api.constraints.Size;
import org.framewright.base.Progress;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A journal is untrusted: it may be damaged, forged, or come from another folder. */
class JournalTest {
  private static final String BATCH = "0001-0a1b2c3d";
  private static final Instant AT = Instant.parse("2026-11-25T09:30:00Z");
  private static final Seen SEEN = new Seen("7", 3, 1_795_000_000_123_456_789L);

  @TempDir Path root;
  private Path journals;

  @BeforeEach
  void folders() throws IOException {
    if (root != null) {
      root = root.toRealPath();
      journals = Files.createDirectories(root.resolve(".framewright/renames"));
    }
  }

  // ---- the text

  @Property(tries = 500)
  void whatIsWrittenIsReadBack(
      @ForAll @Size(min = 1, max = 5) List<@NotEmpty String> names, @ForAll String group)
      throws IOException {
    var place = Path.of("/model").toAbsolutePath();
    var ops = new ArrayList<Op>();
    for (var text : names) {
      var name = Path.of(legal(Seeds.plain(text)));
      ops.add(new Op(0, name, 1, Path.of("x" + ops.size()), "", Seeds.text(group), SEEN, "hash"));
      var temp = TempNames.of(BATCH, ops.size());
      ops.add(new Op(1, name, 1, Path.of("y"), temp, "", new Seen("", 0, -1), ""));
    }
    var header =
        new JournalHeader(
            BATCH,
            AT,
            "0000-00000000",
            Guarantee.LINKED,
            "ext4",
            Optional.of("12@34"),
            place,
            List.of(place, place.resolve("day 1/ü")));
    var written = JournalWriter.plan(header, ops);
    var disk = new ModelDisk(new Random(0), ModelVolume.linux(false, true));
    disk.write(place.resolve(BATCH + ".jsonl"), written.parts());
    var journal = JournalReader.read(disk, place.resolve(BATCH + ".jsonl"), place);
    assertThat(journal.ops()).isEqualTo(ops);
    assertThat(journal.header()).isEqualTo(header);
    assertThat(journal.end()).isEqualTo(BatchState.OPEN);
    assertThat(journal.length()).isEqualTo(written.length());
    var summary = JournalReader.summary(disk, place.resolve(BATCH + ".jsonl"), place);
    assertThat(summary.renames()).isEqualTo(ops.size());
    assertThat(summary.header()).isEqualTo(header);
    assertThat(summary.end()).isEqualTo(BatchState.OPEN);
  }

  /** What a generator's text needs to be a name, or text at all. */
  private static final class Seeds {
    static String text(String any) {
      return new String(any.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8)
          .replace('\uFFFD', '_');
    }

    static String plain(String any) {
      var name = text(any).replace('/', '_').replace('\0', '_');
      return name.equals(".") || name.equals("..") ? "_" : name;
    }
  }

  @Test
  void isJsonLinesWithAChecksumOnEachLine() throws IOException {
    var written = JournalWriter.plan(header(root), List.of(op("a", "b")));
    var text = text(written);
    assertThat(text.lines())
        .hasSize(3)
        .allMatch(line -> line.matches("\\{.*,\"crc\":\"[0-9a-f]{8}\"\\}"));
    assertThat(text.lines().skip(1).findFirst().orElseThrow())
        .startsWith(
            "{\"in\":0,\"from\":\"a\",\"to\":\"b\",\"size\":3,\"modified\":1795000000123456789,");
  }

  // ---- damage

  @Test
  void noFlippedBitIsBelieved() throws IOException {
    var file = open("a", "b", "c", "d");
    var good = Files.readAllBytes(file);
    for (int i = 0; i < good.length; i++) {
      var bad = good.clone();
      bad[i] ^= 1;
      Files.write(file, bad);
      assertDamaged(file, "byte " + i);
    }
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Refused.class);
  }

  @Test
  void noTruncationIsBelieved() throws IOException {
    var file = open("a", "b", "c", "d");
    var good = Files.readAllBytes(file);
    for (int length = 0; length < good.length; length++) {
      Files.write(file, Arrays.copyOf(good, length));
      assertDamaged(file, "length " + length);
    }
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Refused.class);
  }

  @Test
  void noLineCanBeTakenOutOrPutElsewhere() throws IOException {
    var file = open("a", "b", "c", "d", "e", "f");
    var good = Files.readAllLines(file);
    for (int i = 0; i < good.size(); i++) {
      var fewer = new ArrayList<>(good);
      fewer.remove(i);
      Files.write(file, fewer);
      assertDamaged(file, "without line " + i);
      var swapped = new ArrayList<>(good);
      swapped.add(0, swapped.remove(i));
      if (i > 0) {
        Files.write(file, swapped);
        assertDamaged(file, "line " + i + " first");
      }
    }
  }

  @Test
  void aTornEndCountsAsNone() throws IOException {
    var file = open("a", "b");
    var plan = Files.readAllBytes(file);
    var renamer = Renamer.in(root);
    Files.writeString(root.resolve("x"), "x");
    var end = JournalWriter.end(BatchState.DONE, AT, commit(file));
    for (int length = 0; length < end.length; length++) {
      var torn = Arrays.copyOf(plan, plan.length + length);
      System.arraycopy(end, 0, torn, plan.length, length);
      Files.write(file, torn);
      assertThat(renamer.batches().getFirst().state())
          .as("end torn at " + length)
          .isEqualTo(BatchState.OPEN);
      assertThat(JournalReader.read(disk(), file, root).end()).isEqualTo(BatchState.OPEN);
    }
    var whole = Arrays.copyOf(plan, plan.length + end.length);
    System.arraycopy(end, 0, whole, plan.length, end.length);
    Files.write(file, whole);
    assertThat(renamer.batches().getFirst().state()).isEqualTo(BatchState.DONE);
  }

  @Test
  void anEndOfAnotherJournalIsDamage() throws IOException {
    var file = open("a", "b");
    var end = JournalWriter.end(BatchState.DONE, AT, "0".repeat(64));
    Files.write(file, end, StandardOpenOption.APPEND);
    assertDamaged(file, "foreign end");
  }

  @Test
  void aDamagedJournalStopsRenamesUntilAPersonMovesItAway() throws IOException {
    Files.writeString(root.resolve("a"), "a");
    var file = open("q", "r");
    Files.writeString(file, "nonsense");
    var renamer = Renamer.in(root);
    var plan = renamer.plan(List.of(new RenameRequest(Path.of("a"), Path.of("b"))));
    assertThat(renamer.apply(plan, Progress.NONE))
        .isInstanceOfSatisfying(
            Outcome.Refused.class,
            refused ->
                assertThat(refused.why() + refused.remedy())
                    .contains(BATCH)
                    .contains("move it out"));
    assertThat(renamer.recover()).isInstanceOf(Recovery.Refused.class);
    assertThat(file).exists();
    Files.move(file, root.resolve("away"));
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
  }

  // ---- forgeries, with checksums that hold

  @ParameterizedTest
  @ValueSource(strings = {"..", ".", "../x", "/tmp/x", "x/y", "../../etc/x", ""})
  void aForgedNameThatReachesOutIsRefused(String name) throws IOException {
    Files.writeString(root.resolve("inside"), "abc");
    for (var op : List.of(op("inside", name), op(name, "inside"))) {
      var file = forge(root, op);
      assertThatThrownBy(() -> JournalReader.read(disk(), file, root))
          .isInstanceOf(DamagedJournal.class);
      assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Refused.class);
      Files.delete(file);
    }
    assertThat(root.resolve("inside")).hasContent("abc");
  }

  /** On Windows fewer signs make a path. */
  private static String legal(String name) {
    return File.separatorChar == '/'
        ? name
        : name.replaceAll("[\\x00-\\x1f<>:\"/\\\\|?*]", "_").replaceAll("[ .]+$", "_");
  }

  @ParameterizedTest
  @ValueSource(strings = {"..", "x/..", "/tmp", ".framewright", ".FRAMEWRIGHT"})
  void aForgedFolderThatReachesOutIsRefused(String folder) throws IOException {
    var file = open("a", "b");
    JournalForge.change(file, "\"folders\":[[]]", "\"folders\":[[\"" + folder + "\"]]");
    assertThatThrownBy(() -> JournalReader.read(disk(), file, root))
        .isInstanceOf(DamagedJournal.class);
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Refused.class);
  }

  @Test
  void aForgedNameBetweenIsRefused() throws IOException {
    var file = forge(root, new Op(0, Path.of("a"), 0, Path.of("b"), "../x", "", SEEN, ""));
    assertThatThrownBy(() -> JournalReader.read(disk(), file, root))
        .isInstanceOf(DamagedJournal.class);
  }

  @Test
  void aFolderThatIsALinkIsNotFollowed(@TempDir Path outside) throws IOException {
    var victim = Files.writeString(outside.resolve("b"), "abc");
    SymbolicLinks.make(root.resolve("sub"), outside);
    var op = new Op(0, Path.of("a"), 0, Path.of("b"), "", "", disk().look(victim).seen(), "");
    forge(root.resolve("sub"), op, op("c", "d"));
    assertThat(Renamer.in(root).recover())
        .isInstanceOfSatisfying(
            Recovery.Stuck.class,
            stuck -> assertThat(stuck.files().getFirst().why()).contains("is a link"));
    assertThat(victim).hasContent("abc");
    assertThat(outside.resolve("a")).doesNotExist();
  }

  @Test
  void aJournalThatIsALinkIsNotRead(@TempDir Path outside) throws IOException {
    var real = open("a", "b");
    var away = Files.move(real, outside.resolve(real.getFileName()));
    SymbolicLinks.make(real, away);
    assertThat(Renamer.in(root).batches().getFirst().state()).isEqualTo(BatchState.UNREADABLE);
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Refused.class);
  }

  @Test
  void aLinkedFolderOfJournalsIsNotUsed(@TempDir Path outside) throws IOException {
    Files.delete(journals);
    Files.delete(journals.getParent());
    SymbolicLinks.make(journals.getParent(), outside);
    Files.writeString(root.resolve("a"), "a");
    var renamer = Renamer.in(root);
    var plan = renamer.plan(List.of(new RenameRequest(Path.of("a"), Path.of("b"))));
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Refused.class);
    try (Stream<Path> written = Files.list(outside)) {
      assertThat(written).isEmpty();
    }
  }

  @Test
  void aJournalOfAnotherFolderMovesNothingThatIsNotAsThere(@TempDir Path other) throws IOException {
    Files.writeString(root.resolve("a"), "abc");
    Files.writeString(other.resolve("a"), "another");
    var there = Renamer.in(other);
    var plan = there.plan(List.of(new RenameRequest(Path.of("a"), Path.of("b"))));
    var batch = ((Outcome.Applied) there.apply(plan, Progress.NONE)).batch();
    var name = batch + ".jsonl";
    var foreign =
        Files.copy(other.resolve(".framewright/renames").resolve(name), journals.resolve(name));
    Files.move(root.resolve("a"), root.resolve("b"));

    assertThat(Renamer.in(root).undo(batch, Progress.NONE))
        .isInstanceOfSatisfying(
            Outcome.Nothing.class,
            nothing -> assertThat(nothing.renames().getFirst().status()).isEqualTo(Status.SKIPPED));
    JournalForge.open(foreign);
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Stuck.class);
    assertThat(root.resolve("b")).hasContent("abc");
    assertThat(root.resolve("a")).doesNotExist();
  }

  // ---- long ones

  /** As many renames as need several parts of the file, which are read and written side by side. */
  @ParameterizedTest
  @ValueSource(ints = {1, 1023, 1024, 1025, 2048, 3000})
  void manyRenamesAreReadInTheirOrder(int renames) throws IOException {
    var ops = new ArrayList<Op>();
    for (int i = 0; i < renames; i++) {
      ops.add(op("IMG_" + i + ".jpg", "frame \u00fc " + i + ".jpg"));
    }
    var file = forge(root, ops.toArray(Op[]::new));
    assertThat(JournalReader.read(disk(), file, root).ops()).isEqualTo(ops);
    var summary = JournalReader.summary(disk(), file, root);
    assertThat(summary.renames()).isEqualTo(renames);
    assertThat(summary.example()).isEqualTo("IMG_0.jpg -> frame \u00fc 0.jpg");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 1024, 1025, 1026, 2049, 2100})
  void aDamagedLineIsNamed(int line) throws IOException {
    var ops = new ArrayList<Op>();
    for (int i = 0; i < 2100; i++) {
      ops.add(op("a" + i, "b" + i));
    }
    var file = forge(root, ops.toArray(Op[]::new));
    var lines = Files.readAllLines(file);
    lines.set(line, lines.get(line).replaceFirst("[0-9](?=[0-9a-f]*\"\\}$)", "x"));
    Files.write(file, lines);
    assertThatThrownBy(() -> JournalReader.read(disk(), file, root))
        .hasMessageContaining(
            "the journal " + file.getFileName() + ", line " + (line + 1) + ": the line does not");
  }

  /** The head is read in pieces until it holds the first rename. */
  @ParameterizedTest
  @ValueSource(ints = {10, 200, 3000})
  void aHeadWithManyFoldersIsRead(int folders) throws IOException {
    var all = new Path[folders];
    for (int i = 0; i < folders; i++) {
      all[i] = root.resolve("folder %040d".formatted(i));
    }
    var ops = new ArrayList<Op>();
    for (int i = 0; i < folders; i++) {
      ops.add(new Op(i, Path.of("a"), i, Path.of("b"), "", "", SEEN, ""));
    }
    var written = JournalWriter.plan(header(all), ops);
    var file = Files.writeString(journals.resolve(BATCH + ".jsonl"), text(written));
    assertThat(JournalReader.summary(disk(), file, root).header().folders()).containsExactly(all);
    assertThat(JournalReader.summary(disk(), file, root).renames()).isEqualTo(folders);
  }

  // ---- what a member may be

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"framewright\":\"renames\"|\"framewright\":\"frames\"|bad value of framewright",
        "\"undoes\":\"\"|\"undoes\":\"x\"|bad value of undoes",
        "\"undoes\":\"\"|\"undoes\":7|bad value of undoes",
        "\"version\":1|\"version\":2|newer version",
        "\"version\":1|\"version\":0|bad value of version",
        "\"guarantee\":\"native\"|\"guarantee\":\"best\"|bad value of guarantee",
        "\"renames\":1|\"renames\":0|bad value of renames",
        "\"renames\":1|\"renames\":2|line 3",
        "\"folders\":[[]]|\"folders\":7|bad value of folders",
        "\"folders\":[[]]|\"folders\":[7]|bad value",
        "\"folders\":[[]]|\"folders\":[[],[]]|names a folder twice",
        "\"folders\":[[]]|\"folders\":[[],[\"x\"],[\"y\"]]|more folders than its renames can need",
        "\"in\":0|\"in\":1|bad value of in",
        "\"in\":0|\"in\":-1|bad value of in",
        "\"from\":\"a\"|\"from\":{\"bytes\":\"YQ==\",\"more\":1}|bad value",
        "\"from\":\"a\"|\"from\":{\"text\":\"a\"}|bad name",
        "\"from\":\"a\"|\"name\":\"a\"|unknown member name",
        "\"size\":3|\"size\":-1|bad value of size",
        "\"size\":3|\"size\":\"3\"|bad value of size",
        "\"at\":\"2026-|\"at\":\"1969-|bad value of at",
        "\"at\":\"2026-11-25T09:30:00Z|\"at\":\"9999-12-31T00:00:00Z|bad value of at",
        "\"batch\":\"0001|\"batch\":\"0002|it belongs to batch 0002",
      })
  void aForgedMemberIsRefusedByItsName(String member, String forged, String why)
      throws IOException {
    var file = open("a", "b");
    JournalForge.change(file, member, forged);
    assertThatThrownBy(() -> JournalReader.read(disk(), file, root))
        .isInstanceOf(DamagedJournal.class)
        .hasMessageContaining(why);
  }

  @Test
  void aNameOrAFolderIsAsLongAsAnySystemHasThem() throws IOException {
    var name = "x".repeat(400);
    var file = open("a", "b");
    JournalForge.change(file, "\"from\":\"a\"", "\"from\":\"" + name + "\"");
    assertThat(JournalReader.read(disk(), file, root).ops().getFirst().from())
        .isEqualTo(Path.of(name));
    JournalForge.change(file, name, name + "x");
    assertDamaged(file, "a name of 401 characters");

    var deep = open("a", "b");
    var levels = "\"d\"" + ",\"d\"".repeat(254);
    JournalForge.change(deep, "[[]]", "[[" + levels + "]]");
    assertThat(JournalReader.read(disk(), deep, root).header().folders().getFirst().getNameCount())
        .isEqualTo(root.getNameCount() + 255);
    JournalForge.change(deep, levels, levels + ",\"d\"");
    assertThatThrownBy(() -> JournalReader.read(disk(), deep, root))
        .hasMessageContaining("a folder lies deeper than any");
  }

  @Test
  void anEndThatIsNoJsonCountsAsNone() throws IOException {
    var file = open("a", "b");
    Files.write(file, JournalForge.closed("{\"end\":nonsense"), StandardOpenOption.APPEND);
    assertThat(JournalReader.read(disk(), file, root).end()).isEqualTo(BatchState.OPEN);
  }

  /** Quotation marks, control characters and other scripts stand in a journal as JSON has them. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "plain ~",
        "a\"b",
        "a\\b",
        "tab\there",
        "\u001f",
        " ",
        "\u007f",
        "\u00fc",
        "\ud83c\udf9e"
      })
  void namesAreWrittenAsJsonHasThem(String name) throws IOException {
    var file = open(name, "b");
    assertThat(JournalReader.read(disk(), file, root).ops().getFirst().from().toString())
        .isEqualTo(name);
    var line = Files.readAllLines(file).get(1);
    assertThat(new ObjectMapper().readTree(line).get("from").asText()).isEqualTo(name);
  }

  // ---- helpers

  private static Op op(String from, String to) {
    return new Op(0, Path.of(from), 0, Path.of(to), "", "", SEEN, "");
  }

  private Disk disk() throws IOException {
    return new NioDisk(root, MoverFallback.movers());
  }

  /** A journal that was begun and not ended. */
  private Path open(String... pairs) throws IOException {
    var ops = new ArrayList<Op>();
    for (int i = 0; i < pairs.length; i += 2) {
      ops.add(op(pairs[i], pairs[i + 1]));
    }
    return forge(root, ops.toArray(Op[]::new));
  }

  private JournalHeader header(Path... folders) {
    return new JournalHeader(
        BATCH, AT, "", Guarantee.NATIVE, "ext4", Optional.empty(), root, List.of(folders));
  }

  private Path forge(Path folder, Op... ops) throws IOException {
    var written = JournalWriter.plan(header(folder), List.of(ops));
    return Files.writeString(journals.resolve(BATCH + ".jsonl"), text(written));
  }

  private static String text(JournalWriter.Written written) {
    var all = new ByteArrayOutputStream();
    written.parts().forEach(all::writeBytes);
    return all.toString(StandardCharsets.UTF_8);
  }

  private String commit(Path file) throws IOException {
    return JournalReader.read(disk(), file, root).commit();
  }

  private void assertDamaged(Path file, String what) throws IOException {
    assertThatThrownBy(() -> JournalReader.read(disk(), file, root))
        .as(what)
        .isInstanceOf(DamagedJournal.class);
  }
}
