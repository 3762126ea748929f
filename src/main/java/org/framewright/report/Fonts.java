package org.framewright.report;

import com.ibm.icu.text.ArabicShaping;
import com.ibm.icu.text.ArabicShapingException;
import com.ibm.icu.text.Bidi;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The fonts that the program brings along, with outlines that a PDF can hold in part. Only those of
 * scripts that a page has letters of are read.
 */
final class Fonts implements AutoCloseable {
  /** A font file. */
  private enum Face {
    REGULAR("Noto Sans", 400, "/org/framewright/ui/fonts/NotoSans_400Regular.ttf"),
    BOLD("Noto Sans", 700, "/org/framewright/ui/fonts/NotoSans_700Bold.ttf"),
    CODE("Source Code Pro", 400, "/org/framewright/ui/fonts/SourceCodePro_400Regular.ttf"),
    ARABIC("Noto Sans Arabic", 400, "fonts/NotoSansArabic-Regular.ttf"),
    ARABIC_BOLD("Noto Sans Arabic", 700, "fonts/NotoSansArabic-Bold.ttf"),
    HEBREW("Noto Sans Hebrew", 400, "fonts/NotoSansHebrew-Regular.ttf"),
    THAI("Noto Sans Thai", 400, "fonts/NotoSansThai-Regular.ttf"),
    EAST_ASIAN("Droid Sans Fallback", 400, "fonts/DroidSansFallback.ttf");

    private final String family;
    private final int weight;
    private final String resource;

    Face(String family, int weight, String resource) {
      this.family = family;
      this.weight = weight;
      this.resource = resource;
    }

    InputStream open() {
      return Objects.requireNonNull(Fonts.class.getResourceAsStream(resource), resource);
    }
  }

  /** Stands for what no font has a sign for. */
  private static final int NONE = '#';

  private static final Set<Face> ALWAYS = EnumSet.of(Face.REGULAR, Face.BOLD, Face.CODE);

  private final Map<Face, TrueTypeFont> outlines = new EnumMap<>(Face.class);

  /** A text as it is drawn, from its base line's beginning on. */
  record Outline(Shape shape, double width) {}

  /** Gives a builder the fonts for a text; the style sheet's list of their families. */
  static String families(String text, PdfRendererBuilder builder) {
    var needed = EnumSet.copyOf(ALWAYS);
    text.codePoints().filter(c -> c > 0x58F).forEach(c -> add(c, needed));
    for (var face : needed) {
      builder.useFont(
          face::open,
          face.family,
          face.weight,
          FontStyle.NORMAL,
          true,
          EnumSet.of(FSFontUseCase.DOCUMENT));
    }
    return Stream.concat(
            Stream.of(Face.REGULAR), needed.stream().filter(face -> !ALWAYS.contains(face)))
        .map(face -> face.family)
        .distinct()
        .map(family -> "'" + family + "'")
        .collect(Collectors.joining(", "));
  }

  private static void add(int c, Set<Face> needed) {
    switch (Character.UnicodeScript.of(c)) {
      case ARABIC -> {
        needed.add(Face.ARABIC);
        needed.add(Face.ARABIC_BOLD);
      }
      case HEBREW -> needed.add(Face.HEBREW);
      case THAI -> needed.add(Face.THAI);
      case HAN, HIRAGANA, KATAKANA, HANGUL, BOPOMOFO -> needed.add(Face.EAST_ASIAN);
      case COMMON -> {
        // Punctuation and full-width forms of East Asia.
        if ((c >= 0x3000 && c <= 0x33FF) || (c >= 0xFF00 && c <= 0xFFEF)) {
          needed.add(Face.EAST_ASIAN);
        }
      }
      default -> {}
    }
  }

  /** A text in one line, drawn. */
  Outline outline(String text, double size, boolean bold) {
    try {
      var drawn = new Path2D.Double();
      double at = 0;
      for (int c : inSight(text).codePoints().toArray()) {
        var found = fontWith(c, bold);
        var font = found.orElseGet(() -> font(Face.REGULAR));
        int glyph = font.getUnicodeCmapLookup().getGlyphId(found.isPresent() ? c : NONE);
        double scale = size / font.getUnitsPerEm();
        var data = font.getGlyph().getGlyph(glyph);
        if (data != null) {
          var place = new AffineTransform(scale, 0, 0, -scale, at, 0);
          drawn.append(data.getPath().getPathIterator(place), false);
        }
        at += font.getAdvanceWidth(glyph) * scale;
      }
      return new Outline(drawn, at);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * From left to right, with letters in the shapes that their neighbours give them, as the texts of
   * a page are set.
   */
  private static String inSight(String text) {
    if (!Bidi.requiresBidi(text.toCharArray(), 0, text.length())) {
      return text;
    }
    try {
      var shaped = new ArabicShaping(ArabicShaping.LETTERS_SHAPE).shape(text);
      return new Bidi(shaped, Bidi.DIRECTION_LEFT_TO_RIGHT)
          .writeReordered(Bidi.DO_MIRRORING | Bidi.KEEP_BASE_COMBINING);
    } catch (ArabicShapingException e) {
      throw new IllegalStateException(e); // only where letters are to take no more room than before
    }
  }

  private Optional<TrueTypeFont> fontWith(int c, boolean bold) throws IOException {
    var faces = EnumSet.of(bold ? Face.BOLD : Face.REGULAR);
    add(c, faces);
    for (var face : faces) {
      var font = font(face);
      if (font.getUnicodeCmapLookup().getGlyphId(c) != 0) {
        return Optional.of(font);
      }
    }
    return Optional.empty();
  }

  private TrueTypeFont font(Face face) {
    return outlines.computeIfAbsent(
        face,
        _ -> {
          try (var in = face.open()) {
            return new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
  }

  @Override
  public void close() throws IOException {
    for (var font : outlines.values()) {
      font.close();
    }
  }
}
