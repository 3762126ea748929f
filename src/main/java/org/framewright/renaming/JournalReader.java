package org.framewright.renaming;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.zip.CRC32C;
import org.framewright.base.Sha256;
import org.framewright.base.Text;

/**
 * Reads journals, see {@link JournalFormat}. A journal may come with a folder from anybody. So what
 * is read is checked: every name is one plain component, every folder lies below the root, and the
 * checksums hold; and nothing is read that is larger than a journal of ours can be.
 */
final class JournalReader {
  /** A batch of a million files stays below it. */
  private static final long LONGEST = 256L << 20;

  /** The first line names each folder of a batch; one with a hundred thousand stays below it. */
  private static final int LONGEST_HEAD = 16 << 20;

  private static final int HEAD_BYTES = 16 * 1024;
  private static final int TAIL_BYTES = 4096;

  /** No system lets a person go deeper without effort; each level costs the one above again. */
  private static final int MOST_LEVELS = 255;

  /** More than the 255 bytes or UTF-16 units of the longest name, as text or in Base64. */
  private static final int LONGEST_NAME = 400;

  /** No line of a rename is shorter. */
  private static final int SHORTEST_LINE = 64;

  private static final Instant FIRST = Instant.EPOCH;
  private static final Instant LAST = Instant.parse("9999-12-31T00:00:00Z");
  private static final JsonFactory JSON = new JsonFactory();
  private static final Set<String> HEADER =
      Set.of(
          "framewright",
          "version",
          "batch",
          "at",
          "undoes",
          "guarantee",
          "volume",
          "folders",
          "renames");

  private final String file;
  private final Path root;
  private final CRC32C crc = new CRC32C();
  private int line;
  private JournalHeader header;
  private int renames;

  private JournalReader(String file, Path root) {
    this.file = file;
    this.root = root;
  }

  /** Goes on behind a line of what another one has begun to read. */
  private JournalReader(JournalReader begun, int line) {
    this(begun.file, begun.root);
    this.line = line;
    this.header = begun.header;
  }

  /**
   * Reads a whole journal and checks all of it.
   *
   * @throws DamagedJournal if it is not as it was written, or reaches out of its folder
   */
  static Journal read(Disk disk, Path file, Path root) throws IOException {
    var reader = new JournalReader(file.getFileName().toString(), root);
    long size = reader.size(disk, file);
    if (size > LONGEST) {
      throw reader.damaged(Text.of("it is larger than any journal"));
    }
    // What is read of it takes about three times its size.
    if (size > Runtime.getRuntime().maxMemory() / 4) {
      throw reader.damaged(Text.of("it is too large for the memory of this program"));
    }
    return reader.read(disk.read(file, 0, (int) size));
  }

  /**
   * A batch as its first lines and its last ones describe it; the lines between are not read.
   *
   * @param example its first rename, {@code A.jpg -> B.jpg}
   */
  record Summary(JournalHeader header, int renames, String example, BatchState end) {}

  /**
   * Reads the ends of a journal.
   *
   * @throws DamagedJournal if they are not as they were written, or reach out of their folder
   */
  static Summary summary(Disk disk, Path file, Path root) throws IOException {
    var reader = new JournalReader(file.getFileName().toString(), root);
    long size = reader.size(disk, file);
    int most = HEAD_BYTES;
    var head = disk.read(file, 0, most);
    while (!holdsTwoLines(head) && head.length < size) {
      if (most >= LONGEST_HEAD) {
        throw reader.damaged(Text.of("its first lines are longer than those of any journal"));
      }
      most *= 4;
      head = disk.read(file, 0, most);
    }
    long tailAt = Math.max(0, size - TAIL_BYTES);
    return reader.summary(head, disk.read(file, tailAt, TAIL_BYTES), tailAt);
  }

  private long size(Disk disk, Path journal) throws IOException {
    var look = disk.look(journal);
    if (!look.isFile()) {
      throw damaged(Text.of("it is no plain file"));
    }
    return look.seen().size();
  }

  private static boolean holdsTwoLines(byte[] bytes) {
    int first = lineEnd(bytes, 0);
    return first >= 0 && lineEnd(bytes, first + 1) >= 0;
  }

  private static int lineEnd(byte[] bytes, int from) {
    for (int i = from; i < bytes.length; i++) {
      if (bytes[i] == '\n') {
        return i;
      }
    }
    return -1;
  }

