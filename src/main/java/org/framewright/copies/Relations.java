package org.framewright.copies;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.Capture;
import org.framewright.frames.PictureDigest;
import org.framewright.frames.PictureFile;

/**
 * How a place stands to what the cards hold, and a backup to what the job holds too. The files of
 * one content count once.
 */
final class Relations {
  /** A file that a place should have. */
  private record Wanted(Place from, Listed file) {}

  private final List<Place> places;
  private final Progress progress;
  private final Map<Path, Optional<Capture>> captures = new HashMap<>();
  private final Map<Path, Optional<PictureDigest>> digests = new HashMap<>();

  Relations(List<Place> places, Progress progress) {
    this.places = places;
    this.progress = progress;
  }

  /**
   * Compares a job or a backup.
   *
   * @throws CancellationException if it was stopped
   */
  Compared.PlaceCompared of(Place place) {
    var contents = new HashMap<String, String>();
    place
        .listing
        .files()
        .forEach(
            file ->
                place.sha256(file).ifPresent(sha256 -> contents.putIfAbsent(sha256, file.name())));
    var wantedContents = new HashSet<String>();
    var absent = new ArrayList<Wanted>();
    var identical = new ArrayList<Compared.Pair>();
    for (var from : places) {
      if (!isWantedFrom(from, place)) {
        continue;
      }
      for (var file : from.listing.files()) {
        var sha256 = from.sha256(file);
        if (sha256.isPresent() && !wantedContents.add(sha256.get())) {
          continue;
        }
        var wanted = new Wanted(from, file);
        if (sha256.isPresent() && contents.containsKey(sha256.get())) {
          identical.add(new Compared.Pair(shown(wanted), contents.get(sha256.get()), Text.NONE));
        } else {
          absent.add(wanted);
        }
      }
    }
    return relate(place, identical, absent, wantedContents);
  }

  /** A job should have what the cards have; a backup that and what the job has. */
  private static boolean isWantedFrom(Place from, Place place) {
    return from != place
        && (from.kind == Place.Kind.CARD
            || (from.kind == Place.Kind.JOB && place.kind == Place.Kind.BACKUP));
  }

  private Compared.PlaceCompared relate(
      Place place, List<Compared.Pair> identical, List<Wanted> absent, Set<String> wantedContents) {
    var others =
        place.listing.files().stream()
            .filter(file -> place.sha256(file).filter(wantedContents::contains).isEmpty())
            .toList();
    var same = new ArrayList<Compared.Pair>();
    var different = new ArrayList<Compared.Pair>();
    var missing = new ArrayList<Path>();
    var matched = new HashSet<String>();
    var index = absent.isEmpty() ? new Index() : index(others);
    for (var wanted : absent) {
      stopIfCancelled();
      var found = match(wanted.file(), index);
      if (found.isEmpty()) {
        missing.add(shown(wanted));
        continue;
      }
      var here = found.get().file();
      matched.add(here.name());
      var pair = new Compared.Pair(shown(wanted), here.name(), why(wanted.file(), here));
      (found.get().samePicture() ? same : different).add(pair);
    }
    var troubles = new ArrayList<>(place.listing.troubles());
    place.facts.values().stream()
        .filter(facts -> facts.trouble().isPresent())
        .sorted((a, b) -> a.path().compareTo(b.path()))
        .forEach(
            facts ->
                troubles.add(
                    new Problem(
                        facts.trouble().get(),
                        place.given.resolve(facts.path()).toString(),
                        "Copy it anew from where it is whole.")));
    place.facts.values().stream()
        .filter(facts -> facts.fault().isPresent())
        .sorted((a, b) -> a.path().compareTo(b.path()))
        .forEach(
            facts ->
                troubles.add(
                    new Problem(
                        facts.fault().get(),
                        place.given.resolve(facts.path()).toString(),
                        "Look at it: it was changed since, or its disk fails.")));
    return new Compared.PlaceCompared(
        place.given,
        place.name(),
        place.device.label(),
        place.kind == Place.Kind.JOB,
        identical.size(),
        List.copyOf(identical),
        List.copyOf(same),
        List.copyOf(different),
        List.copyOf(missing),
        others.stream().map(Listed::name).filter(name -> !matched.contains(name)).toList(),
        List.copyOf(troubles),
        Optional.empty());
  }

  private static Path shown(Wanted wanted) {
    return wanted.from().given.resolve(wanted.file().name());
  }

  private static Text why(Listed wanted, Listed here) {
    return PictureFile.faultOfFrame(here.path())
        .map(fault -> Text.of("here: {0}", fault))
        .or(
            () ->
                PictureFile.faultOfFrame(wanted.path()).map(fault -> Text.of("there: {0}", fault)))
        .orElse(Text.NONE);
  }

  private record Match(Listed file, boolean samePicture) {}

  /** The files of a place that are no copy of anything, by what they may be another version of. */
  private static final class Index {
    private final Map<String, List<Listed>> byCapture = new HashMap<>();
    private final Map<String, List<Listed>> byName = new HashMap<>();
  }

  private Index index(List<Listed> files) {
    var index = new Index();
    for (var file : files) {
      stopIfCancelled();
      if (file.isExposure()) {
        captureKey(file)
            .ifPresent(
                key -> index.byCapture.computeIfAbsent(key, _ -> new ArrayList<>()).add(file));
      }
      index.byName.computeIfAbsent(nameKey(file), _ -> new ArrayList<>()).add(file);
    }
    return index;
  }

  private Optional<Match> match(Listed wanted, Index index) {
    var candidates = new ArrayList<Listed>();
    Optional<String> capture = wanted.isExposure() ? captureKey(wanted) : Optional.empty();
    capture.ifPresent(key -> candidates.addAll(index.byCapture.getOrDefault(key, List.of())));
    int byCapture = candidates.size();
    for (var file : index.byName.getOrDefault(nameKey(wanted), List.of())) {
      // One name in two folders of a card is two frames, and the capture tells.
      boolean another =
          capture.isPresent()
              && captureKey(file).filter(key -> !key.equals(capture.get())).isPresent();
      if (!another && !candidates.contains(file)) {
        candidates.add(file);
      }
    }
    for (var candidate : candidates) {
      if (wanted.isExposure()
          && digest(wanted).isPresent()
          && digest(wanted).equals(digest(candidate))) {
        return Optional.of(new Match(candidate, true));
      }
    }
    boolean certain = candidates.size() > byCapture || byCapture == 1;
    return candidates.isEmpty() || !certain
        ? Optional.empty()
        : Optional.of(new Match(candidates.getLast(), false));
  }

  private static String nameKey(Listed file) {
    return NameKey.of(file.path().getFileName().toString());
  }

  private Optional<String> captureKey(Listed file) {
    return captures
        .computeIfAbsent(file.path(), path -> PictureFile.capture(path))
        .flatMap(
            capture ->
                capture
                    .time()
                    .map(
                        time ->
                            file.role().orElseThrow()
                                + " "
                                + time
                                + " "
                                + capture.camera().map(Object::toString).orElse("")));
  }

  private Optional<PictureDigest> digest(Listed file) {
    return digests.computeIfAbsent(file.path(), PictureDigest::of);
  }

  private void stopIfCancelled() {
    if (progress.cancelled()) {
      throw new CancellationException();
    }
  }
}
