package org.framewright.shotlist;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import org.framewright.base.Problem;
import org.framewright.shotlist.TestWorkbook.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is looked at in a workbook before it is read. */
class WorkbookFileTest {
  private static final Part TYPES = new Part("[Content_Types].xml", "<Types/>");
  private static final String TOO_LARGE = "it unpacks to more than a shot list can be";

  /** The last column of a sheet. Source: Microsoft, "Excel specifications and limits". */
  private static final int XFD = 16_384;

  private static String found(byte[] packed) throws IOException, XMLStreamException {
    return WorkbookFile.check(packed).map(Problem::what).orElse("");
  }

  private static String found(String part, byte[] content) throws IOException, XMLStreamException {
    return found(TestWorkbook.zip(List.of(TYPES, new Part(part, content))));
  }

  private static String found(String text) throws IOException, XMLStreamException {
    return found("xl/part.xml", text.getBytes(StandardCharsets.UTF_8));
  }

  // Parts that are no XML

  // The first bytes of PNG (its specification, section 5.2), JPEG (ITU-T T.81, B.1.1.3), TIFF, GIF,
  // EMF ([MS-EMF], 2.3.4.2), WMF ([MS-WMF], 2.3.2.3), an icon, a compound file ([MS-CFB], 2.2).
  @ParameterizedTest
  @CsvSource({
    "xl/media/image1.png, 89504E470D0A1A0A0000000D",
    "xl/media/image1.jpeg, FFD8FFE000104A46",
    "xl/media/image1.tiff, 49492A0008000000",
    "xl/media/image1.gif, 474946383961",
    "xl/media/image1.emf, 010000006C000000",
    "xl/media/image1.wmf, D7CDC69A0000",
    "xl/media/image1.ico, 0000010001001010",
    "xl/media/image1.svg, 3C7376673E0A3C",
    "xl/media/image1.png, ''",
    "xl/printerSettings/printerSettings1.bin, 5C005C0073007000",
    "xl/embeddings/oleObject1.bin, D0CF11E0A1B11AE1",
  })
  void readsAListWithPicturesAndOtherPartsThatAreNoXml(String name, String content)
      throws IOException {
    var rows = "<row r=\"2\">" + TestWorkbook.cell("A2", "7") + "</row>";
    var workbook = TestWorkbook.of(1, TestWorkbook.sheet(rows));
    var packed = TestWorkbook.with(workbook, name, HexFormat.of().parseHex(content));
    assertThat(ListReader.read(packed, "list.xlsx"))
        .isInstanceOfSatisfying(
            ListReading.Understood.class,
            read -> assertThat(read.list().codes()).containsExactly("7"));
  }

  // Parts that are XML

  private static final String ENTITIES = "<!DOCTYPE x [<!ENTITY a \"ha\">]><x>&a;</x>";

  // XML 1.0, appendix F.1: how the encoding shows in the first bytes.
  @ParameterizedTest
  @CsvSource({
    "xl/sheet.xml, UTF-8, ''",
    "xl/_rels/sheet.xml.rels, UTF-8, ''",
    "xl/sheet.png, UTF-8, ''",
    "xl/sheet.png, UTF-8, ' '",
    "xl/sheet.png, UTF-8, '\t'",
    "xl/sheet.png, UTF-8, '\r\n'",
    "xl/sheet.png, UTF-8, '\n'",
    "xl/sheet.png, UTF-8, \uFEFF",
    "xl/sheet.png, UTF-16LE, \uFEFF",
    "xl/sheet.png, UTF-16BE, \uFEFF",
    "xl/sheet.png, UTF-16LE, <?xml version='1.0' encoding='UTF-16LE'?>",
    "xl/sheet.png, UTF-16BE, <?xml version='1.0' encoding='UTF-16BE'?>",
  })
  void findsEntitiesInAPartOfAnyNameAndEncoding(String name, String charset, String start)
      throws Exception {
    assertThat(found(name, (start + ENTITIES).getBytes(Charset.forName(charset))))
        .isEqualTo("the workbook defines entities, which no spreadsheet program does");
  }

