package org.framewright.report;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.io.File;
import java.io.InputStream;
import java.util.List;
import org.w3c.dom.Element;

/**
 * Draws what {@link ChartSvg} writes on paper. Letters are drawn as the outlines of our own fonts,
 * so that a computer without any fonts, as servers are, prints the same.
 */
final class ChartDrawer implements SVGDrawer {
  private static final float[] DASHES = {7, 5};

  private final Fonts fonts;

  ChartDrawer(Fonts fonts) {
    this.fonts = fonts;
  }

  @Override
  public SVGImage buildSVGImage(
      Element svg, Box box, CssContext context, double width, double height, double dotsPerPixel) {
    var view = svg.getAttribute("viewBox").split(" ", -1);
    double wide = Double.parseDouble(view[2]);
    double high = Double.parseDouble(view[3]);
    double shownWidth = width >= 0 ? width : wide * dotsPerPixel;
    return new Drawn(svg, shownWidth, shownWidth * high / wide, wide, dotsPerPixel);
  }

  private final class Drawn implements SVGImage {
    private final Element svg;
    private final double width;
    private final double height;
    private final double userWidth;
    private final double dotsPerPixel;

    Drawn(Element svg, double width, double height, double userWidth, double dotsPerPixel) {
      this.svg = svg;
      this.width = width;
      this.height = height;
      this.userWidth = userWidth;
      this.dotsPerPixel = dotsPerPixel;
    }

    @Override
    public int getIntrinsicWidth() {
      return (int) Math.round(width);
    }

    @Override
    public int getIntrinsicHeight() {
      return (int) Math.round(height);
    }

    @Override
    public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
      double wide = width / dotsPerPixel;
      double high = height / dotsPerPixel;
      device.drawWithGraphics(
          (float) x,
          (float) y,
          (float) wide,
          (float) high,
          pen -> {
            pen.scale(wide / userWidth, wide / userWidth);
            for (var child = svg.getFirstChild(); child != null; child = child.getNextSibling()) {
              if (child instanceof Element shape) {
                draw(shape, pen);
              }
            }
          });
    }
  }

  private void draw(Element shape, Graphics2D pen) {
    switch (shape.getTagName()) {
      case "rect" ->
          fillAndDraw(
              shape,
              new Rectangle2D.Double(
                  n(shape, "x"), n(shape, "y"), n(shape, "width"), n(shape, "height")),
              pen);
      case "line" ->
          fillAndDraw(
              shape,
              new Line2D.Double(n(shape, "x1"), n(shape, "y1"), n(shape, "x2"), n(shape, "y2")),
              pen);
      case "polygon", "polyline" -> fillAndDraw(shape, path(shape), pen);
      case "text" -> {
        boolean bold = shape.getAttribute("font-weight").equals("bold");
        var outline = fonts.outline(shape.getTextContent(), n(shape, "font-size"), bold);
        double back =
            switch (shape.getAttribute("text-anchor")) {
              case "middle" -> outline.width() / 2;
              case "end" -> outline.width();
              default -> 0;
            };
        pen.setColor(Color.decode(shape.getAttribute("fill")));
        pen.fill(
            AffineTransform.getTranslateInstance(n(shape, "x") - back, n(shape, "y"))
                .createTransformedShape(outline.shape()));
      }
      default -> throw new IllegalArgumentException("charts have no " + shape.getTagName());
    }
  }

  private static void fillAndDraw(Element element, java.awt.Shape shape, Graphics2D pen) {
    var fill = element.getAttribute("fill");
    if (!fill.isEmpty() && !fill.equals("none")) {
      pen.setColor(Color.decode(fill));
      pen.fill(shape);
    }
    var stroke = element.getAttribute("stroke");
    if (!stroke.isEmpty() && !stroke.equals("none")) {
      float thick = (float) n(element, "stroke-width");
      pen.setColor(Color.decode(stroke));
      pen.setStroke(
          element.getAttribute("stroke-dasharray").isEmpty()
              ? new BasicStroke(thick, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER)
              : new BasicStroke(
                  thick, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, DASHES, 0));
      pen.draw(shape);
    }
  }

  private static Path2D path(Element shape) {
    var path = new Path2D.Double();
    for (var point : shape.getAttribute("points").split(" ", -1)) {
      var xy = point.split(",", -1);
      double x = Double.parseDouble(xy[0]);
      double y = Double.parseDouble(xy[1]);
      if (path.getCurrentPoint() == null) {
        path.moveTo(x, y);
      } else {
        path.lineTo(x, y);
      }
    }
    if (shape.getTagName().equals("polygon")) {
      path.closePath();
    }
    return path;
  }

  private static double n(Element shape, String attribute) {
    return Double.parseDouble(shape.getAttribute(attribute));
  }

  @Override
  public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {}

  @Override
  public void addFontFile(File file, String family, Integer weight, FontStyle style) {}

  @Override
  public void addFontStream(
      FSSupplier<InputStream> font, String family, Integer weight, FontStyle style) {}

  @Override
  public void close() {}
}
