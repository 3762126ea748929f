package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;
import org.framewright.base.Text;

/**
 * As what the columns of a list are taken: as a person says; else by the convention's own labels,
 * the words of the vocabulary and, for the setup, what the cells below look like.
 */
final class ColumnMeanings {
  /** The word that the export writes, and the convention's own label. */
  private static final int OWN = -1;

  private static final int VERY_WORD = 1;
  private static final int POSITION = 4;
  private static final int MAYBE = 5;
  private static final int ONLY_CODES = 6;
  private static final int ARTICLE = 3;

  private final List<String> plain;
  private final List<String> headings;
  private final List<List<Cell>> rows;
  private final ListRequest request;
  private final ListNotes notes;
  private final Cell at;
  private final Heading[] meanings;

  /** What each column may mean, and how surely, the smaller the surer. */
  private final List<Map<Heading, Integer>> possible = new ArrayList<>();

  private boolean refused;
  private final SequencedMap<Integer, String> fields = new LinkedHashMap<>();

  /**
   * @param header the row of headings
   * @param headings each column's own
   */
  ColumnMeanings(
      List<Cell> header,
      List<String> headings,
      List<List<Cell>> rows,
      ListRequest request,
      ListNotes notes) {
    this.plain = header.stream().map(Cell::plain).toList();
    this.headings = headings;
    this.rows = rows;
    this.request = request;
    this.notes = notes;
    this.at = header.isEmpty() ? new Cell("", 0, 0) : header.getFirst();
    this.meanings = new Heading[headings.size()];
    Arrays.fill(meanings, Heading.OTHER);
    for (var heading : plain) {
      possible.add(possible(heading));
    }
  }

  /** What a row of headings says on its own. */
  static List<Heading> of(List<Cell> header, ListRequest request) {
    var headings = header.stream().map(Cell::plain).toList();
    var columns = new ColumnMeanings(header, headings, List.of(), request, new ListNotes(""));
    for (var wanted : Heading.values()) {
      columns.take(wanted);
    }
    return List.of(columns.meanings);
  }

  /** How many different things the headings say. */
  static long known(List<Heading> found) {
    var known = EnumSet.noneOf(Heading.class);
    known.addAll(found);
    known.remove(Heading.OTHER);
    return known.size();
  }

  /** Each column's meaning, which may be changed. */
  List<Heading> meanings() {
    choose();
    if (!taken(Heading.SETUP)) {
      takeSetup();
    }
    for (var wanted : Heading.values()) {
      if (wanted != Heading.SETUP && !taken(wanted)) {
        take(wanted);
      }
    }
    return new ArrayList<>(Arrays.asList(meanings));
  }

  /** Whether a person chose what the list does not have. */
  boolean isRefused() {
    return refused;
  }

  /** The columns that fill a field of the convention's own, by a person's choice. */
  SequencedMap<Integer, String> fields() {
    return fields;
  }

