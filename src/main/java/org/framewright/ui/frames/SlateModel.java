package org.framewright.ui.frames;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.beans.InvalidationListener;
import javafx.beans.Observable;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.base.PlainText;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.frames.ShotSlate;
import org.framewright.frames.SlateDoubt;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.job.SlateWord;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Step;

/**
 * Why the frame that the keys are on belongs where it does, and what a person says of it where it
 * is a slate.
 */
final class SlateModel {
  /** What can be said of a frame. */
  enum Word {
    OF_SETUP,
    NONE,
    BEFORE,
    FOLLOW,
    STAY
  }

  /**
   * Why a frame belongs where it does.
   *
   * @param words a line
   * @param slate the slate that placed it or contradicts its place, to be gone to
   */
  record Why(String words, Optional<FrameId> slate) {
    private static final Why NOTHING = new Why("", Optional.empty());
  }

  private final FramesModel frames;
  private final Texts texts;
  private final Supplier<String> person;
  private final ReadOnlyObjectWrapper<Why> why = new ReadOnlyObjectWrapper<>(Why.NOTHING);
  private final InvalidationListener looking = _ -> why.set(said());
  private final List<Observable> looked;

  SlateModel(FramesModel frames, Texts texts, Supplier<String> person) {
    this.frames = frames;
    this.texts = texts;
    this.person = person;
    this.looked =
        List.of(
            frames.tiles(),
            frames.selection().cursor(),
            frames.selection().chosen(),
            frames.groups());
    looked.forEach(one -> one.addListener(looking));
  }

  /** Why the frame that the keys are on belongs where it does; no words where they are on none. */
  ReadOnlyObjectProperty<Why> why() {
    return why.getReadOnlyProperty();
  }

  private Why said() {
    return frames.current().map(this::said).orElse(Why.NOTHING);
  }

  private Why said(Tile tile) {
    var name = PlainText.line(tile.frame().stem());
    if (tile.slate().isPresent()) {
      return new Why(said(name, tile.slate().get()), Optional.empty());
    }
    if (tile.how().isEmpty()) {
      var text = tile.whyNone().map(texts::say).orElse("");
      return new Why(
          text.isEmpty() ? "" : texts.get("frames.why.none", name, PlainText.line(text)),
          Optional.empty());
    }
    var how = tile.how().get();
    var setup = tile.place().map(Place::setup).orElse("");
    return new Why(
        texts.get("frames.why", name, PlainText.line(setup), texts.say(how.said(PlainText::line))),
        how.slate().map(slate -> slate.frame().id()));
  }

  /** What it is, and what it counts for. */
  private String said(String name, SlateFrame slate) {
    var doubt = doubt(slate.frame().id()).map(one -> texts.say(one.said(PlainText::line)));
    return texts.apart(
        texts.get(
            "frames.why.slate",
            name,
            texts.say(slate.slate().says().said(PlainText::line)),
            slate.frames()),
        slate.slate().backwards() ? texts.get("frames.slate.before") : "",
        switch (slate.slate().ruling()) {
          case OPEN -> doubt.orElse("");
          case FOLLOW -> texts.get("frames.slate.follow");
          case STAY -> texts.get("frames.slate.stay");
        });
  }

  private Optional<SlateDoubt> doubt(FrameId frame) {
    return frames.job().tally().slates().doubts().stream()
        .filter(one -> one.frame().knownAs().contains(frame))
        .findFirst();
  }

  /** The name of the frame that something would be said of. */
  String name() {
    return frames.current().map(tile -> PlainText.line(tile.frame().stem())).orElse("");
  }

  /** The setups of which it may be the slate. */
  List<Setup> setups() {
    return frames.job().list().setups();
  }

  /** Why this cannot be said of the frame that is chosen; nothing where it can. */
  Optional<String> refusal(Word word) {
    var tile = frames.current();
    if (tile.isEmpty() || frames.selection().chosen().get().size() != 1) {
      return Optional.of(texts.get("frames.slate.not.chosen"));
    }
    if (word == Word.OF_SETUP) {
      return setups().isEmpty()
          ? Optional.of(texts.get("frames.slate.not.list"))
          : Optional.empty();
    }
    var slate = tile.get().slate();
    if (slate.isEmpty()) {
      return no("slate");
    }
    return switch (word) {
      case OF_SETUP, NONE -> Optional.empty();
      case BEFORE -> slate.get().slate().backwards() ? no("before") : Optional.empty();
      case FOLLOW ->
          slate.get().slate().says() instanceof SlateSays.OfSetup
              ? contradicting(slate.get().slate())
              : no("setup");
      case STAY -> contradicting(slate.get().slate());
    };
  }

  private Optional<String> contradicting(ShotSlate slate) {
    if (slate.ruling() != ShotSlate.Ruling.OPEN) {
      return no("ruled");
    }
    return chosenDoubt().isEmpty() ? no("doubt") : Optional.empty();
  }

  private Optional<SlateDoubt> chosenDoubt() {
    return frames.current().flatMap(tile -> doubt(tile.frame().id()));
  }

  private Optional<String> no(String what) {
    return Optional.of(texts.get("frames.slate.not." + what, name()));
  }

  /** Says it of the frame that is chosen, where that can be. */
  void say(Word word) {
    if (refusal(word).isPresent()) {
      return;
    }
    switch (word) {
      case OF_SETUP -> {}
      case NONE -> take(new SlateWord.NoSlate());
      case BEFORE -> take(new SlateWord.Backwards());
      case FOLLOW ->
          chosenDoubt().ifPresent(doubt -> frames.take(new Step.Followed(doubt, person.get())));
      case STAY -> take(new SlateWord.Stay());
    }
  }

  /** Says which setup it is the slate of. */
  void sayOf(Setup setup) {
    take(new SlateWord.OfSetup(setup.code()));
  }

  private void take(SlateWord word) {
    frames
        .current()
        .ifPresent(tile -> frames.take(new Step.SaidOfSlate(tile.frame(), word, person.get())));
  }

  /**
   * Goes to the slate that placed the frame that the keys are on, or that contradicts its place.
   *
   * @return why not, where it does not
   */
  Optional<String> goToSlate() {
    var slate = why.get().slate();
    slate.ifPresent(frames::goTo);
    if (slate.isPresent()) {
      return Optional.empty();
    }
    return frames.current().isEmpty()
        ? Optional.of(texts.get("frames.slate.not.chosen"))
        : no("placed");
  }

  void dispose() {
    looked.forEach(one -> one.removeListener(looking));
  }
}
