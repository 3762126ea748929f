package org.framewright.naming;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Proves a convention sound, or shows what is not, each fault with a witness that build confirms.
 */
final class Check {
  /** Moves that all proofs of one rule may try together, about a second's worth. */
  private static final long MOVES = 4_000_000;

  /** Pairs of values that the proof of order may try, about a second's worth. */
  private static final long VALUES = 500_000;

  private final Effort toRead = new Effort(MOVES);
  private final Effort toFold = new Effort(MOVES);
  private final Effort toTravel = new Effort(MOVES);
  private final Effort toTellApart = new Effort(MOVES);
  private final Effort toSort = new Effort(VALUES);
  private final Convention convention;
  private final List<Finding> findings = new ArrayList<>();

  Check(Convention convention) {
    this.convention = convention;
  }

  List<Finding> findings(long framesPlanned) {
    // Folders first: they are short, and a hostile name must not use up their proofs.
    convention
        .folderParts()
        .forEach(
            (role, parts) ->
                portable(new Chain(parts), "folders." + role, new Declared.Place("folders", 0, 0)));
    for (var kind : convention.declaredKinds().values()) {
      if (kind.sameAs().isPresent()) {
        continue;
      }
      losses(kind);
      restarts(kind);
      prove(kind, Rule.TWO_READINGS, () -> readings(kind));
      prove(kind, Rule.CASE_CLASH, () -> caseClash(kind));
      prove(kind, Rule.SORT_ORDER, () -> sortOrder(kind));
      portable(kind.chain(), "names." + kind.id(), kind.place());
      length(kind);
      counterFull(kind, framesPlanned);
    }
    kindsApart();
    paths();
    unused();
    return List.copyOf(findings);
  }

  // ---- findings

  /** A proof that may prove too large. */
  private interface Proof {
    void run() throws Effort.TooLarge;
  }

  private void prove(DeclaredKind kind, Rule rule, Proof proof) {
    try {
      proof.run();
    } catch (Effort.TooLarge e) {
      add(
          Rule.TOO_LARGE,
          Severity.ERROR,
          kind.place(),
          "this is too large to prove free of " + rule.id() + "; nothing is claimed about it",
          null,
          "Show fewer fields, shorter ones or fewer optional runs in one name.");
    }
  }

