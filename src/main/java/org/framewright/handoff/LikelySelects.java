package org.framewright.handoff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.framewright.base.NameKey;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.handoff.names.KnownName;
import org.framewright.handoff.names.NameSearch;

/**
 * Finds the selects that wrongly named pictures likely are of, and the names that they should have.
 * A name is offered only where it follows from the file's own: with the version that it says, or
 * the first one where it says none and nothing else of the select came.
 */
final class LikelySelects {
  private static final Set<String> VERSION = Set.of("v", "ver", "version", "vers", "r", "rev");
  private static final int LONGEST_VERSION = 4;

  private final List<ExpectedSelect> selects;
  private final RetouchedNames names;
  private final Map<String, SortedMap<Integer, List<String>>> versions;
  private final NameSearch search;

  LikelySelects(
      SortedMap<String, ExpectedSelect> expected,
      RetouchedNames names,
      Map<String, SortedMap<Integer, List<String>>> versions) {
    this.selects = List.copyOf(expected.values());
    this.names = names;
    this.versions = versions;
    var known = new ArrayList<KnownName>();
    for (int i = 0; i < selects.size(); i++) {
      var select = selects.get(i);
      known.add(new KnownName(i, select.select(), KnownName.Kind.SELECT));
      if (!select.original().isEmpty()) {
        known.add(new KnownName(i, select.original(), KnownName.Kind.NOW));
      }
    }
    this.search = new NameSearch(known);
  }

  /**
   * A whole picture that answers no select.
   *
   * @param file its path below the folder
   * @param why what its name is not
   */
  record Stray(String file, Text why) {
    String folder() {
      return file.substring(0, file.lastIndexOf('/') + 1);
    }

    String name() {
      return file.substring(file.lastIndexOf('/') + 1);
    }

    String stem() {
      int dot = name().lastIndexOf('.');
      return dot > 0 ? name().substring(0, dot) : name();
    }

    /** {@code A.tif} of {@code A.tif.xmp}. */
    Stray withoutEnding() {
      return new Stray(folder() + stem(), why);
    }

    String ending() {
      return name().substring(stem().length());
    }
  }

  /**
   * What a stray likely is.
   *
   * @param version what its name says of it
   * @param certain whether its name or its folder's names the select, so that it may be renamed
   */
  private record Guess(
      Stray stray, ExpectedSelect select, Text reason, OptionalInt version, boolean certain) {}

  /**
   * The strays with what they likely are, and the sidecars beside those that are to be renamed.
   *
   * @param sidecars paths below the folder
   */
  List<Returns.Extra> of(List<Stray> strays, List<String> sidecars) {
    var guesses = new HashMap<Stray, Guess>();
    strays.forEach(stray -> guess(stray).ifPresent(guess -> guesses.put(stray, guess)));
    var named = named(guesses);
    var extras = new ArrayList<Returns.Extra>();
    for (var stray : strays) {
      var guess = guesses.get(stray);
      var name = Optional.ofNullable(named.get(stray.folder() + stray.stem()));
      extras.add(
          new Returns.Extra(
              stray.file(),
              stray.why(),
              Optional.ofNullable(guess)
                  .map(
                      one ->
                          new Returns.Likely(
                              one.select().select(),
                              one.reason(),
                              name.map(text -> text + stray.ending())))));
    }
    for (var sidecar : sidecars) {
      var stray = new Stray(sidecar, Text.of("it goes with its picture"));
      var picture =
          named.containsKey(stray.folder() + stray.stem()) ? stray : stray.withoutEnding();
      var name = named.get(picture.folder() + picture.stem());
      if (name != null) {
        var ending = stray.name().substring(picture.stem().length());
        extras.add(
            new Returns.Extra(
                sidecar,
                stray.why(),
                Optional.of(
                    new Returns.Likely(
                        selectOf(picture, guesses), stray.why(), Optional.of(name + ending)))));
      }
    }
    return extras;
  }

  private static String selectOf(Stray sidecar, Map<Stray, Guess> guesses) {
    return guesses.values().stream()
        .filter(guess -> guess.stray().folder().equals(sidecar.folder()))
        .filter(guess -> guess.stray().stem().equals(sidecar.stem()))
        .map(guess -> guess.select().select())
        .findFirst()
        .orElse("");
  }

  /** The names, without ending, by the present ones with their folders. */
  private Map<String, String> named(Map<Stray, Guess> guesses) {
    var bySelect =
        guesses.values().stream()
            .filter(Guess::certain)
            .collect(
                Collectors.groupingBy(
                    guess -> guess.select().select(), TreeMap::new, Collectors.toList()));
    var named = new HashMap<String, String>();
    for (var of : bySelect.values()) {
      var taken =
          new HashSet<>(
              versions.getOrDefault(of.getFirst().select().select(), new TreeMap<>()).keySet());
      var byVersion = new TreeMap<Integer, Set<String>>();
      for (var guess : of) {
        guess
            .version()
            .ifPresent(
                version ->
                    byVersion.computeIfAbsent(version, _ -> new HashSet<>()).add(stem(guess)));
      }
      boolean alone =
          taken.isEmpty()
              && byVersion.isEmpty()
              && of.stream().map(LikelySelects::stem).distinct().count() == 1;
      for (var guess : of) {
        int version = guess.version().orElse(names.first());
        boolean free =
            guess.version().isPresent()
                ? !taken.contains(version) && byVersion.get(version).size() == 1
                : alone;
        if (free) {
          names
              .of(guess.select().select(), guess.select().original(), version)
              .filter(name -> !name.equals(guess.stray().stem()))
              .ifPresent(name -> named.put(stem(guess), name));
        }
      }
    }
    return named;
  }