  private Journal read(byte[] bytes) throws IOException {
    int start = header(bytes);
    if (renames > bytes.length / SHORTEST_LINE) {
      throw damaged(Text.of("the file ends too early"));
    }
    var starts = new int[Math.ceilDiv(renames, JournalFormat.PART)]; // of each part
    for (int i = 0; i < renames; i++) {
      if (i % JournalFormat.PART == 0) {
        starts[i / JournalFormat.PART] = start;
      }
      start = lineEnd(bytes, start) + 1;
      line++;
      if (start == 0) {
        throw damaged(Text.of("the file ends too early"));
      }
    }
    var ops = new Op[renames];
    Parallel.each(
        starts.length,
        part -> {
          int from = part * JournalFormat.PART;
          new JournalReader(this, from + 1).ops(bytes, starts[part], ops, from);
        });
    int committed = nextLine(bytes, start);
    var commit = commit(bytes, start, committed);
    var sum = Sha256.digest();
    sum.update(bytes, 0, start);
    if (!commit.equals(HexFormat.of().formatHex(sum.digest()))) {
      throw damaged(Text.of("its lines do not add up to its checksum"));
    }
    var end = end(bytes, committed + 1, commit);
    return new Journal(header, List.of(ops), commit, committed + 1L, end);
  }

  /** Reads the lines of one part. */
  private void ops(byte[] bytes, int from, Op[] ops, int first) throws IOException {
    int start = from;
    try (var json = JSON.createParser(bytes, from, bytes.length - from)) {
      for (int i = first; i < Math.min(ops.length, first + JournalFormat.PART); i++) {
        int end = nextLine(bytes, start);
        ops[i] = op(json);
        if (from + json.currentLocation().getByteOffset() != end) {
          throw damaged(Text.of("the line is more than one object"));
        }
        start = end + 1;
      }
    } catch (IOException e) {
      throw notJson(e);
    }
  }

  private Summary summary(byte[] head, byte[] tail, long tailAt) throws IOException {
    int start = header(head);
    var first = new Op[1];
    ops(head, start, first, 0);
    var example = first[0].from() + " -> " + first[0].to();
    // The last lines: the commit, and perhaps an end, whole or torn.
    line = renames + 2;
    int at = tailAt == 0 ? 0 : lineEnd(tail, 0) + 1;
    for (int end = lineEnd(tail, at); end >= 0; end = lineEnd(tail, at)) {
      if (startsWith(tail, at, "{\"commit\":")) {
        var commit = commit(tail, at, end);
        return new Summary(header, renames, example, end(tail, end + 1, commit));
      }
      at = end + 1;
    }
    throw damaged(Text.of("its last lines are missing"));
  }

  private static boolean startsWith(byte[] bytes, int at, String text) {
    return at + text.length() <= bytes.length
        && text.equals(new String(bytes, at, text.length(), StandardCharsets.ISO_8859_1));
  }

  /** The end of the line that begins here; the line's own checksum holds. */
  private int nextLine(byte[] bytes, int start) throws DamagedJournal {
    line++;
    int end = lineEnd(bytes, start);
    if (end < 0) {
      throw damaged(Text.of("the file ends too early"));
    }
    if (!checks(bytes, start, end)) {
      throw damaged(Text.of("the line does not match its checksum"));
    }
    return end;
  }

  private boolean checks(byte[] bytes, int start, int end) {
    int at = end - JournalFormat.CRC_BYTES;
    if (at <= start) {
      return false;
    }
    crc.reset();
    crc.update(bytes, start, at - start);
    return Arrays.equals(
        bytes, at, end + 1, JournalFormat.closing(crc), 0, JournalFormat.CRC_BYTES + 1);
  }

