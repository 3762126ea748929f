package org.framewright.shotlist;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Stream;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that are no lists, or lists made to harm. */
class HostileListTest {
  @TempDir private Path folder;

  private static ListProblem refused(ListReading reading) {
    assertThat(reading).isInstanceOf(ListReading.Refused.class);
    var problem = ((ListReading.Refused) reading).problems().getFirst();
    assertThat(problem.problem().remedy()).isNotBlank();
    assertThat(problem.problem().where()).isNotBlank();
    return problem;
  }

  private static ListProblem refused(String text) {
    return refused(read(text));
  }

  private static ListReading read(String text) {
    return ListReader.read(text.getBytes(StandardCharsets.UTF_8), "list.csv");
  }

  /** Everything in here is quick or hangs for hours. */
  private static ListReading soon(Path file) {
    return assertTimeoutPreemptively(Duration.ofMinutes(2), () -> ListReader.read(file));
  }

  private static ListReading soon(String text) {
    return assertTimeoutPreemptively(Duration.ofMinutes(2), () -> read(text));
  }

  // What is no file

  @Test
  void refusesADeviceThatNeverEnds() {
    var device = Path.of("/dev/zero");
    assumeTrue(Files.exists(device));
    assertThat(refused(soon(device)).problem().sentence())
        .isEqualTo("/dev/zero: this is a device or a pipe, no file");
  }

  @Test
  void refusesAPipeWithoutWaitingForItsOtherEnd() throws Exception {
    var pipe = folder.resolve("list.csv");
    var made = new ProcessBuilder("mkfifo", pipe.toString());
    try {
      assumeTrue(made.start().waitFor() == 0);
    } catch (IOException e) {
      assumeTrue(false, "no mkfifo here");
    }
    assertThat(refused(soon(pipe)).problem().what()).contains("pipe");
  }

  @Test
  void saysWhatAFolderAMissingFileAndALinkInACircleAre() throws IOException {
    assertThat(refused(ListReader.read(folder)).problem().sentence())
        .isEqualTo(folder + ": this is a folder, a list was meant");
    var missing = folder.resolve("none.csv");
    assertThat(refused(ListReader.read(missing)).problem().sentence())
        .isEqualTo(missing + ": there is no such file or folder");
    var circle = folder.resolve("circle.csv");
    SymbolicLinks.make(circle, circle);
    assertThat(refused(ListReader.read(circle)).problem().where()).contains("circle.csv");
    assertThat(refused(ListReader.read(Path.of("/"))).problem().what()).contains("folder");
  }

  @Test
  void refusesAFileThatIsTooLargeBeforeItReadsIt() throws IOException {
    var file = folder.resolve("large.csv");
    try (var channel =
        Files.newByteChannel(Files.createFile(file), java.nio.file.StandardOpenOption.WRITE)) {
      channel.position(Limits.FILE_BYTES * 100);
      channel.write(java.nio.ByteBuffer.wrap(new byte[1]));
    }
    assertThat(refused(soon(file)).problem().what()).contains("larger", "64 MB");
    var text = "Setup,Title\n".repeat((int) (Limits.TEXT_BYTES / 12) + 1);
    assertThat(refused(text).problem().what()).contains("larger", "16 MB");
  }

  @Test
  void refusesWhatIsLargerThanAListMayBeAndReadsWhatIsAsLarge() {
    var large = new byte[(int) Limits.FILE_BYTES + 1];
    assertThat(refused(ListReader.read(large, "list.csv")))
        .hasToString("list.csv: it is larger than a shot list can be, 64 MB");
    large = new byte[(int) Limits.FILE_BYTES];
    assertThat(refused(ListReader.read(large, "list.csv")))
        .hasToString("list.csv: it is larger than a shot list can be, 16 MB");
    large = new byte[(int) Limits.TEXT_BYTES + 1];
    assertThat(refused(ListReader.read(large, "list.csv")))
        .hasToString("list.csv: it is larger than a shot list can be, 16 MB");
    assertThat(refused(ListReader.read(new byte[(int) Limits.TEXT_BYTES], "list.csv")))
        .hasToString("list.csv, line 1, column 1: this is no text: a zero byte stands here");
  }

