package org.framewright.copies;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.SequencedMap;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;
import org.framewright.base.DurableFiles;
import org.framewright.base.RealPaths;
import org.framewright.base.Sha256;
import org.framewright.frames.FrameId;

/**
 * One file that says of every file of a comparison what was read, in lines that {@code sha256sum
 * -c} checks on the same computer; all else in lines that begin with {@code #}.
 */
final class Evidence {
  static final String FIRST = "# framewright copies 1";
  static final String PLACE = "# place ";
  static final String FRAME = "# frame ";
  static final String FILE = "# file ";
  static final String BETWEEN = "\t";

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final Pattern NAME = Pattern.compile("\\d{8}T\\d{6}Z-[0-9a-f]{8}\\.sha256");

  private final String name;
  private final byte[] bytes;

  private Evidence(String name, byte[] bytes) {
    this.name = name;
    this.bytes = bytes;
  }

  static Evidence of(
      Instant at,
      String by,
      List<Place> places,
      List<Compared.CardCompared> cards,
      SequencedMap<FrameId, Integer> frames) {
    var random = new byte[4];
    ThreadLocalRandom.current().nextBytes(random);
    var bytes = new ByteArrayOutputStream();
    try (var out = new OutputStreamWriter(bytes, StandardCharsets.UTF_8)) {
      out.write(FIRST + '\n');
      out.write("# at " + at + '\n');
      out.write("# by " + escaped(by) + '\n');
      for (var card : cards) {
        card(card, out);
      }
      for (var frame : frames.entrySet()) {
        out.write(FRAME + frame.getKey().value() + BETWEEN + Math.min(9, frame.getValue()) + '\n');
      }
      for (var place : places) {
        place(place, out);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Evidence(
        TIME.format(at) + "-" + HexFormat.of().formatHex(random) + ".sha256", bytes.toByteArray());
  }

  private static void card(Compared.CardCompared card, Writer out) throws IOException {
    out.write(
        "# card "
            + String.join(
                BETWEEN,
                escaped(card.folder().toString()),
                card.verdict().word(),
                "" + card.state().files(),
                "" + card.state().bytes(),
                card.state().digest())
            + '\n');
    for (var reason : card.verdict().why()) {
      out.write("# why " + reason.rule().word() + BETWEEN + escaped(reason.message()) + '\n');
    }
    if (card.verdict() instanceof Verdict.MayClear clear) {
      for (var waiver : clear.waived()) {
        out.write(
            "# waived "
                + String.join(
                    BETWEEN, escaped(waiver.path()), waiver.sha256(), escaped(waiver.by()))
                + '\n');
      }
    }
  }

  private static void place(Place place, Writer out) throws IOException {
    out.write(
        PLACE
            + String.join(
                BETWEEN,
                place.kind.name().toLowerCase(Locale.ROOT),
                escaped(place.real.toString()),
                escaped(place.mount.volume()),
                escaped(place.mount.mount()),
                escaped(place.mount.boot()),
                escaped(place.device.id()),
                escaped(place.device.label()))
            + '\n');
    for (var file : place.listing.files()) {
      var facts = place.facts.get(file.name());
      if (facts == null) {
        continue;
      }
      boolean proven = facts.isEvidence() && facts.read().get().fromMedium();
      out.write(
          FILE
              + String.join(
                  BETWEEN,
                  "" + file.size(),
                  file.modified().toString(),
                  facts.isEvidence() ? (proven ? "medium" : "unsure") : "unread",
                  escaped(file.name()))
              + '\n');
      if (facts.isEvidence()) {
        out.write(Sha256.sumLine(facts.read().get().sha256(), file.path().toString()));
      }
    }
  }

  /** Text without tabs and line ends; {@link #plain} gives it back. */
  static String escaped(String text) {
    return text.replace("\\", "\\\\")
        .replace("\n", "\\n")
        .replace("\r", "\\r")
        .replace("\t", "\\t");
  }

  /** The text that was escaped. */
  static String plain(String escaped) {
    if (escaped.indexOf('\\') < 0) {
      return escaped;
    }
    var text = new StringBuilder(escaped.length());
    for (int i = 0; i < escaped.length(); i++) {
      char c = escaped.charAt(i);
      if (c == '\\' && i + 1 < escaped.length()) {
        char next = escaped.charAt(++i);
        text.append(next == 'n' ? '\n' : next == 'r' ? '\r' : next == 't' ? '\t' : next);
      } else {
        text.append(c);
      }
    }
    return text.toString();
  }

  /** The file's own name. */
  String name() {
    return name;
  }

  String sha256() {
    return Sha256.of(bytes);
  }

  /** The folder of a job for what is kept of comparisons and copies. */
  static Path folder(Path job) {
    return job.resolve(PlaceFinder.OWN).resolve("copies");
  }

  /** Writes it into a job; it is on the disk when this returns. */
  Path write(Path job) throws IOException {
    var folder = folder(job);
    if (!RealPaths.isOwnFolder(folder)) {
      DurableFiles.createFolder(folder);
    }
    // No two have one name, so that what a kill left of another one is not met by the write itself.
    DurableFiles.clearLeftovers(folder, NAME.asMatchPredicate());
    var file = folder.resolve(name);
    DurableFiles.create(file, bytes);
    return file;
  }
}
