package org.framewright.shotlist;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Workbooks as small as they can be, written by hand. */
final class TestWorkbook {
  static final String XML = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>";
  private static final String SHEET =
      "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>";
  private static final String STRINGS =
      "<Override PartName=\"/xl/sharedStrings.xml\""
          + " ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml\"/>";
  private static final String SHEET_END = "</sheetData></worksheet>";

  private TestWorkbook() {}

  /** A file of a workbook. */
  @SuppressWarnings("ArrayRecordComponent") // nobody compares or changes it
  record Part(String name, byte[] content) {
    Part(String name, String text) {
      this(name, text.getBytes(StandardCharsets.UTF_8));
    }
  }

  /** A packed file of these parts. */
  static byte[] zip(String... namesAndTexts) throws IOException {
    var parts = new ArrayList<Part>();
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      parts.add(new Part(namesAndTexts[i], namesAndTexts[i + 1]));
    }
    return zip(parts);
  }

  static byte[] zip(List<Part> parts) throws IOException {
    return zip(parts, ZipEntry.DEFLATED, "");
  }

  /** The same in which all bytes stand as they are, with a comment at the end of the file. */
  static byte[] stored(List<Part> parts, String comment) throws IOException {
    return zip(parts, ZipEntry.STORED, comment);
  }

  private static byte[] zip(List<Part> parts, int method, String comment) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var zip = new ZipOutputStream(bytes)) {
      zip.setComment(comment);
      for (var part : parts) {
        var entry = new ZipEntry(part.name());
        entry.setMethod(method);
        if (method == ZipEntry.STORED) {
          var check = new CRC32();
          check.update(part.content());
          entry.setCrc(check.getValue());
          entry.setSize(part.content().length);
        }
        zip.putNextEntry(entry);
        zip.write(part.content());
      }
    }
    return bytes.toByteArray();
  }

  /** A packed file with one part more. */
  static byte[] with(byte[] packed, String name, byte[] content) throws IOException {
    var parts = new ArrayList<Part>();
    try (var zip = new ZipInputStream(new ByteArrayInputStream(packed))) {
      for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        parts.add(new Part(entry.getName(), zip.readAllBytes()));
      }
    }
    parts.add(new Part(name, content));
    return zip(parts);
  }

  /** A workbook as small as one can be, with this sheet (ECMA-376, part 1, section 12). */
  static byte[] of(int sheets, String sheet, String... more) throws IOException {
    var names = new StringBuilder();
    for (int i = 1; i <= sheets; i++) {
      names
          .append("<sheet name=\"S")
          .append(i)
          .append("\" sheetId=\"")
          .append(i)
          .append("\" r:id=\"rId1\"/>");
    }
    var parts =
        new ArrayList<>(
            List.of(
                "[Content_Types].xml",
                XML
                    + "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Override"
                    + " PartName=\"/xl/workbook.xml\""
                    + " ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/>"
                    + (List.of(more).contains("xl/sharedStrings.xml") ? STRINGS : "")
                    + "</Types>",
                "xl/workbook.xml",
                XML
                    + "<workbook xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\""
                    + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"><sheets>"
                    + names
                    + "</sheets></workbook>",
                "xl/_rels/workbook.xml.rels",
                XML
                    + "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship"
                    + " Id=\"rId1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet\""
                    + " Target=\"worksheets/sheet1.xml\"/></Relationships>",
                "xl/worksheets/sheet1.xml",
                sheet));
    parts.addAll(List.of(more));
    return zip(parts.toArray(String[]::new));
  }

  /** A cell of a sheet that holds a text. */
  static String cell(String name, String text) {
    return "<c r=\"" + name + "\" t=\"inlineStr\"><is><t>" + text + "</t></is></c>";
  }

  /** A sheet with headings in its first row, and these rows. */
  static String sheet(String rows) {
    return XML
        + SHEET
        + "<row r=\"1\">"
        + cell("A1", "Setup")
        + cell("B1", "Title")
        + "</row>"
        + rows
        + SHEET_END;
  }
}
