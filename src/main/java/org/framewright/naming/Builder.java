package org.framewright.naming;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.base.Text;

/** Builds one name: every value is settled first, so that every fault is reported at once. */
final class Builder {
  private final Declared.Place place;
  private final Set<Target> targets;
  private final List<Finding> faults = new ArrayList<>();
  private final List<Step> steps = new ArrayList<>();
  private final SequencedMap<String, String> texts = new LinkedHashMap<>();
  private final SequencedMap<String, String> settled = new LinkedHashMap<>();
  private final SequencedMap<String, String> shown = new LinkedHashMap<>();

  Builder(Declared.Place place, Set<Target> targets) {
    this.place = place;
    this.targets = targets;
  }

  Built build(List<Part> parts, Map<String, String> values) {
    Part.eachShow(parts, show -> settle(show, values));
    var name = new StringBuilder();
    append(parts, name, true);
    if (faults.isEmpty()) {
      fits(name.toString());
    }
    if (!faults.isEmpty()) {
      return new Built.Refused(List.copyOf(faults));
    }
    return new Built.Name(
        Normalizer.normalize(name, Normalizer.Form.NFC), shown, List.copyOf(steps));
  }

  private void settle(Part.Show show, Map<String, String> values) {
    var field = show.field();
    var raw = values.getOrDefault(field.name(), "");
    if (raw.isBlank()) {
      raw = field.defaultValue().orElse("");
    }
    if (raw.isBlank() && field.type() != FieldType.FIXED) {
      return;
    }
    if (raw.length() > Limits.GIVEN) {
      texts.put(field.name(), "");
      fault(
          Rule.BAD_VALUE,
          Text.of("{0}: the value is longer than {1} characters", field.label(), Limits.GIVEN),
          Text.of("Shorten it."));
      return;
    }
    switch (show.shape().settle(field.name(), raw, steps)) {
      case Shape.Settled.Legal(String text, String value) -> {
        texts.put(field.name(), text);
        settled.put(field.name(), value);
      }
      case Shape.Settled.Refused(Text why, Text remedy) -> {
        // A value is there, if a bad one, so that nothing else is said to be missing.
        texts.put(field.name(), "");
        fault(Rule.BAD_VALUE, Text.of("{0}: {1}", field.label(), why), remedy);
      }
    }
  }

  private void append(List<Part> parts, StringBuilder name, boolean shows) {
    for (var part : parts) {
      switch (part) {
        case Part.Text(String text) -> name.append(shows ? text : "");
        case Part.Run run -> append(run.parts(), name, shows(run, shows));
        case Part.Show show when shows -> {
          var field = show.field();
          if (texts.containsKey(field.name())) {
            name.append(texts.get(field.name()));
            shown.put(field.name(), settled.getOrDefault(field.name(), ""));
          } else {
            fault(
                Rule.MISSING_VALUE,
                Text.of("{0}: a value is missing", field.label()),
                Text.of("Give {0}={1}, or another.", field.name(), field.example()));
          }
        }
        case Part.Show show -> {}
      }
    }
  }

  private boolean shows(Part.Run run, boolean around) {
    var own = run.own().stream().map(show -> show.field().name()).toList();
    var given = own.stream().filter(texts::containsKey).toList();
    if (around && given.size() == own.size()) {
      return true;
    }
    var all = new ArrayList<String>();
    Part.eachShow(
        run.parts(),
        show -> {
          if (show.field().type() != FieldType.FIXED && texts.containsKey(show.field().name())) {
            all.add(show.field().name());
          }
        });
    if (around && !all.isEmpty()) {
      var missing = own.stream().filter(name -> !texts.containsKey(name)).toList();
      fault(
          Rule.MISSING_VALUE,
          Text.of("{0} shows only together with {1}", Series.of(all), Series.of(missing)),
          Text.of("Give {0} too, or leave both out.", Series.of(missing)));
    }
    return false;
  }

  private void fits(String name) {
    for (var target : targets) {
      for (var component : name.split("/", -1)) {
        int length =
            target.countsBytes()
                ? component.getBytes(StandardCharsets.UTF_8).length
                : component.length();
        if (length > target.longest()) {
          fault(
              Rule.TOO_LONG,
              Text.of(
                  target.countsBytes()
                      ? "the name would have {0} bytes; {1} takes {2}"
                      : "the name would have {0} characters; {1} takes {2}",
                  length,
                  target.inWords(),
                  target.longest()),
              Text.of("Shorten its longest value."));
          return;
        }
      }
    }
  }

  private void fault(Rule rule, Text what, Text remedy) {
    faults.add(
        new Finding(
            rule,
            Severity.ERROR,
            place.where(),
            place.line(),
            place.column(),
            what,
            Optional.empty(),
            Optional.of(remedy)));
  }
}
