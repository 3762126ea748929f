package org.framewright.naming;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.framewright.base.Text;

/** Free text within an alphabet: a code, some words, a person's name. */
final class TextShape implements Shape {
  /** How a person's name is put before it becomes words. */
  enum Order {
    AS_GIVEN,
    FAMILY_FIRST,
    FAMILY_ONLY,
    INITIALS
  }

  /**
   * @param separator what joins words; empty for a code, which is one piece
   */
  record Form(Alphabet alphabet, String separator, int shortest, int longest, Order order) {
    boolean isOnePiece() {
      return separator.isEmpty();
    }
  }

  private final Form form;
  private final Form main;
  private final Dfa texts;
  private final Dfa mainTexts;

  /**
   * @param main the field's main shape, whose text is the field's value; null for that one itself
   */
  TextShape(Form form, TextShape main) {
    this.form = form;
    this.texts = automaton(form);
    this.main = main == null ? form : main.form;
    this.mainTexts = main == null ? texts : main.texts;
  }

  private static Dfa automaton(Form form) {
    return Dfa.words(
        form.alphabet.characters(),
        form.isOnePiece() ? Optional.empty() : Optional.of(form.separator.charAt(0)),
        form.shortest,
        form.longest);
  }

  @Override
  public Dfa texts() {
    return texts;
  }

  /** Always by way of the main form, so that a person's text becomes one value in every shape. */
  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    var value =
        mainTexts.contains(raw) ? new Settled.Legal(raw, raw) : legal(field, raw, main, steps);
    return switch (value) {
      case Settled.Legal(String text, String same) when form.equals(main) -> value;
      case Settled.Legal(String text, String same) -> {
        var shown =
            form.alphabet
                .letters()
                .apply(form.isOnePiece() ? text : text.replace(main.separator, form.separator));
        yield new Settled.Legal(shown, value(shown));
      }
      case Settled.Refused refused -> refused;
    };
  }

  private static Settled legal(String field, String raw, Form form, List<Step> steps) {
    var text = raw.strip();
    if (form.order != Order.AS_GIVEN) {
      text =
          step(
              field,
              text,
              ordered(text, form.order),
              Text.of("a person's name, {0}", ordering(form)),
              steps);
    }
    text =
        step(field, text, LegalText.spelt(text, form.alphabet), Text.of("signs as words"), steps);
    text =
        step(
            field,
            text,
            LegalText.transliterated(text, form.alphabet),
            form.alphabet.keepsAccents()
                ? Text.of("Latin letters")
                : Text.of("Latin letters without accents"),
            steps);
    text =
        step(
            field,
            text,
            form.alphabet.letters().apply(text),
            form.alphabet.letters() == Alphabet.Letters.UPPER
                ? Text.of("capital letters")
                : Text.of("small letters"),
            steps);
    text = step(field, text, joined(text, form), ordering(form), steps);
    text =
        step(
            field,
            text,
            cut(text, form),
            Text.of("no longer than {0} characters", form.longest),
            steps);
    if (text.length() < form.shortest) {
      return new Settled.Refused(
          text.isEmpty()
              ? Text.of("nothing legal is left of “{0}”", Quoted.bare(raw))
              : Text.of("“{0}” is shorter than {1} characters", Quoted.bare(text), form.shortest),
          Text.of("Give {0}.", words(form)));
    }
    return new Settled.Legal(text, text);
  }

  private static String step(
      String field, String given, String became, Text rule, List<Step> steps) {
    if (!became.equals(given)) {
      steps.add(new Step(field, given, became, rule));
    }
    return became;
  }

  private static Text ordering(Form form) {
    return switch (form.order) {
      case FAMILY_FIRST -> Text.of("family name first");
      case FAMILY_ONLY -> Text.of("family name only");
      case INITIALS -> Text.of("initials");
      case AS_GIVEN ->
          form.isOnePiece()
              ? Text.of("only {0}", form.alphabet.inWords())
              : Text.of("words joined by “{0}”", form.separator);
    };
  }

  /** A name as “given family” or “family, given”. */
  private static String ordered(String name, Order order) {
    int comma = name.indexOf(',');
    List<String> words =
        new ArrayList<>(Arrays.asList(name.replace(',', ' ').strip().split("\\s+")));
    if (comma < 0 && words.size() > 1) {
      words.addFirst(words.removeLast());
    }
    return switch (order) {
      case AS_GIVEN -> name;
      case FAMILY_FIRST -> String.join(" ", words);
      case FAMILY_ONLY -> comma < 0 ? words.getFirst() : name.substring(0, comma).strip();
      case INITIALS -> {
        if (words.size() > 1) {
          words.addLast(words.removeFirst());
        }
        yield words.stream()
            .filter(word -> !word.isEmpty())
            .map(word -> word.substring(0, word.offsetByCodePoints(0, 1)))
            .collect(Collectors.joining());
      }
    };
  }

  private static String joined(String text, Form form) {
    var pieces = new ArrayList<String>();
    var piece = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (form.alphabet.has(c)) {
        piece.append(c);
      } else if (c != '\'' && !piece.isEmpty()) {
        pieces.add(piece.toString());
        piece.setLength(0);
      }
    }
    if (!piece.isEmpty()) {
      pieces.add(piece.toString());
    }
    return String.join(form.separator, pieces);
  }

  /** Whole words as far as they fit, else the beginning of the first. */
  private static String cut(String text, Form form) {
    if (text.length() <= form.longest) {
      return text;
    }
    if (!form.isOnePiece()) {
      int end = text.lastIndexOf(form.separator, form.longest);
      if (end >= form.shortest) {
        return text.substring(0, end);
      }
    }
    var start = text.substring(0, form.longest);
    return form.isOnePiece() || !start.endsWith(form.separator)
        ? start
        : start.substring(0, start.length() - form.separator.length());
  }

  @Override
  public String value(String text) {
    if (form.equals(main)) {
      return text;
    }
    var words = form.isOnePiece() ? text : text.replace(form.separator, main.separator);
    return main.alphabet.letters().apply(words);
  }

  @Override
  public Optional<Loss> loss() {
    if (main.alphabet.letters() == Alphabet.Letters.MIXED
        && form.alphabet.letters() != Alphabet.Letters.MIXED) {
      var length = Math.max(1, form.shortest);
      return Optional.of(new Loss("A".repeat(length), "a".repeat(length)));
    }
    return Optional.empty();
  }

  @Override
  public Text inWords() {
    return words(form);
  }

  private static Text words(Form form) {
    var length =
        form.shortest == form.longest
            ? Text.of("{0}", form.longest)
            : Text.of("{0} to {1}", form.shortest, form.longest);
    return form.isOnePiece()
        ? Text.of("{0} {1}", length, form.alphabet.inWords())
        : Text.of(
            "words of {0} joined by “{1}”, {2} characters",
            form.alphabet.inWords(), form.separator, length);
  }
}