  private void add(
      Rule rule,
      Severity severity,
      Declared.Place place,
      String message,
      Witness witness,
      String remedy) {
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

  private static Witness witness(Product.Found found) {
    return new Witness(
        found.firstValues(),
        found.secondValues(),
        found.first().equals(found.second())
            ? List.of(found.first())
            : List.of(found.first(), found.second()));
  }

  /** A witness counts only if building it comes to the same name. */
  private static void confirm(
      DeclaredKind kind, SequencedMap<String, String> values, String expected) {
    var built = new Builder(kind.place(), Set.of()).build(kind.parts(), values);
    if (!(built instanceof Built.Name name && name.text().equals(expected))) {
      throw new IllegalStateException(
          "The witness " + values + " for " + expected + " does not build: " + built);
    }
  }

  private static void confirm(DeclaredKind first, DeclaredKind second, Product.Found found) {
    confirm(first, found.firstValues(), found.first());
    confirm(second, found.secondValues(), found.second());
  }

  private static SequencedMap<String, String> none() {
    return new LinkedHashMap<>();
  }

  // ---- same name

  private void losses(DeclaredKind kind) {
    for (var show : kind.shows().values()) {
      show.shape()
          .loss()
          .ifPresent(
              loss -> {
                var first = example(kind, Map.of(show.field().name(), loss.first()));
                var second = example(kind, Map.of(show.field().name(), loss.second()));
                add(
                    Rule.SAME_NAME,
                    Severity.ERROR,
                    kind.place(),
                    "two values of "
                        + show.field().name()
                        + ", "
                        + loss.first()
                        + " and "
                        + loss.second()
                        + ", make the same name, because this shape leaves a part out",
                    new Witness(first, second, List.of(text(kind, first))),
                    "Show it in full, or declare a field that holds no more than this name shows.");
              });
    }
  }

  private void restarts(DeclaredKind kind) {
    kind.counter()
        .map(convention.declared()::get)
        .ifPresent(
            counter -> {
              for (var name : counter.restarts()) {
                var texts = convention.declared().get(name).main().texts().two();
                if (kind.shows().containsKey(name) || texts[1] == null) {
                  continue;
                }
                var values = example(kind, Map.of());
                var main = convention.declared().get(name).main();
                var first = with(values, name, main.value(texts[0]));
                var second = with(values, name, main.value(texts[1]));
                add(
                    Rule.SAME_NAME,
                    Severity.ERROR,
                    kind.place(),
                    "the counter "
                        + counter.name()
                        + " restarts on "
                        + name
                        + ", which this name does not show, so that two of them get the same name",
                    new Witness(first, second, List.of(text(kind, values))),
                    "Show {" + name + "} in it, or let the counter run on.");
              }
            });
  }

  private static SequencedMap<String, String> with(
      SequencedMap<String, String> values, String name, String value) {
    var more = new LinkedHashMap<>(values);
    more.put(name, value);
    return more;
  }

  /** Example values for every field that a kind shows. */
  private static SequencedMap<String, String> example(
      DeclaredKind kind, Map<String, String> given) {
    var values = new LinkedHashMap<String, String>();
    kind.shows()
        .forEach(
            (name, show) -> values.put(name, given.getOrDefault(name, show.field().example())));
    return values;
  }

  private static String text(DeclaredKind kind, Map<String, String> values) {
    return switch (new Builder(kind.place(), Set.of()).build(kind.parts(), values)) {
      case Built.Name name -> name.text();
      case Built.Refused refused -> throw new IllegalStateException(refused.toString());
    };
  }

  // ---- readings

  private void readings(DeclaredKind kind) throws Effort.TooLarge {
    var found = new Product(toRead).ambiguity(kind.chain());
    if (found.isEmpty()) {
      return;
    }
    confirm(kind, kind, found.get());
    var fields = new LinkedHashSet<String>();
    kind.shows()
        .keySet()
        .forEach(
            name -> {
              var first = found.get().firstValues().get(name);
              var second = found.get().secondValues().get(name);
              if (first == null ? second != null : !first.equals(second)) {
                fields.add(name);
              }
            });
    add(
        Rule.TWO_READINGS,
        Severity.ERROR,
        kind.place(),
        "“"
            + found.get().first()
            + "” can be read in two ways, and two sets of values make it: where "
            + fields.stream().limit(3).collect(Collectors.joining(" and "))
            + " begin and end is not told",
        witness(found.get()),
        "Put text between them that none of their values can contain, or give them a fixed length.");
  }

  private void kindsApart() {
    var kinds = List.copyOf(convention.declaredKinds().values());
    for (int i = 0; i < kinds.size(); i++) {
      var one = kinds.get(i);
      if (one.sameAs().isPresent()) {
        sameAs(one);
        continue;
      }
      for (int j = i + 1; j < kinds.size(); j++) {
        var other = kinds.get(j);
        if (other.sameAs().isEmpty()) {
          prove(other, Rule.WRONG_KIND, () -> apart(one, other));
        }
      }
    }
  }

  private void apart(DeclaredKind one, DeclaredKind other) throws Effort.TooLarge {
    var found = new Product(toTellApart).intersection(one.chain(), other.chain());
    if (found.isPresent()) {
      confirm(one, other, found.get());
      add(
          Rule.WRONG_KIND,
          Severity.ERROR,
          other.place(),
          "“"
              + found.get().first()
              + "” can be read as a "
              + one.id()
              + " name and as a "
              + other.id()
              + " name",
          witness(found.get()),
          "Give one of them a text that the other cannot have, or write {"
              + one.id()
              + "} if their names are to be the same.");
    }
  }

  private void sameAs(DeclaredKind kind) {
    var original = convention.declaredKinds().get(kind.sameAs().orElseThrow());
    var values = example(kind, Map.of());
    add(
        Rule.WRONG_KIND,
        Severity.NOTE,
        kind.place(),
        "a " + kind.id() + " keeps the name of its " + original.id() + "; only its folder tells",
        new Witness(values, values, List.of(text(kind, values))),
        "Nothing, if that is meant.");
  }

  private void caseClash(DeclaredKind kind) throws Effort.TooLarge {
    var folding =
        convention.targets().stream().filter(Target::foldsCase).map(Target::inWords).toList();
    if (folding.isEmpty()) {
      return;
    }
    var found = new Product(toFold).caseClash(kind.chain());
    if (found.isPresent()) {
      confirm(kind, kind, found.get());
      add(
          Rule.CASE_CLASH,
          Severity.WARNING,
          kind.place(),
          "“"
              + found.get().first()
              + "” and “"
              + found.get().second()
              + "” are one and the same on "
              + String.join(", ", folding),
          witness(found.get()),
          "Give the field capital or small letters only, with letters: upper or letters: lower.");
    }
  }

  // ---- order

  private void sortOrder(DeclaredKind kind) throws Effort.TooLarge {
    var order = new SortOrder(kind, toSort);
    if (!order.tellsTime()) {
      return;
    }
    sorted(kind, order.inversion(Compare.bytes()), "byte order");
    sorted(kind, order.inversion(Compare.numbers()), "the order of file browsers, by numbers");
    if (kind.id().equals("job")) {
      dateFirst(kind);
    }
  }

  private void sorted(DeclaredKind kind, Optional<Product.Found> found, String order) {
    if (found.isPresent()) {
      confirm(kind, kind, found.get());
      add(
          Rule.SORT_ORDER,
          Severity.WARNING,
          kind.place(),
          "“"
              + found.get().first()
              + "” is earlier than “"
              + found.get().second()
              + "” and comes after it in "
              + order,
          witness(found.get()),
          "Write year, month and day in this order with all their digits, the counter after them"
              + " and with a fixed number of digits.");
    }
  }

  /** That a job's date comes first is common practice, no source. */
  private void dateFirst(DeclaredKind kind) {
    var first = kind.chain().leaves().getFirst();
    if (first.part() instanceof Part.Show(Declared field, Shape shape)
        && field.type() != FieldType.DATE
        && kind.shows().values().stream().anyMatch(show -> show.field().type() == FieldType.DATE)
        && shape.texts().two()[1] != null) {
      var date =
          kind.shows().values().stream()
              .filter(show -> show.field().type() == FieldType.DATE)
              .findFirst()
              .orElseThrow();
      var dates = date.shape().texts().two();
      var others = shape.texts().two();
      boolean rising = others[0].compareTo(others[1]) < 0;
      var early = date.shape().value(dates[0]);
      var late = date.shape().value(dates[1]);
      boolean inOrder = early.compareTo(late) < 0;
      var name = field.name();
      var values = example(kind, Map.of());
      var earlier =
          with(
              with(values, date.field().name(), inOrder ? early : late),
              name,
              shape.value(rising ? others[1] : others[0]));
      var later =
          with(
              with(values, date.field().name(), inOrder ? late : early),
              name,
              shape.value(rising ? others[0] : others[1]));
      add(
          Rule.SORT_ORDER,
          Severity.NOTE,
          kind.place(),
          "jobs sort by " + name + " before they sort by time, since the date does not come first",
          new Witness(earlier, later, List.of(text(kind, earlier), text(kind, later))),
          "Put the date first, if jobs are to stand in the order of time.");
    }
  }

  // ---- places

  private void portable(Chain chain, String where, Declared.Place place) {
    var told = new LinkedHashSet<String>();
    for (var target : convention.targets()) {
      for (var ban : Ban.at(target)) {
        if (told.contains(ban.what())) {
          continue;
        }
        try {
          var found = new Product(toTravel).unwanted(chain, ban.names());
          if (found.isPresent()) {
            told.add(ban.what());
            add(
                Rule.NOT_PORTABLE,
                ban.severity(),
                new Declared.Place(where, place.line(), place.column()),
                "“" + found.get().first() + "” " + ban.what() + ": not for " + target.inWords(),
                new Witness(found.get().firstValues(), none(), List.of(found.get().first())),
                ban.remedy());
          }
        } catch (Effort.TooLarge e) {
          add(
              Rule.TOO_LARGE,
              Severity.ERROR,
              new Declared.Place(where, place.line(), place.column()),
              "this is too large to prove that no name " + ban.what(),
              null,
              "Show fewer fields or shorter ones in one name.");
          return;
        }
      }
    }
  }

  private static SequencedMap<String, String> longestValues(DeclaredKind kind, boolean bytes) {
    var values = new LinkedHashMap<String, String>();
    for (var leaf : kind.chain().leaves()) {
      if (leaf.part() instanceof Part.Show(Declared field, Shape shape)) {
        values.put(field.name(), shape.value(shape.texts().longest(bytes)));
      }
    }
    return values;
  }

  private void length(DeclaredKind kind) {
    for (var target : convention.targets()) {
      if (target == Target.RECEIVERS && kind.id().equals("job")) {
        // Receivers get files, not the job's folder.
        continue;
      }
      var name = kind.chain().longest(target.countsBytes());
      int length = Dfa.weight(name, target.countsBytes());
      if (length > target.longest()) {
        var values = longestValues(kind, target.countsBytes());
        confirm(kind, values, name);
        add(
            Rule.TOO_LONG,
            Severity.ERROR,
            kind.place(),
            "the longest name has "
                + length
                + (target.countsBytes() ? " bytes" : " characters")
                + "; with an ending of "
                + Target.ENDING
                + ", "
                + target.inWords()
                + " takes "
                + target.longest(),
            new Witness(values, none(), List.of(name)),
            "Give its longest fields a smaller length.");
        return;
      }
    }
  }

  private void paths() {
    var job = convention.declaredKinds().get("job");
    if (job == null || convention.targets().stream().noneMatch(Target::limitsPaths)) {
      return;
    }
    var folder =
        convention.folderParts().values().stream()
            .map(parts -> new Chain(parts).longest(false))
            .reduce("", (a, b) -> a.length() >= b.length() ? a : b);
    var above = job.chain().longest(false) + "/" + folder + "/";
    for (var kind : convention.declaredKinds().values()) {
      var path = above + kind.chain().longest(false);
      int length = convention.before() + 1 + path.length() + Target.ENDING;
      if (kind != job && kind.sameAs().isEmpty() && length > Target.WINDOWS_PATH) {
        add(
            Rule.TOO_LONG,
            Severity.WARNING,
            kind.place(),
            "the longest path has "
                + length
                + " characters, "
                + convention.before()
                + " of them for the folder that jobs lie in; Windows takes "
                + Target.WINDOWS_PATH,
            new Witness(longestValues(job, false), longestValues(kind, false), List.of(path)),
            "Give the longest fields a smaller length, or a smaller before:.");
      }
    }
  }

  private void counterFull(DeclaredKind kind, long framesPlanned) {
    kind.counter()
        .map(convention.declared()::get)
        .ifPresent(
            counter -> {
              var show = kind.shows().get(counter.name());
              var shape = (NumberShape) show.shape();
              long room = shape.largest() - shape.smallest() + 1;
              if (framesPlanned > room) {
                var last = example(kind, Map.of(counter.name(), Long.toString(shape.largest())));
                add(
                    Rule.COUNTER_FULL,
                    Severity.ERROR,
                    kind.place(),
                    "the counter "
                        + counter.name()
                        + " has numbers for "
                        + room
                        + " frames"
                        + (counter.restarts().isEmpty()
                            ? ""
                            : " of one " + String.join(", ", counter.restarts()))
                        + "; "
                        + framesPlanned
                        + " are planned",
                    new Witness(last, none(), List.of(text(kind, last))),
                    "Give it digits: "
                        + Long.toString(framesPlanned + shape.smallest()).length()
                        + ".");
              }
            });
  }

  private void unused() {
    var used = new LinkedHashSet<String>();
    convention.declaredKinds().values().forEach(kind -> used.addAll(kind.shows().keySet()));
    convention
        .folderParts()
        .values()
        .forEach(parts -> Part.eachShow(parts, show -> used.add(show.field().name())));
    for (var field : convention.declared().values()) {
      if (!used.contains(field.name())) {
        add(
            Rule.UNUSED_FIELD,
            Severity.WARNING,
            field.place(),
            "the field " + field.name() + " shows in no name",
            null,
            "Show it as {" + field.name() + "}, or take it out.");
      }
    }
  }
}
