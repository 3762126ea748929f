package org.framewright.sample;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * The invented set: a job, its clock, two cameras and the people around them. What they do goes
 * through the job, as everything does.
 */
final class SampleSet {
  static final ZoneOffset ZONE = ZoneOffset.ofHours(1);
  static final LocalDate FIRST_DAY = LocalDate.of(2026, 11, 2);

  /** Minutes from one garment to the next; ten of them fill a day. Common practice, no source. */
  private static final int[] CYCLES = {38, 44, 36, 41, 47, 35, 40, 43, 37, 42};

  private static final Duration BETWEEN_FRAMES = Duration.ofMillis(400);

  private final Job job;
  private final SampleClock clock;
  private final Duration shift;
  private final SampleCamera tripod;
  private final SampleCamera hand;
  private final List<SampleFrame> card = new ArrayList<>();
  private boolean handTethered = true;

  /**
   * @param shift how much later than the invented dates everything happens
   */
  SampleSet(Job job, SampleClock clock, Duration shift, SampleCamera.Size size) {
    this.job = job;
    this.clock = clock;
    this.shift = shift;
    // Both count close to the end, so that both go round and share numbers on the first day.
    this.tripod =
        new SampleCamera(SampleBody.studioA(), size, SampleCamera.Writes.RAW_AND_JPEG, 9994);
    this.hand =
        new SampleCamera(SampleBody.studioB(), size, SampleCamera.Writes.JPEG_RATED_INSIDE, 9996);
  }

  /** A moment of the invented calendar; days count from 1. */
  static Instant moment(int day, int hour, int minute, Duration shift) {
    return FIRST_DAY
        .plusDays(day - 1L)
        .atTime(LocalTime.of(hour, minute))
        .toInstant(ZONE)
        .plus(shift);
  }

  void goTo(int day, int hour, int minute) {
    var moment = moment(day, hour, minute, shift);
    if (moment.isBefore(clock.instant())) {
      throw new IllegalStateException("The story goes back to " + moment);
    }
    clock.set(moment);
  }

  Job job() {
    return job;
  }

  Path tripodFolder() {
    return job.framesFolder().resolve("A");
  }

  Path handFolder() {
    return job.framesFolder().resolve("B");
  }

  /** From here on body B writes to its card, or over the cable again. */
  void tetherHand(boolean tethered) {
    handTethered = tethered;
  }

  void mark(String setup, SetupState state, MarkDetails details) throws IOException, JobException {
    job.mark(setup, state, details);
  }

  /** A garment from the rail to the sign-off. */
  void shootAndSignOff(Setup setup) throws IOException, JobException {
    shoot(setup);
    signOff(setup);
    next(setup);
  }

  void signOff(Setup setup) throws IOException, JobException {
    clock.pass(Duration.ofMinutes(2));
    mark(setup.code(), SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
  }

  /** A garment from the rail until all its views are shot. */
  void shoot(Setup setup) throws IOException, JobException {
    shoot(setup, 0);
  }

  /** The same from one of its views on, counted from 0. */
  void shoot(Setup setup, int fromView) throws IOException, JobException {
    for (int i = fromView; i < setup.views().size(); i++) {
      var view = setup.views().get(i).code();
      mark(setup.code(), SetupState.ON_SET, MarkDetails.by("Timo").andView(view));
      clock.pass(Duration.ofMinutes(6));
      burst(setup, view, wanted(setup, i));
    }
    clock.pass(Duration.ofMinutes(1));
    mark(setup.code(), SetupState.SHOT, MarkDetails.by("Timo"));
  }

  /** Frames of a setup that are wanted of its view number {@code index}, shared out evenly. */
  static int wanted(Setup setup, int index) {
    int views = Math.max(1, setup.views().size());
    int all = setup.wanted().orElse(4 * views);
    return all / views + (index < all % views ? 1 : 0);
  }

  /** Time goes on until the next garment is ready. */
  void next(Setup setup) {
    int number = Integer.parseInt(setup.code().replaceAll("\\D", ""));
    int used = 3 + 6 * setup.views().size();
    clock.pass(Duration.ofMinutes(Math.max(1, CYCLES[number % CYCLES.length] - used)));
  }

  /**
   * Some frames in a row, details with the body in the hand; they arrive as they are taken. Of each
   * row one frame is rated 4 or 5, and one is rated 2.
   */
  Tally burst(Setup setup, String view, int frames) throws IOException {
    boolean detail = view.startsWith("D");
    for (int i = 0; i < frames; i++) {
      clock.pass(BETWEEN_FRAMES);
      var exposure = Exposure.of(clock.instant(), setup.code(), view);
      if (!detail) {
        exposure = exposure.heldUpright();
      }
      if (i == 1) {
        exposure = exposure.rated(view.startsWith("F") ? 5 : 4);
      } else if (i == 3) {
        exposure = exposure.rated(2);
      }
      var frame = (detail ? hand : tripod).take(exposure);
      if (detail && !handTethered) {
        card.add(frame);
      } else {
        frame.writeTo(detail ? handFolder() : tripodFolder());
      }
    }
    return arrive();
  }

  /** The job looks into its frames folder, as it does all the time while somebody watches. */
  Tally arrive() throws IOException {
    clock.pass(Duration.ofMillis(600));
    var scan = job.scan();
    job.recordArrivals(scan);
    clock.pass(Duration.ofSeconds(3));
    return job.tally(scan);
  }

  /** The card of body B is copied into the job; nobody saw those frames arrive. */
  int copyCard() throws IOException {
    int copied = card.size();
    for (var frame : card) {
      frame.writeTo(handFolder());
    }
    card.clear();
    job.foundPresent(job.scan());
    return copied;
  }

  /** One frame of whatever is there, such as a last one after the sign-off. */
  Tally oneMore(Setup setup, String view) throws IOException {
    clock.pass(Duration.ofSeconds(20));
    tripod.take(Exposure.of(clock.instant(), setup.code(), view)).writeTo(tripodFolder());
    return arrive();
  }

  Setup setup(int number) {
    return job.shotList().setup(String.format(Locale.ROOT, "%03d", number)).orElseThrow();
  }

  String time() {
    return LocalTime.ofInstant(clock.instant(), ZONE).withSecond(0).withNano(0).toString();
  }
}
