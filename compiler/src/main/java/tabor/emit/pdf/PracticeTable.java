package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.RehearsalMark;
import tabor.emit.engrave.Sign;
import tabor.groove.Chart;
import tabor.lists.Lists;
import tabor.perform.ChartWords;
import tabor.perform.RoadMap;
import tabor.rhythm.Tempo;
import tabor.words.Words;

/**
 * A chart as a table: mark, what is played, how often, bars, tempo, cue, the running number of its
 * first bar and the minute at which it starts; below each climb a row of boxes; the total time
 * closes it. Columns in which nothing stands are left out. On each page that it goes on to, the
 * heading row stands again.
 */
final class PracticeTable {
  /** More rungs than this are not given a box each. */
  private static final int MOST = 120;

  private static final double LEADING = 1.3;

  private static final List<String> HEADS =
      List.of("what", "how-much", "bars", "tempo", "cue", "bar", "start");

  /** Columns of running text, the others being as narrow as they can. */
  private static final Map<Integer, Double> WIDE = Map.of(1, 0.3, 2, 0.28, 4, 0.19, 5, 0.23);

  private static final Set<Integer> RIGHT = Set.of(3, 6, 7);

  /** A line of the table; {@code holds} for one that begins with a hold sign. */
  private record Row(List<String> cells, Chart.@Nullable Climb climb, boolean holds) {}

  private final TextSetter type;
  private final Words words;
  private final ChartWords said;
  private final List<String> heads;
  private final double size;
  private final double width;

  PracticeTable(TextSetter type, Words words, double size, double width) {
    this.type = type;
    this.words = words;
    this.said = new ChartWords(words);
    this.heads = new ArrayList<>(List.of(""));
    HEADS.forEach(head -> heads.add(words.text("road-map." + head)));
    this.size = size;
    this.width = width;
  }

