package sensorrounds.story;

import java.util.List;

/** A piece of a page. Its texts hold values from logs, so whoever writes them out escapes them. */
public sealed interface Block {
    /** A paragraph. */
    record Prose(String text) implements Block {}

    /**
     * A list.
     *
     * @param order whether its order means something
     */
    record Items(Order order, List<Item> items) implements Block {
        public Items {
            items = List.copyOf(items);
        }
    }

    /** Whether the items of a list are numbered. */
    enum Order {
        NUMBERED,
        PLAIN
    }

    /**
     * @param lead what the item is about; empty for none
     * @param details what stands under it, one line each
     */
    record Item(String lead, String text, List<String> details) {
        public Item {
            details = List.copyOf(details);
        }

        static Item of(String lead, String text) {
            return new Item(lead, text, List.of());
        }
    }

    /**
     * A table.
     *
     * @param rows cells in the order of {@code heads}
     */
    record Grid(String caption, List<String> heads, List<List<String>> rows) implements Block {
        public Grid {
            heads = List.copyOf(heads);
            rows = rows.stream().map(List::copyOf).toList();
        }
    }
}
