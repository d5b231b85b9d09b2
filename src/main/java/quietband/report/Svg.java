package quietband.report;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.io.StringWriter;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGGraphics2DIOException;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What is drawn by Java's two-dimensional graphics as SVG text: the same bytes for the same drawing and fonts. */
public final class Svg {

    private static final String NAMESPACE = "http://www.w3.org/2000/svg";
    private static final Pattern PROLOGUE = Pattern.compile("(?s)^.*?(?=<svg)");
    private static final Pattern BREAKS = Pattern.compile("\\s*\\n\\s*");
    private static final Pattern SPACES = Pattern.compile("> +<");

    private Svg() { }

    /**
     * Draws.
     *
     * @param name   of the picture, letters, digits and hyphens: begins each id in it, so that several fit in one page
     * @param title  what it shows, for those who do not see it
     * @param width  in px
     * @param height in px
     */
    public static String draw(String name, String title, int width, int height, Consumer<Graphics2D> drawing) {
        try {
            Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder().getDOMImplementation()
                .createDocument(NAMESPACE, "svg", null);
            SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
            context.setPrecision(2);
            context.setComment("");
            context.setIDGenerator(new Named(name));
            SVGGraphics2D graphics = new SVGGraphics2D(context, false);
            graphics.setSVGCanvasSize(new Dimension(width, height));
            drawing.accept(graphics);
            Element root = graphics.getRoot();
            root.setAttribute("viewBox", "0 0 " + width + " " + height);
            root.setAttribute("role", "img");
            Element words = root.getOwnerDocument().createElementNS(NAMESPACE, "title");
            words.setTextContent(title);
            root.insertBefore(words, root.getFirstChild());
            StringWriter text = new StringWriter();
            graphics.stream(root, text, true, false);
            return tidy(text.toString(), name);
        } catch (ParserConfigurationException | SVGGraphics2DIOException e) {
            throw new IllegalStateException("the chart " + name + " cannot be written as SVG", e);
        } catch (InternalError | NoClassDefFoundError e) {
            throw new ResultException("charts need a font and this machine has none (" + e.getMessage()
                + "); install the packages fontconfig and fonts-dejavu-core");
        }
    }

    private static String tidy(String text, String name) {
        String body = PROLOGUE.matcher(text).replaceFirst("").replace("<!---->", "")
            .replace("\"genericDefs\"", "\"" + name + "-defs\"");
        return SPACES.matcher(BREAKS.matcher(body).replaceAll(" ")).replaceAll("><").replace(" >", ">").strip() + "\n";
    }

    /** Ids that begin with the picture's name and count on from 1. */
    private static final class Named extends SVGIDGenerator {

        private final String name;
        private int count;

        Named(String name) {
            this.name = name;
        }

        @Override
        public String generateID(String prefix) {
            count++;
            return name + "-" + prefix + count;
        }
    }
}
