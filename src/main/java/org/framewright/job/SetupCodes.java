package org.framewright.job;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.SequencedSet;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.framewright.frames.slate.JobKey;
import org.framewright.frames.slate.SlateSetups;
import org.framewright.naming.Convention;
import org.framewright.naming.FieldType;
import org.framewright.naming.Gtin;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * Finds the setups of a list by what a scanner reads: by their own code, by the slates of the job,
 * and by the columns that hold codes. Those are the columns of the convention's product numbers,
 * and those whose heading says so in English, German or French. A cell may hold several codes, as
 * of sizes and colours.
 *
 * <p>Letter case does not count. Product numbers are one whether they are written in 8, 12, 13 or
 * 14 digits, and where a spreadsheet has lost the zeros before them, if the check digit is right.
 */
public final class SetupCodes {
  /** Any of these as a word of a heading, as in {@code EAN size 38}, tells product numbers. */
  private static final Set<String> NUMBER_WORDS =
      Set.of(
          "gtin", "gtins", "gtin8", "gtin12", "gtin13", "gtin14", "ean", "eans", "ean8", "ean13",
          "upc", "upcs", "jan");

  /** Any of these tells codes of any kind. */
  private static final Set<String> ANY_WORDS =
      Set.of("barcode", "barcodes", "strichcode", "strichcodes");

  private static final Set<String> ARTICLE_WORDS = Set.of("sku", "skus");

  /** A whole heading, without what is between its words. */
  private static final Set<String> ANY_HEADINGS =
      Set.of("codebarres", "codesbarres", "codeabarres", "codesabarres");

  private static final Set<String> ARTICLE_HEADINGS =
      Set.of(
          "articleno",
          "articlenumber",
          "itemno",
          "itemnumber",
          "styleno",
          "stylenumber",
          "artikelnr",
          "artikelnummer",
          "artnr",
          "codearticle",
          "numerodarticle",
          "referencearticle");

  /** The column that a list gets where it has none for a code that is added. */
  private static final String OWN_COLUMN = "Barcode";

  private static final Pattern MARK = Pattern.compile("\\p{M}");
  private static final Pattern NO_LETTER = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern BETWEEN = Pattern.compile("[,;|/&+\\s]+");
  private static final Pattern APART = Pattern.compile("[,;|\\v]+");
  private static final Pattern DIGITS = Pattern.compile("[0-9]{7,14}");
  private static final int GTIN = 14;

  private final Map<String, List<Setup>> byCode = new HashMap<>();
  private final Map<String, Set<String>> bySetup = new HashMap<>();
  private final SlateSetups slates;
  private final List<JobKey> keys;

  /** Columns of codes that fill no field of a name, in the list's order. */
  private final List<String> columnsToAddTo;

  private SetupCodes(ShotList list, Convention convention, List<JobKey> keys) {
    this.slates = new SlateSetups(list);
    this.keys = List.copyOf(keys);
    var numbers =
        convention.fields().values().stream()
            .filter(field -> field.type() == FieldType.GTIN)
            .toList();
    var holding = new LinkedHashMap<String, Boolean>(); // thousands of setups have the same few
    var columns = new FieldColumns();
    for (var setup : list.setups()) {
      add(setup.code(), setup);
      for (var field : numbers) {
        columns.value(setup, field).ifPresent(cell -> addAll(cell, setup));
      }
      for (var column : setup.columns().entrySet()) {
        if (holding.computeIfAbsent(column.getKey(), it -> Words.of(it).holdCodes())) {
          addAll(column.getValue(), setup);
        }
      }
    }
    this.columnsToAddTo =
        holding.entrySet().stream()
            .filter(Map.Entry::getValue)
            .map(Map.Entry::getKey)
            .filter(
                heading ->
                    convention.fields().values().stream()
                        .noneMatch(field -> columns.isHeaded(heading, field)))
            .toList();
  }

