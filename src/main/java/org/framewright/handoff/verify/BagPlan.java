package org.framewright.handoff.verify;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.framewright.base.NameKey;
import org.framewright.base.Text;

/**
 * What a bag says of its files: RFC 8493, strictly for BagIt 1.0 and loosely for the drafts 0.93 to
 * 0.97. Made of the texts that describe the bag and of the names of its files, and of nothing else.
 */
final class BagPlan {
  /** Below it lies the payload. */
  static final String DATA = "data";

  private static final String PAYLOAD = DATA + "/";
  private static final String FETCH = "fetch.txt";
  private static final Pattern MANIFEST =
      Pattern.compile("(tag)?manifest-(.{1,64})\\.txt", Pattern.CASE_INSENSITIVE);
  private static final Pattern NO_WORD = Pattern.compile("[^a-z0-9]");
  private static final Pattern CODED = Pattern.compile("%(0[AaDd]|25)");
  private static final int LONGEST_PATH = 1 << 15;

  /** More names than files are ever looked at, in several manifests. */
  private static final int MOST_ENTRIES = 4 * Listing.MOST;

  private final SortedMap<String, byte[]> texts;
  private final Listing listing;
  private final Findings findings;
  private Declaration declaration = Declaration.NONE;
  private int entries;

  private BagPlan(SortedMap<String, byte[]> texts, Listing listing, Findings findings) {
    this.texts = texts;
    this.listing = listing;
    this.findings = findings;
  }

  /** A manifest, and the files that it names, as they lie there or else as it has them. */
  private record Manifest(String file, Set<String> names) {}

  /** Whether a file at the top of a folder is one that this plan is made of. */
  static boolean isRead(String name) {
    return name.equals(Declaration.FILE)
        || name.equals(FETCH)
        || BagInfo.FILES.contains(name)
        || MANIFEST.matcher(name).matches();
  }

  /** Whether it says which files a payload has. */
  static boolean isPayloadManifest(String name) {
    var match = MANIFEST.matcher(name);
    return match.matches() && match.group(1) == null;
  }

  /**
   * Plans the reading of a bag.
   *
   * @param texts by name, those of {@link #isRead} that lie at its top
   * @param findings what was found of them before
   */
  static Plan of(SortedMap<String, byte[]> texts, Listing listing, Findings findings) {
    return new BagPlan(texts, listing, findings).plan();
  }

  private Plan plan() {
    if (texts.containsKey(Declaration.FILE)) {
      declaration = Declaration.read(texts.get(Declaration.FILE), findings);
    } else if (!listing.others().containsKey(Declaration.FILE)) {
      findings.fault(Text.of("the declaration of the bag is missing"), Declaration.FILE);
    }
    if (!listing.folders().contains(DATA)) {
      findings.fault(Text.of("the folder of the payload is missing"), DATA);
    }
    var payload = manifests(false);
    var tags = manifests(true);
    if (payload.isEmpty()) {
      findings.fault(Text.of("there is no manifest of the payload"), "");
    }
    tags.forEach(tag -> requireAll(tag, payload));
    lookForUnlisted(payload);
    checkSum(fetch(payload));
    return findings.plan(
        PackageCheck.Kind.BAGIT,
        texts.keySet().stream().filter(name -> MANIFEST.matcher(name).matches()).toList(),
        true);
  }

  private boolean isStrict() {
    return declaration.version().isStrict();
  }

  private List<Manifest> manifests(boolean ofTags) {
    var manifests = new ArrayList<Manifest>();
    for (var file : texts.keySet()) {
      var match = MANIFEST.matcher(file);
      if (!match.matches() || (match.group(1) != null) != ofTags) {
        continue;
      }
      var word = NO_WORD.matcher(match.group(2).toLowerCase(Locale.ROOT)).replaceAll("");
      if (isStrict() && !file.equals((ofTags ? "tag" : "") + "manifest-" + word + ".txt")) {
        findings.fault(
            Text.of("the kind in a manifest’s name has small letters and digits only"), file);
      }
      var kind = Algorithm.of(word);
      if (kind.isEmpty()) {
        findings.fault(
            Text.of("checksums of the kind {0} are not known here; nothing was compared", word),
            file);
      }
      manifests.add(read(file, kind, ofTags));
    }
    return manifests;
  }

