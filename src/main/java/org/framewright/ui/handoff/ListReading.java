package org.framewright.ui.handoff;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.handoff.ClientListReader;
import org.framewright.handoff.ClientNames;
import org.framewright.handoff.HandOffDescription;
import org.framewright.handoff.names.KnownName;
import org.framewright.handoff.names.NamesRead;
import org.framewright.handoff.names.Piece;
import org.framewright.job.JobException;

/**
 * A client's list as it was read, with what a person said of it.
 *
 * @param of what it was made of
 * @param settled the list with the answers; none where it could not be read
 * @param rows a row for each part of each line
 * @param problem why it could not be read
 */
record ListReading(
    Draft of, Optional<ClientNames> settled, List<Row> rows, Optional<Problem> problem) {

  /** Where a list comes from. */
  sealed interface Source {
    /** Pasted or typed. */
    record Text(String text) implements Source {}

    /**
     * Chosen among the files.
     *
     * @param time counts the times that files were chosen, as a file may have been changed
     */
    record File(Path path, int time) implements Source {}
  }

  /**
   * An unclear part of a list. An answer holds as long as the same stands in the same place.
   *
   * @param piece its place in the line, from 0
   */
  record Part(int line, int piece, String written) {}

  /**
   * @param answers the frames that are meant; none where the part is left out
   */
  record Draft(Source source, Map<Part, List<Integer>> answers) {
    static final Draft NOTHING = new Draft(new Source.Text(""), Map.of());
  }

  /** Whether and how a part of a line is understood. */
  enum State {
    /** Nothing is asked for. */
    ASIDE,
    TAKEN,
    /** A person has to say. */
    UNCLEAR,
    /** A person has said. */
    SETTLED
  }

  /**
   * A part of a line.
   *
   * @param heading the line as it stands in the list; empty where it is shown above already
   * @param said what the part was taken for, and why
   * @param candidates the names among which a person can choose
   * @param chosen the frames that were chosen
   */
  record Row(
      Part part,
      String heading,
      String said,
      State state,
      List<Candidate> candidates,
      List<Integer> chosen) {
    /** Whether a person has to say what is meant, or has. */
    boolean isAsked() {
      return state == State.UNCLEAR || state == State.SETTLED;
    }

    Row withoutHeading() {
      return new Row(part, "", said, state, candidates, chosen);
    }

    boolean isLeftOut() {
      return state == State.SETTLED && chosen.isEmpty();
    }
  }

  /** A frame, and how it is called. */
  record Candidate(int frame, String called) {}

  static final ListReading NOTHING =
      new ListReading(Draft.NOTHING, Optional.empty(), List.of(), Optional.empty());

  /** Reads lists; keeps the last one, as answers do not change what it says. */
  static final class Reader {
    private final ClientListReader names;
    private final String pasted;
    private volatile Last last;

    private record Last(Source source, ClientNames read) {}

    /**
     * @param pasted what a pasted list is called
     */
    Reader(ClientListReader names, String pasted) {
      this.names = names;
      this.pasted = pasted;
    }

    ListReading of(Draft draft) {
      try {
        var read = read(draft.source());
        var answers = answers(read, draft.answers());
        var settled = read.settled(answers);
        return new ListReading(draft, Optional.of(settled), rows(read, settled), Optional.empty());
      } catch (JobException e) {
        return refused(draft, e.problem());
      } catch (IOException e) {
        return refused(draft, FileProblems.of(e));
      }
    }

    /** Whether an answer for that one means the same frames for this one. */
    boolean takesAnswersOf(Reader other) {
      return names.knowsTheSameFrames(other.names);
    }

    private static ListReading refused(Draft draft, Problem problem) {
      return new ListReading(draft, Optional.empty(), List.of(), Optional.of(problem));
    }

    private ClientNames read(Source source) throws IOException, JobException {
      var before = last;
      if (before != null && before.source().equals(source)) {
        return before.read();
      }
      var read =
          switch (source) {
            case Source.Text(String text) -> names.read(text, pasted);
            case Source.File(Path path, int _) -> names.read(path);
          };
      last = new Last(source, read);
      return read;
    }

    /** Those that are still asked for. */
    private static List<NamesRead.Answer> answers(
        ClientNames read, Map<Part, List<Integer>> given) {
      var answers = new ArrayList<NamesRead.Answer>();
      for (var line : read.read().lines()) {
        for (int i = 0; i < line.pieces().size(); i++) {
          var piece = line.pieces().get(i);
          var frames = given.get(new Part(line.number(), i, piece.written()));
          if (frames != null && piece.unclear() && isAmong(frames, piece)) {
            answers.add(new NamesRead.Answer(line.number(), i, frames));
          }
        }
      }
      return answers;
    }

    private static boolean isAmong(List<Integer> frames, Piece piece) {
      return piece.candidates().stream().map(KnownName::frame).toList().containsAll(frames);
    }

    private static List<Row> rows(ClientNames read, ClientNames settled) {
      var rows = new ArrayList<Row>();
      for (int at = 0; at < read.read().lines().size(); at++) {
        var line = read.read().lines().get(at);
        var after = settled.read().lines().get(at);
        var heading = line.number() + "  " + line.text() + HandOffDescription.aside(line);
        if (line.pieces().isEmpty()) {
          rows.add(
              new Row(
                  new Part(line.number(), 0, ""), heading, "", State.ASIDE, List.of(), List.of()));
        }
        for (int i = 0; i < line.pieces().size(); i++) {
          rows.add(
              row(
                  new Part(line.number(), i, line.pieces().get(i).written()),
                  heading,
                  line.pieces().get(i),
                  after.pieces().get(i),
                  read));
        }
      }
      return List.copyOf(rows);
    }

    private static Row row(Part part, String heading, Piece piece, Piece after, ClientNames read) {
      return new Row(
          part,
          heading,
          after.unclear() ? question(after) : HandOffDescription.piece(after, read),
          state(piece, after),
          piece.candidates().stream()
              .map(name -> new Candidate(name.frame(), HandOffDescription.called(name, read)))
              .toList(),
          after instanceof Piece.Taken taken && piece.unclear() ? taken.frames() : List.of());
    }

    /** The frames stand below it; where there are too many, it says how many fit. */
    private static String question(Piece piece) {
      return HandOffDescription.question(piece)
          + (piece instanceof Piece.Asked asked && asked.count() > asked.fitting().size()
              ? " (" + asked.count() + ")"
              : "");
    }

    private static State state(Piece piece, Piece after) {
      if (piece.unclear()) {
        return after.unclear() ? State.UNCLEAR : State.SETTLED;
      }
      return piece instanceof Piece.Taken ? State.TAKEN : State.ASIDE;
    }
  }

  /** The rows, or those that a person is asked about, each line's heading above its first. */
  List<Row> shown(boolean onlyAsked) {
    var shown = new ArrayList<Row>();
    int line = 0;
    for (var row : rows) {
      if (!onlyAsked || row.isAsked()) {
        shown.add(row.part().line() == line ? row.withoutHeading() : row);
        line = row.part().line();
      }
    }
    return List.copyOf(shown);
  }

  /** Whether anything was or is to be settled by a person. */
  boolean asks() {
    return rows.stream().anyMatch(Row::isAsked);
  }

  /** How many parts a person has to settle. */
  int unclear() {
    return (int) rows.stream().filter(row -> row.state() == State.UNCLEAR).count();
  }

  /** How many frames are named without a doubt. */
  int frames() {
    return settled.map(names -> names.read().frames().size()).orElse(0);
  }
}
