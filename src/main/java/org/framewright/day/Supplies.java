package org.framewright.day;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.ByteSizes;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;

/**
 * How long disks and battery last.
 *
 * @param zone where the set is
 * @param at the moment that it holds for
 * @param filling how fast frames come; none where it is too early to tell
 * @param disks the one that frames arrive on first
 * @param battery of the computer, while it runs on it
 */
public record Supplies(
    ZoneId zone,
    Instant at,
    Optional<Filling> filling,
    List<Disk> disks,
    Optional<Battery> battery) {
  /** Beyond that nobody plans by the hour. */
  private static final Duration MOST_TOLD = Duration.ofHours(99);

  public Supplies {
    disks = List.copyOf(disks);
  }

  /** What a disk is for. */
  public enum Use {
    /** Frames arrive on it. */
    FRAMES,
    /** Copies or backups of the job lie on it. */
    COPIES,
    /** A camera's card that is in this computer. */
    CARD;

    /** The word for it in documents. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A disk.
   *
   * @param name what to call it; empty for the one that frames arrive on
   * @param free bytes that are free
   */
  public record Disk(Use use, String name, long free) {
    /** One besides that of the frames. */
    public static Disk beside(boolean card, String name, long free) {
      return new Disk(card ? Use.CARD : Use.COPIES, name, free);
    }
  }

  /**
   * Those of a job now.
   *
   * @param others disks besides the one that frames arrive on
   */
  public static Supplies of(
      Job job, FrameScan scan, ZoneId zone, List<Disk> others, PowerSource power)
      throws IOException {
    var now = DayHours.within(job.now());
    var disks = new ArrayList<Disk>();
    disks.add(new Disk(Use.FRAMES, "", Files.getFileStore(job.framesFolder()).getUsableSpace()));
    disks.addAll(others);
    return new Supplies(
        zone, now, Filling.of(job.frameLines(scan), zone, now), disks, power.battery());
  }

  /** How long a disk lasts at the pace of the last hour; none where it is too early to tell. */
  public Optional<Duration> lasts(Disk disk) {
    return filling.map(pace -> pace.lasts(disk.free()));
  }

  /** How fast frames come and how long each disk lasts; nothing where it is too early to tell. */
  public List<Text> speed() {
    var said = new ArrayList<Text>();
    filling.ifPresent(
        pace -> {
          said.add(pace(pace));
          disks.forEach(disk -> said.add(said(disk, pace.lasts(disk.free()))));
        });
    return List.copyOf(said);
  }

  /** How long the computer runs on; none where it runs on mains, or nobody knows. */
  public Optional<Text> power() {
    return battery.map(Supplies::said);
  }

  private Text pace(Filling pace) {
    var today = LocalDateTime.ofInstant(at, zone).toLocalDate();
    var until = LocalDateTime.ofInstant(pace.until(), zone);
    return Text.of(
        "{0} came in {1} until {2}",
        ByteSizes.large(pace.bytes()),
        Durations.said(pace.over()),
        DayDescription.clockTime(until, until.toLocalDate().equals(today)));
  }

  private static Text said(Disk disk, Duration lasts) {
    var free = ByteSizes.large(disk.free());
    var time =
        lasts.compareTo(MOST_TOLD) > 0
            ? Text.of("more than {0} h", MOST_TOLD.toHours())
            : hours(lasts);
    var name = PlainText.line(disk.name());
    return switch (disk.use()) {
      case FRAMES ->
          Text.of("at that pace the disk of the frames, {0} free, lasts {1}", free, time);
      case COPIES ->
          Text.of("at that pace the disk of copies {0}, {1} free, lasts {2}", name, free, time);
      case CARD -> Text.of("at that pace the card {0}, {1} free, lasts {2}", name, free, time);
    };
  }

  private static Text hours(Duration time) {
    return Text.of(Durations.workingTime(time));
  }

  private static Text said(Battery battery) {
    return battery
        .left()
        .map(
            left ->
                Text.of(
                    "the computer runs on its battery: {0} %, about {1} at the present draw",
                    battery.percent(), hours(left)))
        .orElseGet(() -> Text.of("the computer runs on its battery: {0} %", battery.percent()));
  }
}
