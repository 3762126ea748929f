package org.framewright.naming;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.base.Text;

/** The findings of a check so far, and what goes into them. */
final class Report {
  private final List<Finding> findings = new ArrayList<>();

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  /** A proof that may prove too large. */
  interface Proof {
    void run() throws Effort.TooLarge;
  }

  void prove(DeclaredKind kind, Rule rule, Proof proof) {
    try {
      proof.run();
    } catch (Effort.TooLarge e) {
      add(
          Rule.TOO_LARGE,
          Severity.ERROR,
          kind.place(),
          Text.of("this is too large to prove free of {0}; nothing is claimed about it", rule.id()),
          null,
          Text.of("Show fewer fields, shorter ones or fewer optional runs in one name."));
    }
  }

  void add(
      Rule rule,
      Severity severity,
      Declared.Place place,
      Text message,
      Witness witness,
      Text remedy) {
    findings.add(
        new Finding(
            rule,
            severity,
            place.where(),
            place.line(),
            place.column(),
            message,
            Optional.ofNullable(witness),
            Optional.of(remedy)));
  }

  static Witness witness(Product.Found found) {
    return new Witness(
        found.firstValues(),
        found.secondValues(),
        found.first().equals(found.second())
            ? List.of(found.first())
            : List.of(found.first(), found.second()));
  }

  /** A witness counts only if building it comes to the same name. */
  static void confirm(DeclaredKind kind, SequencedMap<String, String> values, String expected) {
    var built = new Builder(kind.place(), Set.of()).build(kind.parts(), values);
    if (!(built instanceof Built.Name name && name.text().equals(expected))) {
      throw new IllegalStateException(
          "The witness " + values + " for " + expected + " does not build: " + built);
    }
  }

  static void confirm(DeclaredKind first, DeclaredKind second, Product.Found found) {
    confirm(first, found.firstValues(), found.first());
    confirm(second, found.secondValues(), found.second());
  }

  static SequencedMap<String, String> none() {
    return new LinkedHashMap<>();
  }

  static SequencedMap<String, String> with(
      SequencedMap<String, String> values, String name, String value) {
    var more = new LinkedHashMap<>(values);
    more.put(name, value);
    return more;
  }

  /** Example values for every field that a kind shows. */
  static SequencedMap<String, String> example(DeclaredKind kind, Map<String, String> given) {
    var values = new LinkedHashMap<String, String>();
    kind.shows()
        .forEach(
            (name, show) -> values.put(name, given.getOrDefault(name, show.field().example())));
    return values;
  }

  static String text(DeclaredKind kind, Map<String, String> values) {
    return switch (new Builder(kind.place(), Set.of()).build(kind.parts(), values)) {
      case Built.Name name -> name.text();
      case Built.Refused refused -> throw new IllegalStateException(refused.toString());
    };
  }
}
