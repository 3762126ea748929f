package org.framewright.frames;

import java.util.Optional;

/**
 * How a frame came to its setup.
 *
 * @param by what placed it
 * @param slate the slate that placed it, or that says otherwise where that is in doubt
 * @param doubt whether that slate contradicts the setup, and nobody ruled
 * @param card whether the frame shows a slate that was left lying in the picture
 */
public record HowPlaced(PlacedBy by, Optional<SlateFrame> slate, boolean doubt, boolean card) {
  static HowPlaced of(PlacedBy by) {
    return new HowPlaced(by, Optional.empty(), false, false);
  }

  /** In words that fit after the setup. */
  public String words() {
    var name = slate.map(one -> one.frame().stem()).orElse("");
    var words = by == PlacedBy.SLATE ? by.words() + " " + name : by.words();
    if (doubt) {
      words += "; in doubt: slate " + name + " says " + slate.orElseThrow().slate().says().code();
    }
    return card ? words + "; a slate lay in the picture" : words;
  }
}
