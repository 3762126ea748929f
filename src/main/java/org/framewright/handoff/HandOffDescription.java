package org.framewright.handoff;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.handoff.names.KnownName;
import org.framewright.handoff.names.NamesRead;
import org.framewright.handoff.names.Piece;
import org.framewright.handoff.verify.PackageDescription;

/**
 * Hand-offs and what came back in words, a line each, as the command line and the demo print them.
 */
public final class HandOffDescription {
  private static final int MOST_SHOWN = 6;

  private HandOffDescription() {}

  /** What would go, under which names. */
  public static List<String> planned(HandOffPlan plan) {
    var lines = new ArrayList<String>();
    plan.selects()
        .forEach(
            select -> {
              var number = plan.before().get(select.name());
              lines.add(
                  select.original()
                      + "  ->  "
                      + select.name()
                      + (select.slate() ? "  (slate)" : "")
                      + (number == null ? "" : "  (went in hand-off " + number + ")"));
            });
    lines.add(
        PackagePapers.counted(plan.pictures(), plan.slates()) + " in " + plan.files() + " files");
    lines.addAll(before(plan));
    return List.copyOf(lines);
  }

  /** How many of the chosen selects went before; nothing where none did. */
  public static List<String> before(HandOffPlan plan) {
    if (plan.before().isEmpty()) {
      return List.of();
    }
    return List.of(
        plan.left() > 0
            ? PlainText.counted((int) plan.left(), "select") + " went before and stay"
            : plan.selects().size()
                - plan.again()
                + " of them are new; "
                + plan.again()
                + " went before and go again");
  }

  /** What each line of a client's list was taken for, and why. */
  public static List<String> names(ClientNames names) {
    var lines = new ArrayList<String>();
    for (var line : names.read().lines()) {
      lines.add("line " + line.number() + ": " + line.text() + aside(line));
      line.pieces().forEach(piece -> lines.add("  " + piece(piece, names)));
    }
    lines.add(counted(names));
    return List.copyOf(lines);
  }

  /** Why a line asks for nothing, in brackets behind it; empty where it asks for something. */
  public static String aside(NamesRead.Line line) {
    if (line.passedOver().isPresent()) {
      return "  (passed over: " + line.passedOver().get() + ")";
    }
    boolean remark = line.pieces().stream().allMatch(piece -> piece instanceof Piece.Aside);
    return remark ? "  (names no frame)" : "";
  }

  /** What a part of a line was taken for, and why. */
  public static String piece(Piece piece, ClientNames names) {
    return switch (piece) {
      case Piece.Taken taken ->
          taken.written()
              + " = "
              + some(taken.frames().stream().map(names::called).toList(), taken.frames().size())
              + " ("
              + taken.why()
              + ")";
      case Piece.Asked asked ->
          question(piece)
              + ": "
              + some(
                  asked.fitting().stream().map(name -> called(name, names)).toList(),
                  asked.count());
      case Piece.Unknown unknown ->
          question(piece)
              + (unknown.nearest().isEmpty()
                  ? ""
                  : "; the nearest: "
                      + some(
                          unknown.nearest().stream().map(name -> called(name, names)).toList(),
                          unknown.nearest().size()));
      case Piece.Aside aside -> aside.written() + " - " + aside.why();
    };
  }

  /** A part of a line that is unclear, and why, without the frames that it may mean. */
  public static String question(Piece piece) {
    return piece.written() + " ? " + piece.why();
  }

  /** A frame by its name, with the one that fits where that is another. */
  public static String called(KnownName name, ClientNames names) {
    var called = names.called(name.frame());
    return name.text().equals(called)
        ? called
        : PlainText.line(name.text()) + " (now " + called + ")";
  }

  private static String some(List<String> texts, int all) {
    var shown = texts.subList(0, Math.min(MOST_SHOWN, texts.size()));
    int more = all - shown.size();
    return String.join(", ", shown) + (more > 0 ? " and " + more + " more" : "");
  }

  /** How many frames are named, and how many lines a person has to settle. */
  public static String counted(ClientNames names) {
    int unclear = names.unclear().size();
    return PlainText.counted(names.read().frames().size(), "frame")
        + " named without a doubt"
        + (unclear == 0 ? "" : "; " + PlainText.counted(unclear, "line") + " to be settled");
  }

