package org.framewright.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.copies.device.Volumes;
import org.framewright.job.ComparedCopies;
import org.framewright.job.Job;
import org.framewright.mhl.NewGeneration;

/**
 * Compares cards, the job and backups by content, decides about each card, and keeps the evidence.
 * Nothing but the evidence and its event is written, and both into the job; and the ASC MHL of
 * backups, where a person asks for it.
 */
public final class Comparison {
  private final Job job;
  private final Volumes volumes;

  public Comparison(Job job, Volumes volumes) {
    this.job = job;
    this.volumes = volumes;
  }

  /** One on the disks of this computer. */
  public Comparison(Job job) {
    this(job, Volumes.ofThisSystem());
  }

  /**
   * Runs it. Takes as long as reading all cards and their copies does.
   *
   * @param progress told of each MiB that was read, from any thread
   * @return nothing if it was cancelled: then nothing was written, and nothing is known
   * @throws CopiesException if the folders make no sense, or may not be compared
   * @throws IOException if a folder is gone, or the evidence could not be written
   */
  public Optional<Compared> run(CopiesRequest request, Progress progress)
      throws IOException, CopiesException {
    return run(request, progress, _ -> {});
  }

  /**
   * The same.
   *
   * @param told how far each place is, from any thread
   */
  public Optional<Compared> run(
      CopiesRequest request, Progress progress, Consumer<PlaceProgress> told)
      throws IOException, CopiesException {
    if (request.needed() < 1 || request.needed() > Policy.MOST_NEEDED) {
      throw CopiesException.badInput(
          "files cannot be needed on " + request.needed() + " disks",
          "",
          "Give a number from 1 to " + Policy.MOST_NEEDED + ".");
    }
    try {
      return Optional.of(compared(request, progress, told));
    } catch (CancellationException e) {
      return Optional.empty();
    }
  }

  private Compared compared(CopiesRequest request, Progress progress, Consumer<PlaceProgress> told)
      throws IOException, CopiesException {
    job.refresh();
    var places = new PlaceFinder(job.folder(), request, volumes, progress).find();
    requireCards(request, places);
    var began = job.now();
    var notSealed = request.mhl() ? prepareMhl(places) : Map.<Place, Problem>of();
    var earlier = EarlierRuns.of(job.folder(), job.comparisons(), places);
    new DiskReader(volumes, earlier, progress, told, DiskQueue.Sharing.usual()).read(work(places));
    var relations = new Relations(places, progress);
    var related = new LinkedHashMap<Place, Compared.PlaceCompared>();
    for (var place : places) {
      if (place.kind != Place.Kind.CARD) {
        related.put(place, relations.of(place));
      }
    }
    // The scan of the frames has steps of its own, which are none of the comparison's.
    var scan =
        job.scan(Progress.until(progress::cancelled)).orElseThrow(CancellationException::new);
    var frames = new JobPlaces(job.folder(), places);
    places.forEach(DiskReader::lookAgain);
    var cards = new ArrayList<Compared.CardCompared>();
    for (var card : places) {
      if (card.kind == Place.Kind.CARD) {
        cards.add(decided(card, places, request, progress));
      }
    }
    var at = job.now();
    var counted = frames.compared(scan);
    var evidence = Evidence.of(at, request.by(), places, cards, frames.frames(scan));
    if (progress.cancelled()) {
      throw new CancellationException();
    }
    var file = evidence.write(job.folder());
    job.recordCompared(
        new ComparedCopies(
            evidence.name(),
            evidence.sha256(),
            request.by(),
            places.stream().map(place -> place.given.toString()).toList(),
            counted,
            cards.stream().map(Comparison::logged).toList()));
    notSealed.forEach(
        (place, why) ->
            related.computeIfPresent(place, (_, one) -> one.with(List.of(why), Optional.empty())));
    writeMhl(related, began);
    return new Compared(
        at,
        request.by(),
        frames.files(),
        List.copyOf(related.values()),
        List.copyOf(cards),
        counted,
        frames.sidecarsOnce(scan),
        Optional.of(file));
  }

  /** Gets the backups ready for a generation each; of those that get none, why. */
  private static Map<Place, Problem> prepareMhl(List<Place> places) {
    boolean cardsHaveOne =
        places.stream()
            .filter(place -> place.kind == Place.Kind.CARD)
            .flatMap(card -> card.listing.files().stream())
            .anyMatch(file -> Claims.isChain(file.name()));
    var without = new HashMap<Place, Problem>();
    for (var place : places) {
      if (place.kind != Place.Kind.BACKUP) {
        continue;
      }
      if (place.onCard || cardsHaveOne) {
        without.put(
            place,
            new Problem(
                place.onCard
                    ? "no ASC MHL is written here: it is on a card"
                    : "no ASC MHL is written here: a card has one, and its copy is never changed",
                place.given.toString(),
                "Ask again without --mhl, or without that card."));
        continue;
      }
      try {
        place.mhl = Optional.of(new TargetMhl(place.real, NewGeneration.Work.IN_PLACE));
      } catch (IOException e) {
        without.put(place, FileProblems.of(e));
      }
    }
    return without;
  }