  List<Block> of(Chart chart) {
    RoadMap map = RoadMap.of(chart);
    List<Row> rows = rows(map);
    double[] left = new double[heads.size()];
    double[] wide = columns(rows, left);
    List<Block> blocks = new ArrayList<>();
    Block head = row(new Row(heads, null, false), left, wide, Face.BOLD, true);
    blocks.add(head);
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      // No row stands alone under its heading, neither the first nor the last.
      boolean keep = row.climb() != null || i == 0 || i == rows.size() - 2;
      blocks.add(row(row, left, wide, Face.REGULAR, keep).under(head));
      if (row.climb() != null) {
        boolean goesOn = i + 1 < rows.size();
        climb(row.climb()).forEach(block -> blocks.add(goesOn ? block.under(head) : block));
      }
    }
    String total = words.text("road-map.total", RoadMap.clock(map.micros()), said.bars(map.bars()));
    int last = blocks.size() - 1;
    blocks.set(last, blocks.get(last).followedBy(size * 0.5).kept());
    blocks.add(type.text(total, size, width, size * 0.3, false, Face.BOLD));
    return blocks;
  }

  /** Marks and cues stand in the row of what they are said for. */
  private List<Row> rows(RoadMap map) {
    List<Row> rows = new ArrayList<>();
    List<String> marks = new ArrayList<>();
    List<String> cues = new ArrayList<>();
    for (RoadMap.Stop stop : map.stops()) {
      if (stop.item() instanceof Chart.Mark mark) {
        marks.add(mark.text());
      } else if (stop.item() instanceof Chart.Cue cue) {
        cues.add(said.of(cue));
      } else {
        boolean waits = stop.segments() == 0;
        rows.add(
            row(stop, waits ? "" : String.join(" ", marks), waits ? "" : String.join("; ", cues)));
        if (!waits) {
          marks.clear();
          cues.clear();
        }
      }
    }
    if (!marks.isEmpty() || !cues.isEmpty()) {
      String end = RoadMap.clock(map.micros());
      List<String> cells =
          List.of(String.join(" ", marks), "", "", "", "", String.join("; ", cues), "", end);
      rows.add(new Row(cells, null, false));
    }
    return rows;
  }

  private Row row(RoadMap.Stop stop, String mark, String cue) {
    Chart.Item item = stop.item();
    String what = said.of(item);
    String much = "";
    if (item instanceof Chart.Play play) {
      what = said.names(play);
      much = said.after(play);
    } else if (item instanceof Chart.Trade trade) {
      what = trade.turn().groove().caption();
      much = words.text("road-map.trade", said.after(trade));
    } else if (item instanceof Chart.Climb climb) {
      what = climb.groove().caption();
      much = said.after(climb);
    }
    boolean passes = stop.segments() > 0;
    List<String> cells =
        List.of(
            mark,
            what,
            much,
            stop.bars() > 0 ? String.valueOf(stop.bars()) : "",
            stop.tempo(words),
            cue,
            stop.bars() > 0 ? String.valueOf(stop.bar()) : "",
            passes ? RoadMap.clock(stop.start()) : "");
    Chart.Climb ladder = item instanceof Chart.Climb climb ? climb : null;
    return new Row(cells, ladder, item instanceof Chart.Hold);
  }

  /** Where the columns stand and how wide they are; 0 for one in which nothing stands. */
  private double[] columns(List<Row> rows, double[] left) {
    double gap = size * 0.8;
    double[] wide = new double[heads.size()];
    double rest = width;
    double shares = 0;
    for (int i = 0; i < wide.length; i++) {
      int column = i;
      if (Lists.all(rows, row -> row.cells().get(column).isEmpty())) {
        continue;
      }
      Double share = WIDE.get(i);
      if (share != null) {
        shares += share;
        wide[i] = share;
        rest -= gap;
        continue;
      }
      wide[i] = type.width(heads.get(i), size, Face.BOLD);
      for (Row row : rows) {
        String text = row.cells().get(i);
        boolean mark = i == 0 && !text.isEmpty();
        wide[i] =
            Math.max(
                wide[i],
                mark
                    ? RehearsalMark.width(text, size, type.font())
                    : type.width(text, size, Face.BOLD));
      }
      wide[i] = Math.min(wide[i], width / 8);
      rest -= wide[i] + gap;
    }
    double x = 0;
    for (int i = 0; i < wide.length; i++) {
      if (WIDE.containsKey(i)) {
        wide[i] = shares == 0 ? 0 : wide[i] / shares * (rest + gap);
      }
      left[i] = x;
      x += wide[i] > 0 ? wide[i] + gap : 0;
    }
    return wide;
  }

  private Block row(Row row, double[] left, double[] wide, Face face, boolean keep) {
    List<String> cells = row.cells();
    List<Mark> marks = new ArrayList<>();
    int most = 1;
    for (int i = 0; i < cells.size(); i++) {
      if (wide[i] <= 0 || cells.get(i).isEmpty()) {
        continue;
      }
      if (i == 0 && fits(cells.get(i), wide[i])) {
        marks.add(RehearsalMark.at(cells.get(i), 0, size * 0.11, size, type.font()));
        continue;
      }
      Face own = i == 0 ? Face.BOLD : face;
      double sign = i == 1 && row.holds() ? size * 1.5 : 0;
      if (sign > 0) {
        Sign fermata = Sign.of("fermataAbove");
        double scale = size * 1.15 / fermata.box().width();
        marks.add(new Mark.Glyph(fermata, left[i], size * 1.15, scale));
      }
      List<String> lines = type.wrap(cells.get(i), size, room(cells, i, left, wide) - sign, own);
      for (int k = 0; k < lines.size(); k++) {
        boolean right = RIGHT.contains(i);
        double x = right ? left[i] + wide[i] : left[i] + sign;
        Mark.Align align = right ? Mark.Align.RIGHT : Mark.Align.LEFT;
        marks.add(type.line(lines.get(k), x, size * (1.15 + k * LEADING), size, align, own));
      }
      most = Math.max(most, lines.size());
    }
    double height = size * (0.5 + most * LEADING);
    double thick = face == Face.BOLD ? 0.9 : 0.3;
    marks.add(Mark.Line.rule(0, height, width, height, thick));
    return new Block(marks, height, 0.1, keep);
  }

  /** How wide a cell may be: what is done, as far as nothing stands beside it. */
  private static double room(List<String> cells, int column, double[] left, double[] wide) {
    double room = wide[column];
    for (int next = column + 1; column == 1 && next < wide.length; next++) {
      if (!cells.get(next).isEmpty()) {
        break;
      }
      room = wide[next] > 0 ? left[next] + wide[next] - left[column] : room;
    }
    return room;
  }

  /** True if a rehearsal mark stands in its column with a frame round it. */
  private boolean fits(String text, double width) {
    return RehearsalMark.width(text, size, type.font()) <= width + 0.01;
  }

  private List<Block> climb(Chart.Climb item) {
    List<Block> blocks = new ArrayList<>();
    String hint = words.text("road-map.tick", words.beats(item.tempi().get(0).beat()));
    Block tick = type.text(hint, size * 0.9, width, size * 0.5, true);
    double air = size * 0.3;
    blocks.add(
        new Block(Mark.moved(tick.marks(), 0, air, 1), tick.height() + air, tick.after(), true));
    List<Tempo> tempi = item.tempi();
    if (tempi.size() > MOST) {
      tempi = tempi.subList(0, MOST);
    }
    double widest = Lists.largest(tempi, t -> type.width(words.decimal(t.perMinute()), size));
    double cell = Math.max(size * 3.2, widest + size * 1.2);
    int columns = Math.max(1, (int) (width / cell));
    for (int start = 0; start < tempi.size(); start += columns) {
      int end = Math.min(tempi.size(), start + columns);
      blocks.add(boxes(tempi.subList(start, end), cell, end == tempi.size()));
    }
    if (tempi.size() < item.tempi().size()) {
      String last = words.decimal(item.tempi().get(item.tempi().size() - 1).perMinute());
      blocks.add(type.text(words.text("road-map.so-on", last), size, width, size * 0.3, false));
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
      String text = words.decimal(tempi.get(i).perMinute());
      marks.add(type.line(text, middle, size, size, Mark.Align.MIDDLE));
      Box box = new Box(middle - side / 2, size * 1.4, middle + side / 2, size * 1.4 + side);
      marks.add(
          Mark.Group.of("box", List.of(new Mark.Ink(Contour.rounded(box, size * 0.15, line)))));
    }
    return new Block(marks, size * 1.4 + side, size * (last ? 0.9 : 0.7), false);
  }
}
