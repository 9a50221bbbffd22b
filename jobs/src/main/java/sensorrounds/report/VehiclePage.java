package sensorrounds.report;

import java.util.List;
import sensorrounds.story.Block;
import sensorrounds.story.Page;
import sensorrounds.story.PageText;

/**
 * Writes one vehicle's page as HTML that stands on its own, in the looks of the report: well-formed, everything escaped,
 * nothing fetched and no script at all (content security policy).
 */
public final class VehiclePage {
    private VehiclePage() {}

    /** @param reportLink relative address of the report it belongs to; null for a page that stands alone */
    public static String html(Page page, String reportLink) {
        String style = HtmlReport.resource("report.css") + "\n" + HtmlReport.resource("vehicle.css");
        return new PageFrame("Vehicle " + Html.shorten(page.vehicleId()), style, null)
                .text(h -> body(h, page, reportLink));
    }

    private static void body(Html h, Page page, String reportLink) {
        h.open("body", "class", "vehicle-page");
        h.open("header");
        h.open("p", "class", "house");
        if (reportLink == null) {
            h.text("Sensor Rounds");
        } else {
            h.element("a", "Sensor Rounds: back to the report", "href", reportLink);
        }
        h.close("p");
        h.open("h1").text("Vehicle ").data(page.vehicleId()).close();
        h.open("p", "class", "under").data(page.under()).close();
        h.close("header").line();
        h.open("main").line();
        page.parts().forEach(p -> part(h, p));
        h.close("main").line().close("body").line();
    }

    private static void part(Html h, Page.Part part) {
        h.open("section", "id", part.id(), "aria-labelledby", part.id() + "-title");
        h.element("h2", part.title(), "id", part.id() + "-title");
        part.blocks().forEach(b -> block(h, b));
        h.close("section").line();
    }

    private static void block(Html h, Block block) {
        if (block instanceof Block.Prose p) {
            h.open("p").story(p.text()).close();
        } else if (block instanceof Block.Items items) {
            items(h, items);
        } else if (block instanceof Block.Grid grid) {
            grid(h, grid);
        }
    }

    private static void items(Html h, Block.Items items) {
        String list = items.order() == Block.Order.NUMBERED ? "ol" : "ul";
        h.open(list, "class", "told");
        for (Block.Item item : items.items()) {
            h.open("li");
            if (!item.lead().isEmpty()) {
                h.open("strong")
                        .data(PageText.tied(item.lead()))
                        .text(item.text().isEmpty() ? "" : ":")
                        .close()
                        .text(" ");
            }
            h.story(item.text());
            if (!item.details().isEmpty()) {
                h.open("ul");
                item.details().forEach(d -> h.open("li").story(d).close());
                h.close("ul");
            }
            h.close("li").line();
        }
        h.close(list).line();
    }

    private static void grid(Html h, Block.Grid grid) {
        h.open("div", "class", "box scrolls", "tabindex", "0", "role", "region", "aria-label", grid.caption());
        h.open("table").element("caption", grid.caption(), "class", "unseen");
        h.open("thead").open("tr");
        grid.heads().forEach(head -> h.open("th", "scope", "col").data(head).close());
        h.close("tr").close("thead").line().open("tbody");
        for (List<String> row : grid.rows()) {
            h.open("tr");
            for (int i = 0; i < row.size(); i++) {
                cell(h, i, row.get(i));
            }
            h.close("tr").line();
        }
        h.close("tbody").close("table").close("div").line();
    }

    private static void cell(Html h, int column, String text) {
        if (column == 0) {
            h.open("th", "scope", "row").data(text).close();
        } else if (text.isEmpty()) {
            h.empty("td");
        } else {
            h.open("td").data(PageText.tied(text)).close();
        }
    }
}
