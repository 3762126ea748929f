package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.framewright.base.FileProblemException;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * A list of names, read.
 *
 * @param lines those in which something stands, in their order
 * @param remark what is to be known of how the file was read
 */
public record NamesRead(List<Line> lines, Optional<String> remark) {
  /** A list in which so many names fit no frame is of another job. */
  static final int MOST_UNKNOWN = 1000;

  private static final int LONGEST_SHOWN = 200;

  public NamesRead {
    lines = List.copyOf(lines);
  }

  /**
   * A line of the list.
   *
   * @param number from 1
   * @param text as it stands there; the beginning of a long one
   * @param passedOver why nothing was looked for in it; empty where something was
   * @param pieces what was made of it; none where it is a remark
   */
  public record Line(int number, String text, Optional<String> passedOver, List<Piece> pieces) {
    public Line {
      pieces = List.copyOf(pieces);
    }

    /** Whether a person has to say what is meant. */
    public boolean unclear() {
      return pieces.stream().anyMatch(Piece::unclear);
    }
  }

  /**
   * Reads a list.
   *
   * @param bytes the file's
   * @param file its name, for problems
   * @param names all names of all frames; one frame's may stand in any order
   * @throws FileProblemException where it is no text, or no list of these frames
   */
  public static NamesRead of(byte[] bytes, String file, List<KnownName> names)
      throws FileProblemException {
    var text = ListText.of(bytes, file);
    var reader = new LineReader(new NameIndex(names));
    var lines = new ArrayList<Line>();
    var first = new HashMap<Integer, Integer>();
    int unknown = 0;
    for (var line : ListLines.of(text.text())) {
      if (line.kind() == ListLine.Kind.EMPTY) {
        reader.emptyLine();
        continue;
      }
      if (line.kind() != ListLine.Kind.ASKS) {
        lines.add(
            new Line(
                line.number(), shown(line.text()), Optional.of(line.kind().words()), List.of()));
        continue;
      }
      var pieces = reader.read(line.part()).stream().map(piece -> again(piece, first)).toList();
      for (var piece : pieces) {
        unknown += piece instanceof Piece.Unknown ? 1 : 0;
        if (piece instanceof Piece.Taken taken) {
          taken.frames().forEach(frame -> first.putIfAbsent(frame, line.number()));
        }
      }
      if (unknown > MOST_UNKNOWN) {
        throw new FileProblemException(
            new Problem(
                Text.of(
                    "more than {0} names in this list are of no frame of the job", MOST_UNKNOWN),
                file,
                "Check that it is the list of this job."));
      }
      lines.add(new Line(line.number(), shown(line.text()), Optional.empty(), pieces));
    }
    return new NamesRead(lines, text.remark());
  }

  private static Piece again(Piece piece, HashMap<Integer, Integer> first) {
    if (piece instanceof Piece.Taken taken
        && taken.frames().size() == 1
        && first.containsKey(taken.frames().getFirst())) {
      return new Piece.Taken(
          taken.written(),
          taken.frames(),
          taken.why() + "; named in line " + first.get(taken.frames().getFirst()) + " already");
    }
    return piece;
  }

  private static String shown(String text) {
    var plain = text.strip();
    return PlainText.line(
        plain.length() <= LONGEST_SHOWN ? plain : plain.substring(0, LONGEST_SHOWN) + " ...");
  }

  /**
   * What a person says of an unclear part of a line.
   *
   * @param line the line's number
   * @param piece the part's place among those of its line, from 0
   * @param frames those that are meant; none where it is left out
   */
  public record Answer(int line, int piece, List<Integer> frames) {
    public Answer {
      frames = List.copyOf(frames);
    }
  }

  /**
   * The same list with parts settled that were unclear.
   *
   * @throws IllegalArgumentException if a part is not unclear, or a frame is not among those that
   *     it may mean
   */
  public NamesRead settled(Collection<Answer> answers) {
    var byLine = new HashMap<Integer, List<Answer>>();
    for (var answer : answers) {
      byLine.computeIfAbsent(answer.line(), _ -> new ArrayList<>()).add(answer);
    }
    var settled = new ArrayList<Line>();
    for (var line : lines) {
      var own = byLine.remove(line.number());
      settled.add(own == null ? line : settled(line, own));
    }
    if (!byLine.isEmpty()) {
      throw new IllegalArgumentException("There are no lines " + byLine.keySet());
    }
    return new NamesRead(settled, remark);
  }

  private static Line settled(Line line, List<Answer> answers) {
    var pieces = new ArrayList<>(line.pieces());
    for (var answer : answers) {
      var piece = pieces.get(answer.piece());
      if (!piece.unclear() || !candidates(piece).containsAll(answer.frames())) {
        throw new IllegalArgumentException("“" + piece.written() + "” cannot be settled so");
      }
      pieces.set(
          answer.piece(),
          answer.frames().isEmpty()
              ? new Piece.Aside(piece.written(), "left out")
              : new Piece.Taken(piece.written(), answer.frames(), "as was chosen"));
    }
    return new Line(line.number(), line.text(), line.passedOver(), pieces);
  }

  private static List<Integer> candidates(Piece piece) {
    return piece.candidates().stream().map(KnownName::frame).toList();
  }

  /** The frames that are asked for without a doubt, each once, in the order of the list. */
  public List<Integer> frames() {
    var frames = new LinkedHashSet<Integer>();
    for (var line : lines) {
      for (var piece : line.pieces()) {
        if (piece instanceof Piece.Taken taken) {
          frames.addAll(taken.frames());
        }
      }
    }
    return List.copyOf(frames);
  }

  /** The lines of which a person has to say what is meant. */
  public List<Line> unclear() {
    return lines.stream().filter(Line::unclear).toList();
  }
}