  @Test
  void saysWhichFileCouldNotBeReadWhereTheSystemDoesNotSay() {
    // A read at its beginning, where nothing is mapped, is an input/output error: proc(5).
    var memory = Path.of("/proc/self/mem");
    assumeTrue(Files.isReadable(memory));
    assertThat(refused(soon(memory)).problem().sentence())
        .isEqualTo("/proc/self/mem: the disk could not read or write it");
  }

  // What is another kind of file

  @Test
  void namesTheKindOfAFileThatIsNoList() {
    assertThat(refused(ListReader.read(bytes(0xFF, 0xD8, 0xFF, 0xE0, 0, 16), "a.csv")).toString())
        .isEqualTo("a.csv: this is a picture (JPEG), no list");
    assertThat(
            refused(ListReader.read(bytes(0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1), "a.xls")).toString())
        .isEqualTo("a.xls: this is a workbook of the old format (.xls)");
    assertThat(refused(ListReader.read(bytes('I', 'I', 0x2A, 0, 8), "a.csv")).problem().what())
        .contains("TIFF");
    assertThat(refused("%PDF-1.7 x").problem().what()).contains("PDF");
    assertThat(refused("{\\rtf1").problem().what()).contains("RTF");
  }

  @Test
  void saysThatAProtectedWorkbookIsProtected() throws IOException {
    var bytes = new ByteArrayOutputStream();
    bytes.write(bytes(0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1));
    bytes.write(new byte[1016]);
    bytes.write("EncryptedPackage".getBytes(StandardCharsets.UTF_16LE));
    bytes.write(new byte[100]);
    var problem = refused(ListReader.read(bytes.toByteArray(), "a.xlsx")).problem();
    assertThat(problem.what()).isEqualTo("this workbook is protected by a password");
    assertThat(problem.remedy()).contains("take the password off");
    var atTheEnd = java.util.Arrays.copyOf(bytes.toByteArray(), bytes.size() - 100);
    assertThat(refused(ListReader.read(atTheEnd, "a.xlsx")).problem().what())
        .isEqualTo("this workbook is protected by a password");
  }

  @Test
  void saysThatAPackedFileIsNoWorkbook() throws IOException {
    assertThat(
            refused(ListReader.read(TestWorkbook.zip("list.csv", "Setup\n1\n"), "a.xlsx"))
                .problem()
                .what())
        .contains("no workbook");
    assertThat(refused(ListReader.read(new byte[] {'P', 'K', 5, 6}, "a.xlsx")).problem().what())
        .contains("no sound workbook".substring(3));
  }

  static Stream<Arguments> zeros() {
    return Stream.of(
        Arguments.of("Setup,Title\n1,a\0b\n", 2, 4),
        Arguments.of("Setup,Title\r1,Coat\r2,\0\r", 3, 3),
        Arguments.of("Setup,Title\r\n1,\uD83D\uDC5F\0\r\n", 2, 4),
        Arguments.of("\0", 1, 1));
  }

  @ParameterizedTest
  @MethodSource("zeros")
  void saysWhereAZeroByteStands(String text, int line, int column) {
    var problem = refused(text);
    assertThat(problem.problem().what()).isEqualTo("this is no text: a zero byte stands here");
    assertThat(List.of(problem.line(), problem.column())).containsExactly(line, column);
    assertThat(problem.problem().where())
        .isEqualTo("list.csv, line " + line + ", column " + column);
  }

  @Test
  void remarksOnAFileThatEndsInTheMiddleOfACharacter() {
    var bytes = "\uFEFFSetup,Title\n1,Coat".getBytes(StandardCharsets.UTF_16LE);
    var cut = java.util.Arrays.copyOf(bytes, bytes.length - 1);
    var read = (ListReading.Understood) ListReader.read(cut, "list.csv");
    assertThat(read.list().setups().getFirst().title()).isEqualTo("Coa");
    assertThat(read.remarks())
        .singleElement()
        .hasToString("list.csv, line 2, column 6: the file ends in the middle of a character");
    var ends = "\uFEFFSetup,Title\r1,Coat\r".getBytes(StandardCharsets.UTF_16LE);
    cut = java.util.Arrays.copyOf(ends, ends.length + 1);
    read = (ListReading.Understood) ListReader.read(cut, "list.csv");
    assertThat(read.remarks())
        .singleElement()
        .hasToString("list.csv, line 3, column 1: the file ends in the middle of a character");
  }

