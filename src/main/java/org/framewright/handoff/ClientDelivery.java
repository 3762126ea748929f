package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.Capture;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.Tally;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.job.Job;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;

/**
 * Delivers what came back from the retoucher to the client: the files that count of each answered
 * select, under the names of the convention for deliveries, in a package as for the retoucher. What
 * came back is only read.
 */
public final class ClientDelivery {
  private static final int DIGITS_OF_ID = 32;

  private final Job job;
  private final FrameScan scan;
  private final Tally tally;
  private final Returns returns;
  private final DeliveryNames names;
  private final Map<Path, Frame> byFile = new HashMap<>();
  private final Map<String, Client.Came> came = new HashMap<>();
  private List<ExtraPaper> papers = List.of();

  private ClientDelivery(Job job, FrameScan scan, Tally tally, Returns returns) {
    this.job = job;
    this.scan = scan;
    this.tally = tally;
    this.returns = returns;
    this.names = new DeliveryNames(job, returns.specification());
    for (var frame : scan.frames()) {
      frame.files().forEach(file -> byFile.put(file.path().normalize(), frame));
    }
  }

  /** A delivery of what came back to a job whose frames were scanned. */
  public static ClientDelivery of(Job job, FrameScan scan, Tally tally, Returns returns) {
    return new ClientDelivery(job, scan, tally, returns);
  }

  /**
   * What would be delivered, and what of that which came back cannot be; nothing is written. What
   * went before is known by its name and content.
   *
   * @param setups the codes of the setups whose pictures go; all where there are none
   * @param onlyNew whether what went before stays
   * @param withFindings whether files go that are not what the client asked for
   */
  public HandOffPlan plan(List<String> setups, boolean onlyNew, boolean withFindings)
      throws IOException {
    var wanted = Set.copyOf(setups);
    var selects = new ArrayList<Select>();
    var withheld = new ArrayList<Withheld>();
    var before = new TreeMap<String, Integer>();
    var earlier = new EarlierDeliveries(job);
    var taken =
        new TakenNames(
            "Check the convention: its names for deliveries leave out what tells these pictures"
                + " apart.");
    for (var answer : returns.answers()) {
      boolean meant = wanted.isEmpty() || wanted.contains(answer.setup());
      if (!meant || answer.state() == Returns.State.MISSING) {
        continue;
      }
      var why = reason(answer, withFindings);
      if (why.isPresent()) {
        withheld.add(why.get());
        continue;
      }
      var frame = frame(answer);
      var original = frame.map(it -> FramePaths.original(job, it)).orElse(answer.select());
      switch (names.of(answer.select(), original, answer.newestFiles().getFirst())) {
        case DeliveryNames.None none ->
            withheld.add(
                new Withheld(
                    new Problem(none.why(), answer.select(), none.fix()), Withheld.Tool.CHECKING));
        case DeliveryNames.Name name -> {
          var select = select(answer, name.text(), original, frame);
          var number = earlier.last(select);
          if (number.isPresent() && onlyNew) {
            before.put(select.name(), number.getAsInt());
            continue;
          }
          var clash = taken.take(select);
          if (clash.isPresent()) {
            withheld.add(clash.get());
            continue;
          }
          number.ifPresent(last -> before.put(select.name(), last));
          came.put(
              select.name(),
              new Client.Came(
                  answer.select(), answer.frame().stream().findFirst(), answer.findings()));
          selects.add(select);
        }
      }
    }
    selects.sort(Comparator.comparing(Select::name));
    return new HandOffPlan(
        "came back in " + returns.folder().getFileName(), selects, withheld, before);
  }

