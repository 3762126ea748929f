package org.framewright.naming;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.SequencedMap;

/** A kind of name as the convention declares it, compiled. */
final class DeclaredKind implements Kind {
  private final String id;
  private final String pattern;
  private final List<Part> parts;
  private final Optional<String> sameAs;
  private final Declared.Place place;
  private final SequencedMap<String, Part.Show> shows = new LinkedHashMap<>();
  private final SequencedMap<String, Boolean> fields = new LinkedHashMap<>();
  private final Chain chain;
  private final Reader reader;

  /**
   * @param sameAs the kind whose names these are, where the pattern is nothing but that kind
   */
  DeclaredKind(
      String id, String pattern, List<Part> parts, Optional<String> sameAs, Declared.Place place) {
    this.id = id;
    this.pattern = pattern;
    this.parts = parts;
    this.sameAs = sameAs;
    this.place = place;
    Part.eachShow(parts, show -> shows.put(show.field().name(), show));
    shows.keySet().forEach(name -> fields.put(name, false));
    parts.forEach(
        part -> {
          if (part instanceof Part.Show show) {
            fields.put(show.field().name(), true);
          }
        });
    this.chain = new Chain(parts);
    this.reader = new Reader(chain);
  }

  @Override
  public String id() {
    return id;
  }

  @Override
  public String pattern() {
    return pattern;
  }

  @Override
  public SequencedMap<String, Boolean> fields() {
    return Collections.unmodifiableSequencedMap(fields);
  }

  @Override
  public Optional<String> counter() {
    return shows.values().stream()
        .map(Part.Show::field)
        .filter(field -> field.type() == FieldType.COUNTER)
        .map(Declared::name)
        .findFirst();
  }

  List<Part> parts() {
    return parts;
  }

  SequencedMap<String, Part.Show> shows() {
    return shows;
  }

  Optional<String> sameAs() {
    return sameAs;
  }

  Declared.Place place() {
    return place;
  }

  Chain chain() {
    return chain;
  }

  Reader reader() {
    return reader;
  }
}
