package quietband.report.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Fills the templates of pages. What is put into them is escaped by the templates, SVG of our own apart. */
public final class PageTemplates {

    private PageTemplates() { }

    /** The page of a template: a document that needs no other file. */
    public static String render(String template, Object view) {
        TemplateEngine engine = TemplateEngine.createPrecompiled(null, ContentType.Html, PageTemplates.class.getClassLoader(),
            "quietband.report");
        StringOutput page = new StringOutput(1 << 19);
        engine.render(template, view, page);
        return page.toString();
    }

    /** The style sheet, for the head of a page. */
    public static String style() {
        try (InputStream in = PageTemplates.class.getResourceAsStream("look.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
