package org.framewright.ui.session;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;

/**
 * Which of a setup's last frames somebody looks at: the newest, until they go back to one before.
 * When another setup comes, it is the newest again.
 */
public final class LookedAt {
  /**
   * The frames at hand and the one looked at, of one and the same moment.
   *
   * @param frames newest first
   * @param frame the one looked at; none where there are no frames
   * @param at its place among them; -1 where it is older than all of them, or there is none
   */
  public record Look(List<Frame> frames, Optional<Frame> frame, int at) {
    /** Nothing is looked at. */
    public static final Look NOTHING = new Look(List.of(), Optional.empty(), -1);

    public Look {
      frames = List.copyOf(frames);
    }

    /** Whether there is nothing newer. */
    public boolean isNewest() {
      return frames.isEmpty() || at == 0;
    }
  }

  private final boolean stays;
  private final ReadOnlyObjectWrapper<Look> look = new ReadOnlyObjectWrapper<>(Look.NOTHING);
  private String setup = "";

  /** The frame that somebody went back to; empty while they look at the newest. */
  private Optional<FrameId> back = Optional.empty();

  /**
   * Nothing looked at.
   *
   * @param stays whether one that somebody went back to stays when a new frame comes
   */
  public LookedAt(boolean stays) {
    this.stays = stays;
  }

  /** What is looked at; changes when frames come, and when somebody turns to another. */
  public ReadOnlyObjectProperty<Look> look() {
    return look.getReadOnlyProperty();
  }

  /**
   * Frames came or went.
   *
   * @param code the setup's
   * @param latest its last frames, newest first
   * @param older finds a frame of the setup that is not among them any more
   */
  public void show(String code, List<Frame> latest, Function<FrameId, Optional<Frame>> older) {
    var before = look.get();
    var same = code.equals(setup);
    setup = code;
    if (!same || latest.isEmpty() || (!stays && !newest(before.frames()).equals(newest(latest)))) {
      back = Optional.empty();
    }
    var at = back.map(id -> place(latest, id)).orElse(0);
    var frame = at >= 0 ? latest.stream().skip(at).findFirst() : back.flatMap(older);
    if (frame.isEmpty()) {
      back = Optional.empty();
    }
    look.set(
        frame.isPresent() || latest.isEmpty()
            ? new Look(latest, frame, latest.isEmpty() ? -1 : at)
            : new Look(latest, Optional.of(latest.getFirst()), 0));
  }

  private static Optional<FrameId> newest(List<Frame> frames) {
    return frames.stream().findFirst().map(Frame::id);
  }

  private static int place(List<Frame> frames, FrameId id) {
    for (var i = 0; i < frames.size(); i++) {
      if (frames.get(i).knownAs().contains(id)) {
        return i;
      }
    }
    return -1;
  }

  /** Turns to the frame at that place, the newest being 0; to the nearest that is at hand. */
  public void turnTo(int at) {
    var frames = look.get().frames();
    if (frames.isEmpty()) {
      return;
    }
    var to = Math.clamp(at, 0, frames.size() - 1);
    back = to == 0 ? Optional.empty() : Optional.of(frames.get(to).id());
    look.set(new Look(frames, Optional.of(frames.get(to)), to));
  }

  /** Turns to that frame if it is at hand. */
  public void turnTo(FrameId frame) {
    var at = place(look.get().frames(), frame);
    if (at >= 0) {
      turnTo(at);
    }
  }

  /** Turns to the frame before the one looked at. */
  public void earlier() {
    if (look.get().at() >= 0) {
      turnTo(look.get().at() + 1);
    }
  }

  /** Turns to the frame after the one looked at. */
  public void later() {
    turnTo(look.get().at() < 0 ? look.get().frames().size() - 1 : look.get().at() - 1);
  }

  /** Turns to the newest. */
  public void newest() {
    turnTo(0);
  }
}
