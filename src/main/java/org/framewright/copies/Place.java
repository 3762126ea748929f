package org.framewright.copies;

import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.framewright.base.PlainText;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.MountIdentity;

/** One folder of a comparison, while the comparison fills it. */
final class Place {
  /** Of a card by the rules for camera file systems (JEITA CP-3461, DCF): its folder of images. */
  private static final String IMAGES = "DCIM";

  enum Kind {
    CARD,
    JOB,
    BACKUP
  }

  final Path given;
  final Path real;
  final Kind kind;

  /** Whether it is on a card, itself or not: then it is no copy that outlasts the card. */
  final boolean onCard;

  final Device device;
  final MountIdentity mount;
  final Listing listing;
  final Claims claims;

  /** What was read of each file, by its name below the folder. Several threads may fill it. */
  final Map<String, FileFacts> facts = new ConcurrentHashMap<>();

  /** What a generation of its ASC MHL is made of; empty where none is asked for. */
  Optional<TargetMhl> mhl = Optional.empty();

  Place(
      Path given,
      Path real,
      Kind kind,
      boolean onCard,
      Device device,
      MountIdentity mount,
      Listing listing) {
    this.given = given;
    this.real = real;
    this.kind = kind;
    this.onCard = onCard;
    this.device = device;
    this.mount = mount;
    this.listing = listing;
    this.claims = Claims.of(listing);
  }

  static boolean looksLikeCard(Path real) {
    return Files.isDirectory(real.resolve(IMAGES), LinkOption.NOFOLLOW_LINKS);
  }

  /** What to call it: its own name, as systems show the name of a card; the path of a root. */
  String name() {
    var last = real.getFileName();
    return PlainText.line(last == null ? real.toString() : last.toString());
  }

  Optional<String> sha256(Listed file) {
    return Optional.ofNullable(facts.get(file.name()))
        .flatMap(FileFacts::read)
        .map(FileFacts.ReadFacts::sha256);
  }

  CardFacts asCard(Optional<String> change) {
    // One that was not read must not be left out.
    var all =
        listing.files().stream()
            .map(file -> facts.getOrDefault(file.name(), DiskReader.notRead(file)))
            .toList();
    return new CardFacts(given.toString(), device, all, listing.troubles(), change);
  }

  PlaceFacts asPlace() {
    return new PlaceFacts(given.toString(), device, onCard, readFiles());
  }

  private List<FileFacts> readFiles() {
    return listing.files().stream()
        .filter(file -> facts.containsKey(file.name()))
        .map(file -> facts.get(file.name()))
        .toList();
  }
}
