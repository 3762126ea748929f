package org.framewright.handoff.spec;

import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.Text;
import org.framewright.frames.PictureHeader;

/** What is asked of one thing about a picture. */
sealed interface Asked {
  /** As the end of a sentence: {@code at least 2400 pixels}. */
  Text words();

  /** Nothing, whatever is asked of other pictures. */
  record Anything() implements Asked {
    @Override
    public Text words() {
      return Text.NONE;
    }
  }

  /** One of these kinds of file. */
  record Kinds(List<PictureHeader.Kind> kinds) implements Asked {
    public Kinds {
      kinds = List.copyOf(kinds);
    }

    @Override
    public Text words() {
      return oneOf(kinds.stream().map(PictureHeader.Kind::word).toList());
    }
  }

  /** One of these colour models. */
  record Models(List<PictureHeader.Model> models) implements Asked {
    public Models {
      models = List.copyOf(models);
    }

    @Override
    public Text words() {
      return oneOf(models.stream().map(PictureHeader.Model::word).toList());
    }
  }

  /** One of these numbers. */
  record Numbers(List<Integer> numbers) implements Asked {
    public Numbers {
      numbers = List.copyOf(numbers);
    }

    @Override
    public Text words() {
      return oneOf(numbers.stream().map(String::valueOf).toList());
    }
  }

  /** An amount within bounds, which belong to it. */
  record Amount(long least, long most, Text words) implements Asked {
    boolean has(long amount) {
      return amount >= least && amount <= most;
    }
  }

  /** One of these proportions. */
  record Ratios(List<Ratio> ratios) implements Asked {
    public Ratios {
      ratios = List.copyOf(ratios);
    }

    @Override
    public Text words() {
      return oneOf(ratios.stream().map(Ratio::written).toList());
    }
  }

  /** Width to height. */
  record Ratio(long width, long height, String written) {
    /** Whether one side is what the other makes it, rounded to a pixel. */
    boolean has(long wide, long high) {
      return Math.abs(wide * height - high * width) < Math.max(width, height);
    }
  }

  /**
   * An embedded profile.
   *
   * @param names one of these; any where there are none
   */
  record Profiles(List<String> names) implements Asked {
    public Profiles {
      names = List.copyOf(names);
    }

    @Override
    public Text words() {
      return names.isEmpty() ? Text.of("an embedded profile") : oneOf(names);
    }
  }

  /** Whether something has to be there, or must not be. */
  record Presence(boolean wanted) implements Asked {
    @Override
    public Text words() {
      return wanted ? Text.of("some") : Text.of("none");
    }
  }

  /**
   * White up to all four sides.
   *
   * @param within how far from white it may be, in the steps of 8 bits
   */
  record White(int within) implements Asked {
    @Override
    public Text words() {
      return within == 0
          ? Text.of("a white background")
          : Text.of("a white background, within {0} of 255", within);
    }
  }

  private static Text oneOf(List<String> words) {
    return words.size() == 1
        ? Text.of("{0}", words.getFirst())
        : Text.of(
            "{0} or {1}",
            words.stream().limit(words.size() - 1L).collect(Collectors.joining(", ")),
            words.getLast());
  }
}
