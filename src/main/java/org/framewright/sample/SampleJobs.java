package org.framewright.sample;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;

/** Invented jobs to look at and to measure with. */
public final class SampleJobs {
  /** Short titles, in the scripts that a list from abroad may come in. All invented. */
  private static final String[] TITLES = {
    "Wool coat",
    "Manteau croisé en laine bouillie, col châle, doublure imprimée à motif de fougères",
    "Ärmelloses Etuikleid mit Gürtel",
    "羊毛のコート、ダブルボタン",
    "真丝衬衫，立领，珍珠纽扣",
    "양모 재킷",
    "Шерстяное пальто с капюшоном",
    "معطف صوفي طويل",
    "מעיל צמר ארוך",
    "Παλτό με κουμπιά",
    "เสื้อคลุมผ้าไหม",
    "Çift düğmeli ceket",
    "Łagodny sweter z wełny",
    "A very long title, as clients write them: trench coat, storm flap, detachable lining in"
        + " quilted recycled satin, horn buttons, belt with leather-covered buckle, size 36"
  };

  private SampleJobs() {}

  /**
   * The sample job in the middle of its second day, as if that were now: one garment on set, fifty
   * frames or more on the disk, the rest of the list to come.
   *
   * @param into a folder that does not hold the job yet; it is made where it is missing
   * @return the job folder
   */
  public static Path inTheMiddle(SampleFiles files, Path into, Instant now)
      throws IOException, JobException {
    return SampleDay.untilNoonOfTheSecondDay(files, into, SampleCamera.Size.SMALL, now);
  }

  /**
   * A large job: a list of many setups with long titles and titles in other scripts; the first part
   * of it shot and signed off, some picked up or dropped, one on set.
   *
   * @param into a folder that does not hold the job yet; it is made where it is missing
   * @param setups how many, 1 to 9,999
   * @param frames how many frames, shared out over the first half of the setups, already with their
   *     names; they are tiny
   * @return the job folder
   */
  public static Path large(SampleFiles files, Path into, int setups, int frames, Instant now)
      throws IOException, JobException {
    Files.createDirectories(into);
    var template = files.templates().resolve(SampleDay.TEMPLATE);
    var text = Files.readString(template);
    if (setups > 999) {
      // The template counts looks in three digits; that many need four.
      text = text.replaceFirst("(setup:\\s*\\{[^}]*digits:\\s*)3", "$14");
    }
    var convention =
        switch (Convention.parse(text, template.toString())) {
          case Convention.Parsed.Sound sound -> sound.convention();
          case Convention.Parsed.Faulty faulty ->
              throw new JobException(
                  SampleDay.told(faulty.findings()), template.toString(), Text.NONE);
        };
    var clock = new SampleClock(now.minus(Duration.ofHours(4)), SampleSet.ZONE);
    var values = new LinkedHashMap<String, String>();
    values.put(
        convention.fields().containsKey("start") ? "start" : "day",
        LocalDate.ofInstant(now, SampleSet.ZONE).toString());
    values.put("client", "KVÖ");
    values.put("title", "Catalogue " + setups);
    var job =
        switch (Job.start(convention, into, values, clock)) {
          case Started.Opened opened -> opened.job();
          case Started.Refused refused ->
              throw new JobException(
                  SampleDay.told(refused.findings()), template.toString(), Text.NONE);
        };
    var list = list(setups, LocalDate.ofInstant(now, SampleSet.ZONE));
    job.importList(list);
    frames(job, list, frames, now);
    ticks(job, list, clock, now);
    return job.folder();
  }

  private static ShotList list(int count, LocalDate today) {
    var setups = new ArrayList<Setup>();
    for (int i = 1; i <= count; i++) {
      var columns = new LinkedHashMap<String, String>();
      columns.put("Day", today.plusDays((i - 1L) * 4 / count).toString());
      columns.put("Rack", "ABCDEFGH".charAt(i / 25 % 8) + String.valueOf(i / 5 % 5 + 1));
      columns.put("Model", i % 3 == 0 ? "Jonna" : i % 3 == 1 ? "Mira" : "Þórdís Anna-Sofía");
      if (i % 11 == 0) {
        columns.put("Note", "Steam first; the pins at the waist stay out of the frame.");
      }
      var views = new ArrayList<View>(List.of(new View("F"), new View("B")));
      if (i % 3 == 0) {
        views.add(new View("D", OptionalInt.of(2)));
      }
      setups.add(
          new Setup(
              String.format(Locale.ROOT, count > 999 ? "%04d" : "%03d", i),
              TITLES[i % TITLES.length],
              views,
              OptionalInt.of(4 + i % 5 * 2),
              columns));
    }
    return new ShotList(setups);
  }

  private static void frames(Job job, ShotList list, int count, Instant now)
      throws IOException, JobException {
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    int worked = Math.max(1, list.setups().size() / 2);
    var date = LocalDate.ofInstant(now, SampleSet.ZONE).toString();
    for (int i = 0; i < count; i++) {
      // In the order of the setups, as they were shot.
      int index = (int) ((long) i * worked / count);
      int first = (int) Math.ceilDiv((long) index * count, worked);
      var setup = list.setups().get(index);
      var view = setup.views().get((i - first) % setup.views().size()).code();
      var values = new LinkedHashMap<>(job.values());
      values.put("day", date);
      values.put(Reserved.SETUP, setup.code());
      values.put(Reserved.VIEW, view);
      values.put("take", String.valueOf(i - first + 1));
      var name =
          switch (job.convention().build(Reserved.FRAME, values)) {
            case Built.Name built -> built.text();
            case Built.Refused refused ->
                throw new JobException(SampleDay.told(refused.findings()), setup.code(), Text.NONE);
          };
      var at = now.minus(Duration.ofSeconds(5L * (count - i)));
      camera
          .take(Exposure.of(at, setup.code(), view).heldUpright())
          .named(name)
          .writeTo(job.framesFolder());
    }
  }

  private static void ticks(Job job, ShotList list, SampleClock clock, Instant now)
      throws IOException, JobException {
    // Enough of them to see every state and to fill a screen; a tick is flushed, so not all.
    int worked = Math.min(200, list.setups().size() / 2);
    var pause = Duration.between(clock.instant(), now).dividedBy(2L * worked + 4);
    for (int i = 0; i < worked; i++) {
      var code = list.setups().get(i).code();
      job.mark(code, SetupState.ON_SET, MarkDetails.by("Timo"));
      clock.pass(pause);
      if (i % 17 == 5) {
        job.mark(code, SetupState.DROPPED, MarkDetails.by("Timo").andReason("not delivered"));
      } else {
        job.mark(code, SetupState.SHOT, MarkDetails.by("Timo"));
        if (i % 13 == 7) {
          job.mark(
              code, SetupState.PICKUP, MarkDetails.by("Odette").andReason("creases at the back"));
        } else if (i % 9 != 8) {
          job.mark(code, SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
        }
      }
      clock.pass(pause);
    }
    if (worked < list.setups().size()) {
      job.mark(
          list.setups().get(worked).code(), SetupState.ON_SET, MarkDetails.by("Timo").andView("F"));
    }
  }
}
