package org.framewright.handoff;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.job.Job;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.FieldType;
import org.framewright.shotlist.CsvText;

/** What lies beside the pictures: the index, the words for the retoucher, the bag's own data. */
final class PackagePapers {
  private static final DateTimeFormatter CAPTURED =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS", Locale.ROOT);

  /** How anybody sees that a package is whole. */
  static final String CHECKING =
      """
      To see that nothing was lost on the way, type in this folder, on Linux:
        sha256sum -c SHA256SUMS
      on macOS:
        shasum -a 256 -c SHA256SUMS
      on Windows, in PowerShell; it names each file that is missing or not whole, and no other:
        Get-Content SHA256SUMS -Encoding UTF8 | ForEach-Object { $sum, $name = $_ -split '  ', 2; if ((Get-FileHash -LiteralPath $name -Algorithm SHA256 -ErrorAction SilentlyContinue).Hash -ne $sum) { "NOT WHOLE: $name" } }
      or, where Framewright is installed, which also finds files too many:
        framewright verify .
      or open this folder with any BagIt tool (RFC 8493).
      """
          .stripTrailing();

  /** What slates are, at the end of a sentence's line. */
  private static final String SLATES =
      """

      Slates are frames that show a card with the setup of the frames after them; index.csv says
      which are slates. They need not come back.\
      """;

  private PackagePapers() {}

  /** RFC 4180, with a heading line; no spreadsheet sees a formula in it. */
  static String index(HandOffPlan plan, List<HandOffRecord.Entry> entries, ZoneId zone) {
    var rows = new ArrayList<List<String>>();
    rows.add(
        List.of(
            "setup",
            "view",
            "original",
            "select",
            "rating",
            "captured",
            "files",
            "sha256-original",
            "went-in-hand-off",
            "slate"));
    var byName = new HashMap<String, HandOffRecord.Entry>();
    entries.forEach(entry -> byName.put(entry.select(), entry));
    for (var select : plan.selects()) {
      var capture = select.frame().capture();
      var entry = Optional.ofNullable(byName.get(select.name()));
      rows.add(
          List.of(
              select.place().setup(),
              select.place().view().orElse(""),
              select.original(),
              select.name(),
              select.rating().isPresent() ? "" + select.rating().getAsInt() : "",
              capture
                  .time()
                  .map(
                      time ->
                          time.format(CAPTURED)
                              + capture.offset().map(ZoneOffset::getId).orElse(""))
                  .orElse(""),
              String.join(" ", entry.map(PackagePapers::names).orElse(select.files())),
              entry.stream()
                  .flatMap(one -> one.files().stream())
                  .map(HandOffRecord.Copy::source)
                  .collect(Collectors.joining(" ")),
              plan.before().containsKey(select.name())
                  ? String.valueOf(plan.before().get(select.name()))
                  : "",
              select.slate() ? "yes" : ""));
    }
    return CsvText.of(rows, "\r\n");
  }

  private static List<String> names(HandOffRecord.Entry entry) {
    return entry.all().map(HandOffRecord.Copy::name).toList();
  }

  static String readme(
      Job job,
      HandOffPlan plan,
      List<HandOffRecord.Entry> entries,
      int number,
      MetadataMode metadata,
      List<ExtraPaper> papers) {
    long files = entries.stream().mapToLong(entry -> entry.all().count()).sum();
    var said =
        switch (metadata) {
          case NONE -> "";
          case SIDECAR ->
              """
              The .xmp file beside each select says what it shows, who took it and what it may be
              used for (IPTC Photo Metadata).

              """;
          case EMBED ->
              """
              The .xmp file beside each select says what it shows, who took it and what it may be
              used for (IPTC Photo Metadata); JPEG, TIFF and DNG say so themselves, too. Their
              pictures are untouched; index.csv has the checksum of each file as the photographer
              has it.

              """;
        };
    var first = plan.selects().stream().filter(select -> !select.slate()).findFirst();
    var back =
        first
            .flatMap(select -> retouched(job.convention(), select))
            .map(
                name ->
                    """
                    Please send each one back under its name here with the version added, for example
                      %s  for  %s
                    """
                        .formatted(name, first.orElseThrow().name()))
            .orElse(
                """
                Please send each one back under its name here.
                """);
    return """
    %s, hand-off %d

    %s in %d files lie in data/. index.csv says for each its setup, view, rating, time
    of capture, and its name in the job.%s%s%s

    %s

    %s
    %sA raw file, its JPEG and its .xmp file share a name: keep them together. These are copies;
    the photographer keeps the originals.
    """
        .formatted(
            job.name(),
            number,
            counted(plan.pictures(), plan.slates()),
            files,
            again(plan, "hand-off"),
            plan.slates() == 0 ? "" : SLATES,
            said(papers),
            CHECKING,
            back,
            said);
  }

  /** {@code 95 selects and 3 slates}; slates only where there are any. */
  static String counted(int selects, int slates) {
    return selects + " selects" + (slates == 0 ? "" : " and " + PlainText.counted(slates, "slate"));
  }

  /** How many went before, as the end of a sentence's line; nothing where none did. */
  static String again(HandOffPlan plan, String what) {
    long again = plan.again();
    return again == 0
        ? ""
        : """

        %d of them are new; %d went before, and index.csv says in which %s.\
        """
            .formatted(plan.selects().size() - again, again, what);
  }

  /** What other papers there are, a line each at the end of a sentence's line. */
  static String said(List<ExtraPaper> papers) {
    return papers.stream().map(paper -> "\n" + paper.said()).collect(Collectors.joining());
  }

  /** How the first version of a select would be called. */
  static Optional<String> retouched(Convention convention, Select select) {
    var kind = convention.kinds().get(Returns.RETOUCHED);
    if (kind == null) {
      return Optional.empty();
    }
    var values = new LinkedHashMap<>(select.fields());
    for (var name : kind.fields().keySet()) {
      var field = convention.fields().get(name);
      if (!values.containsKey(name) && field != null) {
        values.put(
            name,
            field.type() == FieldType.COUNTER || field.type() == FieldType.NUMBER
                ? String.valueOf(Math.max(1, field.start()))
                : field.example());
      }
    }
    return convention.build(Returns.RETOUCHED, values) instanceof Built.Name name
        ? Optional.of(name.text())
        : Optional.empty();
  }

  /** Labels of RFC 8493, section 2.2.2. */
  static SequencedMap<String, String> about(Job job, HandOffPlan plan, int number, ZoneId zone) {
    var about = new LinkedHashMap<String, String>();
    about.put("External-Identifier", job.name() + " hand-off " + number);
    about.put(
        "External-Description",
        counted(plan.pictures(), plan.slates())
            + " of "
            + setups(plan).size()
            + " setups, "
            + plan.chosenBy());
    about.put("Bagging-Date", LocalDate.ofInstant(job.now(), zone).toString());
    about.put("Bag-Software-Agent", "Framewright");
    return about;
  }

  static List<String> setups(HandOffPlan plan) {
    return new ArrayList<>(
        plan.selects().stream()
            .map(select -> select.place().setup())
            .collect(Collectors.toCollection(TreeSet::new)));
  }
}
