package quietband.report.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.QuadCurve2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Scanner;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import quietband.report.chart.ChartStyle;

/** What is written as SVG, read back and painted, looks as what Java paints by itself. */
class SvgGraphicsTest {

    private static final int SIZE = 300;

    @Test
    void lines_of_every_kind_look_as_painted() throws Exception {
        same(g -> {
            g.setColor(new Color(20, 90, 160));
            g.setStroke(new BasicStroke(3, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 1, new float[] {12, 6, 2, 6}, 5));
            g.draw(new Ellipse2D.Double(30.3, 40.6, 200, 120));
            g.setStroke(new BasicStroke(9, BasicStroke.CAP_SQUARE, BasicStroke.JOIN_BEVEL));
            g.drawPolyline(new int[] {40, 140, 60}, new int[] {200, 220, 270}, 3);
            g.setStroke(new BasicStroke(4));
            g.drawLine(200, 210, 280, 290);
            g.draw(new QuadCurve2D.Double(10, 10, 150, 90, 290, 10));
        });
    }

    @Test
    void moved_turned_and_stretched_shapes_look_as_painted() throws Exception {
        same(g -> {
            g.translate(100, 50);
            g.rotate(0.4, 20, 30);
            g.setColor(Color.RED);
            g.fillRect(0, 0, 90, 40);
            g.scale(2, 2);
            g.setStroke(new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {5, 5}, 2));
            g.setColor(Color.BLACK);
            g.drawRoundRect(10, 30, 60, 40, 14, 20);
            Graphics2D other = (Graphics2D) g.create();
            other.shear(0.3, 0);
            other.setColor(Color.GREEN);
            other.fillOval(0, 60, 40, 20);
            other.dispose();
            g.fillPolygon(new int[] {0, 20, 10}, new int[] {80, 80, 95}, 3);
        });
    }

    @Test
    void clips_holes_and_transparency_look_as_painted() throws Exception {
        same(g -> {
            g.setColor(Color.ORANGE);
            g.fillRect(0, 150, 300, 60);
            g.clip(new Rectangle2D.Double(40, 40, 200, 180));
            g.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, 0.4f));
            g.setColor(new Color(0, 0, 200, 128));
            g.fillOval(0, 0, 200, 200);
            g.setComposite(AlphaComposite.SrcOver);
            g.clip(new Ellipse2D.Double(100, 100, 190, 190));
            Path2D holed = new Path2D.Double(Path2D.WIND_EVEN_ODD);
            holed.append(new Rectangle2D.Double(110, 90, 150, 150), false);
            holed.append(new Rectangle2D.Double(150, 130, 40, 40), false);
            g.setColor(Color.DARK_GRAY);
            g.fill(holed);
            g.setClip(0, 260, 300, 40);
            g.setColor(Color.PINK);
            g.fillRect(20, 250, 100, 30);
            g.translate(30, 30);
            assertThat(g.getClipBounds()).isEqualTo(new java.awt.Rectangle(-30, 230, 300, 40));
        });
    }

    @Test
    void text_and_pictures_look_as_painted() throws Exception {
        BufferedImage inner = new BufferedImage(20, 10, BufferedImage.TYPE_INT_RGB);
        inner.setRGB(3, 3, 0xffffff);
        same(g -> {
            g.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 40));
            g.drawString("H < I & T", 20, 60);
            g.setColor(Color.BLUE);
            g.setFont(new Font(Font.MONOSPACED, Font.PLAIN, 30));
            g.rotate(-Math.PI / 2, 150, 200);
            g.clip(new Rectangle2D.Double(100, 180, 120, 80));
            g.drawString("turned", 110, 220);
            g.setTransform(new AffineTransform());
            g.setClip(null);
            g.drawImage(inner, 200, 200, 80, 40, null);
            g.drawImage(inner, 20, 250, Color.RED, null);
        });
    }

    @Test
    void nothing_but_plain_colours_is_drawn() {
        assertThatThrownBy(() -> Svg.draw("p", "t", 10, 10, g -> g.setPaint(new GradientPaint(0, 0, Color.RED, 9, 9, Color.BLUE))))
            .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("GradientPaint");
    }

    @Test
    void numbers_have_two_decimals_at_most() {
        StringBuilder out = new StringBuilder();
        for (double v : new double[] {0, -0.004, 0.005, 12.5, -3.456, 7.999, 1e300}) {
            SvgElements.number(out, v);
            out.append(' ');
        }
        assertThat(out.toString()).isEqualTo("0 0 0.01 12.5 -3.46 8 1000000000 ");
    }

    @Test
    void ids_begin_with_the_name_and_words_are_escaped() {
        String svg = Svg.draw("some-name", "a < b & \"c\"", 10, 10, g -> {
            g.clipRect(0, 0, 5, 5);
            g.fillRect(0, 0, 8, 8);
        });
        assertThat(svg).contains("<title>a &lt; b &amp; &quot;c&quot;</title>").contains("id=\"some-name-clip1\"")
            .contains("url(#some-name-clip1)");
    }

    /**
     * Paints a drawing directly and by way of SVG. Edges are smoothed, and coordinates rounded to 0.01 px move a smoothed edge by
     * some levels of 255; a line that is missing, misplaced by half a px or of another width moves many pixels by more than 60.
     */
    private static void same(Consumer<Graphics2D> drawing) throws Exception {
        BufferedImage direct = canvas();
        Graphics2D g = smooth(direct);
        g.setFont(ChartStyle.FONT);
        drawing.accept(g);
        BufferedImage read = canvas();
        paint(Svg.draw("n", "title", SIZE, SIZE, drawing), smooth(read));
        int different = 0;
        int drawn = 0;
        for (int i = 0; i < SIZE * SIZE; i++) {
            int a = direct.getRGB(i % SIZE, i / SIZE);
            int b = read.getRGB(i % SIZE, i / SIZE);
            drawn += (a & 0xffffff) == 0xffffff ? 0 : 1;
            for (int shift = 0; shift < 24; shift += 8) {
                if (Math.abs((a >> shift & 255) - (b >> shift & 255)) > 60) {
                    different++;
                    break;
                }
            }
        }
        assertThat(drawn).isGreaterThan(1000);
        assertThat(different).as("pixels that look different, of " + drawn).isLessThan(10);
    }

    private static BufferedImage canvas() {
        BufferedImage image = new BufferedImage(SIZE, SIZE, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, SIZE, SIZE);
        g.dispose();
        return image;
    }

    private static Graphics2D smooth(BufferedImage image) {
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setColor(Color.BLACK);
        return g;
    }

    private static void paint(String svg, Graphics2D g) throws Exception {
        Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        Map<String, Shape> clips = new HashMap<>();
        for (Element clip : elements(document, "clipPath")) {
            clips.put("url(#" + clip.getAttribute("id") + ")", path((Element) clip.getFirstChild()));
        }
        for (Node n = document.getDocumentElement().getFirstChild(); n != null; n = n.getNextSibling()) {
            Element e = (Element) n;
            Graphics2D own = (Graphics2D) g.create();
            if (e.hasAttribute("transform")) {
                double[] m = new Scanner(e.getAttribute("transform").replaceAll("[a-z()]", " ").replace(',', ' '))
                    .useLocale(java.util.Locale.ROOT).tokens().mapToDouble(Double::parseDouble).toArray();
                own.transform(new AffineTransform(m));
            }
            if (e.hasAttribute("clip-path")) {
                own.clip(clips.get(e.getAttribute("clip-path")));
            }
            element(e, own);
        }
    }

    private static void element(Element e, Graphics2D g) throws Exception {
        switch (e.getTagName()) {
            case "path" -> {
                if (e.getAttribute("fill").equals("none")) {
                    g.setColor(colour(e, "stroke"));
                    g.setStroke(stroke(e));
                    g.draw(path(e));
                } else {
                    g.setColor(colour(e, "fill"));
                    g.fill(path(e));
                }
            }
            case "text" -> {
                g.setColor(colour(e, "fill"));
                String family = e.getAttribute("font-family").equals("monospace") ? Font.MONOSPACED : Font.SANS_SERIF;
                g.setFont(new Font(family, e.getAttribute("font-weight").equals("bold") ? Font.BOLD : Font.PLAIN, 1)
                    .deriveFont(Float.parseFloat(e.getAttribute("font-size"))));
                g.drawString(e.getTextContent(), Float.parseFloat(e.getAttribute("x")), Float.parseFloat(e.getAttribute("y")));
            }
            case "image" -> g.drawImage(ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(
                e.getAttribute("href").substring(e.getAttribute("href").indexOf(',') + 1)))), 0, 0, null);
            default -> { }
        }
    }

    private static BasicStroke stroke(Element e) {
        int cap = switch (e.getAttribute("stroke-linecap")) {
            case "round" -> BasicStroke.CAP_ROUND;
            case "square" -> BasicStroke.CAP_SQUARE;
            default -> BasicStroke.CAP_BUTT;
        };
        int join = switch (e.getAttribute("stroke-linejoin")) {
            case "round" -> BasicStroke.JOIN_ROUND;
            case "bevel" -> BasicStroke.JOIN_BEVEL;
            default -> BasicStroke.JOIN_MITER;
        };
        float[] dashes = null;
        if (e.hasAttribute("stroke-dasharray")) {
            String[] parts = e.getAttribute("stroke-dasharray").split(",");
            dashes = new float[parts.length];
            for (int i = 0; i < parts.length; i++) {
                dashes[i] = Float.parseFloat(parts[i]);
            }
        }
        float phase = e.hasAttribute("stroke-dashoffset") ? Float.parseFloat(e.getAttribute("stroke-dashoffset")) : 0;
        return new BasicStroke(Float.parseFloat(e.getAttribute("stroke-width")), cap, join, 4, dashes, phase);
    }

    private static Color colour(Element e, String what) {
        int rgb = Integer.parseInt(e.getAttribute(what).substring(1), 16);
        String opacity = e.getAttribute(what + "-opacity");
        return new Color(rgb >> 16, rgb >> 8 & 255, rgb & 255, opacity.isEmpty() ? 255 : Math.round(255 * Float.parseFloat(opacity)));
    }

    private static Shape path(Element e) {
        Path2D path = new Path2D.Double("evenodd".equals(e.getAttribute("fill-rule")) ? Path2D.WIND_EVEN_ODD : Path2D.WIND_NON_ZERO);
        for (String part : e.getAttribute("d").split("(?=[MLQCZ])")) {
            double[] c = part.length() == 1 ? new double[0]
                : java.util.Arrays.stream(part.substring(1).split(" ")).mapToDouble(Double::parseDouble).toArray();
            switch (part.charAt(0)) {
                case 'M' -> path.moveTo(c[0], c[1]);
                case 'L' -> path.lineTo(c[0], c[1]);
                case 'Q' -> path.quadTo(c[0], c[1], c[2], c[3]);
                case 'C' -> path.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
                default -> path.closePath();
            }
        }
        return path;
    }

    private static List<Element> elements(Document document, String name) {
        List<Element> all = new ArrayList<>();
        for (int i = 0; i < document.getElementsByTagName(name).getLength(); i++) {
            all.add((Element) document.getElementsByTagName(name).item(i));
        }
        return all;
    }
}
