package org.framewright.job;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
  /** Any of these as a word of a heading, as in {@code EAN size 38}. */
  private static final Set<String> WORDS =
      Set.of(
          "gtin",
          "gtins",
          "gtin8",
          "gtin12",
          "gtin13",
          "gtin14",
          "ean",
          "eans",
          "ean8",
          "ean13",
          "upc",
          "upcs",
          "jan",
          "barcode",
          "barcodes",
          "strichcode",
          "strichcodes",
          "sku",
          "skus");

  /** A whole heading, without what is between its words. */
  private static final Set<String> HEADINGS =
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
          "codebarres",
          "codesbarres",
          "codeabarres",
          "codesabarres",
          "codearticle",
          "numerodarticle",
          "referencearticle");

  private static final Pattern MARK = Pattern.compile("\\p{M}");
  private static final Pattern NO_LETTER = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern BETWEEN = Pattern.compile("[,;|/&+\\s]+");
  private static final Pattern DIGITS = Pattern.compile("[0-9]{7,14}");
  private static final int GTIN = 14;

  private final Map<String, LinkedHashSet<Setup>> byCode = new HashMap<>();
  private final SlateSetups slates;
  private final List<JobKey> keys;

  private SetupCodes(ShotList list, Convention convention, List<JobKey> keys) {
    this.slates = new SlateSetups(list);
    this.keys = List.copyOf(keys);
    var numbers =
        convention.fields().values().stream()
            .filter(field -> field.type() == FieldType.GTIN)
            .toList();
    var holding = new HashMap<String, Boolean>(); // thousands of setups have the same few headings
    var columns = new FieldColumns();
    for (var setup : list.setups()) {
      add(setup.code(), setup);
      for (var field : numbers) {
        columns.value(setup, field).ifPresent(cell -> addAll(cell, setup));
      }
      for (var column : setup.columns().entrySet()) {
        if (holding.computeIfAbsent(column.getKey(), SetupCodes::holdsCodes)) {
          addAll(column.getValue(), setup);
        }
      }
    }
  }

  /** The codes of a job's list. */
  public static SetupCodes of(Job job) {
    return of(job.shotList(), job.convention(), job.slateKeys());
  }

  static SetupCodes of(ShotList list, Convention convention, List<JobKey> keys) {
    return new SetupCodes(list, convention, keys);
  }

  private static boolean holdsCodes(String heading) {
    return HEADINGS.contains(String.join("", words(heading).toList()))
        || words(heading).anyMatch(WORDS::contains);
  }

  private static Stream<String> words(String heading) {
    var bare = Normalizer.normalize(heading, Normalizer.Form.NFKD).toLowerCase(Locale.ROOT);
    return NO_LETTER.splitAsStream(MARK.matcher(bare).replaceAll(""));
  }

  /** A cell as a whole, since a code may have a space in it, and its parts. */
  private static Set<String> codes(String cell) {
    var codes = new HashSet<String>();
    codes.add(cell.strip());
    BETWEEN.splitAsStream(cell.strip()).forEach(codes::add);
    codes.remove("");
    return codes;
  }

  private void addAll(String cell, Setup setup) {
    codes(cell).forEach(code -> add(code, setup));
  }

  private void add(String code, Setup setup) {
    for (var key : keys(code)) {
      byCode.computeIfAbsent(key, _ -> new LinkedHashSet<>()).add(setup);
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
    var text = ScannedText.of(typed);
    var found = new LinkedHashSet<Setup>();
    text.slate()
        .filter(slate -> keys.contains(slate.job()))
        .flatMap(slates::setup)
        .ifPresent(found::add);
    for (var code : text.meant()) {
      keys(code).forEach(key -> found.addAll(byCode.getOrDefault(key, new LinkedHashSet<>())));
    }
    return switch (found.size()) {
      case 0 -> new Scanned.Unknown(text.code());
      case 1 -> new Scanned.One(found.getFirst());
      default -> new Scanned.Several(List.copyOf(found));
    };
  }
}
