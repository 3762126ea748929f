/**
 * The app: one window over the core, for the photographer who starts a job, the assistant who runs
 * the list and the client who signs off.
 *
 * <p>The way through: {@link org.framewright.ui.Launch} starts the toolkit and hands over to the
 * composition root, which reads the preferences, makes the {@link org.framewright.ui.Shell} and
 * plugs the screens into it. A {@link org.framewright.ui.page.Screen} is a view over a view model;
 * the view model knows no control, asks the core through a {@link org.framewright.ui.task.Tasks},
 * and gets its answers back on the interface thread. What a screen may use of its surroundings is
 * its {@link org.framewright.ui.page.Desk}. The pages that belong to no job live as long as the
 * window; those of a job go with it. Every command is a {@link org.framewright.ui.command.Command}
 * in one registry, which reads the keys and fills the key sheet; what a barcode scanner types goes
 * to {@link org.framewright.ui.scan} before.
 *
 * <p>The interface thread is never held for long: what takes time happens on the threads of a
 * {@code Background}, which give way to it, and a page of a job is made and styled there before it
 * joins the window.
 */
package org.framewright.ui;
