package org.framewright.handoff.metadata;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.framewright.naming.Gtin;
import org.framewright.shotlist.Setup;

/**
 * What the other columns of a client's list say of a product and of its model, where they are
 * headed so in English, German or French.
 */
record ListColumns(Setup setup) {
  private static final Set<String> GTIN =
      Set.of("gtin", "gtin14", "gtin13", "ean", "ean13", "eancode", "upc", "barcode", "strichcode");
  private static final Set<String> COLOUR =
      Set.of("colour", "color", "farbe", "farbton", "couleur", "coloris");
  private static final Set<String> RELEASE =
      Set.of("modelrelease", "modelreleasestatus", "modelfreigabe", "autorisationdumannequin");
  private static final Set<String> RELEASE_ID =
      Set.of("modelreleaseid", "releaseid", "modelreleaseno", "releaseno");
  private static final Pattern NO_LETTER = Pattern.compile("[^\\p{L}\\p{N}]");
  private static final Pattern BETWEEN = Pattern.compile("\\s*[,;/&+\\n]\\s*");
  private static final String STATUS = "http://ns.useplus.org/ldf/vocab/";

  /** PLUS, vocabulary of Model Release Status; its words, and the codes themselves. */
  private static final Map<String, String> STATUSES =
      Map.of(
          "none", "MR-NON",
          "mrnon", "MR-NON",
          "notapplicable", "MR-NAP",
          "mrnap", "MR-NAP",
          "unlimitedmodelreleases", "MR-UMR",
          "unlimited", "MR-UMR",
          "mrumr", "MR-UMR",
          "limitedorincompletemodelreleases", "MR-LMR",
          "limited", "MR-LMR",
          "mrlmr", "MR-LMR");

  List<String> people() {
    return setup.model().stream().flatMap(ListColumns::split).toList();
  }

  private static Stream<String> split(String cell) {
    return BETWEEN.splitAsStream(cell.strip()).filter(text -> !text.isBlank());
  }

  Optional<String> gtinAsWritten() {
    return column(GTIN);
  }

  Optional<String> gtin() {
    return gtinAsWritten().flatMap(Gtin::of14);
  }

  Optional<String> colour() {
    return column(COLOUR);
  }

  Optional<String> releaseStatus() {
    return column(RELEASE).map(ListColumns::plain).map(STATUSES::get).map(STATUS::concat);
  }

  List<String> releaseIds() {
    return column(RELEASE_ID).stream().flatMap(ListColumns::split).toList();
  }

  private Optional<String> column(Set<String> headings) {
    return setup.columns().entrySet().stream()
        .filter(column -> headings.contains(plain(column.getKey())))
        .map(column -> column.getValue().strip())
        .filter(text -> !text.isEmpty())
        .findFirst();
  }

  private static String plain(String heading) {
    var bare = Normalizer.normalize(heading, Normalizer.Form.NFKD).toLowerCase(Locale.ROOT);
    return NO_LETTER.matcher(bare).replaceAll("");
  }
}
