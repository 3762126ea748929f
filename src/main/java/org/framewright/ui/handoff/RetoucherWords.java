package org.framewright.ui.handoff;

import org.framewright.handoff.PastHandOffs;
import org.framewright.ui.look.Texts;

/** What one tells the retoucher of a package: its number, where it lies, and what proves it. */
final class RetoucherWords {
  private RetoucherWords() {}

  static String of(Ended.Handed one, String job, Texts texts) {
    return of(
        "handoff.sentence",
        one.number(),
        one.folder().toString(),
        one.selects(),
        one.files(),
        one.digest(),
        job,
        texts);
  }

  static String of(PastHandOffs.Past one, String job, Texts texts) {
    return of(
        one.toTheClient() ? "handoff.sentence.client" : "handoff.sentence",
        one.number(),
        one.folder(),
        one.selects(),
        one.files(),
        one.digest().orElse(""),
        job,
        texts);
  }

  private static String of(
      String key,
      int number,
      String folder,
      int selects,
      int files,
      String digest,
      String job,
      Texts texts) {
    var what = texts.get(key, String.valueOf(number), job, selects, files, folder);
    return digest.isEmpty() ? what : texts.get("handoff.sentence.proof", what, digest);
  }
}
