package org.framewright.copies;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.base.ByteSizes;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.copies.device.Device;

/**
 * Whether a card may be cleared: yes only if each {@link Rule} is known to hold. It looks at no
 * disk and no clock; whatever was not established is not taken for true.
 */
final class Decision {
  /** How far a file's copies have come: what would have to be known besides for it to be enough. */
  private enum Standing {
    ENOUGH,
    COPIES_NOT_READ,
    DEVICES_NOT_KNOWN,
    ON_CARDS_ONLY,
    MISSING
  }

  private final CardFacts card;
  private final List<PlaceFacts> places;
  private final Policy policy;
  private final DistinctDevices devices;

  /** The places that vouch for something, and those that may, as bits. */
  private long witnesses;

  private long onUnknownDevices;
  private long cards;

  private final Map<String, Long> proven = new HashMap<>();
  private final Map<String, Long> claimed = new HashMap<>();
  private final Set<Waiver> used = new HashSet<>();
  private final List<Reason> lacks = new ArrayList<>();
  private final List<Reason> doubts = new ArrayList<>();

  private Decision(CardFacts card, List<PlaceFacts> places, Policy policy) {
    if (places.size() >= Long.SIZE - 1) {
      throw new IllegalArgumentException(places.size() + " places");
    }
    this.card = card;
    this.places = places;
    this.policy = policy;
    var all = new ArrayList<>(places.stream().map(PlaceFacts::device).toList());
    all.add(card.device());
    this.devices = new DistinctDevices(all);
  }

  /**
   * The answer about one card.
   *
   * @param places every other place of the run, cards too
   */
  static Verdict of(CardFacts card, List<PlaceFacts> places, Policy policy) {
    return new Decision(card, places, policy).verdict();
  }

  private Verdict verdict() {
    sortPlaces();
    listing();
    reads();
    copies();
    pictures();
    card.change()
        .ifPresent(
            change ->
                lacks.add(
                    new Reason(
                        Rule.UNCHANGED,
                        Text.of("the card changed while it was read: {0}", change),
                        "Stop shooting on it, then ask again.")));
    if (!lacks.isEmpty() && isListed()) {
      lacks.addAll(doubts);
      return new Verdict.NotYet(List.copyOf(lacks));
    }
    doubts.addAll(lacks);
    return doubts.isEmpty()
        ? new Verdict.MayClear(
            CardState.of(card.files()),
            witnessesOfAll(),
            leastCopies(),
            card.files().stream()
                .flatMap(file -> waiverOf(file).stream())
                .filter(used::contains)
                .toList())
        : new Verdict.CannotTell(List.copyOf(doubts));
  }

  /** Which places may vouch: no card, and nothing that lies on a card's disk. */
  private void sortPlaces() {
    int self = places.size();
    var asked = new ArrayList<Integer>();
    asked.add(self);
    for (int i = 0; i < places.size(); i++) {
      if (places.get(i).card()) {
        asked.add(i);
      }
    }
    for (int i = 0; i < places.size(); i++) {
      int place = i;
      var device = places.get(i).device();
      if (device.kind() == Device.Kind.NO_MEDIUM || isOne(device, card.device())) {
        continue;
      }
      if (places.get(i).card() || asked.stream().anyMatch(one -> isOne(device, deviceOf(one)))) {
        cards |= 1L << i;
      } else if (asked.stream().allMatch(one -> devices.apart(place, one))) {
        witnesses |= 1L << i;
      } else {
        onUnknownDevices |= 1L << i;
      }
    }
    for (int i = 0; i < places.size(); i++) {
      for (var file : places.get(i).files()) {
        if (file.read().isEmpty()) {
          continue;
        }
        var sha256 = file.read().get().sha256();
        claimed.merge(sha256, 1L << i, (one, other) -> one | other);
        if (file.isEvidence() && file.read().get().fromMedium()) {
          proven.merge(sha256, 1L << i, (one, other) -> one | other);
        }
      }
    }
  }

  private Device deviceOf(int place) {
    return place == places.size() ? card.device() : places.get(place).device();
  }

  private static boolean isOne(Device one, Device other) {
    return Device.compare(one, other) == Device.Sameness.SAME;
  }

  private boolean isListed() {
    return card.troubles().isEmpty() && !card.files().isEmpty();
  }

