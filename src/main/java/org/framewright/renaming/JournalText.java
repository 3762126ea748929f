package org.framewright.renaming;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.zip.CRC32C;

/**
 * A journal as text: JSON Lines in UTF-8, each line an object whose last member {@code crc} is the
 * CRC32C of the line before that member.
 *
 * <pre>
 * {"framewright":"renames","version":1,"batch":"0007-3f9c1a0b","at":"2026-11-25T09:30:00Z",
 *  "undoes":"","guarantee":"native","volume":"ext4","folders":[[],["Day 1"]],"renames":2,"crc":"..."}
 * {"in":1,"from":"IMG_0001.jpg","to":"A_0001.jpg","size":1024,"modified":1795000000000000000,
 *  "key":"131","crc":"..."}
 * {"in":1,"from":"a.jpg","into":0,"to":"b.jpg","temp":"fw-0007-3f9c1a0b-1.tmp","group":"a",
 *  "size":5,"modified":1795000000000000000,"key":"","hash":"...","crc":"..."}
 * {"commit":"SHA-256 of all bytes before this line","crc":"..."}
 * {"end":"done","at":"2026-11-25T09:30:01Z","commit":"the same SHA-256","crc":"..."}
 * </pre>
 *
 * <p>(Each object is one line.) Folders are paths below the root, component by component. A name
 * that is not valid text is {@code {"bytes":"BASE64"}}. {@code size} is in bytes, {@code modified}
 * in nanoseconds since 1970. {@code end} is {@code done}, {@code rolled back} or {@code stuck}; a
 * line of an end that is torn counts as none.
 *
 * <p>A journal may come with a folder from anybody. So what is read is checked: every name is one
 * plain component, every folder lies below the root, and the checksums hold.
 */
final class JournalText {
  static final Pattern BATCH = Pattern.compile("[0-9]{4,9}-[0-9a-z]{8}");

  /** Larger journals are refused; a batch of a million files stays below it. */
  private static final long LONGEST = 1L << 30;

  private static final int VERSION = 1;

  /** Lines to a part, so many that a part is no large object. */
  private static final int PART = 1024;

  private static final int TAIL_BYTES = 4096;
  private static final int HEAD_BYTES = 256 * 1024;
  private static final String CRC = ",\"crc\":\"";
  private static final int CRC_BYTES = CRC.length() + 8 + 2;
  private static final JsonFactory JSON = new JsonFactory();

  private JournalText() {}

  // ---- writing

  /**
   * The text up to where the end goes.
   *
   * @param parts its bytes, one part after the other
   * @param commit the checksum that the end repeats
   */
  record Written(List<byte[]> parts, String commit) {
    long length() {
      return parts.stream().mapToLong(part -> part.length).sum();
    }
  }

  static Written write(
      String batch,
      Instant at,
      String undoes,
      Guarantee guarantee,
      String volume,
      List<List<Path>> folders,
      List<Op> ops)
      throws IOException {
    var parts = new ArrayList<byte[]>();
    parts.add(
        line(
            json -> {
              json.writeStringField("framewright", "renames");
              json.writeNumberField("version", VERSION);
              json.writeStringField("batch", batch);
              json.writeStringField("at", at.toString());
              json.writeStringField("undoes", undoes);
              json.writeStringField("guarantee", word(guarantee));
              json.writeStringField("volume", volume);
              json.writeArrayFieldStart("folders");
              for (var folder : folders) {
                json.writeStartArray();
                for (var name : folder) {
                  writeName(json, name);
                }
                json.writeEndArray();
              }
              json.writeEndArray();
              json.writeNumberField("renames", ops.size());
            }));
    parts.addAll(List.of(renames(ops)));
    var sum = sha256();
    parts.forEach(sum::update);
    var commit = HexFormat.of().formatHex(sum.digest());
    parts.add(line(json -> json.writeStringField("commit", commit)));
    return new Written(parts, commit);
  }

  /** The lines of the renames, in parts. */
  private static byte[][] renames(List<Op> ops) throws IOException {
    var parts = new byte[Math.ceilDiv(ops.size(), PART)][];
    Parallel.each(
        parts.length,
        i -> {
          var lines = new Lines();
          for (var op : ops.subList(i * PART, Math.min(ops.size(), (i + 1) * PART))) {
            lines.add(json -> writeOp(json, op));
          }
          parts[i] = lines.bytes();
        });
    return parts;
  }