  private static String stem(Guess guess) {
    return guess.stray().folder() + guess.stray().stem();
  }

  private Optional<Guess> guess(Stray stray) {
    var found = search.in(stray.stem());
    if (found.isPresent()) {
      var select = selects.get(found.get().name().frame());
      var version = version(found.get().rest());
      return Optional.of(
          new Guess(stray, select, reason(stray, found.get(), select, version), version, true));
    }
    var folder = folder(stray);
    var inFolder = folder.isEmpty() ? Optional.<NameSearch.Found>empty() : search.in(folder);
    if (inFolder.filter(NameSearch.Found::whole).isPresent()) {
      var select = selects.get(inFolder.get().name().frame());
      return Optional.of(
          new Guess(
              stray,
              select,
              Text.of("its folder is called {0}", PlainText.line(folder)),
              version(words(stray.stem())),
              true));
    }
    var near = search.near(stray.stem());
    if (near.size() != 1) {
      return Optional.empty();
    }
    var select = selects.get(near.getFirst().frame());
    return Optional.of(
        new Guess(
            stray,
            select,
            Text.of("its name is most like {0}; look at the picture", near.getFirst().text()),
            OptionalInt.empty(),
            false));
  }

  private static String folder(Stray stray) {
    var path = stray.folder();
    if (path.isEmpty()) {
      return "";
    }
    var without = path.substring(0, path.length() - 1);
    return without.substring(without.lastIndexOf('/') + 1);
  }

  private static List<String> words(String text) {
    return List.of(text.split("(?<=\\D)(?=\\d)|(?<=\\d)(?=\\D)|[^\\p{L}\\p{N}]+"));
  }

  /** The number behind a word for version: {@code v2}. */
  private static OptionalInt version(List<String> words) {
    for (int i = 0; i + 1 < words.size(); i++) {
      var number = words.get(i + 1);
      if (VERSION.contains(words.get(i).toLowerCase(Locale.ROOT))
          && number.matches("[0-9]{1," + LONGEST_VERSION + "}")
          && Integer.parseInt(number) > 0) {
        return OptionalInt.of(Integer.parseInt(number));
      }
    }
    return OptionalInt.empty();
  }

  /** How a name differs from the one that the convention makes. */
  private Text reason(
      Stray stray, NameSearch.Found found, ExpectedSelect select, OptionalInt version) {
    var reasons = new ArrayList<Text>();
    var right =
        names.of(select.select(), select.original(), version.orElse(names.first())).orElse("");
    if (NameKey.of(right).equals(NameKey.of(stray.stem()))) {
      return Text.of("its letters are not capital and small as they should be");
    }
    if (found.whole() && found.name().kind() == KnownName.Kind.NOW) {
      reasons.add(Text.of("it has the name of the frame"));
    } else if (!found.whole()) {
      reasons.add(Text.of("it has a part of the select's name"));
    } else if (!found.same()) {
      reasons.add(Text.of("other signs or zeros stand in the select's name"));
    } else if (!stray.stem().contains(select.select())) {
      reasons.add(Text.of("its letters are not capital and small as they should be"));
    }
    if (names.exist()) {
      if (version.isEmpty()) {
        reasons.add(Text.of("it has no version"));
      } else if (!NameKey.of(stray.stem()).contains(NameKey.of(behind(right, select)))) {
        reasons.add(Text.of("its version is written otherwise, such as without zeros"));
      }
    }
    var rest = rest(found.rest());
    if (!rest.isEmpty()) {
      reasons.add(Text.of("“{0}” stands beside it", PlainText.line(rest)));
    }
    if (version.isEmpty() && isOtherFormat(stray, select)) {
      reasons.add(Text.of("it is of another format than what was handed off"));
    }
    return reasons.stream().reduce((one, next) -> Text.of("{0}; {1}", one, next)).orElse(Text.NONE);
  }

  private static String behind(String right, ExpectedSelect select) {
    return right.startsWith(select.select()) ? right.substring(select.select().length()) : right;
  }

  private static boolean isOtherFormat(Stray stray, ExpectedSelect select) {
    var ending = NameKey.of(stray.ending());
    return select.copies().stream().noneMatch(copy -> NameKey.of(copy.name()).endsWith(ending));
  }

  /** The words beside a name, without those of a version. */
  private static String rest(List<String> words) {
    var rest = new ArrayList<String>();
    for (int i = 0; i < words.size(); i++) {
      boolean version =
          VERSION.contains(words.get(i).toLowerCase(Locale.ROOT))
              && i + 1 < words.size()
              && words.get(i + 1).matches("[0-9]+");
      if (version) {
        i++;
      } else {
        rest.add(words.get(i));
      }
    }
    return String.join(" ", rest);
  }
}
