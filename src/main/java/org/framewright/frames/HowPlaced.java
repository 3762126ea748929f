package org.framewright.frames;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.Text;

/**
 * How a frame came to its setup.
 *
 * @param by what placed it
 * @param slate the slate that placed it, or that says otherwise where that is in doubt
 * @param doubt whether that slate contradicts the setup, and nobody ruled
 * @param card whether the frame shows a slate that was left lying in the picture
 */
public record HowPlaced(PlacedBy by, Optional<SlateFrame> slate, boolean doubt, boolean card) {
  /** Thousands of frames share these. */
  private static final Map<PlacedBy, HowPlaced> ALONE =
      Stream.of(PlacedBy.values())
          .collect(
              Collectors.toMap(
                  Function.identity(), by -> new HowPlaced(by, Optional.empty(), false, false)));

  /** By nothing that need be named. */
  static HowPlaced of(PlacedBy by) {
    return ALONE.get(by);
  }

  /**
   * In words that fit after the setup.
   *
   * @param plain makes text of other people fit to be shown
   */
  public Text said(UnaryOperator<String> plain) {
    var name = slate.map(one -> plain.apply(one.frame().stem())).orElse("");
    var said = by.said(name);
    if (doubt) {
      var code = plain.apply(slate.orElseThrow().slate().says().code());
      said = Text.of("{0}; in doubt: slate {1} says {2}", said, name, code);
    }
    return card ? Text.of("{0}; a slate lay in the picture", said) : said;
  }

  /** The same in English, with names as they are. */
  public String words() {
    return said(UnaryOperator.identity()).english();
  }
}