  private Manifest read(String file, Optional<Algorithm> kind, boolean ofTags) {
    var names = new HashSet<String>();
    var written = new HashMap<String, String>();
    var keys = new HashMap<String, String>();
    boolean marked = false;
    for (var line : lines(file)) {
      var where = file + ", line " + line.number();
      if (line.text().isBlank() || !requireText(line, where) || !requireRoom(file)) {
        continue;
      }
      var sum = SumLine.ofManifest(line.text(), kind);
      if (sum.isEmpty()) {
        if (kind.isPresent()) {
          findings.fault(
              Text.of("this line is no checksum of the kind {0} and a path", kind.get().word()),
              where);
        }
        continue;
      }
      marked |= sum.get().marked();
      var path = sum.get().path();
      if (!requireInside(path, where) || !requireItsPart(path, ofTags, where)) {
        continue;
      }
      var before = written.putIfAbsent(path, sum.get().sum());
      if (before != null) {
        twice(before.equals(sum.get().sum()), where);
        continue;
      }
      warnOf(path, keys.putIfAbsent(NameKey.of(path), path), where);
      var there = there(path, where);
      var name = there.map(Listing.Found::name).orElseGet(() -> isStrict() ? decoded(path) : path);
      names.add(name);
      if (there.isEmpty()) {
        findings.missing(name);
      } else if (kind.isPresent()) {
        findings.want(there.get(), new Sum.Plain(kind.get(), sum.get().sum()));
      }
    }
    if (marked) {
      findings.warn(Text.of("asterisks or ./ stand before names, as no bag has them"), file);
    }
    return new Manifest(file, names);
  }

  private TextLines lines(String file) {
    var lines = TextLines.of(texts.get(file), declaration.encoding());
    var mark = Text.of("it begins with a byte-order mark, which it must not have");
    if (lines.isMarked() && isStrict()) {
      findings.fault(mark, file);
    } else if (lines.isMarked()) {
      findings.warn(mark, file);
    }
    if (!lines.isEnded() && isStrict()) {
      findings.warn(Text.of("its last line has no end"), file);
    }
    return lines;
  }

  private boolean requireText(TextLines.Line line, String where) {
    if (!line.isText()) {
      findings.fault(Text.of("this line is no text in {0}", declaration.encoding()), where);
    }
    return line.isText();
  }

  private boolean requireRoom(String file) {
    if (++entries == MOST_ENTRIES) {
      findings.fault(Text.of("its lists name more files than can be looked at"), file);
    }
    return entries < MOST_ENTRIES;
  }

  private boolean requireInside(String path, String where) {
    boolean inside =
        path.length() <= LONGEST_PATH
            && PayloadName.staysInside(path)
            && PayloadName.staysInside(decoded(path));
    if (!inside) {
      findings.fault(Text.of("this path leads out of the package"), where);
    }
    return inside;
  }

  private boolean requireItsPart(String path, boolean ofTags, String where) {
    boolean below = path.startsWith(PAYLOAD);
    if (!ofTags && !below) {
      findings.fault(Text.of("this path is not below data/, as all of the payload is"), where);
      return false;
    }
    if (ofTags && below && isStrict()) {
      findings.fault(Text.of("a tag manifest names nothing below data/"), where);
    }
    return true;
  }

  /** RFC 8493, sections 6.1.1 and 6.1.2: names that do not survive every way. */
  private void warnOf(String path, String other, String where) {
    if (other != null) {
      findings.warn(
          Text.of("some disks take this name and {0} for one and the same", other), where);
    }
    if (ListPlan.isLitter(path)) {
      findings.warn(Text.of("computers make and remove files of this name by themselves"), where);
    }
  }

  private void twice(boolean alike, String where) {
    if (!alike) {
      findings.fault(Text.of("this file is listed twice, with two checksums"), where);
    } else if (isStrict()) {
      findings.fault(Text.of("this file is listed twice"), where);
    } else {
      findings.warn(Text.of("this file is listed twice"), where);
    }
  }

  /**
   * The file that a path names. RFC 8493, section 2.1.3, has line ends and the percent sign coded,
   * and nothing else; drafts and some programs leave the percent sign as it is.
   */
  private Optional<Listing.Found> there(String path, String where) {
    var plain = decoded(path);
    var file =
        listing.named(isStrict() ? plain : path).or(() -> listing.named(isStrict() ? path : plain));
    if (file.isEmpty()) {
      file = listing.spelledOtherwise(path).or(() -> listing.spelledOtherwise(plain));
      if (file.isPresent()) {
        findings.warn(Text.of("the file’s name has its accents written in another way"), where);
      }
    }
    return file;
  }

