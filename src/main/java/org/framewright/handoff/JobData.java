package org.framewright.handoff;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.Sha256;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.handoff.metadata.Block;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.PictureCopy;
import org.framewright.handoff.metadata.SelectData;
import org.framewright.handoff.metadata.Sidecar;
import org.framewright.job.FormerNames;
import org.framewright.job.Job;

/**
 * What the job knows of the selects of one hand-off, and how their copies come to say it. The
 * frames are not touched; what cannot be written is told, and the copy stays as it is.
 */
final class JobData {
  /** Of a job's title, where its convention has such a field. */
  private static final String TITLE = "title";

  private static final String ENDING = ".xmp";

  private final Job job;
  private final Addressee addressee;
  private final MetadataOptions options;
  private final SequencedMap<String, Block> blocks = new LinkedHashMap<>();
  private final Set<String> taken = new HashSet<>();
  private final MetadataRemarks remarks = new MetadataRemarks();
  private final Map<String, HandOffRecord.Copy> added = new HashMap<>();
  private final Optional<Problem> problem;
  private int sidecars;
  private int embedded;

  private JobData(
      Job job, FrameScan scan, HandOffPlan plan, Addressee addressee, MetadataOptions options)
      throws IOException {
    this.job = job;
    this.addressee = addressee;
    this.options = options;
    var times = options.any() ? times(scan) : Map.<FrameId, LocalDateTime>of();
    var former = options.any() ? Optional.of(FormerNames.of(job)) : Optional.<FormerNames>empty();
    Optional<Problem> found = Optional.empty();
    for (var select : plan.selects()) {
      select.files().forEach(name -> taken.add(NameKey.of(name)));
      if (former.isPresent()) {
        var data = data(select, former.get(), Optional.ofNullable(times.get(select.frame().id())));
        found = found.or(() -> options.studio().problemIn(data.fields(), job.name()));
        blocks.put(select.name(), Block.of(options.studio(), data));
      }
    }
    this.problem = found;
  }

  static JobData of(
      Job job, FrameScan scan, HandOffPlan plan, Addressee addressee, MetadataOptions options)
      throws IOException {
    return new JobData(job, scan, plan, addressee, options);
  }

  private Map<FrameId, LocalDateTime> times(FrameScan scan) {
    var times = new HashMap<FrameId, LocalDateTime>();
    for (var line : job.frameLines(scan)) {
      line.taken().ifPresent(time -> times.putIfAbsent(line.frame().id(), time));
    }
    return times;
  }

  private SelectData data(Select select, FormerNames former, Optional<LocalDateTime> time) {
    var setup = select.place().setup();
    var values = new LinkedHashMap<>(job.values());
    values.putAll(select.fields());
    return new SelectData(
        job.name(),
        Optional.ofNullable(job.values().get(TITLE)).filter(it -> !it.isBlank()).orElse(job.name()),
        select.name(),
        setup,
        job.shotList().setup(setup),
        select.place().view().map(job::viewLabel),
        addressee.wantedBack(select),
        time.map(local -> taken(select.frame(), local)),
        select.frame().capture().camera().isPresent(),
        nameBefore(select, former),
        job.state().ratingHere(select.frame()),
        new SelectFields(job.convention(), values, time.map(LocalDateTime::toLocalDate)),
        select.slate());
  }

  /** By the clock of the place that the body was set to, where it says so. */
  private SelectData.Taken taken(Frame frame, LocalDateTime local) {
    var offset = frame.capture().offset();
    var there =
        offset.map(it -> local.atZone(job.zone()).withZoneSameInstant(it).toLocalDateTime());
    return new SelectData.Taken(there.orElse(local), offset);
  }

  private String nameBefore(Select select, FormerNames former) {
    var file = addressee.frame(select);
    var names = former.of(file);
    return (names.isEmpty() ? file : names.getFirst()).getFileName().toString();
  }

  /** Why nothing can be said; empty where it can. */
  Optional<Problem> problem() {
    return problem;
  }

  /** By which a later hand-off knows that this one says the same; empty where nothing is said. */
  Optional<String> mark() {
    return options.any()
        ? Optional.of(
            options.mode().word()
                + ":"
                + Sha256.of((options.overwrite() + "\n" + blocks).getBytes(StandardCharsets.UTF_8)))
        : Optional.empty();
  }

