package org.framewright.handoff.names;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.NameKey;

/**
 * Words of lists in the languages that clients write, folded as {@link NameKey} folds names. Common
 * usage, no source.
 */
final class ListWords {
  /** Words that may stand before a number and say nothing of it. */
  static final Set<String> BEFORE_NUMBERS =
      words(
          "frame image picture pic photo shot file number nr no num look setup outfit style",
          "frames images pictures pics photos shots files numbers nos looks setups outfits styles",
          "option select selects choice pick favourite favorite fav please take yes ok and also the",
          "options choices picks favourites favorites favs",
          "bild foto datei nummer aufnahme auswahl bitte ja und auch das outfit",
          "bilder fotos dateien nummern aufnahmen die",
          "vue image photo fichier numéro numero n choix oui et aussi la le les tenue",
          "vues fichiers numéros",
          "imagen foto archivo número toma sí si y también la el",
          "imágenes archivos números tomas las los",
          "immagine foto scatto numero e anche la il",
          "immagini scatti numeri le",
          "imagem foto arquivo ficheiro número e também a o",
          "imagens arquivos ficheiros números",
          "beeld foto bestand nummer keuze en ook de",
          "beelden bestanden nummers",
          "zdjęcie plik numer oraz też proszę tak",
          "zdjęcia pliki numery");

  /** Words that part one item of a list from the next. */
  static final Set<String> AND = words("and und et y e en oraz i plus");

  /** Words between the first and the last of a range. */
  static final Set<String> TO =
      words("to till until through thru bis à a au al tot tm hasta até do");

  /** After a number: it counts something. */
  static final Set<String> COUNTED =
      words(
          "frames images imgs pictures pics photos shots files selects options choices favourites",
          "favorites copies versions stars looks setups outfits people persons min mins minutes",
          "hours days weeks prints pages px pixel pixels dpi mm cm kb mb gb percent eur euro euros",
          "usd gbp am pm h uhr",
          "bilder fotos dateien aufnahmen stück versionen sterne minuten stunden tage wochen seiten",
          "vues fichiers photos étoiles heures jours semaines exemplaires",
          "imágenes archivos copias estrellas horas días",
          "immagini foto scatti copie stelle ore giorni",
          "imagens arquivos cópias estrelas dias",
          "beelden bestanden sterren uur dagen",
          "zdjęcia zdjęć plików kopii dni");

  /** Of those the ones that also say something of a frame: {@code 1234 looks great}. */
  static final Set<String> VERBS = words("looks prints");

  /** Between two names: one of them. */
  static final Set<String> OR = words("or oder ou o u oppure of lub albo vs versus");

  /** Words in capitals that stand before numbers and begin no name of a file. */
  static final Set<String> NO_PREFIX = words("iso eur usd gbp chf tel fax dpi rgb plz vat ust sku");

  /** Before a name: perhaps it is not meant. */
  static final Set<String> CAUTION =
      words(
          "not except excluding without but instead or maybe perhaps reject rejected rejects delete",
          "remove skip drop minus unless versus vs",
          "nicht außer ausser ohne statt oder vielleicht löschen kein keine",
          "pas sauf sans ou plutôt peut supprimer",
          "excepto sin quizás quizá eliminar",
          "eccetto tranne senza oppure forse non eliminare",
          "exceto sem ou talvez não nao",
          "niet behalve zonder misschien",
          "nie oprócz bez lub albo może");

  /** What a computer calls the picture of a screen. */
  static final Set<String> SCREENSHOT =
      words(
          "screenshot screenshots screencap bildschirmfoto screen schermafbeelding schermata capture",
          "captura zrzut skärmavbild skærmbillede");

  /** Headings of the column that names files. */
  static final Set<String> NAME_HEADINGS =
      words(
          "file files filename filenames name names image images imagename frame frames picture",
          "pictures photo photos datei dateiname bild bilder bildname fichier fichiers nom image",
          "archivo imagen nombre file immagine nome arquivo ficheiro imagem bestand bestandsnaam",
          "beeld naam plik zdjęcie nazwa");

  /** Headings of the column that says whether a line is chosen. */
  static final Set<String> CHOSEN_HEADINGS =
      words(
          "select selected selection chosen choice pick picked keep wanted approved use",
          "auswahl ausgewählt gewählt choisi choix sélection selección elegido scelta scelto",
          "seleção escolhida keuze gekozen wybrane wybór");

  /** What stands there where it is not. */
  static final Set<String> NO =
      words("no n false 0 nein non nee nie não nao falso falsch faux x0 off out reject rejected");

  private ListWords() {}

  private static Set<String> words(String... lines) {
    return Stream.of(lines)
        .flatMap(line -> List.of(line.split(" ")).stream())
        .map(NameKey::of)
        .collect(Collectors.toUnmodifiableSet());
  }
}
