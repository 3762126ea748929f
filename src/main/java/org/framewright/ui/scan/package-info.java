/**
 * A barcode scanner in the app: it is a keyboard that types fast and ends with Enter or Tab.
 *
 * <p>The way through: a {@link org.framewright.ui.scan.ScanKeys} stands before everything else that
 * hears a window's keys and makes a {@link org.framewright.ui.scan.Stroke} of each. A {@link
 * org.framewright.ui.scan.ScanWatch}, which knows no toolkit and no clock, holds them for a moment:
 * what was typing goes on its way in the order in which it came, what was a scan goes no further.
 * The text of a scan comes to a {@link org.framewright.ui.scan.ScanModel}, which finds the setup
 * that bears it and puts it on set by the act of the list itself; what needs a person is asked by
 * {@link org.framewright.ui.scan.ScanQuestions}. The codes of a list are read in the background,
 * with each news of the list; {@link org.framewright.ui.scan.ListCodes} keeps them, and a scan that
 * comes before they are there waits for them.
 *
 * <p>The limits are measured: scanners send a key every 1 to 30 ms, evenly; people take 100 ms and
 * more, but the fastest overlap single keys by as little. So no gap decides alone. An interface
 * thread that was held up sees a long gap and then none: a gap that was not heard in time does not
 * count.
 */
package org.framewright.ui.scan;
