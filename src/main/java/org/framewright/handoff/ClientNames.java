package org.framewright.handoff;

import java.util.Collection;
import java.util.List;
import org.framewright.base.Problem;
import org.framewright.frames.Frame;
import org.framewright.handoff.names.NamesRead;
import org.framewright.handoff.names.Piece;

/**
 * A client's list of the frames wanted, read against the frames of a job: by the names they have,
 * the names they had before renames, and the names they were handed off under.
 *
 * @param file what the list is called
 * @param read what each line was taken for
 * @param known the frames that the list may name; {@code read} speaks of them by their index here
 * @param remarks what a person should know of the file, and of names that could not be read
 */
public record ClientNames(
    String file, NamesRead read, List<Frame> known, List<String> called, List<Problem> remarks) {
  /**
   * @param called how each of the known frames is called in words: by its path below the frames
   *     folder, without ending
   */
  public ClientNames {
    known = List.copyOf(known);
    called = List.copyOf(called);
    remarks = List.copyOf(remarks);
  }

  /**
   * The same list with parts settled that were unclear; see {@link NamesRead#settled}.
   *
   * @throws IllegalArgumentException if an answer is none to this list
   */
  public ClientNames settled(Collection<NamesRead.Answer> answers) {
    return new ClientNames(file, read.settled(answers), known, called, remarks);
  }

  /** The frames that are named without a doubt, each once, in the order of the list. */
  public List<Frame> frames() {
    return read.frames().stream().map(known::get).toList();
  }

  /** How a frame is called in words. */
  public String called(int frame) {
    return called.get(frame);
  }

  /** The lines of which a person has to say what is meant. */
  public List<NamesRead.Line> unclear() {
    return read.unclear();
  }

  /** How many names are taken for a frame or several. */
  public long taken() {
    return read.lines().stream()
        .flatMap(line -> line.pieces().stream())
        .filter(piece -> piece instanceof Piece.Taken)
        .count();
  }
}