  @Test
  void saysWhichLettersItCouldNotRead() {
    var bytes = "Setup,Title\n1,Cr\u00EApe\n".getBytes(StandardCharsets.UTF_8);
    bytes[15] = (byte) 0x81; // Of no letter in Windows-1252, and no UTF-8 either.
    var read = (ListReading.Understood) ListReader.read(bytes, "list.csv");
    assertThat(read.form().english()).startsWith("Windows-1252");
    assertThat(read.remarks())
        .anySatisfy(
            remark -> assertThat(remark.toString()).startsWith("list.csv, line 2, column 3:"));
  }

  @Test
  void refusesACodeThatNobodyCanSee() {
    assertThat(refused("Setup,Title\n\u00A0,Coat\n\u2003,Hat\n").line()).isEqualTo(2);
  }

  @Test
  void understandsCrossesThatSayNone() {
    var read = (ListReading.Understood) read("Setup,Title,Front,Back\n1,Coat,00,x\n");
    assertThat(read.list().setups().getFirst().viewsText()).isEqualTo("Back");
  }

  @Test
  void readsViewsBetweenWideSpaces() {
    var read = (ListReading.Understood) read("Setup,Views\n1,F \u2003 B\n2,\u2003\n3,-\n");
    assertThat(read.list().setups()).extracting(Setup::viewsText).containsExactly("F, B", "", "");
  }

  // What is too much

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(
      strings = {
        " ", "x ", "F ", "(1", "F:", "\"", "\"\"", "1 x ", ":", "=", "'", "'=", ";", "\u00A0",
        "a\u0301"
      })
  void readsACellOfAnyContentInTimeThatGrowsWithItsLength(String part) {
    var cell = part.repeat(Limits.CELL / part.length() / 2);
    var quoted = '"' + cell.replace("\"", "\"\"") + '"';
    soon(
        "Setup,Title,Views,Frames,Front\n"
            + (String.join(",", List.of("1", quoted, quoted, quoted, quoted)) + "\n").repeat(20));
    soon("Setup," + quoted + "\n1,x\n");
  }

  @Test
  void refusesACellOfMoreThanASpreadsheetHolds() {
    var longest = "x".repeat(Limits.CELL);
    assertThat(read("Setup,Title\n1," + longest + "\n")).isInstanceOf(ListReading.Understood.class);
    var problem = refused("Setup,Title\n1,Coat\n2," + longest + "x\n3,Hat\n");
    assertThat(problem)
        .hasToString("list.csv, line 3, column 3: a cell holds more than 32,767 characters");
    assertThat(refused("Setup,Title\n1,\"" + longest + "x\"\n").column()).isEqualTo(3);
    assertThat(refused("Setup,Title\n1,\"" + "x".repeat(100_000)).problem().remedy())
        .contains("never closed");
  }

  @Tag("slow")
  @Test
  void readsTheLongestListAndRefusesALongerOneAtOnce() {
    var text = new StringBuilder("Setup,Title\n");
    for (int i = 1; i < Limits.LINES; i++) {
      text.append(i).append(",Coat ").append(i).append('\n');
    }
    var read = (ListReading.Understood) soon(text.toString());
    assertThat(read.list().setups()).hasSize(Limits.LINES - 1);
    assertThat(read.list().setup("A")).isEmpty();
    assertThat(read.list().setup("0777").orElseThrow().title()).isEqualTo("Coat 777");
    text.append("\n\n60000,Coat\n");
    var problem = refused(soon(text.toString()));
    assertThat(problem)
        .hasToString("list.csv, line 60003, column 1: the list has more than 60,000 lines");
    assertThat(problem.problem().remedy()).contains("split the list");
  }

  @Tag("slow")
  @Test
  void refusesMoreColumnsOrCellsThanAListHas() {
    assertThat(read("Setup,Title" + ",".repeat(5000) + "\n1,Coat\n"))
        .isInstanceOf(ListReading.Understood.class);
    assertThat(refused("Setup,Title" + ",".repeat(998) + "\n1,Coat" + ",x".repeat(999) + "\n"))
        .hasToString("list.csv, line 2, column 2004: the list has more than 1,000 columns");
    assertThat(
            refused("Setup,Title\n" + ("1" + ",x".repeat(999) + "\n").repeat(2001))
                .problem()
                .what())
        .isEqualTo("the list has more than 2,000,000 cells");
  }

