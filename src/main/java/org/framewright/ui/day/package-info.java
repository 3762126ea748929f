/**
 * The day: how it stands, what to look at before one wraps, and the reports of it.
 *
 * <p>The way through: while the page is in front, each new picture of the job, and each minute, is
 * read into a {@code DayNow} and worded as a {@link org.framewright.ui.day.DayShown} in the
 * background, the newest only. A {@link org.framewright.ui.day.DayModel} keeps the last of them
 * where the folder cannot be read, and which lines a person ticked as looked at; a tick is for
 * exactly what was seen, for as long as the job is open. Charts are those of {@code report.chart},
 * drawn as nodes. A {@link org.framewright.ui.day.ReportsModel} writes reports, one piece of work
 * at a time.
 */
package org.framewright.ui.day;