  /** The column that a person calls so. */
  private OptionalInt column(String heading) {
    for (int i = 0; i < plain.size(); i++) {
      if (plain.get(i).equals(new Cell(heading, 0, 0).plain())) {
        return OptionalInt.of(i);
      }
    }
    for (int i = 0; i < headings.size(); i++) {
      if (headings.get(i).equals(heading.strip())) {
        return OptionalInt.of(i);
      }
    }
    var same = Heading.plain(heading);
    for (int i = 0; i < headings.size() && !same.isEmpty(); i++) {
      if (Heading.plain(headings.get(i)).equals(same)) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  private boolean taken(Heading meaning) {
    return Arrays.asList(meanings).contains(meaning);
  }

  // What a person says

  private void choose() {
    request.options().columns().forEach(this::choose);
    request
        .options()
        .uses()
        .forEach(
            (heading, use) -> {
              int column = required(heading);
              if (column >= 0) {
                meanings[column] = use;
              }
            });
    var merging = request.options().merging();
    if (merging.isPresent()) {
      int column = required(merging.get());
      if (column >= 0 && !taken(Heading.SETUP) && meanings[column] == Heading.OTHER) {
        meanings[column] = Heading.SETUP;
      }
    }
  }

  private void choose(String field, String heading) {
    int column = required(heading);
    if (column < 0) {
      return;
    }
    var known = field.equals("view") ? Optional.of(Heading.VIEWS) : Heading.ofWord(field);
    if (known.isPresent()) {
      meanings[column] = known.get();
    } else if (request.fit().fields().containsValue(field)) {
      fields.put(column, field);
    } else {
      refused = true;
      notes.problem(
          at,
          Text.of("a list has no field \"{0}\"", Cell.brief(field)),
          Text.of("Its fields are {0}.", known()));
    }
  }

  private String known() {
    var known = new ArrayList<String>();
    for (var heading : Heading.values()) {
      if (heading.isChosen()) {
        known.add(heading.word());
      }
    }
    request.fit().fields().values().stream()
        .distinct()
        .filter(field -> !known.contains(field) && !field.equals("view"))
        .forEach(known::add);
    return String.join(", ", known);
  }

  private int required(String heading) {
    var column = column(heading);
    if (column.isEmpty()) {
      refused = true;
      var there = headings.stream().limit(20).map(Cell::brief).toList();
      notes.problem(
          at,
          Text.of("no column is headed \"{0}\"", Cell.brief(heading)),
          Text.of("The headings are {0}.", String.join(", ", there)));
    }
    return column.orElse(-1);
  }

  // What the words say

  private Map<Heading, Integer> possible(int column) {
    return column < possible.size() ? possible.get(column) : Map.of();
  }

  private Map<Heading, Integer> possible(String heading) {
    var possible = new EnumMap<Heading, Integer>(Heading.class);
    possible.putAll(Heading.meanings(heading));
    ListWriter.HEADINGS.forEach(
        (meaning, own) -> {
          if (heading.equals(own)) {
            possible.put(meaning, OWN);
          }
        });
    switch (request.field(Heading.plain(heading))) {
      case "setup" -> possible.merge(Heading.SETUP, 0, Math::min);
      case "view" -> possible.merge(Heading.VIEWS, 0, Math::min);
      case null, default -> {}
    }
    return possible;
  }

  /** Of several columns that may mean one thing, the surest does. */
  private void take(Heading wanted) {
    int best = -1;
    int surest = Integer.MAX_VALUE;
    for (int i = 0; i < meanings.length; i++) {
      var rank = possible(i).get(wanted);
      if (meanings[i] != Heading.OTHER || fields.containsKey(i) || rank == null) {
        continue;
      }
      if (wanted == Heading.FROM_JOB) {
        meanings[i] = wanted;
      } else if (rank < surest) {
        best = i;
        surest = rank;
      }
    }
    if (best >= 0) {
      meanings[best] = wanted;
    }
  }

  // What the cells say

  private record Candidate(int column, int rank, ColumnValues values) {
    /** 0 where its cells fit, 2 where none does; who writes the very word means it. */
    int misfit() {
      return rank == OWN || rank == VERY_WORD || values.fits() ? 0 : values.fitsNowhere() ? 2 : 1;
    }

    int repeats() {
      return values.areDistinct() ? 0 : 1;
    }
  }

  private void takeSetup() {
    var candidates = new ArrayList<Candidate>();
    for (int i = 0; i < meanings.length; i++) {
      var rank = possible(i).get(Heading.SETUP);
      if (meanings[i] == Heading.OTHER && !fields.containsKey(i) && rank != null) {
        candidate(i, rank).ifPresent(candidates::add);
      }
    }
    var best =
        candidates.stream()
            .min(
                Comparator.comparingInt(Candidate::misfit)
                    .thenComparingInt(Candidate::rank)
                    .thenComparingInt(Candidate::repeats)
                    .thenComparingInt(Candidate::column));
    if (best.isPresent()) {
      meanings[best.get().column()] = Heading.SETUP;
      candidates.stream()
          .filter(other -> other.rank() < best.get().rank())
          .findFirst()
          .ifPresent(other -> passedOver(other, best.get()));
    }
  }

  private Optional<Candidate> candidate(int column, int sure) {
    var values = ColumnValues.of(rows, column, request.fit());
    int rank = Vocabulary.rank(sure);
    if (rank == ONLY_CODES && !values.areCodes()) {
      return Optional.empty();
    }
    if (rank >= MAYBE && values.areCodes()) {
      rank = ARTICLE;
    } else if (rank == POSITION && values.filled() > 0 && values.codes() == 0) {
      rank = ONLY_CODES;
    }
    return Optional.of(new Candidate(column, rank, values));
  }

  private void passedOver(Candidate other, Candidate taken) {
    var heading = headings.get(other.column());
    var brief = Cell.brief(heading);
    var taking = Cell.brief(headings.get(taken.column()));
    notes.remark(
        new Cell(heading, at.line(), 0),
        other
            .values()
            .misfit()
            .map(
                misfit ->
                    Text.of(
                        "\"{0}\" may be the setup, too, but not all of it fits the convention: {2};"
                            + " \"{1}\" was taken",
                        brief, taking, misfit.what()))
            .orElse(
                Text.of(
                    "\"{0}\" may be the setup, too, but not all of it fits the convention; \"{1}\""
                        + " was taken",
                    brief, taking)),
        Text.of("Where that is wrong, say so."),
        request.options().withColumn("setup", heading).words());
  }
}