  private void listing() {
    if (!card.troubles().isEmpty()) {
      var first = card.troubles().getFirst();
      int more = card.troubles().size() - 1;
      doubts.add(
          new Reason(
              Rule.WHOLE_LISTING,
              more == 0
                  ? Text.of(
                      "not everything on the card could be listed: {0}: {1}",
                      first.where(), first.fault())
                  : Text.of(
                      "not everything on the card could be listed: {0}: {1}, and {2} more",
                      first.where(), first.fault(), more),
              first.fix().isEmpty() ? Text.of("Look at it, then ask again.") : first.fix()));
    } else if (card.files().isEmpty()) {
      doubts.add(
          new Reason(
              Rule.WHOLE_LISTING,
              "there is no file on the card",
              "Check that it is the right card, and that it is read at all."));
    }
  }

  private void reads() {
    var unread = new ArrayList<String>();
    var fromMemory = new ArrayList<String>();
    var why = Text.NONE;
    for (var file : card.files()) {
      if (!file.isEvidence()) {
        why = unread.isEmpty() ? file.trouble().orElse(Text.of("it changed meanwhile")) : why;
        unread.add(file.path());
      } else if (!file.read().get().fromMedium()) {
        fromMemory.add(file.path());
      }
    }
    if (!unread.isEmpty()) {
      lacks.add(
          new Reason(
              Rule.READ,
              Text.of(
                  "{0} of the card could not be read to the end: {1}: {2}",
                  counted(unread.size()), unread.getFirst(), why),
              "Copy what can be read first, try another reader, and do not shoot on this card.",
              unread));
    }
    if (!fromMemory.isEmpty()) {
      doubts.add(
          new Reason(
              Rule.FROM_MEDIUM,
              Text.of(
                  "it is not certain that {0} came from the card itself and not from the computer's"
                      + " memory",
                  counted(fromMemory.size())),
              "Take the card out, put it in again, and ask again.",
              fromMemory));
    }
  }

  private void copies() {
    var by = new LinkedHashMap<Standing, List<FileFacts>>();
    for (var standing : Standing.values()) {
      by.put(standing, new ArrayList<>());
    }
    for (var file : card.files()) {
      if (file.read().isPresent()) {
        var standing = standing(file.read().get().sha256());
        if (standing != Standing.ENOUGH && !isWaived(file)) {
          by.get(standing).add(file);
        }
      }
    }
    missing(by.get(Standing.MISSING));
    notRead(by.get(Standing.COPIES_NOT_READ));
    onCards(by.get(Standing.ON_CARDS_ONLY));
    unknown(by.get(Standing.DEVICES_NOT_KNOWN));
  }

  private Standing standing(String sha256) {
    long sure = proven.getOrDefault(sha256, 0L);
    long any = claimed.getOrDefault(sha256, 0L);
    if (devices.count(sure & witnesses) >= policy.needed()) {
      return Standing.ENOUGH;
    }
    if (devices.count(any & witnesses) >= policy.needed()) {
      return Standing.COPIES_NOT_READ;
    }
    long unknown = any & onUnknownDevices;
    if (devices.count(any & witnesses) + Long.bitCount(unknown) >= policy.needed()) {
      return Standing.DEVICES_NOT_KNOWN;
    }
    return devices.count(any & (witnesses | cards)) + Long.bitCount(unknown) >= policy.needed()
        ? Standing.ON_CARDS_ONLY
        : Standing.MISSING;
  }

  private void missing(List<FileFacts> files) {
    if (files.isEmpty()) {
      return;
    }
    int none = 0;
    for (var file : files) {
      if ((claimed.getOrDefault(file.read().get().sha256(), 0L) & ~cards) == 0
          || devices.count(claimed.get(file.read().get().sha256()) & witnesses) == 0) {
        none++;
      }
    }
    var few =
        Text.counted(
            "{0} file ({1}) of {2} is on fewer than {3} besides the card",
            "{0} files ({1}) of {2} are on fewer than {3} besides the card",
            files.size(),
            ByteSizes.of(files.stream().mapToLong(FileFacts::size).sum()),
            card.files().size(),
            disks(policy.needed()));
    lacks.add(
        reason(
            Rule.COPIES,
            none == 0 ? few : Text.of("{0}, {1} of them on none", few, none),
            "Copy the card's own files to another disk, then ask again: framewright copy JOB --from"
                + " CARD --to FOLDER.",
            files));
  }

