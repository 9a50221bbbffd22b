package sensorrounds.story;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PageTextTest {
    @Test
    void noLineIsLongerThanTheTerminal() {
        String text = text(
                new Block.Prose("word ".repeat(80)),
                new Block.Prose("x".repeat(250)),
                new Block.Items(
                        Block.Order.NUMBERED,
                        List.of(new Block.Item("lead ".repeat(30), "text", List.of("detail ".repeat(40))))));
        assertThat(text.lines()).allMatch(l -> l.length() <= PageText.WIDTH);
        assertThat(text.replaceAll("\\s", "")).contains("x".repeat(250));
    }

    @Test
    void aTableTooWideGoesOnInASecondBlockWithItsFirstColumnRepeated() {
        List<String> heads =
                IntStream.range(0, 14).mapToObj(i -> "column-" + i + "-").toList();
        String text = text(new Block.Grid("wide", heads, List.of(heads, heads)));
        assertThat(text.lines()).allMatch(l -> l.length() <= PageText.WIDTH);
        assertThat(text.split("column-0-", -1)).hasSize(1 + 2 * 3);
        heads.forEach(h -> assertThat(text).contains(h));
    }

    @Test
    void aFigureKeepsItsUnitOnTheSameLine() {
        for (int pad = 80; pad < 100; pad++) {
            assertThat(text(new Block.Prose("x".repeat(pad) + " 35 % of it, 104\u00a0310 km")))
                    .contains("35 %")
                    .contains("104 310 km");
        }
    }

    @Test
    void whatWasTypedIntoALogCannotSteerTheTerminal() {
        String text = text(new Block.Prose("a\u001b[31mred\u0007\u202egnp\nb"));
        assertThat(text).contains("a.[31mred..gnp.b").doesNotContain("\u001b", "\u202e", "\u0007");
    }

    private static String text(Block... blocks) {
        return PageText.of(new Page("V1", "under", List.of(new Page.Part("p", "Part", List.of(blocks)))));
    }
}