  private void writeMhl(Map<Place, Compared.PlaceCompared> related, Instant began)
      throws IOException {
    var sealed = related.keySet().stream().filter(place -> place.mhl.isPresent()).toList();
    if (sealed.isEmpty()) {
      return;
    }
    var folders = sealed.stream().map(place -> place.real).toList();
    var runs = CopyRuns.of(job);
    var left = runs.clear(folders);
    boolean isLeft = false;
    try (var run = runs.begin(folders)) {
      for (var place : sealed) {
        var mhl = place.mhl.get();
        var said = new ArrayList<>(left);
        left = List.of();
        mhl.keep(name -> place.facts.get(name).isEvidence());
        Optional<Path> list = Optional.empty();
        var part = CopyParts.part(place.real, run.batch(), 0);
        try {
          list = mhl.write(began, job.station(), part, said);
        } catch (IOException e) {
          isLeft |= Files.exists(part, LinkOption.NOFOLLOW_LINKS) && !isRemoved(part);
          said.add(FileProblems.of(e));
        }
        related.put(place, related.get(place).with(said, list));
      }
      if (!isLeft) {
        run.forget();
      }
    }
  }

  private static boolean isRemoved(Path part) {
    try {
      Files.deleteIfExists(part);
      return true;
    } catch (IOException e) {
      return false; // The record of the run stays then, and the next run removes it.
    }
  }

  /**
   * A file that is waived by its name has to lie on a card, or the person means another one. One
   * that is waived by its content may be gone since.
   */
  private static void requireCards(CopiesRequest request, List<Place> places)
      throws CopiesException {
    for (var waived : request.waived()) {
      var file = waived.file();
      if (waived.sha256().isEmpty()
          && places.stream()
              .filter(place -> place.kind == Place.Kind.CARD)
              .allMatch(card -> named(file, card).isEmpty())) {
        throw CopiesException.badInput(
            "there is no such file on a card", file.toString(), "Give its whole path.");
      }
      if (waived.by().isBlank()) {
        throw CopiesException.badInput(
            "a file is waived by a person", file.toString(), "Say who: --by PERSON.");
      }
    }
  }

  private static Optional<Listed> named(Path waived, Place card) {
    var absolute = waived.toAbsolutePath().normalize();
    return card.listing.files().stream()
        .filter(
            file ->
                file.path().equals(absolute)
                    || card.given.toAbsolutePath().normalize().resolve(file.name()).equals(absolute)
                    || (!waived.isAbsolute()
                        && file.name().equals(waived.toString().replace('\\', '/'))))
        .findFirst();
  }

  /** Every file of a card; of the rest what has the size of a file somewhere else that matters. */
  private static List<DiskReader.Work> work(List<Place> places) {
    Map<Long, Set<Place>> bySize = new HashMap<>();
    for (var place : places) {
      for (var file : place.listing.files()) {
        bySize.computeIfAbsent(file.size(), _ -> new HashSet<>(2)).add(place);
      }
    }
    var work = new ArrayList<DiskReader.Work>();
    for (var place : places) {
      var files =
          place.listing.files().stream()
              .filter(file -> matters(place, bySize.get(file.size())))
              .toList();
      work.add(new DiskReader.Work(place, files));
    }
    return work;
  }

  private static boolean matters(Place place, Set<Place> ofThisSize) {
    return switch (place.kind) {
      case CARD -> true;
      case JOB -> ofThisSize.size() > 1;
      case BACKUP ->
          place.mhl.isPresent()
              || ofThisSize.stream().anyMatch(other -> other.kind != Place.Kind.BACKUP);
    };
  }

  private Compared.CardCompared decided(
      Place card, List<Place> places, CopiesRequest request, Progress progress) throws IOException {
    var others = places.stream().filter(other -> other != card).map(Place::asPlace).toList();
    var again = FolderLister.list(card.real, Set.of(), volumes, progress);
    var change = card.listing.changeTo(again);
    if (change.isEmpty() && !volumes.mountOf(card.real).equals(card.mount)) {
      change = Optional.of("it was taken out and put in again");
    }
    var facts = card.asCard(change);
    return new Compared.CardCompared(
        card.given,
        card.name(),
        card.device.label(),
        CardState.of(facts.files()),
        card.listing.litter(),
        damaged(card, facts),
        Decision.of(facts, others, new Policy(request.needed(), waivers(card, request))));
  }

  private static List<Compared.Damaged> damaged(Place card, CardFacts facts) {
    return facts.files().stream()
        .filter(file -> file.fault().isPresent())
        .map(
            file ->
                new Compared.Damaged(
                    card.given.resolve(file.path()),
                    file.path(),
                    file.size(),
                    file.read().map(FileFacts.ReadFacts::sha256),
                    file.fault().get()))
        .toList();
  }

  private static List<Waiver> waivers(Place card, CopiesRequest request) {
    var waivers = new LinkedHashSet<Waiver>();
    for (var waived : request.waived()) {
      named(waived.file(), card)
          .ifPresent(
              file ->
                  card.sha256(file)
                      .filter(sha256 -> waived.sha256().map(sha256::equals).orElse(true))
                      .ifPresent(
                          sha256 -> waivers.add(new Waiver(file.name(), sha256, waived.by()))));
    }
    return List.copyOf(waivers);
  }

  private static ComparedCopies.Card logged(Compared.CardCompared card) {
    return new ComparedCopies.Card(
        card.folder().toAbsolutePath().normalize().toString(),
        card.name(),
        card.verdict().word(),
        card.state().files(),
        card.state().bytes(),
        card.state().digest(),
        card.verdict() instanceof Verdict.MayClear clear
            ? clear.by().stream().map(Witness::folder).toList()
            : List.of());
  }
}