  @Test
  void keepsTheFirstProblemsOfAListThatIsFullOfThem() {
    var problems =
        ((ListReading.Refused) soon("Setup,Title,Note\n" + ",Coat,x\n".repeat(10_000))).problems();
    assertThat(problems).hasSize(Limits.PROBLEMS);
    assertThat(problems.getLast().line()).isEqualTo(Limits.PROBLEMS + 1);
  }

  @Test
  void givesEqualHeadingsNamesOfTheirOwn() {
    var read =
        (ListReading.Understood)
            read("Setup" + ",Size".repeat(900) + ",Size 2\n1" + ",x".repeat(901) + "\n");
    assertThat(read.list().setups().getFirst().columns())
        .hasSize(901)
        .containsKeys("Size 900", "Size 2 2");
  }

  // Workbooks made to harm

  private static byte[] bytes(int... values) {
    var bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return bytes;
  }

  private static ListReading soonBook(byte[] bytes) {
    return assertTimeoutPreemptively(
        Duration.ofMinutes(2), () -> ListReader.read(bytes, "list.xlsx"));
  }

  @Test
  void readsTheSmallestWorkbookAndItsLastRow() throws IOException {
    var rows =
        "<row r=\"1048576\">"
            + TestWorkbook.cell("A1048576", "7")
            + TestWorkbook.cell("XFD1048576", "")
            + "</row>";
    var read = (ListReading.Understood) soonBook(TestWorkbook.of(1, TestWorkbook.sheet(rows)));
    assertThat(read.list().codes()).containsExactly("7");
  }

  @Test
  void refusesACellBehindTheColumnsOfAList() throws IOException {
    var rows =
        "<row r=\"2\">"
            + TestWorkbook.cell("A2", "7")
            + TestWorkbook.cell("XFD2", "far")
            + "</row>";
    assertThat(refused(soonBook(TestWorkbook.of(1, TestWorkbook.sheet(rows)))))
        .hasToString(
            "list.xlsx, sheet S1, line 2, column 16384: the list has more than 1,000 columns");
  }

  @ParameterizedTest
  @ValueSource(strings = {"ZZZZZZ2", "A99999999", "A", "2", "\u00C42", ""})
  void refusesACellOutsideOfEverySheet(String name) throws IOException {
    var problem =
        refused(
            soonBook(
                TestWorkbook.of(
                    1,
                    TestWorkbook.sheet(
                        "<row r=\"2\">" + TestWorkbook.cell(name, "7") + "</row>"))));
    assertThat(problem.problem().what()).contains("outside of every sheet");
  }

  @Test
  @Tag("slow")
  void refusesAWorkbookThatUnpacksToTooMuch() throws IOException {
    var rows = new StringBuilder();
    while (rows.length() < Limits.UNPACKED_BYTES) {
      rows.append(" ".repeat(1 << 20));
    }
    var bomb = TestWorkbook.of(1, TestWorkbook.sheet(rows.toString()));
    assertThat(bomb.length).isLessThan(200_000);
    assertThat(refused(soonBook(bomb)).problem().what()).contains("unpacks to more");
  }

  @Test
  @Tag("slow")
  void refusesRowsThatAreAllWidth() throws IOException {
    var rows = "<row><c r=\"XFD2\"/></row>".repeat((int) (Limits.SPAN / Workbook.MOST_COLUMNS) + 2);
    assertThat(refused(soonBook(TestWorkbook.of(1, TestWorkbook.sheet(rows)))).problem().what())
        .contains("unpacks to more");
  }

  @Test
  @Tag("slow")
  void looksAtTheFirstOfVeryManySheets() throws IOException {
    var rows =
        ("<row>" + TestWorkbook.cell("A2", "") + "</row>").repeat(50_000)
            + "<row r=\"50003\">"
            + TestWorkbook.cell("A50003", "7")
            + "</row>";
    var read = (ListReading.Understood) soonBook(TestWorkbook.of(20_000, TestWorkbook.sheet(rows)));
    assertThat(read.form().english()).startsWith("workbook, sheet S1,");
  }

  @Test
  @Tag("slow")
  void refusesAWorkbookOfVeryManyParts() throws IOException {
    var parts = new String[2 * (Limits.PARTS + 1)];
    for (int i = 0; i < parts.length; i += 2) {
      parts[i] = "xl/media/" + i;
      parts[i + 1] = "";
    }
    assertThat(
            refused(soonBook(TestWorkbook.of(1, TestWorkbook.sheet(""), parts))).problem().what())
        .contains("unpacks to more");
  }

