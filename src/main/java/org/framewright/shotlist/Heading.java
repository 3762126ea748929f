package org.framewright.shotlist;

import java.text.Normalizer;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** As what a column of a list is taken, by its heading. */
public enum Heading {
  SETUP("is the setup"),
  TITLE("is the title"),
  VIEWS("holds the views wanted"),
  VIEW("is a view wanted"),
  FRAMES("is the number of frames wanted"),
  DAY("is the day"),
  RACK("is the rack"),
  MODEL("is the model"),
  NOTE("is the note"),
  /** Written by this program's own export; the job knows it better. */
  FROM_JOB("comes from the job, left out"),
  OTHER("is kept as it is");

  private final String description;

  Heading(String description) {
    this.description = description;
  }

  /** {@code is the setup}. */
  public String description() {
    return description;
  }

  /** Text with nothing to take off, which needs no normal form. */
  private static final Pattern PLAIN = Pattern.compile("[a-z0-9 ]+");

  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern SET_UP = Pattern.compile("^set up\\b");

  /** What a word may mean, and how surely, 0 the surest. */
  private static final Map<String, Map<Heading, Integer>> MEANINGS = new HashMap<>();

  static {
    // English, German, French, Spanish, Italian, Dutch, Swedish: the words that lists use for
    // these things. Common practice, no source.
    mean(
        SETUP,
        "setup, setups, setup no, setup number, setup nr, setup code, setup id",
        "look, looks, look no, look number, look nr, look code, look id, shot, shot no,"
            + " shot number, shot nr, shot code, shot id",
        "code, no, nr, num, number, #, n, id, item no, item number, item code, item nr, nummer,"
            + " numero, num ro, lfd nr, pos, position, code look, numero de look, kod, codice,"
            + " codigo",
        "item, garment no, garment number, garment code, style no, style number, style code, style,"
            + " sku, article no, article number, article code, artikelnummer, artikel nr, ref,"
            + " reference, referenz, referencia, riferimento, gtin, ean");
    mean(
        TITLE,
        "title, setup title, look title, titel, titre, titulo, titolo",
        "name, description, desc, setup name, look name, look description, bezeichnung,"
            + " beschreibung, nom, designation, nombre, descripcion, nome, descrizione, naam,"
            + " omschrijving, benamning, beskrivning",
        "garment, garments, product, product name, article, item name, item description, piece,"
            + " artikel, produkt, kleidungsstuck, produit, vetement, producto, prenda, prodotto,"
            + " capo, room, person, subject, raum, plagg, item");
    mean(
        VIEWS,
        "views, view, views wanted, wanted views, ansichten, ansicht, vues, vue, vistas, vista,"
            + " viste, aanzichten, aanzicht, vyer, vy",
        "angles, angle, perspectives, perspektive, perspektiven, winkel, angulos, angolazioni,"
            + " hoeken");
    mean(
        FRAMES,
        "frames wanted, wanted frames, number of frames, frame count, no of frames, frames",
        "images, pictures, photos, images wanted, number of images, no of images, bilder,"
            + " anzahl bilder, aufnahmen, nombre d images, fotos, numero de fotos, numero foto,"
            + " aantal foto s, antal bilder",
        "qty, quantity, count, anzahl, menge, quantite, cantidad, quantita, aantal, antal");
    mean(
        DAY,
        "day, shoot day, shooting day, shoot date, date, tag, datum, drehtag, aufnahmetag, jour,"
            + " dia, fecha, giorno, data, dag");
    mean(
        RACK,
        "rack, rack no, rail, rack number, shelf, bag, box, stange, standerfach, regal, portant,"
            + " rangement, perchero, estante, stand, rek, stang");
    mean(MODEL, "model, models, talent, mannequin, modell, modele, modelo, modella, modello, cast");
    mean(
        NOTE,
        "note, notes, remark, remarks, comment, comments, bemerkung, bemerkungen, notiz, notizen,"
            + " anmerkung, anmerkungen, kommentar, hinweis, remarque, remarques, commentaire,"
            + " commentaires, nota, notas, observaciones, comentarios, opmerking, opmerkingen,"
            + " anteckning, kommentarer");
    mean(
        FROM_JOB,
        "state, frames so far, signed off by, signed off at, changed since sign off, reason");
  }

  private static void mean(Heading heading, String... wordsByRank) {
    for (int rank = 0; rank < wordsByRank.length; rank++) {
      for (var word : wordsByRank[rank].split(", ", -1)) {
        MEANINGS
            .computeIfAbsent(word, _ -> new EnumMap<>(Heading.class))
            .putIfAbsent(heading, rank);
      }
    }
  }

  /** As what a heading is taken on its own, whatever its case, accents and punctuation. */
  public static Heading of(String heading) {
    return meanings(heading).keySet().stream().findFirst().orElse(OTHER);
  }

  /** All that a heading may mean, and how surely, 0 the surest. */
  static Map<Heading, Integer> meanings(String heading) {
    return MEANINGS.getOrDefault(plain(heading), Map.of());
  }

  /** Lower case, without accents; runs of anything but letters and digits are one space. */
  static String plain(String heading) {
    var stripped = heading.strip();
    if (stripped.equals("#")) {
      return "#";
    }
    if (PLAIN.matcher(stripped).matches() && !stripped.contains("  ")) {
      return SET_UP.matcher(stripped).replaceFirst("setup");
    }
    var bare =
        MARKS
            .matcher(Normalizer.normalize(stripped, Normalizer.Form.NFKD))
            .replaceAll("")
            .toLowerCase(Locale.ROOT);
    var words = BETWEEN_WORDS.matcher(bare).replaceAll(" ").strip();
    return SET_UP.matcher(words).replaceFirst("setup");
  }
}