  private int header(byte[] bytes) throws IOException {
    int end = nextLine(bytes, 0);
    var batch = "";
    var at = FIRST;
    var undoes = "";
    var guarantee = Guarantee.NATIVE;
    var volume = "";
    var home = Optional.<String>empty();
    List<Path> folders = List.of();
    try (var json = parser(bytes, 0, end)) {
      var members = new HashSet<String>();
      for (var member = json.nextFieldName(); member != null; member = json.nextFieldName()) {
        members.add(member);
        json.nextToken();
        switch (member) {
          case "framewright" -> text(json, "renames"::equals);
          case "version" -> {
            if (number(json, 1, Integer.MAX_VALUE) != JournalFormat.VERSION) {
              throw damaged(Text.of("it was written by a newer version"));
            }
          }
          case "batch" -> batch = text(json, id -> JournalFormat.BATCH.matcher(id).matches());
          case "at" -> at = instant(json);
          case "undoes" ->
              undoes = text(json, id -> id.isEmpty() || JournalFormat.BATCH.matcher(id).matches());
          case "guarantee" -> guarantee = guarantee(json);
          case "volume" -> volume = text(json, any -> true);
          case "home" -> home = Optional.of(text(json, any -> true));
          case "folders" -> folders = folders(json);
          case "renames" -> renames = (int) number(json, 1, LONGEST / SHORTEST_LINE);
          case "crc" -> {}
          default -> throw damaged(Text.of("unknown member {0}", member));
        }
      }
      if (!members.containsAll(HEADER)) {
        throw damaged(Text.of("the first line is no journal's"));
      }
    } catch (IOException e) {
      throw notJson(e);
    }
    if (!file.equals(batch + Store.ENDING)) {
      throw damaged(Text.of("the file was renamed; it belongs to batch {0}", batch));
    }
    if (folders.size() > 2L * renames) {
      throw damaged(Text.of("it names more folders than its renames can need"));
    }
    header = new JournalHeader(batch, at, undoes, guarantee, volume, home, root, folders);
    return end + 1;
  }

  private Op op(JsonParser json) throws IOException {
    int in = -1;
    int into = -1;
    Path from = null;
    Path to = null;
    var temp = "";
    var group = "";
    var key = "";
    var hash = "";
    long size = -1;
    long modified = Long.MIN_VALUE;
    int lastFolder = header.folders().size() - 1;
    if (json.nextToken() != JsonToken.START_OBJECT) {
      throw damaged(Text.of("the line is no object"));
    }
    for (var member = json.nextFieldName(); member != null; member = json.nextFieldName()) {
      json.nextToken();
      switch (member) {
        case "in" -> in = (int) number(json, 0, lastFolder);
        case "into" -> into = (int) number(json, 0, lastFolder);
        case "from" -> from = name(json);
        case "to" -> to = name(json);
        case "temp" -> temp = text(json, name -> TempNames.isOf(header.batch(), name));
        case "group" -> group = text(json, any -> true);
        case "size" -> size = number(json, 0, Long.MAX_VALUE);
        case "modified" -> modified = number(json, Long.MIN_VALUE + 1, Long.MAX_VALUE);
        case "key" -> key = text(json, any -> true);
        case "hash" -> hash = text(json, any -> true);
        case "crc" -> {}
        default -> throw damaged(Text.of("unknown member {0}", member));
      }
    }
    if (in < 0 || from == null || to == null || size < 0 || modified == Long.MIN_VALUE) {
      throw damaged(Text.of("the line is no rename"));
    }
    return new Op(
        in, from, into < 0 ? in : into, to, temp, group, new Seen(key, size, modified), hash);
  }

  private String commit(byte[] bytes, int start, int end) throws IOException {
    if (!checks(bytes, start, end)) {
      throw damaged(Text.of("the line does not match its checksum"));
    }
    try (var json = parser(bytes, start, end)) {
      if (!"commit".equals(json.nextFieldName())) {
        throw damaged(Text.of("the line should close the plan"));
      }
      json.nextToken();
      return text(json, any -> true);
    } catch (IOException e) {
      throw notJson(e);
    }
  }

  /** How it ended; a torn line counts as no end. */
  private BatchState end(byte[] bytes, int start, String commit) throws IOException {
    int end = lineEnd(bytes, start);
    if (end < 0 || !checks(bytes, start, end)) {
      return BatchState.OPEN;
    }
    String state = null;
    String of = null;
    try (var json = parser(bytes, start, end)) {
      for (var member = json.nextFieldName(); member != null; member = json.nextFieldName()) {
        var value = json.nextTextValue();
        switch (member) {
          case "end" -> state = value;
          case "commit" -> of = value;
          default -> {}
        }
      }
    } catch (IOException e) {
      return BatchState.OPEN;
    }
    for (var ended : List.of(BatchState.DONE, BatchState.ROLLED_BACK, BatchState.STUCK)) {
      if (ended.label().equals(state) && commit.equals(of)) {
        return ended;
      }
    }
    throw damaged(Text.of("its end belongs to another journal"));
  }

