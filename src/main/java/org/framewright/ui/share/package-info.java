/**
 * Phones and tablets on the studio's network: the dialog in which a person turns the page for them
 * on and off, shows a code for one device, sees who is there and sends one away.
 *
 * <p>The way through: {@link org.framewright.ui.share.ShareModel} starts and stops a {@link
 * org.framewright.ui.share.Sharing}, which the app makes of the open job, hears from it when
 * devices come and go, and tells what became of each. {@link org.framewright.ui.share.ShareDialog}
 * shows the model; a code is shown only on request, and goes when it was used, when its time is
 * over, and with the dialog.
 */
package org.framewright.ui.share;
