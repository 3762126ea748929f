/**
 * Makes the packages of the system that it runs on; {@code mvn -q -Pinstaller} runs it. It is no
 * part of the program.
 *
 * <p>{@link org.framewright.installer.Home} lays out the installed form, one folder that is the
 * same in every package: the program as the build left it and a {@link
 * org.framewright.installer.RuntimeImage}, the Java that it needs. {@link
 * org.framewright.installer.Stamp} gives every file the mode and the time that it keeps from there
 * on, since the {@link org.framewright.installer.Training} after it writes caches that hold only
 * for files of that time. Each {@link org.framewright.installer.Format} then packs the folder with
 * the system's own {@link org.framewright.installer.Tool}; one whose tool is absent is told and
 * left out. {@link org.framewright.installer.Checksums} closes the folder.
 */
package org.framewright.installer;
