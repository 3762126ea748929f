package org.framewright.ui.board;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.frames.Frame;
import org.framewright.frames.Place;
import org.framewright.job.Comment;
import org.framewright.live.JobView;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;

/**
 * What people said of the setups, and which of it nobody at this computer has seen yet. What was
 * said here was seen.
 */
final class CommentsModel {
  /** A comment's place in the log of the station or device that it was said on. */
  private record Key(String station, long number) {
    static Key of(Comment comment) {
      return new Key(comment.station(), comment.number());
    }
  }

  private final String station;
  private final SeenComments seen;
  private final ZoneId zone;
  private final Texts texts;
  private final UnaryOperator<String> viewWord;
  private final Set<Key> known = new HashSet<>();
  private final Set<Key> fresh = new HashSet<>();
  private List<Comment> comments = List.of();
  private Map<String, List<Comment>> bySetup = Map.of();

  /**
   * Without comments.
   *
   * @param station this computer
   * @param viewWord what a view's code means
   */
  CommentsModel(
      String station, SeenComments seen, ZoneId zone, Texts texts, UnaryOperator<String> viewWord) {
    this.station = station;
    this.seen = seen;
    this.zone = zone;
    this.texts = texts;
    this.viewWord = viewWord;
  }

  /** Takes the comments that a job begins with: those are new that were not seen before. */
  void begin(JobView job) {
    var until = seen.until().orElse(Instant.MIN);
    take(job).stream().filter(comment -> !comment.at().isAfter(until)).forEach(this::isSeen);
  }

  /**
   * Takes the comments of a job as it is now.
   *
   * @return those that came since and are new here
   */
  List<Comment> take(JobView job) {
    if (job.comments().equals(comments)) {
      return List.of();
    }
    comments = job.comments();
    bySetup =
        comments.stream().collect(Collectors.groupingBy(one -> Setup.canonicalKey(one.setup())));
    var came =
        comments.stream()
            .filter(comment -> known.add(Key.of(comment)))
            .filter(comment -> !comment.station().equals(station))
            .toList();
    came.forEach(comment -> fresh.add(Key.of(comment)));
    // What was taken back is not waited for.
    fresh.retainAll(comments.stream().map(Key::of).collect(Collectors.toSet()));
    return came;
  }

  private void isSeen(Comment comment) {
    fresh.remove(Key.of(comment));
  }

  private List<Comment> of(String setup) {
    return bySetup.getOrDefault(Setup.canonicalKey(setup), List.of());
  }

  /** How much was said of a setup. */
  SaidCount count(String setup) {
    var its = of(setup);
    return its.isEmpty()
        ? SaidCount.NONE
        : new SaidCount(
            its.size(),
            (int) its.stream().filter(comment -> fresh.contains(Key.of(comment))).count());
  }

  /** What was said of a setup, the newest first. */
  List<Said> said(String setup, JobView job) {
    return of(setup).reversed().stream().map(comment -> said(comment, job)).toList();
  }

  private Said said(Comment comment, JobView job) {
    return new Said(
        comment.text(),
        texts.apart(comment.who().orElse(""), when(comment.at(), job.at())),
        of(comment, job),
        fresh.contains(Key.of(comment)));
  }

  private String when(Instant at, Instant now) {
    var then = LocalDateTime.ofInstant(at, zone);
    return then.toLocalDate().equals(LocalDate.ofInstant(now, zone))
        ? texts.formats().time(then)
        : texts.formats().soon(then);
  }

  private String of(Comment comment, JobView job) {
    return comment.frames().isEmpty()
        ? ""
        : job.scan().frames().stream()
            .filter(comment::isOf)
            .findFirst()
            .map(frame -> called(frame, job))
            .orElseGet(() -> texts.get("comment.frameGone"));
  }

  /** A frame by its view and its name. */
  String called(Frame frame, JobView job) {
    var name = PlainText.line(frame.stem());
    return job.tally()
        .place(frame)
        .flatMap(Place::view)
        .map(view -> texts.get("comment.ofView", viewWord.apply(view), name))
        .orElseGet(() -> texts.get("comment.ofFrame", name));
  }

  /** Somebody has seen what was said of these setups; says whether anything of it was new. */
  boolean see(Collection<String> setups) {
    boolean any = false;
    for (var setup : setups) {
      for (var comment : of(setup)) {
        any |= fresh.remove(Key.of(comment));
      }
    }
    if (any) {
      seen.keep(until());
    }
    return any;
  }

  /** Right before the first that is new, else the last of all. */
  private Instant until() {
    return comments.stream()
        .filter(comment -> fresh.contains(Key.of(comment)))
        .map(comment -> comment.at().minusMillis(1))
        .min(Instant::compareTo)
        .or(() -> comments.stream().map(Comment::at).max(Instant::compareTo))
        .orElse(Instant.EPOCH);
  }
}
