package org.framewright.job;

import java.util.Optional;

/**
 * What is said along with a tick.
 *
 * @param by who says so; a sign-off needs it
 * @param view the view that is before the camera, with {@code on-set}
 * @param reason why, with {@code pickup} and {@code dropped}
 */
public record MarkDetails(Optional<String> by, Optional<String> view, Optional<String> reason) {

  /** Nothing is said. */
  public static final MarkDetails NONE =
      new MarkDetails(Optional.empty(), Optional.empty(), Optional.empty());

  public MarkDetails {
    by = by.map(String::strip).filter(text -> !text.isEmpty());
    view = view.map(String::strip).filter(text -> !text.isEmpty());
    reason = reason.map(String::strip).filter(text -> !text.isEmpty());
  }

  public static MarkDetails by(String person) {
    return NONE.andBy(person);
  }

  public MarkDetails andBy(String person) {
    return new MarkDetails(Optional.of(person), view, reason);
  }

  public MarkDetails andView(String code) {
    return new MarkDetails(by, Optional.of(code), reason);
  }

  public MarkDetails andReason(String text) {
    return new MarkDetails(by, view, Optional.of(text));
  }
}
