package org.framewright.handoff.verify;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * What a bag says of itself in {@code bagit.txt}, RFC 8493, section 2.1.1.
 *
 * @param version the standard's where it says none that is known
 * @param encoding of all other files that describe the bag
 */
record Declaration(Version version, Charset encoding) {
  static final String FILE = "bagit.txt";

  /** What a bag without a declaration is read as. */
  static final Declaration NONE = new Declaration(Version.OF_THE_STANDARD, UTF_8);

  private static final String VERSION = "BagIt-Version";
  private static final String ENCODING = "Tag-File-Character-Encoding";

  /** Reads a declaration; what is wrong with it goes to the findings. */
  static Declaration read(byte[] bytes, Findings findings) {
    var text = TextLines.of(bytes, UTF_8);
    if (text.isMarked()) {
      findings.fault(Text.of("it begins with a byte-order mark, which it must not have"), FILE);
    }
    var lines = new ArrayList<String>();
    for (var line : text) {
      lines.add(line.isText() ? line.text() : "");
      if (lines.size() > 2) {
        break;
      }
    }
    var said = value(lines, 0, VERSION).flatMap(Version::of);
    if (said.isEmpty()) {
      findings.fault(
          Text.of("this line is not {0}, a colon and a version such as 1.0", VERSION), at(1));
    } else if (!said.get().isKnown()) {
      findings.fault(Text.of("BagIt {0} is not known here", said.get()), at(1));
    }
    var version = said.filter(Version::isKnown).orElse(Version.OF_THE_STANDARD);
    var encoding = value(lines, 1, ENCODING).filter(name -> !name.isEmpty());
    if (encoding.isEmpty()) {
      findings.fault(
          Text.of("this line is not {0}, a colon and a name such as UTF-8", ENCODING), at(2));
    }
    if (version.isStrict()) {
      said.ifPresent(one -> requireStrict(lines, 0, VERSION, one.toString(), findings));
      encoding.ifPresent(name -> requireStrict(lines, 1, ENCODING, name, findings));
      if (lines.size() > 2) {
        findings.fault(Text.of("a declaration has two lines, and this one has more"), at(3));
      }
    }
    return new Declaration(version, encoding.flatMap(name -> known(name, findings)).orElse(UTF_8));
  }

  /** The value behind a label; before 1.0 white space around the colon was left to the writer. */
  private static Optional<String> value(List<String> lines, int line, String label) {
    var text = line < lines.size() ? lines.get(line) : "";
    int colon = text.indexOf(':');
    return colon >= 0 && text.substring(0, colon).strip().equals(label)
        ? Optional.of(text.substring(colon + 1).strip())
        : Optional.empty();
  }

  private static void requireStrict(
      List<String> lines, int line, String label, String value, Findings findings) {
    if (!lines.get(line).equals(label + ": " + value)) {
      findings.fault(
          Text.of("it has to be “{0}”, with no other white space", label + ": " + value),
          at(line + 1));
    }
  }

  private static Optional<Charset> known(String name, Findings findings) {
    try {
      return Optional.of(Charset.forName(name));
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      findings.fault(Text.of("the encoding {0} is not known here", name), at(2));
      return Optional.empty();
    }
  }

  private static String at(int line) {
    return FILE + ", line " + line;
  }
}
