package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Mark;
import tabor.groove.Chart;
import tabor.rhythm.Tempo;

/** A chart as something to work through: its lines in words, and for each climb a row of boxes. */
final class PracticeTable implements Chart.Cases<List<Block>> {
  /** More rungs than this are not given a box each. */
  private static final int MOST = 120;

  private final TextSetter type;
  private final double size;
  private final double width;

  PracticeTable(TextSetter type, double size, double width) {
    this.type = type;
    this.size = size;
    this.width = width;
  }

  List<Block> of(Chart chart) {
    List<Block> blocks = new ArrayList<>();
    for (Chart.Item item : chart.items()) {
      blocks.addAll(item.match(this));
    }
    return blocks;
  }

  private List<Block> words(String text) {
    return List.of(type.text(text, size, width, size * 0.3, false));
  }

  private static String some(int count, String one) {
    return count == 1 ? "1 " + one : count + " " + one + "s";
  }

  private static String quoted(String title) {
    return "\u201c" + title + "\u201d";
  }

  @Override
  public List<Block> countIn(Chart.CountIn item) {
    return words("Count in " + some(item.bars(), "bar") + ".");
  }

  @Override
  public List<Block> click(Chart.SetClick item) {
    return words(
        switch (item.click()) {
          case OFF -> "Click off.";
          case ON -> "Click on.";
          case QUARTERS -> "Click on quarters.";
          case EIGHTHS -> "Click on eighths.";
        });
  }

  @Override
  public List<Block> play(Chart.Play item) {
    String names =
        item.turns().stream()
            .map(turn -> quoted(turn.groove().caption()))
            .collect(Collectors.joining(", then "));
    String tempi =
        item.turns().stream()
            .map(turn -> turn.tempo().words())
            .distinct()
            .collect(Collectors.joining(", then "));
    return words("Play " + names + ": " + some(item.times(), "time") + ", " + tempi + ".");
  }

  @Override
  public List<Block> rest(Chart.Rest item) {
    return words("Rest " + some(item.bars(), "bar") + ".");
  }

  @Override
  public List<Block> trade(Chart.Trade item) {
    return List.of();
  }

  @Override
  public List<Block> pause(Chart.Pause item) {
    return List.of();
  }

  @Override
  public List<Block> ramp(Chart.Ramp item) {
    return List.of();
  }

  @Override
  public List<Block> dynamic(Chart.SetDynamic item) {
    return List.of();
  }

  @Override
  public List<Block> hold(Chart.Hold item) {
    return List.of();
  }

  @Override
  public List<Block> cue(Chart.Cue item) {
    return List.of();
  }

  @Override
  public List<Block> mark(Chart.Mark item) {
    return List.of();
  }

  @Override
  public List<Block> climb(Chart.Climb item) {
    String each =
        switch (item.unit()) {
          case TIMES -> some(item.every(), "time");
          case BARS -> some(item.every(), "bar");
        };
    List<Block> blocks = new ArrayList<>();
    Tempo first = item.tempi().get(0);
    blocks.add(
        type.text(
            quoted(item.groove().caption())
                + ": "
                + each
                + " at each tempo ("
                + first.beatWords()
                + "s per minute). Tick what went well.",
            size,
            width,
            size * 0.5,
            true));
    List<Tempo> tempi = item.tempi();
    if (tempi.size() > MOST) {
      tempi = tempi.subList(0, MOST);
    }
    double widest =
        tempi.stream().mapToDouble(t -> type.width(t.perMinute().decimal(), size)).max().orElse(0);
    double cell = Math.max(size * 3.2, widest + size * 1.2);
    int columns = Math.max(1, (int) (width / cell));
    for (int start = 0; start < tempi.size(); start += columns) {
      int end = Math.min(tempi.size(), start + columns);
      blocks.add(boxes(tempi.subList(start, end), cell, end == tempi.size()));
    }
    if (tempi.size() < item.tempi().size()) {
      blocks.addAll(
          words(
              "… and so on to "
                  + item.tempi().get(item.tempi().size() - 1).perMinute().decimal()
                  + "."));
    }
    return blocks;
  }

  /** A row of tempi, each over a box. */
  private Block boxes(List<Tempo> tempi, double cell, boolean last) {
    List<Mark> marks = new ArrayList<>();
    double side = size * 1.35;
    double line = Math.max(0.6, size * 0.06);
    for (int i = 0; i < tempi.size(); i++) {
      double middle = (i + 0.5) * cell;
      String text = tempi.get(i).perMinute().decimal();
      marks.add(type.line(text, middle, size, size, Mark.Align.MIDDLE));
      Box box = new Box(middle - side / 2, size * 1.4, middle + side / 2, size * 1.4 + side);
      marks.add(
          Mark.Group.of("box", List.of(new Mark.Ink(Contour.rounded(box, size * 0.15, line)))));
    }
    return new Block(marks, size * 1.4 + side, size * (last ? 0.9 : 0.7), false);
  }
}
