package org.framewright.handoff;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.frames.PictureHeader;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.spec.SpecFinding;
import org.framewright.job.Job;
import org.framewright.shotlist.CsvText;

/**
 * Who gets the pictures that came back from the retoucher.
 *
 * @param returned the folder that came back
 * @param came what came back of each picture, by its name in the package
 * @param papers what else lies beside the index
 */
record Client(
    Job job, Path returned, Map<String, Came> came, MetadataMode metadata, List<ExtraPaper> papers)
    implements Addressee {
  private static final List<String> HEADINGS =
      List.of(
          "setup",
          "view",
          "select",
          "came-back-as",
          "file",
          "kind",
          "width",
          "height",
          "bits",
          "colours",
          "profile",
          "bytes",
          "sha256",
          "findings",
          "went-in-delivery");

  /**
   * What came back of a select.
   *
   * @param frame the frame's own file in the job, where it is there
   */
  record Came(String select, Optional<Path> frame, List<SpecFinding> findings) {}

  @Override
  public HandOffRecord.To to() {
    return HandOffRecord.To.CLIENT;
  }

  @Override
  public Problem nothing(HandOffPlan plan) {
    return new Problem(
        Text.of("nothing that came back can be delivered"),
        returned.toString(),
        Text.of("See: framewright returns JOB FOLDER."));
  }

  @Override
  public Optional<Path> notIn() {
    return Optional.of(returned);
  }

  @Override
  public Optional<String> wantedBack(Select select) {
    return Optional.empty();
  }

  @Override
  public Path frame(Select select) {
    return came.get(select.name()).frame().orElse(select.frame().primary().path());
  }

  /** RFC 4180, with a heading line and a line for each picture's file. */
  @Override
  public String index(HandOffPlan plan, List<HandOffRecord.Entry> entries, ZoneId zone) {
    var byName = new HashMap<String, HandOffRecord.Copy>();
    entries.stream().flatMap(HandOffRecord.Entry::all).forEach(it -> byName.put(it.name(), it));
    var rows = new ArrayList<List<String>>();
    rows.add(HEADINGS);
    for (var select : plan.selects()) {
      for (int i = 0; i < select.files().size(); i++) {
        rows.add(row(plan, select, i, byName.get(select.files().get(i))));
      }
    }
    return CsvText.of(rows, "\r\n");
  }

  private List<String> row(HandOffPlan plan, Select select, int i, HandOffRecord.Copy copy) {
    var file = select.frame().files().get(i);
    var name = returned.relativize(file.path()).toString().replace('\\', '/');
    var row = new ArrayList<String>();
    row.add(select.place().setup());
    row.add(select.place().view().orElse(""));
    row.add(came.get(select.name()).select());
    row.add(name);
    row.add(select.files().get(i));
    row.addAll(facts(PictureHeader.of(file.path())));
    row.add(String.valueOf(copy.bytes().orElse(file.size())));
    row.add(copy.sha256());
    row.add(
        String.join(
            "; ",
            came.get(select.name()).findings().stream()
                .filter(finding -> finding.file().equals(name))
                .map(finding -> finding.problem().what())
                .toList()));
    row.add(
        plan.before().containsKey(select.name())
            ? String.valueOf(plan.before().get(select.name()))
            : "");
    return row;
  }

  private static List<String> facts(PictureHeader.Reading reading) {
    return switch (reading) {
      case PictureHeader.Reading.Read(PictureHeader header) ->
          List.of(
              header.kind().word(),
              String.valueOf(header.size().seenWidth()),
              String.valueOf(header.size().seenHeight()),
              String.valueOf(header.colour().bits()),
              header.colour().model().word(),
              header.profile().map(PictureHeader.Profile::description).orElse(""));
      case PictureHeader.Reading.NotRead _ -> List.of("", "", "", "", "", "");
    };
  }

  @Override
  public String readme(HandOffPlan plan, List<HandOffRecord.Entry> entries, int number) {
    long files = entries.stream().mapToLong(entry -> entry.all().count()).sum();
    return """
    %s, delivery %d

    %d pictures in %d files lie in data/. index.csv says for each its setup and view, its size and
    colours, and under which name it came back from the retoucher.%s%s

    %s
    %s\
    """
        .formatted(
            job.name(),
            number,
            plan.selects().size(),
            files,
            PackagePapers.again(plan, "delivery"),
            PackagePapers.said(papers),
            PackagePapers.CHECKING,
            metadata == MetadataMode.NONE
                ? ""
                : """

                The .xmp file beside each picture says what it shows, who took it and what it may
                be used for (IPTC Photo Metadata).
                """);
  }

  @Override
  public SequencedMap<String, String> about(HandOffPlan plan, int number, ZoneId zone) {
    var about = new LinkedHashMap<String, String>();
    about.put("External-Identifier", job.name() + " delivery " + number);
    about.put(
        "External-Description",
        plan.selects().size()
            + " retouched pictures of "
            + PackagePapers.setups(plan).size()
            + " setups");
    about.put("Bagging-Date", LocalDate.ofInstant(job.now(), zone).toString());
    about.put("Bag-Software-Agent", "Framewright");
    return about;
  }
}
