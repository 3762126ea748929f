package org.framewright.handoff.verify;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * What lists of checksums at the top of a folder say of the files in it, as {@code sha256sum} and
 * its kin write them. A list says nothing of what it does not name.
 */
final class ListPlan {
  private static final String KINDS = "(md5|sha1|sha224|sha256|sha384|sha512)";
  private static final Pattern OF_THE_FOLDER =
      Pattern.compile(KINDS + "sums?(\\.txt)?", Pattern.CASE_INSENSITIVE);
  private static final Pattern ENDING =
      Pattern.compile("\\.?[^.].*\\." + KINDS + "(sums?)?", Pattern.CASE_INSENSITIVE);
  private static final String REMARK = "#";

  /** What computers leave behind; nobody asks why no list names it. */
  private static final Pattern LITTER =
      Pattern.compile("(.*/)?(\\.DS_Store|\\._[^/]*|Thumbs\\.db|desktop\\.ini)");

  private final SortedMap<String, byte[]> texts;
  private final Listing listing;
  private final Findings findings;
  private final TreeSet<String> named = new TreeSet<>();

  private ListPlan(SortedMap<String, byte[]> texts, Listing listing, Findings findings) {
    this.texts = texts;
    this.listing = listing;
    this.findings = findings;
  }

  /** The kind of the checksums in a file, by its name; empty where it is no list of them. */
  static Optional<Algorithm> kind(String name) {
    for (var form : List.of(OF_THE_FOLDER, ENDING)) {
      var match = form.matcher(name);
      if (match.matches() && !name.startsWith("._")) {
        return Algorithm.of(match.group(1).toLowerCase(Locale.ROOT));
      }
    }
    return Optional.empty();
  }

  /** Whether a file is of those that computers leave behind. */
  static boolean isLitter(String name) {
    return LITTER.matcher(name).matches();
  }

  /**
   * Plans the reading of what lists name.
   *
   * @param texts by name, those that have a {@link #kind} and lie at the top
   */
  static Plan of(SortedMap<String, byte[]> texts, Listing listing, Findings findings) {
    return new ListPlan(texts, listing, findings).plan();
  }

  private Plan plan() {
    texts.keySet().forEach(list -> read(list, kind(list).orElseThrow()));
    listing.files().keySet().stream()
        .filter(name -> !named.contains(name) && !texts.containsKey(name) && !isLitter(name))
        .forEach(findings::unlisted);
    return findings.plan(PackageCheck.Kind.SHA256SUM, List.copyOf(texts.keySet()), false);
  }

  private void read(String list, Algorithm kind) {
    int count = 0;
    for (var line : lines(texts.get(list))) {
      var where = list + ", line " + line.number();
      if (line.text().isBlank() || line.text().startsWith(REMARK)) {
        continue;
      }
      count++;
      var sum = line.isText() ? SumLine.ofList(line.text(), kind) : Optional.<SumLine>empty();
      if (sum.isEmpty()) {
        findings.fault(
            Text.of("this line is no checksum of the kind {0} and a path", kind.word()), where);
      } else if (listing.named(sum.get().path()).isEmpty()
          && !PayloadName.staysInside(sum.get().path())) {
        findings.fault(Text.of("this path leads out of the package"), where);
      } else {
        take(sum.get(), kind, where);
      }
    }
    if (count == 0) {
      findings.fault(Text.of("this list names no file"), list);
    }
  }

  /** UTF-16 with its mark is what the shell of Windows writes where it is not told otherwise. */
  private static TextLines lines(byte[] bytes) {
    boolean wide =
        bytes.length > 1
            && ((bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE)
                || (bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF));
    return TextLines.of(bytes, wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8);
  }

  private void take(SumLine line, Algorithm kind, String where) {
    var path = line.path();
    var there = listing.named(path).or(() -> listing.named(path.replace('\\', '/')));
    if (there.isEmpty()) {
      there = listing.spelledOtherwise(path);
      if (there.isPresent()) {
        findings.warn(Text.of("the file’s name has its accents written in another way"), where);
      }
    }
    if (there.isPresent()) {
      named.add(there.get().name());
      findings.want(there.get(), new Sum.Plain(kind, line.sum()));
      return;
    }
    findings.missing(path);
    Optional.ofNullable(listing.others().get(path)).ifPresent(findings::fault);
  }
}
