package org.framewright.naming;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.framewright.base.Text;

/**
 * What a job needs of a convention and this one does not give, although its names are sound: the
 * {@link Reserved} names, spelt like that, and names that are never alike for two frames.
 */
final class UseCheck {
  /** What a setup is called in the trade; common practice, no source. */
  private static final Set<String> SETUP_WORDS =
      Set.of(
          "look",
          "garment",
          "outfit",
          "product",
          "article",
          "item",
          "style",
          "portrait",
          "room",
          "recipe",
          "scene");

  private final Convention convention;
  private final Report report;

  UseCheck(Convention convention, Report report) {
    this.convention = convention;
    this.report = report;
  }

  void check() {
    kinds();
    setup();
    view();
    alike(Reserved.FRAME, Text.of("frames"));
    alike(Reserved.SELECT, Text.of("selects"));
    retouched();
    convention.declaredKinds().values().forEach(this::otherBrackets);
  }

  private Optional<DeclaredKind> kind(String id) {
    return Optional.ofNullable(convention.declaredKinds().get(id));
  }

  private void kinds() {
    missing(
        Reserved.JOB,
        Severity.ERROR,
        Text.of("no job can be started"),
        Text.of("Add {0}.", Reserved.JOB + ": \"" + beginning() + "\""));
    missing(
        Reserved.FRAME,
        Severity.ERROR,
        Text.of("frames cannot get names"),
        Text.of("Add {0}: and a pattern with a counter.", Reserved.FRAME));
    if (kind(Reserved.FRAME).isPresent()) {
      missing(
          Reserved.SELECT,
          Severity.WARNING,
          Text.of("selects cannot be handed off"),
          Text.of("Add {0}, if they keep the frames' names.", Reserved.SELECT + ": \"{frame}\""));
    }
    if (kind(Reserved.SELECT).isPresent()) {
      missing(
          Reserved.RETOUCHED,
          Severity.NOTE,
          Text.of("what the retoucher sends back is known by the names of selects only"),
          Text.of(
              "Add {0} and the field {1}.",
              Reserved.RETOUCHED + ": \"{select}_v{version}\"",
              "version: {type: number, digits: 2}"));
    }
  }

  /** A first field for the job's name: a date, if one is declared. */
  private String beginning() {
    return convention.declared().values().stream()
        .filter(field -> field.type() == FieldType.DATE)
        .findFirst()
        .or(() -> convention.declared().values().stream().findFirst())
        .map(field -> "{" + field.name() + "}")
        .orElse("{day}");
  }

  private void missing(String id, Severity severity, Text so, Text remedy) {
    if (kind(id).isPresent()) {
      return;
    }
    var others = new LinkedHashSet<>(convention.declaredKinds().keySet());
    others.removeAll(Reserved.KINDS);
    var near = Nearest.to(id, others);
    var place =
        near.or(() -> convention.declaredKinds().keySet().stream().findFirst())
            .map(convention.declaredKinds()::get)
            .map(DeclaredKind::place)
            .orElse(new Declared.Place("names", 1, 1));
    report.add(
        Rule.RESERVED_NAME,
        severity,
        new Declared.Place("names", place.line(), place.column()),
        Text.of("there is no names.{0}, so {1}", id, so),
        null,
        near.map(other -> Text.of("Is {0}: meant? Call it {1}.", other, id)).orElse(remedy));
  }

  private void setup() {
    kind(Reserved.FRAME)
        .filter(frame -> !frame.shows().containsKey(Reserved.SETUP))
        .ifPresent(
            frame ->
                report.add(
                    Rule.RESERVED_NAME,
                    Severity.WARNING,
                    frame.place(),
                    Text.of(
                        "frames' names do not show the field “{0}”, which the shot list fills",
                        Reserved.SETUP),
                    null,
                    convention.declared().containsKey(Reserved.SETUP)
                        ? Text.of("Show {0} in it.", "{" + Reserved.SETUP + "}")
                        : meantAsSetup(frame)
                            .map(field -> renamed(field, Reserved.SETUP))
                            .orElse(
                                Text.of(
                                    "Declare it, such as {0}, and show {1}.",
                                    "setup: {type: number, digits: 3}", "{setup}"))));
  }

  private Optional<Declared> meantAsSetup(DeclaredKind frame) {
    var fields =
        frame.shows().values().stream()
            .map(Part.Show::field)
            .filter(field -> !field.name().equals(Reserved.VIEW))
            .filter(
                field ->
                    switch (field.type()) {
                      case CODE, WORDS, NUMBER, GTIN, CHOICE -> true;
                      case DATE, PERSON, COUNTER, FIXED -> false;
                    })
            .toList();
    var restarts =
        frame.counter().map(convention.declared()::get).map(Declared::restarts).orElse(List.of());
    return fields.stream()
        .filter(field -> Nearest.to(field.name(), List.of(Reserved.SETUP)).isPresent())
        .findFirst()
        .or(() -> fields.stream().filter(UseCheck::isCalledLikeASetup).findFirst())
        .or(() -> fields.stream().filter(field -> restarts.contains(field.name())).findFirst());
  }

