package org.framewright.shotlist;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import java.io.BufferedInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.framewright.base.Problem;

/**
 * Looks a workbook over before it is read: a small file can unpack to a thousand times its size,
 * name a column beyond all memory, or define entities that expand without end.
 */
final class WorkbookFile {
  private static final String SAVE_AGAIN =
      "Open it in a spreadsheet program and save the list alone as .xlsx or .csv.";

  private static final Problem TOO_LARGE =
      new Problem("it unpacks to more than a shot list can be", SAVE_AGAIN);
  private static final Problem NO_WORKBOOK =
      new Problem("this is a packed file, no workbook (.xlsx)", SAVE_AGAIN);
  private static final Problem ENTITIES =
      new Problem("the workbook defines entities, which no spreadsheet program does", SAVE_AGAIN);
  private static final Problem ODD_CELL =
      new Problem("a cell of the workbook lies outside of every sheet", SAVE_AGAIN);

  /** {@code XFD1048576} is the last cell of a sheet. */
  private static final Pattern CELL_NAME = Pattern.compile("[A-Za-z]{1,3}[0-9]{1,7}");

  /** With what XML begins; the zero byte in UTF-16 without a mark. */
  private static final String XML_STARTS = "< \t\r\n\0";

  /** The parser that the workbook is read with, so that both see the same. */
  private final XMLInputFactory xml = new InputFactoryImpl();

  private final long most;
  private final Map<String, SheetLayout> layouts = new HashMap<>();

  /** The parts that the workbook's sheets lie in, by their relationship. */
  private final Map<String, String> sheets = new HashMap<>();

  private Optional<Problem> problem = Optional.empty();
  private int kept;
  private long unpacked;
  private long span;

  private WorkbookFile(long most) {
    this.most = most;
    xml.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    xml.setProperty(XMLInputFactory.SUPPORT_DTD, false);
  }

  private static final class TooLarge extends IOException {
    private static final long serialVersionUID = 1L;
  }

  /** What forbids reading it; empty if nothing does. */
  Optional<Problem> problem() {
    return problem;
  }

  /**
   * How a sheet is laid out.
   *
   * @param relationship the sheet's, as the workbook gives it
   */
  SheetLayout layout(String relationship) {
    return layouts.getOrDefault(sheets.getOrDefault(relationship, ""), SheetLayout.NONE);
  }

  /** Looks a workbook over. */
  static WorkbookFile look(byte[] bytes) throws IOException, XMLStreamException {
    return look(bytes, Limits.UNPACKED_BYTES);
  }

  /** What forbids reading it; empty if nothing does. */
  static Optional<Problem> check(byte[] bytes) throws IOException, XMLStreamException {
    return look(bytes).problem();
  }

  /**
   * The same for another limit.
   *
   * @param most bytes that its texts may unpack to
   */
  static Optional<Problem> check(byte[] bytes, long most) throws IOException, XMLStreamException {
    return look(bytes, most).problem();
  }

  private static WorkbookFile look(byte[] bytes, long most) throws IOException, XMLStreamException {
    var file = new WorkbookFile(most);
    file.problem = parts(bytes) > Limits.PARTS ? Optional.of(TOO_LARGE) : file.lookOver(bytes);
    return file;
  }

  private Optional<Problem> lookOver(byte[] bytes) throws IOException, XMLStreamException {
    try (var zip = ZipFile.builder().setByteArray(bytes).get()) {
      if (zip.getEntry("[Content_Types].xml") == null || zip.getEntry("mimetype") != null) {
        return Optional.of(NO_WORKBOOK);
      }
      for (var entry : Collections.list(zip.getEntries())) {
        var found = check(zip, entry);
        if (found.isPresent()) {
          return found;
        }
      }
    } catch (TooLarge e) {
      return Optional.of(TOO_LARGE);
    }
    return Optional.empty();
  }

  /** How many entries a packed file has at most, before any is read: their signatures. */
  private static int parts(byte[] bytes) {
    int parts = 0;
    for (int i = 0; i + 3 < bytes.length; i++) {
      if (bytes[i] == 'P' && bytes[i + 1] == 'K' && bytes[i + 2] == 1 && bytes[i + 3] == 2) {
        parts++;
      }
    }
    return parts;
  }