  private static void writeOp(JsonGenerator json, Op op) throws IOException {
    json.writeNumberField("in", op.in());
    json.writeFieldName("from");
    writeName(json, op.from());
    if (op.into() != op.in()) {
      json.writeNumberField("into", op.into());
    }
    json.writeFieldName("to");
    writeName(json, op.to());
    if (op.conflicted()) {
      json.writeStringField("temp", op.temp());
    }
    if (!op.group().isEmpty()) {
      json.writeStringField("group", op.group());
    }
    json.writeNumberField("size", op.seen().size());
    json.writeNumberField("modified", op.seen().modifiedNanos());
    json.writeStringField("key", op.seen().key());
    if (!op.hash().isEmpty()) {
      json.writeStringField("hash", op.hash());
    }
  }

  /** The line of an end. */
  static byte[] end(BatchState state, Instant at, String commit) throws IOException {
    return line(
        json -> {
          json.writeStringField("end", state.label());
          json.writeStringField("at", at.toString());
          json.writeStringField("commit", commit);
        });
  }

  private static byte[] line(Members members) throws IOException {
    var lines = new Lines();
    lines.add(members);
    return lines.bytes();
  }

  private static void writeName(JsonGenerator json, Path name) throws IOException {
    if (PathBytes.isText(name)) {
      json.writeString(name.toString());
    } else {
      json.writeStartObject();
      json.writeStringField("bytes", Base64.getEncoder().encodeToString(PathBytes.ofName(name)));
      json.writeEndObject();
    }
  }

  private interface Members {
    void write(JsonGenerator json) throws IOException;
  }

  /** Lines, each closed with its checksum. */
  private static final class Lines {
    private final Buffer text = new Buffer();
    private final CRC32C crc = new CRC32C();
    private final JsonGenerator json;

    Lines() throws IOException {
      json = JSON.createGenerator(text).setRootValueSeparator(null);
    }

    void add(Members members) throws IOException {
      int start = text.size();
      json.writeStartObject();
      members.write(json);
      json.writeEndObject();
      json.flush();
      text.close(start, crc);
    }

    byte[] bytes() throws IOException {
      json.close();
      return text.toByteArray();
    }
  }

  private static final class Buffer extends ByteArrayOutputStream {
    /** Puts the checksum of what began there before the brace that closes it. */
    void close(int start, CRC32C crc) {
      count--;
      crc.reset();
      crc.update(buf, start, count - start);
      writeBytes((CRC + hex(crc) + "\"}\n").getBytes(StandardCharsets.US_ASCII));
    }
  }

