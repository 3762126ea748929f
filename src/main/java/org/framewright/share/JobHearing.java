package org.framewright.share;

import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.LongSupplier;
import org.framewright.base.Text;

/** A job as one device hears it: all of it at first, then what changed; it skips to the newest. */
final class JobHearing implements Hearing {
  private final Moments moments;
  private final Folds folds;
  private final Devices.Known device;
  private final Function<Text, String> say;
  private final LongSupplier last;
  private final Clock clock;
  private Optional<Fold> told = Optional.empty();
  private long toldLast = -1;
  private long number;

  /**
   * @param last the number of the device's last event that is kept
   */
  JobHearing(
      Moments moments,
      Folds folds,
      Devices.Known device,
      Function<Text, String> say,
      LongSupplier last,
      Clock clock) {
    this.moments = moments;
    this.folds = folds;
    this.device = device;
    this.say = say;
    this.last = last;
    this.clock = clock;
  }

  @Override
  public Optional<String> next(Duration most, BooleanSupplier over) throws InterruptedException {
    var moment = moments.after(number, most, over).orElseGet(moments::newest);
    if (over.getAsBoolean()) {
      return Optional.empty();
    }
    number = moment.number();
    var fold = folds.of(device.role(), moment);
    long nowLast = last.getAsLong();
    if (told.filter(before -> before.saysTheSameAs(fold)).isPresent() && toldLast == nowLast) {
      return Optional.empty();
    }
    var data = Message.of(told, fold, device.id(), nowLast, clock.instant(), say);
    told = Optional.of(fold);
    toldLast = nowLast;
    return Optional.of("id: " + number + "\nevent: state\ndata: " + data + "\n\n");
  }
}
