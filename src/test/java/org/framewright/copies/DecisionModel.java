package org.framewright.copies;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.copies.device.Device;

/**
 * A world of disks, cards and copies, in which things go wrong, and what a run of the program can
 * learn of it. The truth is found in the world itself, by counting; the decision sees only what was
 * learnt. A {@link Mutant} learns, or believes, something that is not so.
 */
final class DecisionModel {
  /** A rule that is taken out: what the run then believes. */
  enum Mutant {
    NONE,
    CACHE_TRUSTED,
    PATH_TAKEN_FOR_DEVICE,
    READ_ERRORS_IGNORED,
    NO_SECOND_LISTING,
    ANY_AGE,
    HIDDEN_FOLDER_IGNORED,
    PICTURE_DIGEST_COUNTED,
    CARD_AS_WITNESS
  }

  private static final int NEEDED = 2;

  /**
   * A file as a disk holds it.
   *
   * @param content what the medium holds
   * @param picture what its picture digest is
   * @param memory what the computer's memory still says; empty where the medium is read
   * @param readable whether the medium gives it at all
   */
  private record Stored(
      String name, String content, String picture, Optional<String> memory, boolean readable) {}

  /** A folder on some disk; two folders may lie on one. */
  private static final class Folder {
    private final int disk;
    private final boolean card;
    private final boolean diskKnown;
    private final List<Stored> files = new ArrayList<>();

    /** What an earlier run read of it, which may have rotted since. */
    private final Set<String> earlier = new HashSet<>();

    Folder(int disk, boolean card, boolean diskKnown) {
      this.disk = disk;
      this.card = card;
      this.diskKnown = diskKnown;
    }
  }

  private final Random random;
  private final Folder card;
  private final List<Folder> places = new ArrayList<>();

  /** Files of the card in a folder that cannot be opened, and those that came late. */
  private final List<Stored> hidden = new ArrayList<>();

  private final List<Stored> late = new ArrayList<>();
  private boolean broken;

  DecisionModel(long seed) {
    random = new Random(seed);
    // In half of the worlds hardly anything goes wrong, or no card would ever be safe.
    int calm = random.nextBoolean() ? 1 : 6;
    card = new Folder(0, true, true);
    int files = 1 + random.nextInt(5);
    for (int i = 0; i < files; i++) {
      card.files.add(
          new Stored(
              "IMG_" + i,
              "c" + i,
              "p" + i,
              chance(calm, 60) ? Optional.of("x" + i) : Optional.empty(),
              !chance(calm, 60)));
    }
    int others = 1 + random.nextInt(4);
    for (int place = 0; place < others; place++) {
      copy(place, calm);
    }
    if (chance(calm, 40)) {
      hidden.add(new Stored("HIDDEN/IMG", "hidden", "ph", Optional.empty(), true));
    }
    if (chance(calm, 40)) {
      late.add(new Stored("IMG_LATE", "late", "pl", Optional.empty(), true));
    }
    broken = chance(calm, 60);
  }

  private boolean chance(int calm, int oneOf) {
    return random.nextInt(oneOf) < calm;
  }

  private void copy(int place, int calm) {
    // Mostly a disk of its own; sometimes the card's, or that of another folder.
    int disk = chance(calm, 30) ? random.nextInt(place + 1) : place + 1;
    var folder = new Folder(disk, chance(calm, 20), !chance(calm, 30));
    for (var file : card.files) {
      if (chance(calm, 60)) {
        folder.earlier.add(file.content());
        continue; // It was there once.
      }
      boolean described = chance(calm, 60);
      boolean rotten = chance(calm, 60);
      var held =
          rotten ? "rotten" + random.nextInt() : described ? "d" + file.content() : file.content();
      boolean cached = chance(calm, 25);
      folder.files.add(
          new Stored(
              "renamed " + random.nextInt(1000),
              held,
              rotten ? held : file.picture(),
              cached ? Optional.of(described ? held : file.content()) : Optional.empty(),
              !chance(calm, 60)));
    }
    places.add(folder);
  }

