package org.framewright.naming;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import org.framewright.base.Text;

/** One of a few values: each value's meaning, and the text that shows it. */
final class ChoiceShape implements Shape {
  private final SequencedMap<String, String> meanings;
  private final SequencedMap<String, String> shown;
  private final Map<String, String> values = new HashMap<>();
  private final Dfa texts;
  private Loss loss;

  ChoiceShape(SequencedMap<String, String> meanings, SequencedMap<String, String> shown) {
    this.meanings = new LinkedHashMap<>(meanings);
    this.shown = new LinkedHashMap<>(shown);
    shown.forEach(
        (value, text) -> {
          var other = values.putIfAbsent(text, value);
          if (other != null && loss == null) {
            loss = new Loss(other, value);
          }
        });
    texts = Dfa.of(values.keySet());
  }

  @Override
  public Dfa texts() {
    return texts;
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    var given = raw.strip();
    if (shown.containsKey(given)) {
      return text(given);
    }
    var alike =
        meanings.keySet().stream()
            .filter(
                value ->
                    value.equalsIgnoreCase(given)
                        || meanings.get(value).equalsIgnoreCase(given)
                        || shown.get(value).equalsIgnoreCase(given))
            .toList();
    if (alike.size() == 1) {
      var value = alike.getFirst();
      steps.add(new Step(field, raw, value, Text.of("the value that it stands for")));
      return text(value);
    }
    var known =
        meanings.entrySet().stream()
            .map(
                e ->
                    e.getValue().equals(e.getKey())
                        ? e.getKey()
                        : e.getKey() + " (" + e.getValue() + ")")
            .collect(Collectors.joining(", "));
    return new Settled.Refused(
        Text.of("“{0}” is none of its values", Quoted.bare(raw)),
        Nearest.to(given, meanings.keySet())
            .map(near -> Text.of("Give one of {0}. Is “{1}” meant?", known, near))
            .orElse(Text.of("Give one of {0}.", known)));
  }

  private Settled text(String value) {
    return new Settled.Legal(shown.get(value), value);
  }

  @Override
  public String value(String text) {
    return values.get(text);
  }

  @Override
  public Optional<Loss> loss() {
    return Optional.ofNullable(loss);
  }

  @Override
  public Text inWords() {
    var first = shown.values().stream().limit(8).collect(Collectors.joining(", "));
    return Text.of("one of {0}", shown.size() > 8 ? first + " ..." : first);
  }
}
