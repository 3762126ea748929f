package org.framewright.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.framewright.base.Progress;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;

/**
 * Prints the reports of the sample job and takes pictures of their pages: {@code
 * org.framewright.report.ReportPictures FOLDER [LANGUAGE [PAPER]]}.
 */
final class ReportPictures {
  private static final ZoneId ZONE = ZoneId.of("+01:00");
  private static final Instant NOON = Instant.parse("2026-11-03T10:40:00Z");

  private ReportPictures() {}

  public static void main(String[] arguments) throws Exception {
    var into = Files.createDirectories(Path.of(arguments[0]));
    var language = Locale.of(arguments.length > 1 ? arguments[1] : "en");
    var paper = Paper.valueOf(arguments.length > 2 ? arguments[2] : "A4");
    var scratch = Files.createTempDirectory("framewright-reports");
    var job = SampleJobs.inTheMiddle(SampleFiles.find(), scratch, NOON);
    var chosen = Job.open(job, Clock.fixed(NOON, ZONE));
    chosen.select(
        chosen.scan().distinct().stream()
            .filter(frame -> chosen.state().rating(frame).orElse(0) >= 4)
            .map(frame -> frame.id())
            .toList(),
        true,
        "Timo");
    for (var kind : ReportKind.values()) {
      var report =
          Report.of(
              Job.open(job, Clock.fixed(NOON, ZONE)),
              Job.open(job, Clock.fixed(NOON, ZONE)).scan(),
              new ReportOptions(
                  kind,
                  paper,
                  language,
                  DayHours.usual(ZONE),
                  new Letterhead("Studio Nova", "hello@nova.example", Optional.empty())));
      long from = System.nanoTime();
      var pdf = into.resolve("report-" + kind.word() + ".pdf");
      var written = report.write(pdf, ReportForm.PDF, true, Progress.NONE);
      System.out.println(
          kind.word()
              + ": "
              + written
              + ", "
              + Files.size(pdf)
              + " bytes, "
              + (System.nanoTime() - from) / 1_000_000
              + " ms");
      report.write(
          into.resolve("report-" + kind.word() + ".html"), ReportForm.HTML, true, Progress.NONE);
      pages(pdf, 96);
    }
  }

  /** A PNG for each page beside the PDF. */
  static List<Path> pages(Path pdf, float dotsPerInch) throws IOException {
    var pictures = new ArrayList<Path>();
    try (var document = Loader.loadPDF(pdf.toFile())) {
      var renderer = new PDFRenderer(document);
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        var number = i == 0 ? "" : "-" + (i + 1);
        var name = pdf.getFileName().toString().replace(".pdf", number + ".png");
        var picture = pdf.resolveSibling(name);
        ImageIO.write(
            renderer.renderImageWithDPI(i, dotsPerInch, ImageType.RGB), "png", picture.toFile());
        pictures.add(picture);
      }
    }
    return pictures;
  }
}
