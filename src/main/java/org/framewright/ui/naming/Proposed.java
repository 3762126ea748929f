package org.framewright.ui.naming;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.naming.Convention;
import org.framewright.naming.ExampleNames;
import org.framewright.naming.Field;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;
import org.framewright.naming.Proposal;
import org.framewright.naming.Proposal.Role;
import org.framewright.naming.ProposalDescription;

/**
 * What a person's names become: a proposal, or nothing yet.
 *
 * @param of what it was made of
 * @param proposal none while there is no name of a frame
 * @param columns the pieces of the names, as they stand one beside the other
 * @param remarks what of the names was not looked at
 * @param unheld whether what was said of the pieces does not hold, since the names have others now
 */
record Proposed(
    Draft of,
    Optional<Proposal> proposal,
    List<Column> columns,
    List<Text> remarks,
    boolean unheld) {

  /**
   * What a person gave and said.
   *
   * @param names one a line
   * @param job the name of a job's folder; blank if there is none
   * @param pieces how many pieces the names had when something was said of them; 0 if nothing was
   * @param said what pieces are, in the order in which it was said
   */
  record Draft(String names, String job, String title, int pieces, Map<Integer, Role> said) {
    static final Draft NOTHING = new Draft("", "", "", 0, Map.of());
  }

  /**
   * A piece of the names.
   *
   * @param widest its text that needs most room
   * @param type what its field takes, as far as there is a convention; empty for text
   */
  record Column(Proposal.Piece piece, String widest, Optional<FieldType> type) {}

  static final Proposed NOTHING =
      new Proposed(Draft.NOTHING, Optional.empty(), List.of(), List.of(), false);

  /** Proposes; takes as long as the check of the convention and the reading of the names. */
  static Proposed of(Draft draft) {
    var names = ExampleNames.of(draft.names());
    var remarks = new ArrayList<>(names.remarks());
    var first =
        Proposal.of(
            draft.title(), names.names(), Optional.of(draft.job()).filter(job -> !job.isBlank()));
    if (first.isEmpty()) {
      if (!names.names().isEmpty()) {
        var none = ProposalDescription.noNames();
        remarks.add(Text.of("{0}. {1}", none.fault(), none.fix()));
      }
      return new Proposed(draft, Optional.empty(), List.of(), List.copyOf(remarks), false);
    }
    var proposal = first.get();
    boolean unheld = false;
    for (var one : draft.said().entrySet()) {
      boolean applies =
          proposal.pieces().size() == draft.pieces()
              && proposal.canBe(one.getKey(), one.getValue());
      proposal = applies ? proposal.with(one.getKey(), one.getValue()) : proposal;
      unheld |= !applies;
    }
    return new Proposed(
        draft, Optional.of(proposal), columns(proposal), List.copyOf(remarks), unheld);
  }

  private static List<Column> columns(Proposal proposal) {
    return proposal.pieces().stream()
        .map(
            piece ->
                new Column(
                    piece, widest(piece), proposal.convention().flatMap(c -> type(c, piece))))
        .toList();
  }

  private static Optional<FieldType> type(Convention convention, Proposal.Piece piece) {
    return piece
        .field()
        .map(field -> field.substring(0, field.indexOf(':')))
        .flatMap(name -> Optional.ofNullable(convention.fields().get(name)))
        .map(Field::type);
  }

  /** By its length; letters of scripts that are written in squares count twice. */
  private static String widest(Proposal.Piece piece) {
    var widest = "";
    int most = -1;
    for (var value : piece.values()) {
      int room = value.codePoints().map(c -> c >= 0x1100 ? 2 : 1).sum();
      if (room > most) {
        most = room;
        widest = value;
      }
    }
    return piece.before() + widest;
  }

  List<Finding> findings() {
    return proposal.map(Proposal::findings).orElse(List.of());
  }

  List<Proposal.Example> examples() {
    return proposal.map(Proposal::examples).orElse(List.of());
  }

  /** The examples that are not read back. */
  List<Proposal.Example> unread() {
    return examples().stream().filter(example -> example.unread().isPresent()).toList();
  }

  /** Whether every example is read back, the job's name too. */
  boolean proven() {
    return proposal.filter(made -> made.unread().isEmpty()).isPresent();
  }

  /** The first piece of which a person has to say what it is. */
  Optional<Proposal.Piece> asked() {
    return columns.stream()
        .map(Column::piece)
        .filter(piece -> piece.question().isPresent())
        .findFirst();
  }

  /** How many of them there are. */
  long questions() {
    return columns.stream().filter(column -> column.piece().question().isPresent()).count();
  }

  /** Why the job's name is not read back; empty where it is or there is none. */
  Optional<Text> jobUnread() {
    return proposal
        .filter(_ -> !of.job().isBlank())
        .flatMap(
            made ->
                made.unread().stream()
                    .skip(unread().size())
                    .map(Proposal.Unread::said)
                    .findFirst());
  }
}