  /** The codes of a list, as its job's convention names them. From any thread. */
  public static SetupCodes of(Job job, ShotList list) {
    return of(list, job.convention(), job.slateKeys());
  }

  /** The codes of a job's list. */
  public static SetupCodes of(Job job) {
    return of(job.shotList(), job.convention(), job.slateKeys());
  }

  /** The codes of a list; slates with one of these keys are the job's. */
  public static SetupCodes of(ShotList list, Convention convention, List<JobKey> keys) {
    return new SetupCodes(list, convention, keys);
  }

  /** What the words of a heading say of the codes below it. */
  private record Words(boolean numbers, boolean articles) {
    static Words of(String heading) {
      var bare = Normalizer.normalize(heading, Normalizer.Form.NFKD).toLowerCase(Locale.ROOT);
      var words = NO_LETTER.splitAsStream(MARK.matcher(bare).replaceAll("")).toList();
      var whole = String.join("", words);
      boolean any = ANY_HEADINGS.contains(whole) || words.stream().anyMatch(ANY_WORDS::contains);
      return new Words(
          any || words.stream().anyMatch(NUMBER_WORDS::contains),
          any
              || ARTICLE_HEADINGS.contains(whole)
              || words.stream().anyMatch(ARTICLE_WORDS::contains));
    }

    boolean holdCodes() {
      return numbers || articles;
    }

    /** Whether a product number, or else an article's, belongs there. */
    boolean hold(boolean number) {
      return number ? numbers : articles;
    }
  }

  /**
   * A cell as a whole, since a code may have anything in it, its parts, and their parts where only
   * a space or a sign of counting stands between them.
   */
  private static Set<String> codes(String cell) {
    var codes = new HashSet<String>();
    codes.add(cell.strip());
    APART.splitAsStream(cell).map(String::strip).forEach(codes::add);
    BETWEEN.splitAsStream(cell.strip()).forEach(codes::add);
    codes.remove("");
    return codes;
  }

  private void addAll(String cell, Setup setup) {
    codes(cell).forEach(code -> add(code, setup));
  }

  /**
   * As what a scan finds a setup: its codes in capital letters without leading zeros, and product
   * numbers in 14 digits.
   */
  public Set<String> codesOf(Setup setup) {
    return bySetup.getOrDefault(setup.code(), Set.of());
  }

  private void add(String code, Setup setup) {
    for (var key : keys(code)) {
      bySetup.computeIfAbsent(setup.code(), _ -> new LinkedHashSet<>()).add(key);
      var there = byCode.get(key);
      if (there == null) {
        // Nearly all codes are those of one setup, and there are many.
        byCode.put(key, List.of(setup));
      } else if (!there.getLast().equals(setup)) {
        var more = there.size() == 1 ? new ArrayList<>(there) : there;
        more.add(setup);
        byCode.put(key, more);
      }
    }
  }

  /** As what a code is found: as it is written, and as the product number that it is. */
  private static List<String> keys(String code) {
    var keys = new ArrayList<String>();
    keys.add(Setup.canonicalKey(code));
    number(code).ifPresent(keys::add);
    return keys;
  }

  private static Optional<String> number(String code) {
    var digits = code.strip();
    return DIGITS.matcher(digits).matches()
        ? Gtin.of14("0".repeat(GTIN - digits.length()) + digits)
        : Gtin.of14(digits);
  }

  /** The setups that what a scanner typed may mean. */
  public Scanned find(String typed) {
    return read(typed, ScannerKeyboard.US).scanned();
  }

