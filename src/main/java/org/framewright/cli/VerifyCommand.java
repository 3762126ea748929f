package org.framewright.cli;

import java.io.IOException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.handoff.verify.PackageDescription;
import org.framewright.handoff.verify.Verified;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Checks any package by the lists of checksums in it. */
@Command(
    name = "verify",
    description =
        "Reads every file of a package and says whether it is whole, by the lists in it: a bag"
            + " (BagIt, RFC 8493), lists of sha256sum and its kin, or ASC MHL. Nothing is written"
            + " or fetched.",
    footer = "Exit status: 0 whole, 1 not whole, 2 no package.",
    addMethodSubcommands = false)
final class VerifyCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(
      index = "0",
      paramLabel = "FOLDER",
      description = "The folder with bagit.txt, ascmhl, SHA256SUMS or another such list in it.")
  private Path folder;

  @Override
  public Integer call() throws IOException, CommandFailure {
    var opened = opened();
    if (!opened.known().whole()) {
      output
          .err()
          .println("Known before reading: " + PackageDescription.counts(opened.known()) + ".");
      output.err().flush();
    }
    return switch (read(opened)) {
      case Verified.Cancelled _ ->
          throw new CommandFailure(
              ExitStatus.FAILED,
              "the check was stopped; nothing is known of what was not read",
              "Ask again; nothing was written.");
      case Verified.Read read -> {
        report(read.check());
        yield (read.check().whole() ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
      }
    };
  }

  private OpenPackage opened() throws IOException, CommandFailure {
    try {
      return OpenPackage.in(folder)
          .orElseThrow(
              () ->
                  CommandFailure.badInput(
                      "there is no package in " + folder,
                      "Give the folder that has bagit.txt, ascmhl, SHA256SUMS or another list of"
                          + " checksums in it."));
    } catch (NotDirectoryException e) {
      throw new CommandFailure(ExitStatus.BAD_INPUT, FileProblems.of(e));
    }
  }

  private Verified read(OpenPackage opened) {
    try (var interruption = new Interruption()) {
      return opened.read(new ReadProgress(output.err(), interruption));
    }
  }

  private void report(PackageCheck check) {
    for (var warning : check.warnings()) {
      output.err().println("Note: " + warning.sentence());
    }
    if (output.json()) {
      output.write(json(check));
      return;
    }
    PackageDescription.of(check).forEach(output.out()::println);
    if (!check.whole()) {
      output.out().println("Ask for the package again, or for these files.");
    }
  }

  /** As {@code returns} writes it too. */
  static Map<String, Object> json(PackageCheck check) {
    var document = new LinkedHashMap<String, Object>();
    document.put("kind", check.kind().word());
    document.put("whole", check.whole());
    document.put("files", check.files());
    document.put("missing", check.missing());
    document.put("different", check.different());
    document.put("unlisted", check.unlisted());
    document.put("notFetched", check.notFetched());
    document.put("faults", check.faults().stream().map(Problem::sentence).toList());
    document.put("warnings", check.warnings().stream().map(Problem::sentence).toList());
    document.put("lists", check.lists());
    return document;
  }
}
