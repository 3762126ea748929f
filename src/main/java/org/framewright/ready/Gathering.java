package org.framewright.ready;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedSet;
import java.util.TreeSet;
import org.framewright.base.FileProblems;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.copies.Burst;
import org.framewright.copies.InterruptedCopies;
import org.framewright.copies.device.Device;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.PastHandOffs;
import org.framewright.job.Job;
import org.framewright.job.Standing;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;
import org.framewright.naming.Severity;
import org.framewright.renaming.Renamer;
import org.framewright.shotlist.Setup;

/** Finds out what is to be known of a job and what it stands on. */
final class Gathering {
  private final Job job;
  private final FrameScan scan;
  private final Standing standing;
  private final Surroundings around;

  Gathering(Job job, FrameScan scan, Surroundings around) {
    this.job = job;
    this.scan = scan;
    this.standing = job.standing(scan);
    this.around = around;
  }

  Facts facts(Asked asked, Progress progress) throws IOException {
    var setups = job.shotList().setups();
    var space = space();
    return new Facts(
        job.now(),
        job.zone(),
        setups.size(),
        unnamed(setups),
        convention(setups, space),
        halfWay(job),
        space,
        new Facts.Speed(
            asked.quick() ? Optional.empty() : Optional.of(measure(progress)),
            asked.burst(),
            Burst.fastest(scan.frames())
                .map(burst -> OptionalLong.of((long) burst.bytesPerSecond()))
                .orElse(OptionalLong.empty())),
        places(asked),
        around.power(),
        ahead(),
        standing.tally().cameras(),
        around.atHand(scripts(setups)));
  }

  private Facts.Space space() throws IOException {
    var space = DaySummary.of(job, scan, standing, DayHours.usual(job.zone())).space();
    return new Facts.Space(space.free(), space.planned(), space.bytesPerFrame());
  }

  private List<Facts.Misnamed> unnamed(List<Setup> setups) {
    var unnamed = new ArrayList<Facts.Misnamed>();
    for (var setup : setups) {
      var misfits = job.tryNames(setup).misfits();
      if (!misfits.isEmpty()) {
        var first = misfits.getFirst();
        unnamed.add(new Facts.Misnamed(setup.code(), first.what(), first.remedy()));
      }
    }
    return unnamed;
  }

  private List<Facts.Fault> convention(List<Setup> setups, Facts.Space space) {
    return job.convention().check(longestRun(setups, space)).stream()
        .filter(finding -> finding.severity() != Severity.NOTE)
        .sorted((one, other) -> one.severity().compareTo(other.severity()))
        .map(Gathering::fault)
        .toList();
  }

  private static Facts.Fault fault(Finding finding) {
    return new Facts.Fault(
        finding.severity() == Severity.ERROR, finding.said(), finding.fix().orElse(Text.NONE));
  }

  /** The most frames that a counter has to number before it begins anew. */
  private long longestRun(List<Setup> setups, Facts.Space space) {
    boolean restarts =
        job.convention().fields().values().stream()
            .filter(field -> field.type() == FieldType.COUNTER)
            .allMatch(field -> !field.restarts().isEmpty());
    long largest = setups.stream().mapToLong(setup -> setup.wanted().orElse(0)).max().orElse(0);
    return restarts ? largest : scan.frames().size() + space.planned().orElse(0);
  }

  static List<Facts.HalfWay> halfWay(Job job) throws IOException {
    var left = new ArrayList<Facts.HalfWay>();
    var renames = Renamer.in(job.folder()).interrupted();
    renames.ifPresent(
        batch ->
            left.add(
                new Facts.HalfWay(
                    Text.counted(
                        "batch {1}, of {0} rename, was interrupted",
                        "batch {1}, of {0} renames, was interrupted",
                        batch.renames(),
                        batch.batch()),
                    Text.of("Bring it to an end: framewright recover JOB."))));
    var copies = InterruptedCopies.of(job);
    if (!copies.isEmpty()) {
      left.add(
          new Facts.HalfWay(
              Text.of("a copy to {0} was interrupted", copies.getFirst()),
              Text.of("Copy to it again, so that what is half-made there goes.")));
    }
    for (var past : PastHandOffs.of(job).all()) {
      if (past.state() == PastHandOffs.State.INTERRUPTED) {
        left.add(
            new Facts.HalfWay(
                Text.of("hand-off {0} was interrupted", past.number()),
                Text.of("Hand off again, which brings it to an end.")));
      }
    }
    return left;
  }

  private Facts.Speed.Measure measure(Progress progress) {
    try {
      return around
          .speed(job, progress)
          .<Facts.Speed.Measure>map(
              speed ->
                  new Facts.Speed.Measure.Rates(
                      (long) speed.written(),
                      speed.read().isPresent()
                          ? OptionalLong.of((long) speed.read().getAsDouble())
                          : OptionalLong.empty()))
          .orElseGet(Facts.Speed.Measure.NoRoom::new);
    } catch (IOException e) {
      var problem = FileProblems.of(e);
      return new Facts.Speed.Measure.Refused(problem.fault(), problem.fix());
    }
  }

  private List<Facts.CopyPlace> places(Asked asked) {
    var places = asked.places().isEmpty() ? Rests.places(job) : asked.places();
    return places.stream().map(this::place).toList();
  }

  private Facts.CopyPlace place(Path folder) {
    var shown = folder.toAbsolutePath().normalize().toString();
    try {
      var real = folder.toRealPath();
      if (Files.isDirectory(real)) {
        var same =
            Device.compare(
                around.volumes().deviceOf(real), around.volumes().deviceOf(job.framesFolder()));
        Optional<Boolean> apart =
            same == Device.Sameness.UNKNOWN
                ? Optional.empty()
                : Optional.of(same == Device.Sameness.DISTINCT);
        return new Facts.CopyPlace(shown, true, apart, Files.getFileStore(real).getUsableSpace());
      }
    } catch (IOException | InvalidPathException e) {
      // It cannot be reached, which is what is said of it.
    }
    return new Facts.CopyPlace(shown, false, Optional.empty(), 0);
  }

  private Duration ahead() {
    var ahead = Duration.between(around.now(), job.now());
    return ahead.isNegative() ? Duration.ZERO : ahead;
  }

  /** The scripts that a font may lack, by their English names. */
  private static SortedSet<String> scripts(List<Setup> setups) {
    var scripts = new TreeSet<String>();
    for (var setup : setups) {
      add(setup.title(), scripts);
      setup.columns().values().forEach(text -> add(text, scripts));
    }
    return scripts;
  }

  private static void add(String text, SortedSet<String> scripts) {
    text.codePoints()
        .mapToObj(Character.UnicodeScript::of)
        .forEach(
            script -> {
              switch (script) {
                case LATIN, COMMON, INHERITED, UNKNOWN -> {}
                default ->
                    scripts.add(
                        script.name().charAt(0)
                            + script.name().substring(1).toLowerCase(Locale.ROOT));
              }
            });
  }
}
