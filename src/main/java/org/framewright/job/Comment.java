package org.framewright.job;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.shotlist.Setup;

/**
 * What somebody said of a setup, or of a frame of it.
 *
 * @param setup the setup's code, as the list had it then
 * @param frames the frame, by each identity that it was known by; empty where it is of the setup
 * @param text one line
 * @param by who said it; empty where nobody is named
 * @param station the computer or the device that it was said on
 * @param called what people call that; empty where nobody said
 * @param number its place in the log of that
 * @param at when, by the job's time
 */
public record Comment(
    String setup,
    List<FrameId> frames,
    String text,
    String by,
    String station,
    Optional<String> called,
    long number,
    Instant at) {
  /** The longest text of a comment, in letters. */
  public static final int LONGEST = 1000;

  private static final Pattern BLANKS = Pattern.compile("\\s+");

  public Comment {
    frames = List.copyOf(frames);
  }

  /** Whether it is of this setup, by whatever code it has now. */
  public boolean isOf(Setup one) {
    return Setup.canonicalKey(setup).equals(Setup.canonicalKey(one.code()));
  }

  /** Whether it is of this frame, under any identity that it is known by. */
  public boolean isOf(Frame frame) {
    return frame.knownAs().stream().anyMatch(frames::contains);
  }

  /** Who said it; where nobody is named, what the computer or the device is called. */
  public Optional<String> who() {
    return Optional.of(by).filter(name -> !name.isBlank()).or(() -> called);
  }

  /** A text as it is kept. */
  static String line(String text) {
    return PlainText.line(BLANKS.matcher(text.strip()).replaceAll(" "));
  }

  /** This as it may be shown, whoever wrote it into the log. */
  Comment shown(Optional<String> name) {
    var line = line(text);
    return new Comment(
        setup,
        frames,
        line.substring(0, Math.min(line.length(), LONGEST)),
        PlainText.line(by),
        station,
        name,
        number,
        at);
  }
}