  private static String hex(CRC32C crc) {
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String word(Guarantee guarantee) {
    return switch (guarantee) {
      case NATIVE -> "native";
      case LINKED -> "linked";
      case RESERVED -> "reserved";
    };
  }

  // ---- reading

  /**
   * Reads a whole journal and checks all of it.
   *
   * @throws DamagedJournal if it is not as it was written, or reaches out of its folder
   */
  static Journal read(Disk disk, Path file, Path root) throws IOException {
    return new Reader(file.getFileName().toString(), root).read(bytes(disk, file));
  }

  private static byte[] bytes(Disk disk, Path file) throws IOException {
    var look = disk.look(file);
    if (!look.isFile() || look.seen().size() > LONGEST) {
      throw new DamagedJournal(
          file.getFileName().toString(), 0, "it is no plain file, or larger than any journal");
    }
    return disk.read(file, 0, (int) look.seen().size());
  }

  /** A batch as its first lines and its last ones tell it; the lines between are not read. */
  record Summary(Journal head, int renames, String example) {}

  static Summary summary(Disk disk, Path file, Path root) throws IOException {
    var name = file.getFileName().toString();
    var look = disk.look(file);
    if (!look.isFile()) {
      throw new DamagedJournal(name, 0, "it is no plain file");
    }
    long size = look.seen().size();
    var reader = new Reader(name, root);
    int most = HEAD_BYTES;
    var head = disk.read(file, 0, most);
    // A batch that works in very many folders has a long first line.
    while (!holdsTwoLines(head) && head.length < size && most < LONGEST / 4) {
      most *= 4;
      head = disk.read(file, 0, most);
    }
    long tailAt = Math.max(0, size - TAIL_BYTES);
    return reader.summary(head, disk.read(file, tailAt, TAIL_BYTES), tailAt);
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

  private static final class Reader {
    private final String file;
    private final Path root;
    private final CRC32C crc = new CRC32C();
    private int line;

    private String batch;
    private Instant at;
    private String undoes;
    private Guarantee guarantee;
    private String volume;
    private List<Path> folders;
    private int renames;

    Reader(String file, Path root) {
      this.file = file;
      this.root = root;
    }

    /** Goes on behind a line of what another one has begun to read. */
    private Reader(Reader begun, int line) {
      this(begun.file, begun.root);
      this.line = line;
      this.batch = begun.batch;
      this.folders = begun.folders;
    }

    Journal read(byte[] bytes) throws IOException {
      int start = header(bytes);
      var starts = new int[Math.ceilDiv(renames, PART)]; // of each part
      for (int i = 0; i < renames; i++) {
        if (i % PART == 0) {
          starts[i / PART] = start;
        }
        start = lineEnd(bytes, start) + 1;
        line++;
        if (start == 0) {
          throw damaged("the file ends too early");
        }
      }
      var ops = new Op[renames];
      Parallel.each(
          starts.length,
          part -> {
            int from = part * PART;
            new Reader(this, from + 1).ops(bytes, starts[part], ops, from);
          });
      int committed = nextLine(bytes, start);
      var commit = commit(bytes, start, committed);
      var sum = sha256();
      sum.update(bytes, 0, start);
      if (!commit.equals(HexFormat.of().formatHex(sum.digest()))) {
        throw damaged("its lines do not add up to its checksum");
      }
      return journal(List.of(ops), commit, committed + 1L, end(bytes, committed + 1, commit));
    }

    /** Reads the lines of one part. */
    private void ops(byte[] bytes, int from, Op[] ops, int first) throws IOException {
      int start = from;
      try (var json = JSON.createParser(bytes, from, bytes.length - from)) {
        for (int i = first; i < Math.min(ops.length, first + PART); i++) {
          int end = nextLine(bytes, start);
          ops[i] = op(json);
          if (from + json.currentLocation().getByteOffset() != end) {
            throw damaged("the line is more than one object");
          }
          start = end + 1;
        }
      }
    }

    Summary summary(byte[] head, byte[] tail, long tailAt) throws IOException {
      int start = header(head);
      var first = new Op[1];
      ops(head, start, first, 0);
      // The last lines: the commit, and perhaps an end, whole or torn.
      line = renames + 2;
      int at = tailAt == 0 ? 0 : lineEnd(tail, 0) + 1;
      for (int end = lineEnd(tail, at); end >= 0; end = lineEnd(tail, at)) {
        if (startsWith(tail, at, "{\"commit\":")) {
          var commit = commit(tail, at, end);
          var state = end(tail, end + 1, commit);
          var example = first[0].from() + " -> " + first[0].to();
          return new Summary(journal(List.of(), commit, tailAt + end + 1, state), renames, example);
        }
        at = end + 1;
      }
      throw damaged("its last lines are missing");
    }

    private Journal journal(List<Op> ops, String commit, long length, BatchState end) {
      return new Journal(
          batch, at, undoes, guarantee, volume, root, folders, ops, commit, length, end);
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
        throw damaged("the file ends too early");
      }
      if (!checks(bytes, start, end)) {
        throw damaged("the line does not match its checksum");
      }
      return end;
    }

    private boolean checks(byte[] bytes, int start, int end) {
      int at = end - CRC_BYTES;
      if (at <= start) {
        return false;
      }
      crc.reset();
      crc.update(bytes, start, at - start);
      return startsWith(bytes, at, CRC + hex(crc) + "\"}");
    }

    private int header(byte[] bytes) throws IOException {
      int end = nextLine(bytes, 0);
      try (var json = parser(bytes, 0, end)) {
        var seen = new ArrayList<String>();
        for (var member = json.nextFieldName(); member != null; member = json.nextFieldName()) {
          seen.add(member);
          json.nextToken();
          switch (member) {
            case "framewright" -> text(json, "renames"::equals);
            case "version" -> {
              if (number(json, 1, Integer.MAX_VALUE) != VERSION) {
                throw damaged("it was written by a newer version");
              }
            }
            case "batch" -> batch = text(json, id -> BATCH.matcher(id).matches());
            case "at" -> at = instant(json);
            case "undoes" -> undoes = text(json, id -> id.isEmpty() || BATCH.matcher(id).matches());
            case "guarantee" -> guarantee = guarantee(json);
            case "volume" -> volume = text(json, any -> true);
            case "folders" -> folders = folders(json);
            case "renames" -> renames = (int) number(json, 1, Integer.MAX_VALUE / 64);
            case "crc" -> {}
            default -> throw damaged("unknown member " + member);
          }
        }
        if (!seen.containsAll(HEADER)) {
          throw damaged("the first line is no journal's");
        }
      } catch (JsonProcessingException e) {
        throw damaged("the line is not JSON");
      }
      if (!file.equals(batch + Store.ENDING)) {
        throw damaged("the file was renamed; it belongs to batch " + batch);
      }
      return end + 1;
    }

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
      try {
        if (json.nextToken() != JsonToken.START_OBJECT) {
          throw damaged("the line is no object");
        }
        for (var member = json.nextFieldName(); member != null; member = json.nextFieldName()) {
          json.nextToken();
          switch (member) {
            case "in" -> in = (int) number(json, 0, folders.size() - 1L);
            case "into" -> into = (int) number(json, 0, folders.size() - 1L);
            case "from" -> from = name(json);
            case "to" -> to = name(json);
            case "temp" -> temp = text(json, name -> TempNames.isOf(batch, name));
            case "group" -> group = text(json, any -> true);
            case "size" -> size = number(json, 0, Long.MAX_VALUE);
            case "modified" -> modified = number(json, Long.MIN_VALUE + 1, Long.MAX_VALUE);
            case "key" -> key = text(json, any -> true);
            case "hash" -> hash = text(json, any -> true);
            case "crc" -> {}
            default -> throw damaged("unknown member " + member);
          }
        }
      } catch (JsonProcessingException e) {
        throw damaged("the line is not JSON");
      }
      if (in < 0 || from == null || to == null || size < 0 || modified == Long.MIN_VALUE) {
        throw damaged("the line is no rename");
      }
      return new Op(
          in, from, into < 0 ? in : into, to, temp, group, new Seen(key, size, modified), hash);
    }

    private String commit(byte[] bytes, int start, int end) throws IOException {
      if (!checks(bytes, start, end)) {
        throw damaged("the line does not match its checksum");
      }
      try (var json = parser(bytes, start, end)) {
        if (!"commit".equals(json.nextFieldName())) {
          throw damaged("the line should close the plan");
        }
        return json.nextTextValue();
      } catch (JsonProcessingException e) {
        throw damaged("the line is not JSON");
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
      } catch (JsonProcessingException e) {
        return BatchState.OPEN;
      }
      for (var ended : List.of(BatchState.DONE, BatchState.ROLLED_BACK, BatchState.STUCK)) {
        if (ended.label().equals(state) && commit.equals(of)) {
          return ended;
        }
      }
      throw damaged("its end belongs to another journal");
    }

    private JsonParser parser(byte[] bytes, int start, int end) throws IOException {
      var json = JSON.createParser(bytes, start, end - start);
      if (json.nextToken() != JsonToken.START_OBJECT) {
        throw damaged("the line is no object");
      }
      return json;
    }

    private String text(JsonParser json, Predicate<String> allowed) throws IOException {
      if (json.currentToken() != JsonToken.VALUE_STRING || !allowed.test(json.getText())) {
        throw damaged("bad value of " + json.currentName());
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
      throw damaged("bad value of " + json.currentName());
    }

    private Instant instant(JsonParser json) throws IOException {
      try {
        return Instant.parse(text(json, any -> true));
      } catch (DateTimeException e) {
        throw damaged("bad value of at");
      }
    }

    private Guarantee guarantee(JsonParser json) throws IOException {
      var word = text(json, any -> true);
      return Arrays.stream(Guarantee.values())
          .filter(guarantee -> word(guarantee).equals(word))
          .findAny()
          .orElseThrow(() -> damaged("bad value of guarantee"));
    }

    private List<Path> folders(JsonParser json) throws IOException {
      expect(json, JsonToken.START_ARRAY);
      var read = new ArrayList<Path>();
      while (json.nextToken() != JsonToken.END_ARRAY) {
        expect(json, JsonToken.START_ARRAY);
        var folder = root;
        while (json.nextToken() != JsonToken.END_ARRAY) {
          folder = folder.resolve(name(json));
        }
        if (Folders.isOurs(root.relativize(folder))) {
          throw damaged("it reaches into .framewright");
        }
        read.add(folder);
      }
      return List.copyOf(read);
    }

    private void expect(JsonParser json, JsonToken token) throws IOException {
      if (json.currentToken() != token) {
        throw damaged("bad value of " + json.currentName());
      }
    }

    /** One plain component: no separator, no way up, no root. */
    private Path name(JsonParser json) throws IOException {
      try {
        Path name;
        if (json.currentToken() == JsonToken.START_OBJECT) {
          if (!"bytes".equals(json.nextFieldName())) {
            throw damaged("bad name");
          }
          name = PathBytes.name(Base64.getDecoder().decode(json.nextTextValue()));
          json.nextToken();
          expect(json, JsonToken.END_OBJECT);
        } else {
          name = root.getFileSystem().getPath(text(json, any -> true));
        }
        if (Folders.isPlainName(name)) {
          return name;
        }
      } catch (InvalidPathException e) {
        throw damaged(
            "the name \""
                + e.getInput()
                + "\" cannot be used here (the system's language settings"
                + " may not allow it)");
      } catch (IllegalArgumentException | NullPointerException e) {
        throw damaged("a name that is none");
      }
      throw damaged("a name reaches out of its folder");
    }

    private DamagedJournal damaged(String why) {
      return new DamagedJournal(file, line, why);
    }
  }
}
