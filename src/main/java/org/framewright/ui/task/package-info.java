/**
 * Work away from the interface thread: a {@link org.framewright.ui.task.Tasks} takes a piece of
 * work, runs it on its background executor with {@link org.framewright.ui.task.Steps} to report its
 * progress and hear a cancel, and brings the result or the failure back through the executor of the
 * interface. A burst of news goes through {@link org.framewright.live.Latest}, which keeps the
 * newest and never has more than one refresh waiting. Both executors are given, so tests run it all
 * on their own thread.
 */
package org.framewright.ui.task;
