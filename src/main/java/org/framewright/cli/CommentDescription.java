package org.framewright.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.PlainText;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.job.Comment;

/** How commands describe what people said of setups and frames. */
final class CommentDescription {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private CommentDescription() {}

  static SequencedMap<String, Object> document(Comment comment) {
    var document = new LinkedHashMap<String, Object>();
    document.put("setup", comment.setup());
    document.put("frame", comment.frames().stream().findFirst().map(FrameId::value).orElse(null));
    document.put("text", comment.text());
    document.put("by", comment.by().isBlank() ? null : comment.by());
    document.put("device", comment.called().orElse(comment.station()));
    document.put("at", comment.at().toString());
    return document;
  }

  /**
   * Those of a day, a line each: {@code Comment on 012, IMG_0412, by Ada at 14:05: collar lower}.
   */
  static List<String> lines(List<Comment> comments, FrameScan scan, LocalDate day, ZoneId zone) {
    return comments.stream()
        .filter(comment -> LocalDate.ofInstant(comment.at(), zone).equals(day))
        .map(comment -> line(comment, scan, zone))
        .toList();
  }

  private static String line(Comment comment, FrameScan scan, ZoneId zone) {
    var of =
        Stream.concat(Stream.of(comment.setup()), frame(comment, scan).map(Frame::stem).stream())
            .collect(Collectors.joining(", "));
    return PlainText.line(
        "Comment on %s%s at %s: %s"
            .formatted(
                of,
                comment.who().map(who -> ", by " + who).orElse(""),
                comment.at().atZone(zone).format(TIME),
                comment.text()));
  }

  private static Optional<Frame> frame(Comment comment, FrameScan scan) {
    return comment.frames().isEmpty()
        ? Optional.empty()
        : scan.frames().stream().filter(comment::isOf).findFirst();
  }
}