  private static String decoded(String path) {
    return CODED
        .matcher(path)
        .replaceAll(
            code ->
                switch (code.group(1).toUpperCase(Locale.ROOT)) {
                  case "0A" -> "\n";
                  case "0D" -> "\r";
                  default -> "%";
                });
  }

  /** RFC 8493, section 2.2.1: each tag manifest lists each manifest of the payload. */
  private void requireAll(Manifest tag, List<Manifest> payload) {
    for (var manifest : payload) {
      if (isStrict() && !tag.names().contains(manifest.file())) {
        findings.fault(Text.of("{0} has to be in it, and is not", manifest.file()), tag.file());
      }
    }
    texts.keySet().stream()
        .filter(name -> !isPayloadManifest(name) && tag.names().contains(name))
        .filter(name -> MANIFEST.matcher(name).matches())
        .forEach(name -> findings.warn(Text.of("it names a tag manifest, {0}", name), tag.file()));
  }

  /** RFC 8493, section 3: for 1.0 each manifest names all; before, one of them was enough. */
  private void lookForUnlisted(List<Manifest> payload) {
    if (payload.isEmpty()) {
      return;
    }
    var named = new TreeSet<String>();
    payload.forEach(one -> named.addAll(one.names()));
    var there = listing.files().subMap(PAYLOAD, DATA + (char) ('/' + 1)).keySet();
    there.stream().filter(name -> !named.contains(name)).forEach(findings::unlisted);
    if (!isStrict()) {
      return;
    }
    for (var manifest : payload) {
      var absent = named.stream().filter(name -> !manifest.names().contains(name)).toList();
      if (!absent.isEmpty()) {
        findings.fault(
            Text.counted(
                "{0} file of another manifest is not in it: {1}",
                "{0} files of other manifests are not in it, such as {1}",
                absent.size(),
                absent.getFirst()),
            manifest.file());
      }
    }
  }

  /**
   * What of the payload is to be fetched from elsewhere, RFC 8493, section 2.2.3; nothing ever is
   * here.
   *
   * @return the bytes of what is not there yet, by name; less than nothing where nobody says
   */
  private SortedMap<String, Long> fetch(List<Manifest> payload) {
    var absent = new TreeMap<String, Long>();
    if (!texts.containsKey(FETCH)) {
      return absent;
    }
    for (var line : lines(FETCH)) {
      var where = FETCH + ", line " + line.number();
      if (line.text().isBlank() || !requireText(line, where) || !requireRoom(FETCH)) {
        continue;
      }
      var one = FetchLine.of(line.text());
      if (one.isEmpty()) {
        findings.fault(Text.of("this line is not an address, a length and a path"), where);
        continue;
      }
      var path = one.get().path();
      if (!requireInside(path, where) || !requireItsPart(path, false, where)) {
        continue;
      }
      var there = listing.named(path).or(() -> listing.named(decoded(path)));
      var name = there.map(Listing.Found::name).orElseGet(() -> isStrict() ? decoded(path) : path);
      long lists = payload.stream().filter(each -> each.names().contains(name)).count();
      if (isStrict() ? lists < payload.size() : lists == 0) {
        findings.fault(Text.of("this file is not in the manifests"), where);
      } else if (there.isEmpty() && findings.isMissing(name)) {
        findings.notFetched(name);
        absent.put(name, one.get().bytes());
      }
    }
    return absent;
  }

  /** The sum of the payload is known without reading it. */
  private void checkSum(SortedMap<String, Long> absent) {
    for (var file : BagInfo.FILES) {
      if (!texts.containsKey(file)) {
        continue;
      }
      var said = BagInfo.payloadSum(lines(file), file, isStrict(), findings);
      if (said.isEmpty() || absent.values().stream().anyMatch(bytes -> bytes < 0)) {
        continue;
      }
      var there = listing.files().subMap(PAYLOAD, DATA + (char) ('/' + 1)).values();
      long bytes =
          there.stream().mapToLong(Listing.Found::bytes).sum()
              + absent.values().stream().mapToLong(Long::longValue).sum();
      var found = bytes + "." + (there.size() + absent.size());
      if (!found.equals(said.get())) {
        findings.fault(
            Text.of("{0} says {1}, and the payload comes to {2}", BagInfo.SUM, said.get(), found),
            file);
      }
    }
  }
}
