package org.framewright.cli;

import java.io.IOException;
import java.util.stream.Collectors;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.Scanned;
import org.framewright.job.ScannerKeyboard;
import org.framewright.job.SetupCodes;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;

/** Ticks the setups of scanned codes, one after the other, by the list as it is at that moment. */
final class ScannedMarks {
  private final Job job;
  private final SetupState state;
  private final MarkDetails details;
  private ShotList list;
  private SetupCodes codes;
  private ScannerKeyboard keyboard = ScannerKeyboard.US;

  ScannedMarks(Job job, SetupState state, MarkDetails details) {
    this.job = job;
    this.state = state;
    this.details = details;
    this.list = job.shotList();
    this.codes = SetupCodes.of(job);
  }

  Job job() {
    return job;
  }

  /**
   * Ticks the setup that has a code.
   *
   * @throws CommandFailure if none has it, or several do
   */
  Setup mark(String typed) throws IOException, JobException, CommandFailure {
    job.refresh();
    if (!job.shotList().equals(list)) {
      list = job.shotList();
      codes = SetupCodes.of(job);
    }
    var read = codes.read(typed, keyboard);
    keyboard = read.keyboard();
    var setup =
        switch (read.scanned()) {
          case Scanned.One one -> one.setup();
          case Scanned.Several several ->
              throw CommandFailure.badInput(
                  "several setups have the code \"" + typed.strip() + "\": " + named(several),
                  "Name the one that is meant: framewright mark JOB SETUP " + state.word());
          case Scanned.StraySlate slate ->
              throw CommandFailure.badInput(
                  slate.ofAnotherJob()
                      ? "the slate of " + slate.setup() + " was printed for another job"
                      : "the list has no setup " + slate.setup() + ", which the slate is of",
                  "Name the setup: framewright mark JOB SETUP " + state.word());
          case Scanned.Unknown unknown ->
              throw CommandFailure.badInput(
                  "no setup of the list has the code \"" + unknown.code() + "\"",
                  "Name its setup, or give the list a column of codes, headed EAN, SKU or"
                      + " Barcode.");
        };
    job.mark(setup.code(), state, details);
    return setup;
  }

  private static String named(Scanned.Several several) {
    return several.setups().stream().map(Setup::code).limit(20).collect(Collectors.joining(", "));
  }
}
