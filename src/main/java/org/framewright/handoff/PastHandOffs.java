package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.job.Job;

/**
 * What a job remembers of its hand-offs.
 *
 * @param all the newest first
 * @param problems records that cannot be used
 */
public record PastHandOffs(List<Past> all, List<Problem> problems) {

  public PastHandOffs {
    all = List.copyOf(all);
    problems = List.copyOf(problems);
  }

  /** What became of one. */
  public enum State {
    /** Its package took its place. */
    OUT,
    /** It was interrupted; the next hand-off brings it to an end. */
    INTERRUPTED,
    /** It was interrupted, and its package removed. */
    GIVEN_UP
  }

  /**
   * One hand-off.
   *
   * @param number its running number in the job, from 1
   * @param toTheClient whether it is of what came back, for the client; else for the retoucher
   * @param at when it began; none where its record does not say it as a time
   * @param folder the package, as the system of that day wrote its path
   * @param chosenBy how its selects were chosen
   * @param again how many of its selects had gone before
   * @param bytes the size of its files
   * @param digest the SHA-256 of the package's tag manifest, which covers all else in it
   */
  public record Past(
      int number,
      State state,
      boolean toTheClient,
      Optional<Instant> at,
      String folder,
      Text chosenBy,
      int selects,
      int again,
      int files,
      long bytes,
      Optional<String> digest) {}

  /** Reads the records of a job; nothing is written. */
  public static PastHandOffs of(Job job) throws IOException {
    var listing = HandOffRecords.of(job).read();
    var went = new HashSet<String>();
    var all = new ArrayList<Past>();
    for (var one : listing.usable().values()) {
      int again = 0;
      for (var entry : one.selects().stream().filter(entry -> !entry.slate()).toList()) {
        again += went.add(one.to() + " " + NameKey.of(entry.select())) ? 0 : 1;
      }
      all.add(
          new Past(
              one.number(),
              state(one),
              one.to() == HandOffRecord.To.CLIENT,
              at(one.at()),
              one.folder(),
              ChosenBy.said(one.chosenBy()),
              one.selects().size() - one.slates(),
              again,
              one.files(),
              one.bytes(),
              one.digest()));
    }
    return new PastHandOffs(all.reversed(), List.copyOf(listing.damaged().values()));
  }

  private static State state(HandOffRecord one) {
    return switch (one.state()) {
      case PLACING, DELIVERED -> State.OUT;
      case BEGUN -> State.INTERRUPTED;
      case ABANDONED -> State.GIVEN_UP;
    };
  }

  private static Optional<Instant> at(String written) {
    try {
      return Optional.of(Instant.parse(written));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The one of that number. */
  public Optional<Past> of(int number) {
    return all.stream().filter(one -> one.number() == number).findFirst();
  }

  /** Where a package lay, where this computer can say so. */
  public static Optional<Path> folder(Past one) {
    try {
      return Optional.of(Path.of(one.folder()));
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}