  /** With the card and all other cards gone: is every content whole on enough other disks? */
  boolean isSafe() {
    var contents = new ArrayList<Stored>(card.files);
    contents.addAll(hidden);
    contents.addAll(late);
    return !broken && contents.stream().allMatch(file -> disksWith(file.content()) >= NEEDED);
  }

  private long disksWith(String content) {
    var gone = new HashSet<Integer>(Set.of(card.disk));
    places.stream().filter(place -> place.card).forEach(place -> gone.add(place.disk));
    return places.stream()
        .filter(place -> !gone.contains(place.disk))
        .filter(
            place ->
                place.files.stream()
                    .anyMatch(file -> file.readable() && file.content().equals(content)))
        .map(place -> place.disk)
        .distinct()
        .count();
  }

  /** What the program says, having learnt what it can. */
  Verdict verdict(Mutant mutant) {
    var troubles =
        hidden.isEmpty() || mutant == Mutant.HIDDEN_FOLDER_IGNORED
            ? List.<Problem>of()
            : List.of(new Problem("no permission for it", "HIDDEN", ""));
    var change =
        late.isEmpty() || mutant == Mutant.NO_SECOND_LISTING
            ? Optional.<String>empty()
            : Optional.of("IMG_LATE is new");
    var facts = new ArrayList<FileFacts>();
    for (int i = 0; i < card.files.size(); i++) {
      facts.add(facts(card.files.get(i), mutant, broken && i == 0));
    }
    var others = new ArrayList<PlaceFacts>();
    for (int i = 0; i < places.size(); i++) {
      others.add(facts(places.get(i), i, mutant));
    }
    return Decision.of(
        new CardFacts("card", device(card, -1, mutant), facts, troubles, change),
        others,
        new Policy(NEEDED, List.of()));
  }

  private PlaceFacts facts(Folder place, int number, Mutant mutant) {
    var files = new ArrayList<FileFacts>();
    place.files.forEach(file -> files.add(facts(file, mutant, false)));
    if (mutant == Mutant.ANY_AGE) {
      place.earlier.forEach(
          content ->
              files.add(
                  facts(
                      new Stored("old", content, content, Optional.empty(), true), mutant, false)));
    }
    return new PlaceFacts(
        "place " + number,
        device(place, number, mutant),
        place.card && mutant != Mutant.CARD_AS_WITNESS,
        files);
  }

  private static Device device(Folder folder, int number, Mutant mutant) {
    if (mutant == Mutant.PATH_TAKEN_FOR_DEVICE) {
      return new Device("path:" + number, Device.Kind.DISK, "a folder");
    }
    return folder.diskKnown
        ? new Device("disk:" + folder.disk, Device.Kind.DISK, "disk " + folder.disk)
        : new Device("unknown:" + number, Device.Kind.UNKNOWN, "some disk");
  }

  private static FileFacts facts(Stored file, Mutant mutant, boolean broken) {
    var fault = broken ? Optional.of(Text.of("it has no end")) : Optional.<Text>empty();
    if (!file.readable() && mutant != Mutant.READ_ERRORS_IGNORED) {
      return new FileFacts(
          file.name(),
          1,
          Optional.empty(),
          false,
          Optional.of(Text.of("it cannot be read")),
          fault);
    }
    var said = file.memory().orElse(file.content());
    if (mutant == Mutant.PICTURE_DIGEST_COUNTED) {
      said = file.memory().isPresent() ? said : file.picture();
    }
    boolean fromMedium = file.memory().isEmpty() || mutant == Mutant.CACHE_TRUSTED;
    return new FileFacts(
        file.name(),
        1,
        Optional.of(new FileFacts.ReadFacts(said, fromMedium)),
        true,
        Optional.empty(),
        fault);
  }

  @Override
  public String toString() {
    return "card "
        + card.files
        + " places "
        + places.stream().map(p -> p.disk + ":" + p.files).toList();
  }
}