  /**
   * The setups that what a scanner typed may mean, also where the computer takes it for a keyboard
   * of another country: then what it reads is in the list, or fits a check, on that keyboard only.
   *
   * @param likely the keyboard that it was read as last
   */
  public Scanned.Read read(String typed, ScannerKeyboard likely) {
    var text = likely.pressed(typed).map(ScannedText::of);
    var found = text.map(this::setups).orElseGet(LinkedHashSet::new);
    if (!found.isEmpty()) {
      return new Scanned.Read(scanned(found), likely);
    }
    var others = new LinkedHashMap<ScannedText, ScannerKeyboard>();
    for (var keyboard : ScannerKeyboard.values()) {
      keyboard
          .pressed(typed)
          .map(ScannedText::of)
          .ifPresent(it -> others.putIfAbsent(it, keyboard));
    }
    text.ifPresent(others::remove);
    var fitting = new ArrayList<Map.Entry<ScannedText, ScannerKeyboard>>();
    var keyboards = new LinkedHashSet<ScannerKeyboard>();
    for (var other : others.entrySet()) {
      var here = setups(other.getKey());
      if (!here.isEmpty() && found.addAll(here)) {
        keyboards.add(other.getValue());
      }
      if (other.getKey().fitsACheck()) {
        fitting.add(other);
      }
    }
    if (!found.isEmpty()) {
      return new Scanned.Read(
          scanned(found), keyboards.size() == 1 ? keyboards.getFirst() : likely);
    }
    if (text.filter(ScannedText::fitsACheck).isEmpty() && fitting.size() == 1) {
      var only = fitting.getFirst();
      return new Scanned.Read(unknown(only.getKey()), only.getValue());
    }
    var said = text.orElseGet(() -> ScannedText.of(typed));
    return new Scanned.Read(unknown(said), likely);
  }

  private Scanned unknown(ScannedText text) {
    return text.slate()
        .<Scanned>map(slate -> new Scanned.StraySlate(slate.code(), !keys.contains(slate.job())))
        .orElseGet(() -> new Scanned.Unknown(text.called(), text.fitsACheck()));
  }

  /**
   * Whether what was typed is certainly a scan: its check is right, and the list has it.
   *
   * @param likely the keyboard that a scanner was read as last
   */
  public boolean has(String typed, ScannerKeyboard likely) {
    return Stream.concat(Stream.of(likely), Stream.of(ScannerKeyboard.values()))
        .flatMap(keyboard -> keyboard.pressed(typed).map(ScannedText::of).stream())
        .anyMatch(text -> text.fitsACheck() && !setups(text).isEmpty());
  }

  private SequencedSet<Setup> setups(ScannedText text) {
    var found = new LinkedHashSet<Setup>();
    text.slate()
        .filter(slate -> keys.contains(slate.job()))
        .flatMap(slates::setup)
        .ifPresent(found::add);
    for (var code : text.meant()) {
      keys(code).forEach(key -> found.addAll(byCode.getOrDefault(key, List.of())));
    }
    return found;
  }

  private static Scanned scanned(SequencedSet<Setup> found) {
    return found.size() == 1
        ? new Scanned.One(found.getFirst())
        : new Scanned.Several(List.copyOf(found));
  }

  /**
   * The setup with one more code, and nothing else changed: in a column of the list that holds such
   * codes and of which no name is made, else in one of its own.
   */
  public Setup withCode(Setup setup, String code) {
    var columns = new LinkedHashMap<>(setup.columns());
    boolean number = Gtin.of14(code).isPresent();
    for (var heading : columnsToAddTo) {
      var cell = columns.getOrDefault(heading, "").strip();
      if (Words.of(heading).hold(number) && (cell.isEmpty() || !APART.matcher(code).find())) {
        columns.put(heading, cell.isEmpty() ? code : cell + ", " + code);
        return with(setup, columns);
      }
    }
    var heading = OWN_COLUMN;
    for (int i = 2; !columns.getOrDefault(heading, "").isBlank(); i++) {
      heading = OWN_COLUMN + " " + i;
    }
    columns.put(heading, code);
    return with(setup, columns);
  }

  private static Setup with(Setup setup, SequencedMap<String, String> columns) {
    return new Setup(setup.code(), setup.title(), setup.views(), setup.framesWanted(), columns);
  }
}
