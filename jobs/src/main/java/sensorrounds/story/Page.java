package sensorrounds.story;

import java.util.List;

/**
 * One vehicle's page.
 *
 * @param under what and when, under the title
 */
public record Page(String vehicleId, String under, List<Part> parts) {
    public Page {
        parts = List.copyOf(parts);
    }

    /** A part of the page; one without blocks is left out by whoever writes it. */
    public record Part(String id, String title, List<Block> blocks) {
        public Part {
            blocks = List.copyOf(blocks);
        }
    }
}
