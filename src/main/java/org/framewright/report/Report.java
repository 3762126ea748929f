package org.framewright.report;

import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.framewright.base.DurableFiles;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameScan;
import org.framewright.job.Job;

/** A report of a job as it is at one moment, to be written as one file or several. */
public final class Report {
  /** The most rows of a sheet of a workbook (common practice of spreadsheets). */
  private static final int MOST_ROWS = (1 << 20) - 1;

  private final Section section;
  private final Stationery stationery;
  private final Words words;
  private final int frames;

  /**
   * @param frames how many pictures it may show
   */
  Report(Section section, Stationery stationery, ZoneId zone, int frames) {
    this.section = section;
    this.stationery = stationery;
    this.words = new Words(stationery.language(), zone);
    this.frames = frames;
  }

  /** What came of writing a report. */
  public sealed interface Written {
    /**
     * The file is there.
     *
     * @param pictures how many it shows
     * @param pages how many sheets of paper a PDF has; 0 for other forms
     */
    record Done(int pictures, int pages) implements Written {}

    /** It was stopped, and there is no file. */
    record Cancelled() implements Written {}

    /** A workbook has no room for it, and there is no file. */
    record TooLarge(int rows) implements Written {}
  }

  /** Gathers what a report tells. */
  public static Report of(Job job, FrameScan scan, ReportOptions options) throws IOException {
    return of(JobFacts.of(job, scan, options.hours()), options);
  }

  /** The same of what was gathered before. */
  static Report of(JobFacts facts, ReportOptions options) {
    return new Report(
        Section.of(facts, options), options.stationery(), facts.zone(), facts.frames().size());
  }

  /**
   * Writes it to a file, whole or not at all.
   *
   * @param replace whether a file that is there may be replaced
   * @throws java.nio.file.FileAlreadyExistsException if it is there and may not
   */
  public Written write(Path file, ReportForm form, boolean replace, Progress progress)
      throws IOException {
    if (form == ReportForm.XLSX) {
      int rows = section.tables(words).stream().mapToInt(one -> one.rows().size()).max().orElse(0);
      if (rows > MOST_ROWS) {
        return new Written.TooLarge(rows);
      }
    }
    var done = new Written.Done[1];
    DurableFiles.Content content =
        out -> done[0] = write(form, new BufferedOutputStream(out), progress);
    try {
      if (replace) {
        DurableFiles.replace(file, content);
      } else {
        DurableFiles.create(file, content);
      }
    } catch (CancellationException e) {
      return new Written.Cancelled();
    }
    return done[0];
  }

  /**
   * Writes it.
   *
   * @throws CancellationException once the progress says that it is to stop
   */
  Written.Done write(ReportForm form, OutputStream out, Progress progress) throws IOException {
    try {
      var done =
          switch (form) {
            case HTML -> html(out, progress);
            case PDF -> pdf(out, progress);
            case XLSX -> {
              TableFiles.workbook(section.tables(words), words, out);
              yield new Written.Done(0, 0);
            }
            case CSV -> {
              TableFiles.csv(section.tables(words).getFirst(), words, out);
              yield new Written.Done(0, 0);
            }
          };
      out.flush();
      return done;
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private Written.Done html(OutputStream out, Progress progress) throws IOException {
    try (var spool = PictureSpool.open()) {
      var pictures = new Gathering(spool, progress, false);
      var writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
      section.write(new Page(new Html(writer), words, false, pictures));
      writer.flush();
      return new Written.Done(spool.size(), 0);
    }
  }

  private Written.Done pdf(OutputStream out, Progress progress) throws IOException {
    try (var spool = PictureSpool.open()) {
      var page = new StringBuilder();
      section.write(new Page(new Html(page), words, true, new Gathering(spool, progress, true)));
      int pages =
          Press.print(
              page.toString(),
              words.locale(),
              name ->
                  Page.isLogo(name)
                      ? stationery.letterhead().logo().orElseThrow().png().bytes()
                      : spool.bytes(Integer.parseInt(name)),
              out,
              progress::cancelled);
      return new Written.Done(spool.size(), pages);
    }
  }

  /** Makes the pictures as the page asks for them, each once. */
  private final class Gathering implements Page.Pictures {
    private final PictureSpool spool;
    private final Progress progress;
    private final boolean print;
    private final Map<FrameId, Optional<PictureSpool.Kept>> known = new HashMap<>();

    Gathering(PictureSpool spool, Progress progress, boolean print) {
      this.spool = spool;
      this.progress = progress;
      this.print = print;
    }

    @Override
    public Optional<Page.Shown> of(Frame frame) {
      if (progress.cancelled()) {
        throw new CancellationException();
      }
      try {
        var kept = known.get(frame.id());
        if (kept == null) {
          kept = spool.add(frame);
          known.put(frame.id(), kept);
          progress.step(known.size(), Math.max(known.size(), frames));
        }
        return kept.isPresent() ? Optional.of(shown(kept.get())) : Optional.empty();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private Page.Shown shown(PictureSpool.Kept kept) throws IOException {
      var address =
          print
              ? Press.SCHEME + ":" + kept.number()
              : "data:image/jpeg;base64,"
                  + Base64.getEncoder().encodeToString(spool.bytes(kept.number()));
      return new Page.Shown(address, kept.width(), kept.height());
    }
  }
}
