package org.framewright.handoff.spec;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.frames.PictureBorder;
import org.framewright.frames.PictureHeader;

/** Compares what a picture's header says with what is asked. */
final class Judgement {
  private static final String SRGB = "srgb";

  private final String file;
  private final Map<Rule, Asked> asked;
  private final Supplier<PictureBorder.Reading> border;
  private final List<SpecFinding> findings = new ArrayList<>();

  /**
   * @param border decoded only where something is asked of it
   */
  Judgement(String file, Map<Rule, Asked> asked, Supplier<PictureBorder.Reading> border) {
    this.file = file;
    this.asked = asked;
    this.border = border;
  }

  List<SpecFinding> of(PictureHeader.Reading reading) {
    switch (reading) {
      case PictureHeader.Reading.NotRead(Text why) ->
          find(
              Rule.READABLE,
              Text.NONE,
              Text.of("what it has cannot be read: {0}", why),
              Text.of("Save it again as a file of a kind that is asked for."));
      case PictureHeader.Reading.Read(PictureHeader header) -> {
        ending(header);
        asked.forEach((rule, what) -> judge(rule, what, header));
      }
    }
    return List.copyOf(findings);
  }

  private void find(Rule rule, Text wanted, Text has, Text fix) {
    findings.add(new SpecFinding(file, rule, wanted, has, fix));
  }

  private void judge(Rule rule, Asked what, PictureHeader header) {
    switch (what) {
      case Asked.Anything _ -> {}
      case Asked.Kinds kinds -> {
        if (!kinds.kinds().contains(header.kind())) {
          find(
              rule,
              kinds.words(),
              Text.of("it is of the kind {0}", header.kind().word()),
              Text.of("Save it as {0}.", kinds.kinds().getFirst().word()));
        }
      }
      case Asked.Models models -> {
        if (!models.models().contains(header.colour().model())) {
          find(
              rule,
              models.words(),
              Text.of("its colours are {0}", header.colour().model().word()),
              Text.of("Convert it to {0}.", models.words()));
        }
      }
      case Asked.Numbers numbers -> {
        if (!numbers.numbers().contains(header.colour().bits())) {
          find(
              rule,
              numbers.words(),
              Text.counted(
                  "it has {0} bit a channel", "it has {0} bits a channel", header.colour().bits()),
              Text.of("Export it with {0} bits a channel.", numbers.words()));
        }
      }
      case Asked.Ratios ratios -> ratio(rule, ratios, header.size());
      case Asked.Profiles profiles -> profile(profiles, header);
      case Asked.Presence presence -> presence(rule, presence, header);
      case Asked.Amount amount -> amount(rule, amount, header);
      case Asked.White white -> background(white);
    }
  }

  private void ratio(Rule rule, Asked.Ratios ratios, PictureHeader.Size size) {
    if (ratios.ratios().stream().noneMatch(one -> one.has(size.seenWidth(), size.seenHeight()))) {
      find(
          rule,
          ratios.words(),
          Text.of("it is {0} by {1} pixels", size.seenWidth(), size.seenHeight()),
          Text.of("Crop it to the proportions that are asked for."));
    }
  }

  private void amount(Rule rule, Asked.Amount amount, PictureHeader header) {
    var size = header.size();
    int wide = size.seenWidth();
    int high = size.seenHeight();
    switch (rule) {
      case WIDTH -> side(rule, amount, wide, Text.of("it is {0} pixels wide", wide));
      case HEIGHT -> side(rule, amount, high, Text.of("it is {0} pixels high", high));
      case LONG_SIDE -> {
        int side = Math.max(wide, high);
        side(rule, amount, side, Text.of("its long side has {0} pixels", side));
      }
      case SHORT_SIDE -> {
        int side = Math.min(wide, high);
        side(rule, amount, side, Text.of("its short side has {0} pixels", side));
      }
      case RESOLUTION -> resolution(amount, header);
      case FILE_SIZE -> {
        if (!amount.has(header.bytes())) {
          find(
              rule,
              amount.words(),
              Text.of("it has {0} bytes", new Text.Grouped(header.bytes())),
              header.bytes() > amount.most()
                  ? Text.of("Compress it more, or make it smaller.")
                  : Text.of("Compress it less."));
        }
      }
      default -> throw new IllegalStateException("an amount of " + rule);
    }
  }

  private void side(Rule rule, Asked.Amount amount, int side, Text has) {
    if (!amount.has(side)) {
      find(
          rule,
          amount.words(),
          has,
          side > amount.most()
              ? Text.of("Export it smaller.")
              : Text.of("Export it larger, from the picture in full size."));
    }
  }

