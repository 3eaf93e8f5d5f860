package tabor.emit.png;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;

/** Pixels where ink is drawn, ground elsewhere. */
class PngWriterTest {
  private static BufferedImage read(Drawing drawing, PngWriter.Ground ground) throws Exception {
    return ImageIO.read(new ByteArrayInputStream(PngWriter.write(drawing, ground)));
  }

  private static Drawing square() {
    Mark ink = new Mark.Ink(Contour.band(1, 1.5, 2, 1.5, 1));
    Mark text = new Mark.Words("I", 5, 3, 3, Mark.Align.LEFT, 1);
    return new Drawing(10, 4, "square", "", List.of(ink, Mark.Group.of("text", List.of(text))));
  }

  @Test
  void whiteGroundBlackInk() throws Exception {
    BufferedImage image = read(square(), PngWriter.Ground.WHITE);
    // Twenty pixels a space, a margin of one and a half spaces.
    assertThat(image.getWidth()).isEqualTo(260);
    assertThat(image.getHeight()).isEqualTo(140);
    assertThat(image.getRGB(60, 60) & 0xFFFFFF).isZero();
    assertThat(image.getRGB(5, 5) & 0xFFFFFF).isEqualTo(0xFFFFFF);
  }

  @Test
  void clearGround() throws Exception {
    BufferedImage image = read(square(), PngWriter.Ground.CLEAR);
    assertThat(image.getRGB(5, 5) >>> 24).isZero();
    assertThat(image.getRGB(60, 60) >>> 24).isEqualTo(255);
  }

  @Test
  void lettersAreDrawnFromTheFont() throws Exception {
    BufferedImage image = read(square(), PngWriter.Ground.WHITE);
    int dark = 0;
    for (int x = 130; x < 160; x++) {
      for (int y = 30; y < 95; y++) {
        dark += (image.getRGB(x, y) & 0xFF) < 128 ? 1 : 0;
      }
    }
    // The stroke of a capital I: about 43 pixels high and 4 to 6 wide.
    assertThat(dark).isBetween(130, 320);
  }

  @Test
  void aVeryLongDrawingIsDrawnSmaller() throws Exception {
    Drawing drawing = new Drawing(5, 4000, "long", "", List.of());
    assertThat(read(drawing, PngWriter.Ground.WHITE).getHeight()).isEqualTo(16_000);
  }
}