  private Optional<Problem> check(ZipFile zip, ZipArchiveEntry entry)
      throws IOException, XMLStreamException {
    if (entry.isDirectory()) {
      return Optional.empty();
    }
    try (var content = new BufferedInputStream(zip.getInputStream(entry))) {
      if (!isXml(entry, content)) {
        return Optional.empty();
      }
      return check(new Counted(content), entry.getName());
    } catch (XMLStreamException e) {
      // Of pictures and drawings nothing is read; whoever reads such a part as XML stops here, too.
      if (isNamedXml(entry)) {
        throw e;
      }
      return Optional.empty();
    }
  }

  /** By its first bytes: a part may have any name. Pictures are never unpacked. */
  private static boolean isXml(ZipArchiveEntry entry, InputStream content) throws IOException {
    content.mark(8);
    var first = content.readNBytes(4);
    content.reset();
    return isNamedXml(entry)
        || Encoding.starts(first, 0xEF, 0xBB, 0xBF)
        || Encoding.starts(first, 0xFF, 0xFE)
        || Encoding.starts(first, 0xFE, 0xFF)
        || (first.length > 0 && XML_STARTS.indexOf(first[0]) >= 0);
  }

  private static boolean isNamedXml(ZipArchiveEntry entry) {
    return entry.getName().endsWith(".xml") || entry.getName().endsWith(".rels");
  }

  private Optional<Problem> check(InputStream content, String part)
      throws IOException, XMLStreamException {
    try {
      var reader = xml.createXMLStreamReader(content);
      var layout = new SheetLayout.Builder();
      int width = 0;
      while (reader.hasNext()) {
        int event = reader.next();
        if (event == XMLStreamConstants.DTD) {
          return Optional.of(ENTITIES);
        }
        boolean isStart = event == XMLStreamConstants.START_ELEMENT;
        if (isStart) {
          layout.element(reader);
          relationship(reader, part);
        }
        if (isStart && reader.getLocalName().equals("c")) {
          var name = reader.getAttributeValue(null, "r");
          if (name != null && !CELL_NAME.matcher(name).matches()) {
            return Optional.of(ODD_CELL);
          }
          width = name == null ? width + 1 : Math.max(width, columnOf(name));
        } else if (isStart && reader.getLocalName().equals("row")) {
          // Whoever reads a row makes room for each column before its last one.
          span += width;
          width = 0;
          if (span > Limits.SPAN) {
            return Optional.of(TOO_LARGE);
          }
        }
      }
      keep(part, layout.build());
    } catch (XMLStreamException e) {
      if (e.getNestedException() instanceof IOException cause) {
        throw cause;
      }
      throw e;
    }
    return Optional.empty();
  }

  private void keep(String part, SheetLayout layout) {
    kept += layout.hiddenRows().size() + layout.hiddenColumns().size() + layout.merges().size();
    if (!layout.equals(SheetLayout.NONE) && kept <= 2 * Limits.LINES) {
      layouts.put(part, layout);
    }
  }

  /** Which part a relationship leads to (ECMA-376, part 2, section 9.3). */
  private void relationship(XMLStreamReader reader, String part) {
    var type = reader.getAttributeValue(null, "Type");
    var id = reader.getAttributeValue(null, "Id");
    var target = reader.getAttributeValue(null, "Target");
    int owner = part.indexOf("_rels/");
    if (!reader.getLocalName().equals("Relationship")
        || owner < 0
        || id == null
        || target == null
        || type == null
        || !type.endsWith("/worksheet")) {
      return;
    }
    var path = target.startsWith("/") ? target.substring(1) : part.substring(0, owner) + target;
    sheets.putIfAbsent(id, path.replace("/./", "/"));
  }

  /** The column of a cell such as {@code AB12}, from 1. */
  static int columnOf(String cell) {
    int column = 0;
    for (int i = 0; i < cell.length() && Character.isLetter(cell.charAt(i)); i++) {
      column = column * 26 + Character.toUpperCase(cell.charAt(i)) - 'A' + 1;
    }
    return column;
  }

  /** Counts what is unpacked of all parts together, and stops where it is too much. */
  private final class Counted extends FilterInputStream {
    Counted(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      int one = super.read();
      count(one < 0 ? 0 : 1);
      return one;
    }

    @Override
    public int read(byte[] bytes, int offset, int length) throws IOException {
      int read = super.read(bytes, offset, length);
      count(Math.max(0, read));
      return read;
    }

    private void count(int bytes) throws IOException {
      unpacked += bytes;
      if (unpacked > most) {
        throw new TooLarge();
      }
    }
  }
}
