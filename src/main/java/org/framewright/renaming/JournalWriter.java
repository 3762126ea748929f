package org.framewright.renaming;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.CRC32C;
import org.framewright.base.Sha256;

/** Writes journals, see {@link JournalFormat}. */
final class JournalWriter {
  private JournalWriter() {}

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

  /**
   * A plan, before anything was renamed.
   *
   * @throws IOException if a name cannot be written as text nor as bytes
   */
  static Written plan(JournalHeader header, List<Op> ops) throws IOException {
    var parts = new ArrayList<byte[]>();
    parts.add(header(header, ops.size()));
    parts.addAll(List.of(renames(ops)));
    var sum = Sha256.digest();
    parts.forEach(sum::update);
    var commit = HexFormat.of().formatHex(sum.digest());
    parts.add(new Lines(128).raw("{\"commit\":").text(commit).close().bytes());
    return new Written(parts, commit);
  }

  /** The line of an end. */
  static byte[] end(BatchState state, Instant at, String commit) throws IOException {
    return new Lines(192)
        .raw("{\"end\":")
        .text(state.label())
        .raw(",\"at\":")
        .text(at.toString())
        .raw(",\"commit\":")
        .text(commit)
        .close()
        .bytes();
  }

  private static byte[] header(JournalHeader header, int renames) throws IOException {
    var line = new Lines(1024);
    line.raw("{\"framewright\":\"renames\",\"version\":").number(JournalFormat.VERSION);
    line.raw(",\"batch\":").text(header.batch());
    line.raw(",\"at\":").text(header.at().toString());
    line.raw(",\"undoes\":").text(header.undoes());
    line.raw(",\"guarantee\":").text(JournalFormat.word(header.guarantee()));
    line.raw(",\"volume\":").text(header.volume());
    if (header.home().isPresent()) {
      line.raw(",\"home\":").text(header.home().get());
    }
    line.raw(",\"folders\":[");
    var between = "[";
    for (var folder : header.folders()) {
      line.raw(between);
      between = ",[";
      var comma = "";
      if (!folder.equals(header.root())) {
        for (var name : header.root().relativize(folder)) {
          line.raw(comma).name(name);
          comma = ",";
        }
      }
      line.raw("]");
    }
    return line.raw("],\"renames\":").number(renames).close().bytes();
  }

  /** The lines of the renames, in parts. */
  private static byte[][] renames(List<Op> ops) throws IOException {
    var parts = new byte[Math.ceilDiv(ops.size(), JournalFormat.PART)][];
    Parallel.each(
        parts.length,
        i -> {
          int from = i * JournalFormat.PART;
          int to = Math.min(ops.size(), from + JournalFormat.PART);
          var lines = new Lines((to - from) * 192);
          for (int op = from; op < to; op++) {
            rename(lines, ops.get(op));
          }
          parts[i] = lines.bytes();
        });
    return parts;
  }

  private static void rename(Lines line, Op op) throws IOException {
    line.raw("{\"in\":").number(op.in()).raw(",\"from\":").name(op.from());
    if (op.into() != op.in()) {
      line.raw(",\"into\":").number(op.into());
    }
    line.raw(",\"to\":").name(op.to());
    if (op.conflicted()) {
      line.raw(",\"temp\":").text(op.temp());
    }
    if (!op.group().isEmpty()) {
      line.raw(",\"group\":").text(op.group());
    }
    line.raw(",\"size\":").number(op.seen().size());
    line.raw(",\"modified\":").number(op.seen().modifiedNanos());
    line.raw(",\"key\":").text(op.seen().key());
    if (!op.hash().isEmpty()) {
      line.raw(",\"hash\":").text(op.hash());
    }
    line.close();
  }

  /**
   * Lines of JSON, each closed with its checksum. By hand, because a batch has a line a file: a
   * general writer takes longer for a line than the system takes for the rename.
   */
  private static final class Lines {
    private final CRC32C crc = new CRC32C();
    private byte[] bytes;
    private int length;
    private int lineStart;

    Lines(int room) {
      bytes = new byte[room];
    }

    /** Text of our own, in ASCII and without anything to escape. */
    Lines raw(String ascii) {
      int count = ascii.length();
      need(count);
      for (int i = 0; i < count; i++) {
        bytes[length + i] = (byte) ascii.charAt(i);
      }
      length += count;
      return this;
    }

    Lines number(long number) {
      return raw(Long.toString(number));
    }

    /** A text of anybody's, in quotation marks. */
    Lines text(String text) throws IOException {
      int count = text.length();
      need(count + 2);
      bytes[length] = '"';
      for (int i = 0; i < count; i++) {
        char c = text.charAt(i);
        if (c < 0x20 || c > 0x7E || c == '"' || c == '\\') {
          return escaped(text);
        }
        bytes[length + 1 + i] = (byte) c;
      }
      bytes[length + 1 + count] = '"';
      length += count + 2;
      return this;
    }

    private Lines escaped(String text) throws IOException {
      byte[] quoted;
      try {
        quoted = JsonStringEncoder.getInstance().quoteAsUTF8(text);
      } catch (IllegalArgumentException e) {
        throw new IOException("a name holds half of a character (an unpaired surrogate)", e);
      }
      need(quoted.length + 2);
      bytes[length++] = '"';
      System.arraycopy(quoted, 0, bytes, length, quoted.length);
      length += quoted.length;
      bytes[length++] = '"';
      return this;
    }

    Lines name(Path name) throws IOException {
      return PathBytes.isText(name)
          ? text(name.toString())
          : raw("{\"bytes\":\"")
              .raw(Base64.getEncoder().encodeToString(PathBytes.ofName(name)))
              .raw("\"}");
    }

    /** Ends a line with the checksum of it. */
    Lines close() {
      crc.reset();
      crc.update(bytes, lineStart, length - lineStart);
      var closing = JournalFormat.closing(crc);
      need(closing.length);
      System.arraycopy(closing, 0, bytes, length, closing.length);
      length += closing.length;
      lineStart = length;
      return this;
    }

    byte[] bytes() {
      return length == bytes.length ? bytes : Arrays.copyOf(bytes, length);
    }

    private void need(int more) {
      if (length + more > bytes.length) {
        bytes = Arrays.copyOf(bytes, Math.max(length + more, bytes.length * 2));
      }
    }
  }
}
