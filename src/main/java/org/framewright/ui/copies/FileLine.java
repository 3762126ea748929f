package org.framewright.ui.copies;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.copies.Compared;
import org.framewright.copies.WaivedFile;
import org.framewright.ui.look.Texts;

/**
 * How one file stands in one place.
 *
 * @param file what it is called, below its card, job or backup
 * @param from the card or job that it is of; the place itself where it is there only
 * @param place where it was looked for; empty where it is there only
 * @param more what else there is to say: its name there, what is wrong with it
 * @param damaged the card's own file, where the line is about that one
 * @param waivedBy who said that it need not be kept
 */
record FileLine(
    State state,
    String file,
    String from,
    String place,
    String more,
    Optional<Compared.Damaged> damaged,
    Optional<String> waivedBy) {

  private FileLine(State state, String file, String from, String place, String more) {
    this(state, file, from, place, more, Optional.empty(), Optional.empty());
  }

  /** How it stands, in the order of the list. */
  enum State {
    /** The card's own file is empty, no whole picture, or was changed. */
    DAMAGED,
    /** The frame is there, with another picture or not whole. */
    DIFFERENT,
    /** It could not be listed or read there, or is not what a list there says. */
    TROUBLE,
    /** It is not there. */
    MISSING,
    /** The picture is there, with another description: no copy. */
    SAME_PICTURE,
    /** It is there only. */
    EXTRA,
    /** It is there, byte for byte. */
    IDENTICAL;

    /** As in the keys of texts and styles. */
    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Where files come from: a folder and what it is called. */
  private record Source(Path folder, String name) {}

  /** All lines of a comparison, what needs a person first. */
  static List<FileLine> of(Compared compared, Texts texts) {
    var sources = new ArrayList<Source>();
    compared.cards().forEach(card -> sources.add(new Source(card.folder(), card.name())));
    compared.places().forEach(place -> sources.add(new Source(place.folder(), name(place, texts))));
    var lines = new ArrayList<FileLine>();
    for (var card : compared.cards()) {
      for (var file : card.damaged()) {
        lines.add(
            new FileLine(
                State.DAMAGED,
                file.path(),
                card.name(),
                "",
                texts.say(file.said()),
                Optional.of(file),
                Optional.empty()));
      }
    }
    for (var state : State.values()) {
      for (var place : compared.places()) {
        var on = place.isJob() ? texts.get("copies.inJob") : texts.get("copies.on", place.name());
        switch (state) {
          case DAMAGED -> {}
          case DIFFERENT -> pairs(state, place.different(), on, sources, lines, texts);
          case SAME_PICTURE -> pairs(state, place.samePicture(), on, sources, lines, texts);
          case IDENTICAL -> pairs(state, place.same(), on, sources, lines, texts);
          case MISSING ->
              place.missing().forEach(file -> lines.add(line(state, file, on, "", sources)));
          case TROUBLE ->
              place
                  .troubles()
                  .forEach(
                      trouble ->
                          lines.add(
                              new FileLine(
                                  state,
                                  texts.where(trouble),
                                  name(place, texts),
                                  "",
                                  texts.what(trouble))));
          case EXTRA ->
              place
                  .extra()
                  .forEach(
                      file -> lines.add(new FileLine(state, file, name(place, texts), "", "")));
        }
      }
    }
    return List.copyOf(lines);
  }

  /** Whether a person may say that it need not be kept: of what was never read nobody can. */
  boolean canBeWaived() {
    return damaged.flatMap(Compared.Damaged::sha256).isPresent();
  }

  /** Whether it is this very file that was spoken of, as it is now. */
  boolean isAbout(WaivedFile waived) {
    return damaged
        .filter(one -> waived.file().equals(one.file()) && waived.sha256().equals(one.sha256()))
        .isPresent();
  }

  /** The same, with who said that it need not be kept, if somebody did. */
  FileLine waived(List<WaivedFile> all) {
    var by = all.stream().filter(this::isAbout).map(WaivedFile::by).findFirst();
    return new FileLine(state, file, from, place, more, damaged, by);
  }

  private static String name(Compared.PlaceCompared place, Texts texts) {
    return place.isJob() ? texts.get("copies.ofJob") : place.name();
  }

  private static void pairs(
      State state,
      List<Compared.Pair> pairs,
      String on,
      List<Source> sources,
      List<FileLine> lines,
      Texts texts) {
    for (var pair : pairs) {
      var more = pair.said().isEmpty() ? pair.here() : texts.say(pair.said());
      lines.add(line(state, pair.file(), on, more, sources));
    }
  }

  private static FileLine line(
      State state, Path file, String on, String more, List<Source> sources) {
    for (var source : sources) {
      if (file.startsWith(source.folder())) {
        return new FileLine(
            state,
            source.folder().relativize(file).toString().replace('\\', '/'),
            source.name(),
            on,
            more);
      }
    }
    return new FileLine(state, file.toString(), "", on, more);
  }

  /** Whether every word is somewhere in this line; the words in lower case. */
  boolean has(List<String> words) {
    var text =
        (file + " " + from + " " + place + " " + more + " " + waivedBy.orElse(""))
            .toLowerCase(Locale.ROOT);
    return words.stream().allMatch(text::contains);
  }
}