  @ParameterizedTest
  @ValueSource(strings = {"xl/sheet.xml", "xl/_rels/sheet.xml.rels"})
  void takesAPartThatIsNamedXmlForXmlWhateverItBeginsWith(String name) {
    assertThatThrownBy(() -> found(name, "no XML".getBytes(StandardCharsets.UTF_8)))
        .isInstanceOf(XMLStreamException.class);
  }

  @Test
  void passesOverFolders() throws Exception {
    assertThat(found("xl/part.xml/", new byte[0])).isEmpty();
  }

  @Test
  void refusesAPackedFileThatIsNoWorkbook() throws Exception {
    var none = "this is a packed file, no workbook (.xlsx)";
    assertThat(found(TestWorkbook.zip("xl/workbook.xml", "<x/>"))).isEqualTo(none);
    // An OpenDocument file begins with its type (OpenDocument 1.3, part 2, section 3.3).
    assertThat(found("mimetype", "application/vnd".getBytes(StandardCharsets.UTF_8)))
        .isEqualTo(none);
  }

  // How many parts

  private static String withSignatures(int count, String comment) throws Exception {
    var parts = List.of(TYPES, new Part("xl/media/image1.png", "PK\1\2".repeat(count)));
    return found(TestWorkbook.stored(parts, comment));
  }

  @Test
  void countsPartsByTheirSignaturesUpToTheEndOfTheFile() throws Exception {
    // Two parts are there; and the signature of one (APPNOTE of ZIP, 4.3.12) may end the file.
    assertThat(withSignatures(Limits.PARTS - 2, "")).isEmpty();
    assertThat(withSignatures(Limits.PARTS - 1, "")).isEqualTo(TOO_LARGE);
    assertThat(withSignatures(Limits.PARTS - 2, "PK\1\2")).isEqualTo(TOO_LARGE);
    assertThat(withSignatures(Limits.PARTS - 2, "PK\1PK\1\3PJ\1\2OK\1\2PK\2\2PK\1")).isEmpty();
  }

  // How wide its rows are

  /** Rows as wide as all that a list may have but for some columns. */
  private static String wide(int columnsLess) {
    int rows = (int) (Limits.SPAN / XFD);
    assertThat(Limits.SPAN - (long) rows * XFD).isEqualTo(columnsLess);
    return "<row><c r=\"A1\"/><c r=\"XFD1\"/><c r=\"C1\"/></row>".repeat(rows);
  }

  @ParameterizedTest
  @CsvSource({"QAB1, QAC1", "qab1048576, qac1048576"})
  void reckonsTheWidthOfRowsByTheNamesOfTheirLastCells(String most, String more) throws Exception {
    // QAB is the column 17 * 26 * 26 + 1 * 26 + 2 = 11,520.
    var rows = "<x>" + wide(11_520) + "<row><c r=\"";
    assertThat(found(rows + most + "\"/></row><row/></x>")).isEmpty();
    assertThat(found(rows + more + "\"/></row><row/></x>")).isEqualTo(TOO_LARGE);
    assertThat(found(rows + most + "\"/><c/></row><row/></x>")).isEqualTo(TOO_LARGE);
    assertThat(found(rows + most + "\"/></row><row><c/></row><row/></x>")).isEqualTo(TOO_LARGE);
  }

  @Test
  void reckonsCellsOfTheirRowsAlone() throws Exception {
    assertThat(found("<x>" + wide(11_520) + "<cell r=\"no cell\"/><C r=\"none\"/></x>")).isEmpty();
  }

  // How much it unpacks to

  @Test
  void unpacksNoMoreThanAListHoldsInAllPartsTogether() throws Exception {
    var one = new Part("xl/one.xml", "<x/>" + " ".repeat(100_000));
    var two = new Part("xl/two.rels", "<x/>" + " ".repeat(50_000));
    var picture = new Part("xl/three.png", "PNG" + " ".repeat(100_000));
    var packed = TestWorkbook.zip(List.of(TYPES, one, picture, two));
    int texts = "<Types/>".length() + one.content().length + two.content().length;
    assertThat(WorkbookFile.check(packed, texts)).isEmpty();
    assertThat(WorkbookFile.check(packed, texts - 1L).map(Problem::what)).contains(TOO_LARGE);
    assertThat(WorkbookFile.check(packed, 1).map(Problem::what)).contains(TOO_LARGE);
  }
}
