/**
 * Help: the guide, every key, and what the program is made of.
 *
 * <p>The way through: {@link org.framewright.ui.help.Guide} reads the Markdown files that lie
 * beside the program, page by page, into {@link org.framewright.ui.help.Block}s, which know no
 * control. A page says itself which pages and questions of the app it helps with. {@link
 * org.framewright.ui.help.GuideSearch} finds its sections by words; {@link
 * org.framewright.ui.help.GuideModel} knows which page is read and which were before, and {@link
 * org.framewright.ui.help.HelpSheet} shows that beside the list of keys. {@link
 * org.framewright.ui.help.Credits} are read from the list of licences beside the program in the
 * same way, and shown by {@link org.framewright.ui.help.AboutSheet}.
 */
package org.framewright.ui.help;