  /** Rounded, since files count in metres, centimetres or fractions. */
  private void resolution(Asked.Amount amount, PictureHeader header) {
    var said = header.resolution();
    boolean right =
        said.isPresent()
            && amount.has(Math.round(said.get().across()))
            && amount.has(Math.round(said.get().down()));
    if (!right) {
      find(
          Rule.RESOLUTION,
          amount.words(),
          said.map(
                  it ->
                      Math.round(it.across()) == Math.round(it.down())
                          ? Text.of("it says {0} ppi", Math.round(it.across()))
                          : Text.of(
                              "it says {0} ppi across and {1} ppi down",
                              Math.round(it.across()), Math.round(it.down())))
              .orElse(Text.of("it says no resolution")),
          Text.of("Set the resolution that is asked for, and leave the pixels as they are."));
    }
  }

  private void profile(Asked.Profiles wanted, PictureHeader header) {
    var profile = header.profile();
    if (profile.isEmpty()) {
      find(
          Rule.PROFILE,
          wanted.words(),
          Text.of("it has no colour profile"),
          Text.of("Embed the profile when you export it."));
    } else if (!fits(wanted, profile.get())) {
      find(
          Rule.PROFILE,
          wanted.words(),
          said(profile),
          Text.of("Convert it, and embed the profile."));
    }
  }

  /** A PNG says by a mark of its own that it is sRGB; that is as good as the profile. */
  private static boolean fits(Asked.Profiles wanted, PictureHeader.Profile profile) {
    return wanted.names().isEmpty()
        || wanted.names().stream()
            .anyMatch(
                name ->
                    name.equalsIgnoreCase(profile.description())
                        || (!profile.embedded() && name.toLowerCase(Locale.ROOT).startsWith(SRGB)));
  }

  private static Text said(Optional<PictureHeader.Profile> profile) {
    return profile
        .map(PictureHeader.Profile::description)
        .filter(name -> !name.isBlank())
        .map(name -> Text.of("its colour profile is {0}", PlainText.line(name)))
        .orElse(Text.of("its colour profile says no name"));
  }

  private void presence(Rule rule, Asked.Presence presence, PictureHeader header) {
    switch (rule) {
      case PROFILE -> {
        if (header.profile().isPresent()) {
          find(
              rule,
              presence.words(),
              said(header.profile()),
              Text.of("Export it without a profile."));
        }
      }
      case ALPHA -> alpha(presence, header.colour().extra());
      case LAYERS -> layers(presence, header);
      default -> throw new IllegalStateException("the presence of " + rule);
    }
  }

  private void alpha(Asked.Presence presence, int extra) {
    if (extra > 0 && !presence.wanted()) {
      find(
          Rule.ALPHA,
          presence.words(),
          Text.counted(
              "it has {0} channel besides its colours",
              "it has {0} channels besides its colours", extra),
          Text.of("Delete alpha channels and transparency, and save it again."));
    } else if (extra == 0 && presence.wanted()) {
      find(
          Rule.ALPHA,
          presence.words(),
          Text.of("it has no channel besides its colours"),
          Text.of("Save it with its alpha channel."));
    }
  }

  private void layers(Asked.Presence presence, PictureHeader header) {
    if (presence.wanted() && header.layers() == 0) {
      find(
          Rule.LAYERS,
          presence.words(),
          Text.of("it has no layers"),
          Text.of("Save it with its layers."));
    } else if (!presence.wanted() && header.layers() > 0) {
      find(
          Rule.LAYERS,
          presence.words(),
          Text.counted("it has {0} layer", "it has {0} layers", header.layers()),
          Text.of("Flatten it, and save it again."));
    } else if (!presence.wanted() && header.pages() > 1) {
      find(
          Rule.LAYERS,
          presence.words(),
          Text.of("it holds {0} pictures one behind another", header.pages()),
          Text.of("Save it as one picture."));
    }
  }

  private void background(Asked.White white) {
    switch (border.get()) {
      case PictureBorder.Reading.NotRead(Text why) ->
          find(
              Rule.BACKGROUND,
              white.words(),
              Text.of("its background cannot be judged: {0}", why),
              Text.of("Look at it, or send a JPEG, PNG or TIFF in RGB or grey."));
      case PictureBorder.Reading.Read(PictureBorder read) -> {
        int off = read.fartherThan(white.within());
        if (off > 0) {
          find(
              Rule.BACKGROUND,
              white.words(),
              Text.of(
                  "{0} of {1} pixels at its border are not white; the farthest is {2} of 255 off",
                  new Text.Grouped(off), new Text.Grouped(read.pixels()), read.farthest()),
              Text.of("Make the background white up to all four sides."));
        }
      }
    }
  }

  /** Programs go by the ending, so one that says another kind is wrong whatever is asked. */
  private void ending(PictureHeader header) {
    int dot = file.lastIndexOf('.');
    var ending = dot < 0 ? "" : file.substring(dot + 1).toLowerCase(Locale.ROOT);
    var right = Kinds.endings(header.kind());
    if (!right.contains(ending)) {
      find(
          Rule.ENDING,
          Text.of("{0}", "." + right.getFirst()),
          Text.of(
              "its name ends in {0}, and it is of the kind {1}",
              "." + PlainText.line(ending), header.kind().word()),
          Text.of("Save it again, or give it the ending {0}.", "." + right.getFirst()));
    }
  }
}