  private JsonParser parser(byte[] bytes, int start, int end) throws IOException {
    var json = JSON.createParser(bytes, start, end - start);
    if (json.nextToken() != JsonToken.START_OBJECT) {
      throw damaged(Text.of("the line is no object"));
    }
    return json;
  }

  private String text(JsonParser json, Predicate<String> allowed) throws IOException {
    if (json.currentToken() != JsonToken.VALUE_STRING || !allowed.test(json.getText())) {
      throw badValue(json);
    }
    return json.getText();
  }

  private long number(JsonParser json, long least, long most) throws IOException {
    if (json.currentToken() == JsonToken.VALUE_NUMBER_INT) {
      long value = json.getLongValue();
      if (value >= least && value <= most) {
        return value;
      }
    }
    throw badValue(json);
  }

  private Instant instant(JsonParser json) throws IOException {
    try {
      var at = Instant.parse(text(json, any -> true));
      if (!at.isBefore(FIRST) && at.isBefore(LAST)) {
        return at;
      }
    } catch (DateTimeException e) {
      // As below.
    }
    throw damaged(Text.of("bad value of {0}", "at"));
  }

  private Guarantee guarantee(JsonParser json) throws IOException {
    var word = text(json, any -> true);
    for (var guarantee : Guarantee.values()) {
      if (JournalFormat.word(guarantee).equals(word)) {
        return guarantee;
      }
    }
    throw damaged(Text.of("bad value of {0}", "guarantee"));
  }

  private List<Path> folders(JsonParser json) throws IOException {
    expect(json, JsonToken.START_ARRAY);
    var read = new ArrayList<Path>();
    while (json.nextToken() != JsonToken.END_ARRAY) {
      expect(json, JsonToken.START_ARRAY);
      var folder = root;
      int levels = 0;
      while (json.nextToken() != JsonToken.END_ARRAY) {
        folder = folder.resolve(name(json));
        levels++;
        if (levels > MOST_LEVELS) {
          throw damaged(Text.of("a folder lies deeper than any"));
        }
      }
      if (Folders.isOurs(root.relativize(folder))) {
        throw damaged(Text.of("it reaches into .framewright"));
      }
      read.add(folder);
    }
    if (new HashSet<>(read).size() < read.size()) {
      throw damaged(Text.of("it names a folder twice"));
    }
    return List.copyOf(read);
  }

  private void expect(JsonParser json, JsonToken token) throws IOException {
    if (json.currentToken() != token) {
      throw badValue(json);
    }
  }

  /** One plain component: no separator, no way up, no root. */
  private Path name(JsonParser json) throws IOException {
    try {
      Path name;
      if (json.currentToken() == JsonToken.START_OBJECT) {
        if (!"bytes".equals(json.nextFieldName())) {
          throw damaged(Text.of("bad name"));
        }
        json.nextToken();
        name = PathBytes.name(Base64.getDecoder().decode(text(json, JournalReader::isShort)));
        json.nextToken();
        expect(json, JsonToken.END_OBJECT);
      } else {
        name = root.getFileSystem().getPath(text(json, JournalReader::isShort));
      }
      if (Folders.isPlainName(name)) {
        return name;
      }
    } catch (InvalidPathException e) {
      throw damaged(
          Text.of(
              "the name \"{0}\" cannot be used here (the system's language settings"
                  + " may not allow it)",
              e.getInput()));
    } catch (IllegalArgumentException e) {
      throw damaged(Text.of("a name that is none"));
    }
    throw damaged(Text.of("a name reaches out of its folder"));
  }

  private static boolean isShort(String name) {
    return name.length() <= LONGEST_NAME;
  }

  /** What is in memory already fails for one reason only. */
  private DamagedJournal notJson(IOException e) {
    return e instanceof DamagedJournal damaged ? damaged : damaged(Text.of("the line is not JSON"));
  }

  private DamagedJournal badValue(JsonParser json) throws IOException {
    var member = json.currentName();
    return damaged(member == null ? Text.of("bad value") : Text.of("bad value of {0}", member));
  }

  private DamagedJournal damaged(Text why) {
    return new DamagedJournal(file, line, why);
  }
}