  /**
   * Makes the copies of a select say what the job knows of it.
   *
   * @return whether all that was written is what it should be
   */
  boolean describe(Select select, Bag bag) throws IOException {
    var made = blocks.get(select.name());
    if (made == null) {
      return true;
    }
    if (made.gtinWrong()) {
      remarks.gtinWrong(select.place().setup());
    }
    var block = made.of(bag.copy(select.files().getFirst()).source());
    var inside = inside(select, bag, block);
    return sidecars(select, bag, block, inside)
        && (options.mode() != MetadataMode.EMBED || embed(select, bag, block));
  }

  /** What the select's own files say already, of the first that says any of it. */
  private Optional<PictureCopy> inside(Select select, Bag bag, Block block) throws IOException {
    Optional<PictureCopy> first = Optional.empty();
    for (int i = 0; i < select.files().size(); i++) {
      var name = select.files().get(i);
      if (isPicture(select.frame().files().get(i).role())) {
        var copy = PictureCopy.read(bag.data(name));
        copy.ifPresent(it -> it.conflicts(block).forEach(label -> remarks.conflict(label, name)));
        first = first.or(() -> copy.filter(it -> it.says(block)));
      }
    }
    return first;
  }

  private static boolean isPicture(FileRole role) {
    return switch (role) {
      case RAW, JPEG, OTHER_IMAGE -> true;
      case HEIF, VIDEO, SIDECAR, COMPANION -> false;
    };
  }

  private boolean sidecars(Select select, Bag bag, Block block, Optional<PictureCopy> inside)
      throws IOException {
    boolean any = false;
    for (int i = 0; i < select.files().size(); i++) {
      if (select.frame().files().get(i).role() == FileRole.SIDECAR) {
        any = true;
        if (!merge(select.files().get(i), bag, block)) {
          return false;
        }
      }
    }
    return any || addSidecar(select, bag, block, inside);
  }

  private boolean merge(String name, Bag bag, Block block) throws IOException {
    long size = bag.copy(name).bytes().orElse(0);
    var bytes =
        size > Sidecar.largest()
            ? new byte[Sidecar.largest() + 1]
            : Files.readAllBytes(bag.data(name));
    return switch (Sidecar.merged(bytes, block, options.overwrite())) {
      case Sidecar.Outcome.Left left -> {
        remarks.sidecarLeft(left.why(), name);
        yield true;
      }
      case Sidecar.Outcome.Made made -> {
        made.kept().forEach(label -> remarks.kept(label, name));
        sidecars++;
        yield made.isSame(bytes) || bag.rewrite(name, made.bytes());
      }
    };
  }

  private boolean addSidecar(Select select, Bag bag, Block block, Optional<PictureCopy> inside)
      throws IOException {
    var name = select.name() + ENDING;
    if (!taken.add(NameKey.of(name))) {
      remarks.nameTaken(name);
      return true;
    }
    var made = Sidecar.made(inside, block, options.overwrite());
    made.kept().forEach(label -> remarks.kept(label, name));
    if (!bag.addNew(name, made.bytes())) {
      return false;
    }
    sidecars++;
    added.put(select.name(), bag.copy(name));
    return true;
  }

  private boolean embed(Select select, Bag bag, Block block) throws IOException {
    for (int i = 0; i < select.files().size(); i++) {
      var name = select.files().get(i);
      if (!isPicture(select.frame().files().get(i).role()) || !PictureCopy.takes(name)) {
        continue;
      }
      switch (PictureCopy.embed(bag.data(name), bag.rewritten(), block, options.overwrite())) {
        case PictureCopy.Outcome.Made made -> {
          made.kept().forEach(label -> remarks.kept(label, name));
          embedded++;
          if (!bag.replaced(name)) {
            return false;
          }
        }
        case PictureCopy.Outcome.Same same -> {
          same.kept().forEach(label -> remarks.kept(label, name));
          embedded++;
        }
        case PictureCopy.Outcome.Left left -> remarks.notEmbedded(left.why(), name);
        case PictureCopy.Outcome.Damaged _ -> {
          return false;
        }
      }
    }
    return true;
  }

  /** The sidecar that a select got and its frame does not have. */
  List<HandOffRecord.Copy> added(Select select) {
    return Optional.ofNullable(added.get(select.name())).stream().toList();
  }

  /** In how much it is said now. */
  Delivery.Described described() {
    return new Delivery.Described(sidecars, embedded);
  }

  /** What a person should know of it. */
  List<Problem> remarks() {
    return remarks.problems();
  }
}