  /** Why an answer cannot be delivered. */
  private Optional<Withheld> reason(Returns.Answer answer, boolean withFindings) {
    if (!names.fit(answer.state())) {
      return Optional.of(
          new Withheld(
              answer.select(),
              stateText(answer.state()),
              "Ask the retoucher for it, under the name that the convention gives it."));
    }
    var damaged =
        returns.bag().map(PackageCheck::different).orElse(List.of()).stream()
            .filter(answer.newestFiles()::contains)
            .findFirst();
    if (damaged.isPresent()) {
      return Optional.of(
          new Withheld(
              answer.select(),
              Text.of(
                  "{0} is not what the list of checksums says that came with it", damaged.get()),
              "Ask the retoucher for it again."));
    }
    return withFindings || answer.findings().isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Withheld(
                answer.select(),
                answer.findings().stream()
                    .map(finding -> finding.problem().said())
                    .reduce((one, next) -> Text.of("{0}; {1}", one, next))
                    .orElse(Text.NONE),
                "Ask the retoucher for it as the client wants it, or deliver it all the same."));
  }

  private static Text stateText(Returns.State state) {
    return state == Returns.State.UNTOUCHED
        ? Text.of("it came back as it was handed off")
        : Text.of("it came back under its own name, without a version");
  }

  private Optional<Frame> frame(Returns.Answer answer) {
    return answer.frame().stream()
        .flatMap(file -> Optional.ofNullable(byFile.get(file.normalize())).stream())
        .findFirst();
  }

  /** The frame as it came back: other files, and what is known of its making. */
  private Select select(Returns.Answer answer, String name, String original, Optional<Frame> frame)
      throws IOException {
    var files = new ArrayList<FrameFile>();
    var called = new ArrayList<String>();
    for (var file : answer.newestFiles()) {
      var path = returns.path(file);
      var attributes =
          Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      files.add(
          new FrameFile(
              path,
              attributes.size(),
              attributes.lastModifiedTime().toInstant(),
              FileRole.of(path).orElse(FileRole.COMPANION)));
      var own = path.getFileName().toString();
      called.add(name + own.substring(Math.max(0, own.lastIndexOf('.'))));
    }
    var fields =
        job.convention().read(answer.select(), Reserved.SELECT) instanceof Reading.One one
            ? one.fields()
            : new LinkedHashMap<String, String>();
    var id = frame.map(Frame::id).orElse(new FrameId("0".repeat(DIGITS_OF_ID)));
    return new Select(
        new Frame(
            id,
            returns.folder(),
            name,
            files,
            frame.map(Frame::capture).orElse(Capture.UNKNOWN),
            true),
        original,
        frame
            .flatMap(tally::place)
            .orElse(new Place(answer.setup(), Optional.ofNullable(fields.get(Reserved.VIEW)))),
        frame.map(job.state()::rating).orElse(OptionalInt.empty()),
        name,
        fields,
        called);
  }

  /** Puts more papers into each package, from now on. */
  public void enclose(List<ExtraPaper> more) {
    papers = List.copyOf(more);
  }

  /**
   * Writes plans that this one made, a package each; see {@link HandOff#deliver(List, Path,
   * MetadataOptions, Progress)}.
   */
  public List<Delivery> deliver(
      List<HandOffPlan> parts, Path target, MetadataOptions metadata, Progress progress) {
    return DeliveryRun.run(
        job,
        scan,
        parts,
        HandOff.folders(parts, target),
        new Client(job, returns.folder(), Map.copyOf(came), metadata.mode(), papers),
        metadata,
        progress);
  }

  /** The files of earlier deliveries, by their names. */
  private static final class EarlierDeliveries {
    private final Map<String, TreeMap<Integer, HandOffRecord.Copy>> byName = new HashMap<>();

    EarlierDeliveries(Job job) throws IOException {
      for (var record : HandOffRecords.of(job).read().usable().values()) {
        if (record.to() == HandOffRecord.To.CLIENT && record.state().mayBeOut()) {
          record.selects().stream()
              .flatMap(entry -> entry.files().stream())
              .forEach(
                  copy ->
                      byName
                          .computeIfAbsent(NameKey.of(copy.name()), _ -> new TreeMap<>())
                          .put(record.number(), copy));
        }
      }
    }

    /** The number of the last one that had all its files as they are. */
    OptionalInt last(Select select) throws IOException {
      int last = Integer.MAX_VALUE;
      for (int i = 0; i < select.files().size(); i++) {
        last = Math.min(last, last(select.files().get(i), select.frame().files().get(i)));
      }
      return last > 0 && last < Integer.MAX_VALUE ? OptionalInt.of(last) : OptionalInt.empty();
    }

    private int last(String name, FrameFile file) throws IOException {
      var copies = byName.get(NameKey.of(name));
      if (copies == null) {
        return 0;
      }
      var checksum = Checksum.of(file.path());
      return copies.descendingMap().entrySet().stream()
          .filter(one -> one.getValue().source().equals(checksum))
          .mapToInt(Map.Entry::getKey)
          .findFirst()
          .orElse(0);
    }
  }
}
