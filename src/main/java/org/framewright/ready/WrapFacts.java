package org.framewright.ready;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.copies.CopiesDescription;
import org.framewright.copies.FramesOnce;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;
import org.framewright.shotlist.SetupState;

/**
 * What is known after the last frame.
 *
 * @param setups how many setups are in each state
 * @param frames of the job
 * @param once of how many frames there is one place only; none where no comparison was made
 * @param cards the last answer about each card
 * @param unnamed frames whose names the convention would change, or has none for
 * @param halfWay what an earlier run left half-way
 * @param report whether a report of today is in the folder for paper; none where there is no such
 *     folder
 */
record WrapFacts(
    Map<SetupState, Integer> setups,
    int frames,
    Optional<FramesOnce> once,
    List<Card> cards,
    int unnamed,
    List<Facts.HalfWay> halfWay,
    Optional<Boolean> report) {
  private static final String PAPER = "paper";
  private static final String MAY_BE_CLEARED = "may-be-cleared";

  WrapFacts {
    setups = Map.copyOf(setups);
    cards = List.copyOf(cards);
    halfWay = List.copyOf(halfWay);
  }

  /** A card and whether it may be cleared, by the last answer. */
  record Card(String name, boolean mayClear) {}

  static WrapFacts of(Job job, FrameScan scan) throws IOException {
    var state = job.standing(scan).state();
    var counts = new EnumMap<SetupState, Integer>(SetupState.class);
    for (var setup : job.shotList().setups()) {
      counts.merge(state.of(setup.code()).state(), 1, Integer::sum);
    }
    return new WrapFacts(
        counts,
        (int) scan.distinct().stream().filter(frame -> frame.complete()).count(),
        FramesOnce.of(job, scan),
        CopiesDescription.lastAnswers(job).stream()
            .map(last -> last.card())
            .map(card -> new Card(card.name(), card.answer().equals(MAY_BE_CLEARED)))
            .toList(),
        unnamed(job, scan),
        Gathering.halfWay(job),
        report(job));
  }

  private static int unnamed(Job job, FrameScan scan) {
    var names = job.frameNames(scan);
    var frames = new HashSet<Path>();
    names.requests().stream()
        .filter(request -> !request.from().equals(request.to()))
        .forEach(request -> frames.add(withoutEnding(request.from())));
    return frames.size() + names.leftOut().size();
  }

  private static Path withoutEnding(Path file) {
    var name = file.getFileName().toString();
    int dot = name.indexOf('.', 1);
    return dot < 0 ? file : file.resolveSibling(name.substring(0, dot));
  }

  private static Optional<Boolean> report(Job job) throws IOException {
    if (!job.convention().folders().containsKey(PAPER)) {
      return Optional.empty();
    }
    var folder = job.folder(PAPER);
    if (!Files.isDirectory(folder)) {
      return Optional.of(false);
    }
    var today = LocalDate.ofInstant(job.now(), job.zone()).toString();
    try (var files = Files.newDirectoryStream(folder, "*" + today + "*")) {
      return Optional.of(files.iterator().hasNext());
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }
}