  @Test
  @Tag("slow")
  void readsManySharedStringsAndLinesInTime() throws IOException {
    var strings =
        new StringBuilder(
            TestWorkbook.XML
                + "<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">");
    var rows = new StringBuilder();
    for (int i = 0; i < 19_000; i++) {
      strings.append("<si><t>Coat &amp; hat &#xE9; ").append(i).append("</t></si>");
      rows.append("<row r=\"")
          .append(i + 2)
          .append("\"><c r=\"A")
          .append(i + 2)
          .append("\"><v>")
          .append(i)
          .append("</v></c><c r=\"B")
          .append(i + 2)
          .append("\" t=\"s\"><v>")
          .append(i)
          .append("</v></c></row>");
    }
    strings.append("<si><t/></si>".repeat(1_000_000)).append("</sst>");
    var read =
        (ListReading.Understood)
            soonBook(
                TestWorkbook.of(
                    1,
                    TestWorkbook.sheet(rows.toString()),
                    "xl/sharedStrings.xml",
                    strings.toString()));
    assertThat(read.list().setups()).hasSize(19_000);
    assertThat(read.list().setups().getLast().title()).isEqualTo("Coat & hat \u00E9 18999");
  }

  @Test
  void refusesEntities() throws IOException {
    var levels = new StringBuilder("<!DOCTYPE lolz [<!ENTITY a0 \"ha\">");
    for (int i = 1; i < 30; i++) {
      levels
          .append("<!ENTITY a")
          .append(i)
          .append(" \"")
          .append(("&a" + (i - 1) + ";").repeat(10))
          .append("\">");
    }
    levels.append("]>");
    var sheet =
        TestWorkbook.sheet("<row r=\"2\">" + TestWorkbook.cell("A2", "&a29;") + "</row>")
            .replace(TestWorkbook.XML, TestWorkbook.XML + levels);
    assertThat(refused(soonBook(TestWorkbook.of(1, sheet))).problem().what()).contains("entities");
    var outside =
        TestWorkbook.sheet("<row r=\"2\">" + TestWorkbook.cell("A2", "&x;") + "</row>")
            .replace(
                TestWorkbook.XML,
                TestWorkbook.XML + "<!DOCTYPE x [<!ENTITY x SYSTEM \"file:///etc/hostname\">]>");
    assertThat(refused(soonBook(TestWorkbook.of(1, outside))).problem().what())
        .contains("entities");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"1E999999999", "1E-999999999", "NaN", "-1", "2958466", "99999999999999999999"})
  void readsANumberHoweverLarge(String number) throws IOException {
    var rows =
        "<row r=\"2\"><c r=\"A2\"><v>"
            + number
            + "</v></c>"
            + TestWorkbook.cell("B2", "x")
            + "</row>";
    if (soonBook(TestWorkbook.of(1, TestWorkbook.sheet(rows)))
        instanceof ListReading.Understood read) {
      assertThat(read.list().codes().getFirst().length()).isLessThan(1000);
    }
  }

  @Test
  void passesOverDrawingsThatAreNotSound() throws IOException {
    var rows = "<row r=\"2\">" + TestWorkbook.cell("A2", "7") + "</row>";
    var read =
        soonBook(
            TestWorkbook.of(
                1, TestWorkbook.sheet(rows), "xl/drawings/vmlDrawing1.vml", "<xml><br></xml>"));
    assertThat(read).isInstanceOf(ListReading.Understood.class);
    assertThat(
            refused(soonBook(TestWorkbook.of(1, TestWorkbook.sheet(rows) + "<"))).problem().what())
        .contains("sound");
  }

  @Test
  void refusesToWriteWhatAWorkbookDoesNotTake() throws IOException {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Note", "\u0001".repeat(5000));
    var list =
        new ShotList(
            List.of(new Setup("1", "Coat", List.of(), java.util.OptionalInt.empty(), columns)));
    var file = folder.resolve("list.xlsx");
    var problem = ListWriter.create(file, list, _ -> new LinkedHashMap<>()).orElseThrow();
    assertThat(problem.what()).contains("setup 1");
    assertThat(problem.remedy()).contains(".csv");
    assertThat(file).doesNotExist();
    assertThat(ListWriter.create(folder.resolve("list.csv"), list, _ -> new LinkedHashMap<>()))
        .isEmpty();
  }
}
