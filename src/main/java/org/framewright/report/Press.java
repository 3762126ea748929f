package org.framewright.report;

import com.openhtmltopdf.bidi.support.ICUBidiReorderer;
import com.openhtmltopdf.bidi.support.ICUBidiSplitter;
import com.openhtmltopdf.bidi.support.ICUBreakers;
import com.openhtmltopdf.extend.FSStream;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/**
 * Sets a page on paper: a tagged PDF that meets PDF/UA-1 and PDF/A-3a, with its fonts and an sRGB
 * profile inside. Nothing is loaded but the page's own pictures.
 */
final class Press {
  /** The scheme of the addresses of a page's own pictures. */
  static final String SCHEME = "picture";

  /** The bytes of a picture by what stands behind the scheme. */
  interface Pictures {
    byte[] bytes(String name) throws IOException;
  }

  private Press() {}

  /**
   * Prints a page.
   *
   * @param page well-formed, with {@link Page#FAMILIES} where its style sheet names the fonts
   * @return how many sheets of paper it takes
   * @throws CancellationException once that is asked for
   */
  static int print(
      String page, Locale language, Pictures pictures, OutputStream out, BooleanSupplier cancelled)
      throws IOException {
    XRLog.setLoggingEnabled(false);
    var builder = new PdfRendererBuilder();
    var families = Fonts.families(page, builder);
    // Pictures wait on the disk, not in memory.
    try (var document = new PDDocument(IOUtils.createTempFileOnlyStreamCache());
        var fonts = new Fonts()) {
      builder
          .usePdfUaAccessibility(true)
          .usePdfAConformance(PdfAConformance.PDFA_3_A)
          .useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData())
          .withProducer("Framewright")
          .useUnicodeBidiSplitter(new ICUBidiSplitter.ICUBidiSplitterFactory())
          .useUnicodeBidiReorderer(new ICUBidiReorderer())
          .useUnicodeLineBreaker(new ICUBreakers.ICULineBreaker(language))
          .useSVGDrawer(new ChartDrawer(fonts))
          .useExternalResourceAccessControl(
              (address, _) -> isOwn(address),
              ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
          .useExternalResourceAccessControl(
              (address, _) -> isOwn(address),
              ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI)
          .useProtocolsStreamImplementation(address -> stream(address, pictures), SCHEME)
          .usePDDocument(document)
          .usePageSupplier(
              (in, width, height, _, _) -> {
                if (cancelled.getAsBoolean()) {
                  throw new CancellationException();
                }
                var sheet = new PDPage(new PDRectangle(width, height));
                in.addPage(sheet);
                return sheet;
              })
          .withHtmlContent(page.replace(Page.FAMILIES, families), null)
          .toStream(out)
          .run();
      return document.getNumberOfPages();
    }
  }

  private static boolean isOwn(String address) {
    return address.startsWith(SCHEME + ":");
  }

  private static FSStream stream(String address, Pictures pictures) {
    return new FSStream() {
      @Override
      public InputStream getStream() {
        try {
          return new ByteArrayInputStream(pictures.bytes(address.substring(SCHEME.length() + 1)));
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }

      @Override
      public Reader getReader() {
        return new InputStreamReader(getStream(), StandardCharsets.UTF_8);
      }
    };
  }
}
