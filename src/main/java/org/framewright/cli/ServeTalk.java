package org.framewright.cli;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.stream.Collectors;
import org.framewright.base.FileProblems;
import org.framewright.base.PlainText;
import org.framewright.live.JobView;
import org.framewright.live.LiveJob;
import org.framewright.share.DeviceNews;
import org.framewright.share.PairedDevice;
import org.framewright.share.QrCode;
import org.framewright.share.Role;
import org.framewright.share.ShareServer;

/**
 * What {@code serve} tells while it runs, each thing as text or as a line of JSON, and what is
 * typed to it. For several threads.
 */
final class ServeTalk implements LiveJob.Listener {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final String UNPAIR = "unpair ";

  /** ISO/IEC 6429, select graphic rendition. */
  private static final String BLACK_ON_WHITE = "\u001b[30;107m";

  private static final String PLAIN = "\u001b[0m";

  /** What is served, and as what devices are paired for it. */
  private enum Kind {
    JOB(
        "Type assistant, client or viewer for another device; devices; unpair NAME.",
        "whoever listens on this network can read the list and see the pictures."),
    SETS(
        "Type producer or viewer for another device; devices; unpair NAME.",
        "whoever listens on this network can read how the sets stand.");

    private final String help;
    private final String heard;

    Kind(String help, String heard) {
      this.help = help;
      this.heard = heard;
    }

    String word(Role role) {
      return this == SETS && role == Role.ASSISTANT ? "producer" : role.word();
    }

    Optional<Role> role(String typed) {
      var word = typed.toLowerCase(Locale.ROOT);
      return Arrays.stream(Role.values())
          .filter(role -> this == JOB || role != Role.CLIENT)
          .filter(role -> word(role).equals(word))
          .findFirst();
    }
  }

  private final Kind kind;
  private final Output output;
  private final ShareServer server;
  private final String job;
  private final ZoneId zone;
  private List<PairedDevice> known;
  private boolean ended;

  private ServeTalk(Output output, ShareServer server, String job, ZoneId zone, Kind kind) {
    this.kind = kind;
    this.output = output;
    this.server = server;
    this.job = job;
    this.zone = zone;
    this.known = server.devices();
  }

  static ServeTalk ofAJob(Output output, ShareServer server, String job, ZoneId zone) {
    return new ServeTalk(output, server, job, zone, Kind.JOB);
  }

  static ServeTalk ofAllSets(Output output, ShareServer server, String store, ZoneId zone) {
    return new ServeTalk(output, server, store, zone, Kind.SETS);
  }

  /** Says where the job is to be had, who is known already, and gives the first codes. */
  synchronized void begin(List<Role> roles) {
    var address = server.address().toString();
    tell(
        "serving",
        PlainText.line(job) + " is at " + address + " until Ctrl-C.",
        members("job", job, "address", address));
    if (!"https".equals(server.address().getScheme())) {
      remark("Not encrypted: " + kind.heard + " With --tls nobody can.");
    }
    known.forEach(device -> tell("known", described(device), members(device)));
    roles.forEach(this::invite);
    remark(kind.help);
  }

  /** Says that it is over. */
  synchronized void end() {
    ended = true; // that devices lose their connection now is no news
    tell("ended", "The page is no longer there. Devices stay paired.", members());
  }

  /** Does what somebody typed. */
  synchronized void typed(String line) {
    var words = line.strip();
    var role = kind.role(words);
    if (role.isPresent()) {
      invite(role.get());
    } else if (words.equals("devices")) {
      devices();
    } else if (words.startsWith(UNPAIR)) {
      unpair(words.substring(UNPAIR.length()).strip());
    } else if (!words.isEmpty()) {
      remark("\"" + PlainText.line(ReportSettings.shortened(words)) + "\" says nothing here.");
      remark(kind.help);
    }
    output.out().flush();
  }

  private void invite(Role role) {
    var invitation = server.invite(role);
    var link = invitation.link().toString();
    tell(
        "code",
        "For one device, as "
            + kind.word(role)
            + ", until "
            + time(invitation.until())
            + ": "
            + link,
        members("role", kind.word(role), "link", link, "until", invitation.until().toString()));
    if (!output.json()) {
      draw(QrCode.of(link));
    }
  }

