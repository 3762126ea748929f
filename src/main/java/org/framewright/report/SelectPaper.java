package org.framewright.report;

import java.io.IOException;
import java.io.OutputStream;
import org.framewright.base.Progress;
import org.framewright.handoff.ExtraPaper;
import org.framewright.handoff.HandOffPlan;
import org.framewright.job.Job;

/**
 * A paper on the pictures of one package that lies in it: a contact sheet, or a list for a
 * spreadsheet.
 *
 * @param form a PDF or a page is the contact sheet, the others are the list
 */
public record SelectPaper(Job job, ReportForm form, Stationery stationery) implements ExtraPaper {
  /** A small JPEG of {@link PictureSpool#LONG_SIDE} with its place in the page, generously. */
  private static final long PICTURE = 128 << 10;

  private static final long FONTS = 8 << 20;
  private static final long LINE = 4 << 10;

  private boolean hasPictures() {
    return form == ReportForm.PDF || form == ReportForm.HTML;
  }

  @Override
  public String name() {
    return (hasPictures() ? "contact-sheet." : "list.") + form.word();
  }

  @Override
  public String said() {
    return hasPictures()
        ? name() + " shows each of them small, with its name."
        : name() + " has a line for each, with its setup, rating and who approved it.";
  }

  @Override
  public long room(int selects) {
    return hasPictures() ? FONTS + selects * PICTURE : (selects + 16) * LINE;
  }

  @Override
  public int steps(HandOffPlan plan) {
    return hasPictures() ? plan.selects().size() : 0;
  }

  @Override
  public void write(HandOffPlan plan, OutputStream out, Progress progress) throws IOException {
    var section = SelectSection.of(job, plan.selects(), stationery);
    new Report(section, stationery, job.zone(), plan.selects().size()).write(form, out, progress);
  }
}
