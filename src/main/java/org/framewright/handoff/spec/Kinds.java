package org.framewright.handoff.spec;

import java.util.List;
import java.util.Set;
import org.framewright.frames.PictureHeader;

/** What the kinds of files can hold, by the specifications of their formats, and their endings. */
final class Kinds {
  private static final Set<Integer> TIFF_BITS = Set.of(1, 2, 4, 8, 16, 32, 64);

  private Kinds() {}

  /** In small letters; the usual one first. */
  static List<String> endings(PictureHeader.Kind kind) {
    return switch (kind) {
      case JPEG -> List.of("jpg", "jpeg", "jpe");
      case PNG -> List.of("png");
      case TIFF, BIGTIFF -> List.of("tif", "tiff", "btf");
      case PSD -> List.of("psd");
      case PSB -> List.of("psb");
      case WEBP -> List.of("webp");
      case HEIF -> List.of("heic", "heif", "hif");
      case AVIF -> List.of("avif");
    };
  }

  /** Whether a file of a kind can have all that is asked. */
  static boolean canHave(PictureHeader.Kind kind, Asked asked, Rule rule) {
    return switch (asked) {
      case Asked.Numbers numbers -> numbers.numbers().stream().anyMatch(bits(kind)::contains);
      case Asked.Models models -> models.models().stream().anyMatch(models(kind)::contains);
      case Asked.Presence presence ->
          !presence.wanted()
              || switch (rule) {
                case LAYERS -> hasLayers(kind);
                case ALPHA -> kind != PictureHeader.Kind.JPEG;
                default -> true;
              };
      case Asked.Amount _ ->
          rule != Rule.RESOLUTION
              || switch (kind) {
                case JPEG, PNG, TIFF, BIGTIFF, PSD, PSB -> true;
                case WEBP, HEIF, AVIF -> false;
              };
      case Asked.Anything _, Asked.Kinds _, Asked.Ratios _, Asked.Profiles _, Asked.White _ -> true;
    };
  }

  private static Set<Integer> bits(PictureHeader.Kind kind) {
    return switch (kind) {
      case JPEG -> Set.of(8, 12);
      case PNG -> Set.of(1, 2, 4, 8, 16);
      case TIFF, BIGTIFF -> TIFF_BITS;
      case PSD, PSB -> Set.of(1, 8, 16, 32);
      case WEBP -> Set.of(8);
      case HEIF, AVIF -> Set.of(8, 10, 12);
    };
  }

  private static Set<PictureHeader.Model> models(PictureHeader.Kind kind) {
    return switch (kind) {
      case JPEG ->
          Set.of(PictureHeader.Model.RGB, PictureHeader.Model.GREY, PictureHeader.Model.CMYK);
      case PNG ->
          Set.of(PictureHeader.Model.RGB, PictureHeader.Model.GREY, PictureHeader.Model.INDEXED);
      case TIFF, BIGTIFF, PSD, PSB ->
          Set.of(
              PictureHeader.Model.RGB,
              PictureHeader.Model.GREY,
              PictureHeader.Model.CMYK,
              PictureHeader.Model.LAB,
              PictureHeader.Model.INDEXED);
      case WEBP -> Set.of(PictureHeader.Model.RGB);
      case HEIF, AVIF -> Set.of(PictureHeader.Model.RGB, PictureHeader.Model.GREY);
    };
  }

  private static boolean hasLayers(PictureHeader.Kind kind) {
    return switch (kind) {
      case TIFF, BIGTIFF, PSD, PSB -> true;
      case JPEG, PNG, WEBP, HEIF, AVIF -> false;
    };
  }
}