  /** Dark on light, as cameras want it, whatever the terminal's colours are. */
  private void draw(QrCode code) {
    boolean coloured = TerminalText.showsColours();
    code.halfBlocks()
        .lines()
        .forEach(
            line ->
                output
                    .out()
                    .print(
                        (coloured ? BLACK_ON_WHITE + line + PLAIN : line)
                            + System.lineSeparator()));
  }

  private void devices() {
    var devices = server.devices();
    if (output.json()) {
      tell("devices", "", members("devices", devices.stream().map(this::members).toList()));
    } else if (devices.isEmpty()) {
      tell("devices", "No device is paired.", members());
    } else {
      devices.forEach(device -> tell("devices", described(device), members()));
    }
  }

  /** By its name or, where several have that, by what the list of devices shows of each. */
  private void unpair(String name) {
    var meant =
        server.devices().stream()
            .filter(device -> device.name().equals(name) || device.id().equals(name))
            .toList();
    switch (meant.size()) {
      case 0 -> remark("No device is called \"" + PlainText.line(name) + "\"; see: devices");
      case 1 -> unpair(meant.getFirst());
      default ->
          remark(
              "Several devices are called so; say which: "
                  + meant.stream().map(PairedDevice::id).collect(Collectors.joining(", ")));
    }
  }

  private void unpair(PairedDevice device) {
    try {
      server.unpair(device.id());
    } catch (IOException e) {
      var problem = FileProblems.of(e);
      remark(problem.sentence());
      remark(problem.remedy());
    }
  }

  /** Says who came and who went since it was said last. */
  synchronized void devicesChanged() {
    if (ended) {
      return;
    }
    var now = server.devices();
    for (var news : DeviceNews.between(known, now)) {
      var name = PlainText.line(news.device().name());
      switch (news) {
        case DeviceNews.Paired(var device) ->
            tell(
                "paired",
                name + " is paired as " + kind.word(device.role()) + ".",
                members(device));
        case DeviceNews.Came(var device) ->
            tell("connected", name + " is connected.", members(device));
        case DeviceNews.Left(var device) ->
            tell("left", name + " has no connection.", members(device));
        case DeviceNews.Unpaired(var device) ->
            tell("unpaired", name + " is unpaired.", members(device));
      }
    }
    known = now;
    output.out().flush();
  }

  @Override
  public void shown(JobView view) {}

  /** Says what keeps the folder from being read or written, and that it can be again. */
  @Override
  public synchronized void failing(List<Throwable> failures) {
    failures.stream()
        .findFirst()
        .map(Failure::of)
        .ifPresentOrElse(
            failure -> failure.print(output.err()),
            () -> remark("The job's folder can be read and written again."));
  }

  private String described(PairedDevice device) {
    return "%s  %s  %s  %s"
        .formatted(
            device.id(),
            PlainText.line(device.name()),
            kind.word(device.role()),
            device.connected() ? "connected" : "seen last at " + time(device.lastSeen()));
  }

  private String time(Instant at) {
    return LocalDateTime.ofInstant(at, zone).format(TIME);
  }

  private void tell(String event, String text, SequencedMap<String, Object> members) {
    if (output.json()) {
      var line = new LinkedHashMap<String, Object>();
      line.put("event", event);
      line.putAll(members);
      output.writeLine(line);
    } else {
      output.out().println(text);
    }
  }

  /** Says something that is no result. */
  synchronized void remark(String text) {
    output.err().println(text);
    output.err().flush();
  }

  private SequencedMap<String, Object> members(PairedDevice device) {
    return members(
        "device",
        device.id(),
        "name",
        device.name(),
        "role",
        kind.word(device.role()),
        "connected",
        device.connected(),
        "lastSeen",
        device.lastSeen().toString());
  }

  private static SequencedMap<String, Object> members(Object... namesAndValues) {
    var members = new LinkedHashMap<String, Object>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      members.put(namesAndValues[i].toString(), namesAndValues[i + 1]);
    }
    return members;
  }
}
