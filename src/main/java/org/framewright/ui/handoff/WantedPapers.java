package org.framewright.ui.handoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.handoff.ExtraPaper;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.Job;
import org.framewright.report.Letterhead;
import org.framewright.report.ReportForm;
import org.framewright.report.SelectPaper;
import org.framewright.report.Stationery;

/**
 * The papers on the pictures that a person wants inside a package.
 *
 * @param sheet a contact sheet
 * @param list a list for a spreadsheet
 */
record WantedPapers(boolean sheet, boolean list) {

  boolean isNone() {
    return !sheet && !list;
  }

  /** Who sends them; reads the studio's logo. */
  Letterhead.Reading letterhead(Studio studio) {
    return isNone() ? new Letterhead.Reading.Sound(Letterhead.NONE) : Letterhead.of(studio);
  }

  List<ExtraPaper> of(Job job, Letterhead letterhead, Locale language) {
    var stationery = Stationery.usual(language, letterhead);
    var papers = new ArrayList<ExtraPaper>();
    if (sheet) {
      papers.add(new SelectPaper(job, ReportForm.PDF, stationery));
    }
    if (list) {
      papers.add(new SelectPaper(job, ReportForm.XLSX, stationery));
    }
    return papers;
  }
}