  /** What went, and where it lies. */
  public static List<String> delivered(Delivery.Delivered done) {
    var lines = new ArrayList<String>();
    lines.add(
        PackagePapers.counted(done.selects(), done.slates())
            + " in "
            + done.files()
            + " files, each copied and read again: hand-off "
            + done.number());
    if (done.described().sidecars() > 0) {
      lines.add(
          "The job's data (IPTC) are in "
              + PlainText.counted(done.described().sidecars(), "sidecar")
              + (done.described().embedded() == 0
                  ? ""
                  : " and inside "
                      + done.described().embedded()
                      + (done.described().embedded() == 1 ? " copy" : " copies")));
    }
    lines.add(done.folder().toString());
    return List.copyOf(lines);
  }

  /** What came back, and what is wrong with it. */
  public static List<String> returned(Returns returns) {
    var lines = new ArrayList<String>();
    lines.add(
        returns.count(Returns.State.ANSWERED)
            + " of "
            + returns.answers().size()
            + " selects came back under a name of the convention");
    returns.answers().stream()
        .filter(answer -> answer.state() != Returns.State.ANSWERED)
        .forEach(answer -> lines.add(answer.select() + " " + answer.state().words()));
    returns.answers().stream()
        .filter(answer -> answer.versions().size() > 1 || !answer.missing().isEmpty())
        .forEach(answer -> lines.add(versions(answer)));
    lines.addAll(asked(returns));
    for (var extra : returns.extras()) {
      lines.add("extra: " + extra.file() + ": " + extra.why());
      extra.likely().ifPresent(likely -> lines.add("  " + likely(likely)));
    }
    int names = returns.renames().size();
    if (names > 0) {
      lines.add(
          PlainText.counted(names, "file")
              + " can be renamed right; see: framewright returns JOB FOLDER --rename --preview");
    }
    returns.bag().map(PackageDescription::problems).ifPresent(lines::addAll);
    return List.copyOf(lines);
  }

  /** What is not as the client asked; nothing where it is not known what they ask. */
  private static List<String> asked(Returns returns) {
    if (returns.specification().isEmpty()) {
      return List.of();
    }
    var lines = new ArrayList<String>();
    var came =
        returns.answers().stream()
            .filter(
                answer ->
                    answer.state() == Returns.State.ANSWERED
                        || answer.state() == Returns.State.CHANGED)
            .toList();
    lines.add(
        came.stream().filter(answer -> answer.findings().isEmpty()).count()
            + " of "
            + came.size()
            + " are as “"
            + PlainText.line(returns.specification().get().title())
            + "” asks");
    for (var finding : returns.findings()) {
      lines.add("  " + finding.problem().sentence());
      lines.add("    " + finding.problem().remedy());
    }
    return lines;
  }

  /** What would go to the client: what came back, and under which names. */
  public static List<String> plannedForClient(HandOffPlan plan) {
    var lines = new ArrayList<String>();
    for (var select : plan.selects()) {
      var number = plan.before().get(select.name());
      for (int i = 0; i < select.files().size(); i++) {
        lines.add(
            PlainText.line(select.frame().files().get(i).path().getFileName().toString())
                + "  ->  "
                + PlainText.line(select.files().get(i))
                + (number == null ? "" : "  (went in delivery " + number + ")"));
      }
    }
    lines.add(plan.selects().size() + " pictures in " + plan.files() + " files");
    lines.addAll(before(plan));
    return List.copyOf(lines);
  }

  private static String versions(Returns.Answer answer) {
    var others =
        answer.versions().headMap(answer.newest().orElse(0)).keySet().stream()
            .map(String::valueOf)
            .toList();
    var line =
        new StringBuilder(answer.select())
            .append(": version ")
            .append(answer.newest().orElse(0))
            .append(" counts, ")
            .append(String.join(", ", answer.newestFiles()));
    if (!others.isEmpty()) {
      line.append("; also here: ").append(some(others, others.size()));
    }
    if (!answer.missing().isEmpty()) {
      var missing = answer.missing().stream().map(String::valueOf).toList();
      line.append("; not here: ").append(some(missing, missing.size()));
    }
    return line.toString();
  }

  private static String likely(Returns.Likely likely) {
    return "likely "
        + likely.select()
        + ": "
        + likely.reason()
        + likely.name().map(name -> "  ->  " + PlainText.line(name)).orElse("");
  }
}