  private void notRead(List<FileFacts> files) {
    if (!files.isEmpty()) {
      lacks.add(
          reason(
              Rule.COPIES_READ,
              Text.of(
                  "the copies of {0} are there, but what their disks hold is not proven: they came"
                      + " from the computer's memory, or changed meanwhile",
                  counted(files.size())),
              "Take those disks out, put them in again, and ask again; for a built-in disk, start"
                  + " the computer anew.",
              files));
    }
  }

  private void onCards(List<FileFacts> files) {
    if (!files.isEmpty()) {
      lacks.add(
          reason(
              Rule.WITNESSES,
              Text.counted(
                  "{0} file has enough copies only if other cards count, and cards get cleared too",
                  "{0} files have enough copies only if other cards count, and cards get cleared"
                      + " too",
                  files.size()),
              "Copy the files to another disk. If a folder is taken for a card because of its DCIM,"
                  + " say with --backup FOLDER that it is a backup.",
              files));
    }
  }

  private void unknown(List<FileFacts> files) {
    if (files.isEmpty()) {
      return;
    }
    var names = new ArrayList<String>();
    for (int i = 0; i < places.size(); i++) {
      if ((onUnknownDevices & 1L << i) != 0) {
        names.add(PlainText.line(places.get(i).folder()));
      }
    }
    doubts.add(
        reason(
            Rule.DEVICES,
            Text.of(
                "it is not certain on which disks these folders lie, and that they are not one with"
                    + " the card or with each other: {0}",
                String.join(", ", names)),
            "Use disks that are plugged into this computer, or one server and one such disk.",
            files));
  }

  private void pictures() {
    var faulty =
        card.files().stream()
            .filter(file -> file.fault().isPresent())
            .filter(file -> !isWaived(file))
            .toList();
    if (!faulty.isEmpty()) {
      lacks.add(
          reason(
              Rule.WHOLE_PICTURES,
              Text.counted(
                  "{0} file is empty, broken or changed: {1}: {2}",
                  "{0} files are empty, broken or changed: {1}: {2}",
                  faulty.size(),
                  faulty.getFirst().path(),
                  faulty.getFirst().fault().get()),
              "A failing card writes such files: look at them in the camera. If one may go, say so:"
                  + " --waive FILE --by PERSON.",
              faulty));
    }
  }

  private boolean isWaived(FileFacts file) {
    var waiver = waiverOf(file);
    used.addAll(waiver);
    return !waiver.isEmpty();
  }

  private List<Waiver> waiverOf(FileFacts file) {
    return file.read().isEmpty()
        ? List.of()
        : policy.waivers().stream()
            .filter(one -> one.path().equals(file.path()))
            .filter(one -> one.sha256().equals(file.read().get().sha256()))
            .limit(1)
            .toList();
  }

  private boolean isKept(FileFacts file) {
    return waiverOf(file).stream().noneMatch(used::contains);
  }

  private long provenOf(FileFacts file) {
    return proven.getOrDefault(file.read().get().sha256(), 0L) & witnesses;
  }

  private int leastCopies() {
    return card.files().stream()
        .filter(this::isKept)
        .mapToInt(file -> devices.count(provenOf(file)))
        .min()
        .orElse(0);
  }

  private List<Witness> witnessesOfAll() {
    var all = new ArrayList<Witness>();
    for (int i = 0; i < places.size(); i++) {
      if ((witnesses & 1L << i) == 0) {
        continue;
      }
      int files = 0;
      for (var file : card.files()) {
        if (isKept(file) && (provenOf(file) & 1L << i) != 0) {
          files++;
        }
      }
      if (files > 0) {
        var device = places.get(i).device();
        all.add(
            new Witness(
                places.get(i).folder(),
                device.label(),
                device.kind() == Device.Kind.REMOTE,
                files));
      }
    }
    return List.copyOf(all);
  }

  private static Reason reason(Rule rule, Text said, String remedy, List<FileFacts> files) {
    return new Reason(
        rule,
        said,
        Text.of(remedy),
        files.stream().limit(Reason.MOST_NAMED).map(FileFacts::path).toList(),
        files.size());
  }

  private static Text counted(int files) {
    return Text.counted("{0} file", "{0} files", files);
  }

  private static Text disks(int count) {
    return Text.counted("{0} disk", "{0} disks", count);
  }
}
