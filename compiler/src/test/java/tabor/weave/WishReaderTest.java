package tabor.weave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class WishReaderTest {
  @Test
  void withoutWordsItIsAPictureOfEverything() throws Trouble {
    assertThat(WishReader.read("tabor")).isEqualTo(Wish.USUAL);
    assertThat(WishReader.read("tabor  \t")).isEqualTo(Wish.USUAL);
  }

  @Test
  void everyAttribute() throws Trouble {
    assertThat(
            WishReader.read(
                "tabor file=\"my lessons/a.tabor\" section=answer,quick as=grid width=480px counts"
                    + " for=mia caption=\"Left, then right = fine\""))
        .isEqualTo(
            new Wish(
                Wish.As.GRID,
                480,
                true,
                "Left, then right = fine",
                "my lessons/a.tabor",
                List.of("answer", "quick"),
                "mia"));
    assertThat(WishReader.read("tabor counts=no").counts()).isFalse();
    assertThat(WishReader.read("tabor counts=yes").counts()).isTrue();
  }

  @Test
  void onlyTheWordItselfBeginsABlock() {
    assertThat(WishReader.isNotation("tabor")).isTrue();
    assertThat(WishReader.isNotation("tabor as=grid")).isTrue();
    assertThat(WishReader.isNotation("tabors")).isFalse();
    assertThat(WishReader.isNotation("java")).isFalse();
    assertThat(WishReader.isNotation("")).isFalse();
    assertThat(WishReader.isNotation(null)).isFalse();
  }

  @Test
  void whatCannotBeReadIsSaid() {
    says("tabor wdth=300", "no attribute wdth", "width");
    says("tabor as=photo", "svg, grid, player, source, both", "photo");
    says("tabor width=wide", "180 to 4000", "wide");
    says("tabor width=179", "180 to 4000", "179");
    says("tabor width=4001", "180 to 4000", "4001");
    says("tabor width=99999999999", "180 to 4000");
    says("tabor caption=\"open", "closing quote");
    says("tabor as=svg as=grid", "twice");
    says("tabor file=", "names no lesson");
    says("tabor section=a,,b", "names no section");
    says("tabor =x", "cannot be read");
    says("tabor caption=\"a\"b", "cannot be read");
    says("tabor for=", "one player");
    says("tabor for=ada,ben", "one player", "ada,ben");
    says("tabor for=all", "one player");
    says("tabor for=ada as=source", "as=both");
    says("tabor counts=maybe", "yes or no");
  }

  private static void says(String info, String... parts) {
    assertThatThrownBy(() -> WishReader.read(info))
        .isInstanceOf(Trouble.class)
        .satisfies(
            thrown -> {
              Trouble trouble = (Trouble) thrown;
              assertThat(trouble.words() + " " + trouble.help()).contains(parts);
            });
  }
}
