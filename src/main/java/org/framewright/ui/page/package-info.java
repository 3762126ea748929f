/**
 * What pages share, so that no page knows another.
 *
 * <p>The way through: the window gives each {@link org.framewright.ui.page.Screen} a {@link
 * org.framewright.ui.page.Desk}: texts, background work, preferences, choosers for files, and the
 * layer of {@link org.framewright.ui.page.Dialogs} over the page. What a page asks goes there as a
 * {@link org.framewright.ui.page.DialogSpec}; what fails goes to the desk, which puts it into
 * words. A page that needs another asks the desk for it by its id. What a page has is found from
 * any other by its {@link org.framewright.ui.page.Finder}.
 */
package org.framewright.ui.page;
