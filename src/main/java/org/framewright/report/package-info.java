/**
 * Reports that one prints or sends to a client: the day, the contact sheet, the next day, the
 * sign-offs.
 *
 * <p>The way through: what a job knows at one moment is gathered once ({@code JobFacts}); each kind
 * of report says it as sections of a page ({@code DayPage} and its like), through a writer that
 * escapes everything ({@code Html}), in a language ({@code Words}), and as tables for spreadsheets.
 * The same page is written out for a browser, with its pictures inside, or set on paper as a tagged
 * PDF ({@code Press}). Pictures pass through a spool on the disk ({@code PictureSpool}), so that a
 * sheet of thousands needs no more memory than one of ten. Nothing outside of the page is loaded,
 * whatever a title says.
 *
 * <p>{@link org.framewright.report.Slates} are cards to print that are held into the first picture
 * of a setup; they are set on paper in the same way.
 *
 * <p>A package of the hand-off gets papers of its own pictures in the same way ({@link
 * org.framewright.report.SelectPaper}), of what is in the package and not of the whole job.
 *
 * <p>{@code ReportFiles} writes reports where a person said, or an evening's beside each other, and
 * never over what nobody was asked about. The charts are those of {@code report.chart}.
 */
package org.framewright.report;