  private static boolean isCalledLikeASetup(Declared field) {
    return Pattern.compile("[^a-z]+")
        .splitAsStream((field.name() + " " + field.label()).toLowerCase(Locale.ROOT))
        .anyMatch(word -> SETUP_WORDS.contains(word) || word.equals(Reserved.SETUP));
  }

  private static Text renamed(Declared field, String reserved) {
    return Text.of(
        field.label().equals(field.name())
            ? "Is the field {0} meant? Call it {1} and give it {2}."
            : "Is the field {0} meant? Call it {1}.",
        field.name(),
        reserved,
        "label: " + field.name());
  }

  private void view() {
    if (convention.declared().containsKey(Reserved.VIEW)) {
      return;
    }
    convention.declared().values().stream()
        .filter(field -> field.type() == FieldType.CHOICE)
        .filter(field -> Nearest.to(field.name(), List.of(Reserved.VIEW)).isPresent())
        .findFirst()
        .ifPresent(
            field ->
                report.add(
                    Rule.RESERVED_NAME,
                    Severity.WARNING,
                    field.place(),
                    Text.of(
                        "the views of a setup are filled into a field “{0}” only", Reserved.VIEW),
                    null,
                    renamed(field, Reserved.VIEW)));
  }

  /** Names that nothing makes different for two frames of one setup. */
  private void alike(String id, Text what) {
    var found = kind(id).filter(kind -> kind.sameAs().isEmpty() && kind.counter().isEmpty());
    if (found.isEmpty()) {
      return;
    }
    var kind = found.get();
    boolean timed =
        kind.shows().values().stream()
            .anyMatch(show -> show.shape() instanceof DateShape date && date.showsSeconds());
    var values = Report.example(kind, Map.of());
    report.add(
        Rule.SAME_NAME,
        timed ? Severity.WARNING : Severity.ERROR,
        kind.place(),
        timed
            ? Text.of(
                "two {0} of the same moment get the same name, because nothing in it counts", what)
            : Text.of("two {0} of one setup get the same name, because nothing in it counts", what),
        new Witness(values, values, List.of(Report.text(kind, values))),
        convention.declared().values().stream()
            .filter(field -> field.type() == FieldType.COUNTER)
            .findFirst()
            .map(counter -> Text.of("Show {0} in it.", "{" + counter.name() + "}"))
            .orElse(
                Text.of(
                    "Declare a counter, such as {0}, and show {1}.",
                    "take: {type: counter, digits: 4}", "{take}")));
  }

  /** What comes back must say which select it answers. */
  private void retouched() {
    var select = kind(Reserved.SELECT);
    var retouched = kind(Reserved.RETOUCHED);
    if (select.isEmpty() || retouched.isEmpty()) {
      return;
    }
    var known = new LinkedHashSet<>(retouched.get().shows().keySet());
    kind(Reserved.JOB).ifPresent(job -> known.addAll(job.shows().keySet()));
    var unknown =
        select.get().shows().values().stream()
            .map(Part.Show::field)
            .filter(field -> field.type() != FieldType.FIXED && !known.contains(field.name()))
            .map(Declared::name)
            .toList();
    if (!unknown.isEmpty()) {
      report.add(
          Rule.RESERVED_NAME,
          Severity.ERROR,
          retouched.get().place(),
          Text.of(
              unknown.size() == 1
                  ? "a retouched name does not say which select it answers: {0} is not in it"
                  : "a retouched name does not say which select it answers: {0} are not in it",
              String.join(", ", unknown)),
          null,
          Text.of("Begin it with {select}, such as \"{select}_v{version}\"."));
    }
  }

  /** A field's name in brackets of another language, which is shown as it stands. */
  private void otherBrackets(DeclaredKind kind) {
    var names =
        convention.declared().keySet().stream()
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    var placeholder = Pattern.compile("[%$<#@(]+(" + names + ")(?:[%$>#@)]+|(?![A-Za-z0-9]))");
    var found = new ArrayList<String>();
    var meant = new LinkedHashSet<String>();
    literals(kind.parts())
        .forEach(
            text -> {
              for (var match = placeholder.matcher(text); match.find(); ) {
                found.add(match.group());
                meant.add("{" + match.group(1) + "}");
              }
            });
    if (!found.isEmpty() && kind.sameAs().isEmpty()) {
      report.add(
          Rule.UNKNOWN_FIELD,
          Severity.WARNING,
          kind.place(),
          Text.of(
              "{0} in it is shown as it is written, not as a field",
              Series.listed(found.stream().distinct().map(Quoted::said).toList())),
          null,
          Text.of("Write {0}.", String.join(", ", meant)));
    }
  }

  private static List<String> literals(List<Part> parts) {
    var texts = new ArrayList<String>();
    for (var part : parts) {
      switch (part) {
        case Part.Text(String text) -> texts.add(text);
        case Part.Run(List<Part> inner) -> texts.addAll(literals(inner));
        case Part.Show _ -> {}
      }
    }
    return texts;
  }
}
