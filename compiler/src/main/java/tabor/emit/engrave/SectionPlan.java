package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.cores.SpareCores;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.notation.Score;
import tabor.notation.Voice;
import tabor.rhythm.Meter;
import tabor.words.Words;

/**
 * A section, measured, ready to be broken into systems.
 *
 * @param score what it shows
 * @param look how it is drawn
 * @param font measures its texts
 * @param bars measured
 * @param spacings how far apart what stands in each bar is
 * @param tight the same as close as can still be read
 * @param measured what line breaking asks
 * @param spoken what it shows, in words
 */
record SectionPlan(
    Score score,
    Look look,
    TextMetrics font,
    List<BarPlan> bars,
    List<BarSpacing> spacings,
    List<BarSpacing> tight,
    LineBreaks.Measured measured,
    Spoken spoken) {
  /** The density of an ordinary page, as a part of natural spacing. */
  private static final double ORDINARY = 0.75;

  /** A cell has so much more room than what is not yet crowded. */
  private static final double CELL_AIR = 1.1;

  /** A system whose natural width is less than its share of the line is not stretched more. */
  private static final double MOST_STRETCH = 2.4;

  private static final double MOST_STRETCH_ALONE = 1.3;

  static SectionPlan of(Score score, Look wanted, TextMetrics font) {
    if (score.printed().isEmpty()) {
      throw new IllegalArgumentException("a score without bars");
    }
    Groove groove = score.groove();
    Look look =
        groove.isPickupOnly()
            ? wanted.withEnding(Look.Ending.OPEN)
            : wanted.signs().holds() ? wanted.withEnding(Look.Ending.FINAL) : wanted;
    boolean counts = look.counts() && groove.setting().showCounts();
    boolean sticking = look.boxes() || (look.annotated() && groove.setting().showSticking());
    List<tabor.notation.Bar> printed = score.printed();
    List<Columns> measuredBars =
        SpareCores.map(
            Lists.numbers(printed.size()),
            i -> {
              tabor.notation.Bar bar = printed.get(i);
              BarPlan plan =
                  look.blank()
                      ? BarPlan.blank(bar, groove.meter(bar.number()), counts, font)
                      : BarPlan.of(bar, counts, sticking, look.boxes(), font)
                          .widened(DynamicsPainter.room(groove, bar.number()));
              if (i > 0) {
                plan = plan.under(MeterSigns.at(groove, bar.number()));
              }
              boolean opens = bar.number() == 1 && groove.firstBar() == 0;
              if (opens && look.ending() == Look.Ending.LOOP) {
                plan = plan.opened(StaffPainter.OPENING);
              }
              BarColumns columns = new BarColumns(plan, groove.meter(bar.number()));
              return new Columns(
                  plan, new BarSpacing(columns, false), new BarSpacing(columns, true));
            });
    List<BarPlan> bars = Lists.map(measuredBars, Columns::plan);
    double[] wants = new double[bars.size()];
    double[] comfort = new double[bars.size()];
    double[] least = new double[bars.size()];
    List<BarSpacing> spacings = new ArrayList<>();
    List<BarSpacing> tight = new ArrayList<>();
    for (int i = 0; i < bars.size(); i++) {
      BarSpacing bar = orLike(i, spacings, measuredBars.get(i).loose());
      spacings.add(bar);
      tight.add(orLike(i, tight, measuredBars.get(i).tight()));
      wants[i] = bar.width(ORDINARY);
      comfort[i] = bar.comfort();
      least[i] = tight.get(i).width(0);
    }
    List<Integer> numbers = Lists.map(bars, bar -> bar.bar().number());
    LineBreaks.Measured measured = new LineBreaks.Measured(numbers, wants, comfort, least, 0, 0);
    return new SectionPlan(score, look, font, bars, spacings, tight, measured, new Spoken(score))
        .in(look);
  }

  /** A bar with what its columns need, as it likes best and as close as can still be read. */
  private record Columns(BarPlan plan, BarSpacing loose, BarSpacing tight) {}

  /** Bars that repeat each other are spaced once. */
  private static BarSpacing orLike(int i, List<BarSpacing> spacings, BarSpacing bar) {
    return i > 0 && bar.isLike(spacings.get(i - 1)) ? spacings.get(i - 1) : bar;
  }

  /** The same in lines of another width, or broken by other wishes; all else of a look stays. */
  SectionPlan in(Look other) {
    double courtesy = Lists.largest(bars, bar -> StaffPainter.courtesy(bar.meters()));
    double tail = Math.max(StaffPainter.tail(look.ending()), courtesy);
    double width = other.width();
    return new SectionPlan(
        score,
        look.withWidth(width).withLines(other.lines()),
        font,
        bars,
        spacings,
        tight,
        measured.inRoom(
            width - StaffPainter.prefix(head(score.groove())) - tail,
            width - StaffPainter.prefix(List.of()) - tail),
        spoken);
  }

  /** The same for a page that says in words elsewhere what it shows. */
  SectionPlan silent() {
    return new SectionPlan(score, look, font, bars, spacings, tight, measured, Spoken.SILENT);
  }

  private static List<Meter> head(Groove groove) {
    return MeterSigns.at(groove, groove.firstBar());
  }

  /** What sections have in common that break their lines alike. */
  Object family() {
    return List.of(
        score.groove().meters(),
        bars.size(),
        score.groove().firstBar(),
        look.width(),
        look.lines().barsALine(),
        look.lines().starts());
  }

  boolean isNarrow() {
    double comfort = 0;
    double least = 0;
    for (int i = 0; i < measured.count(); i++) {
      comfort += measured.comfort()[i];
      least += measured.least()[i];
    }
    return Math.max(comfort, least) * CELL_AIR <= measured.first()
        && !Lists.any(look.lines().starts(), bar -> bar > score.groove().firstBar());
  }

  Engraving engrave(List<Integer> starts) {
    int holds =
        look.signs().holds()
            ? score.groove().strokes().stream().mapToInt(Stroke::bar).max().orElse(-1)
            : -1;
    List<Engraving.StaffSystem> systems =
        SpareCores.map(
            Lists.numbers(starts.size()),
            i -> {
              int end = i + 1 < starts.size() ? starts.get(i + 1) : bars.size();
              return system(starts.get(i), end, holds);
            });
    return new Engraving(score, systems, score.groove().caption(), spoken.all());
  }

  private Engraving.StaffSystem system(int from, int to, int holds) {
    List<BarPlan> plans = bars.subList(from, to);
    boolean first = from == 0;
    boolean last = to == bars.size();
    Groove groove = score.groove();
    double prefix = StaffPainter.prefix(first ? head(groove) : List.of());
    List<Meter> next = last ? List.of() : bars.get(to).meters();
    double tail = last ? StaffPainter.tail(look.ending()) : StaffPainter.courtesy(next);
    double room = look.width() - prefix - tail;
    Spacing spacing = new Spacing(spacings.subList(from, to));
    double most = first && last ? MOST_STRETCH_ALONE : MOST_STRETCH;
    double force = spacing.forceFor(room, most);
    double scale = 1;
    if (force == 0) {
      // Narrower before smaller: first let the signs come closer, then shrink the system.
      spacing = new Spacing(tight.subList(from, to));
      force = spacing.forceFor(room, most);
      double width = prefix + spacing.width(force) + tail;
      scale = Math.min(1, look.width() / width);
    }
    Spacing.Places placed = spacing.place(prefix, force);
    Spacing.Places places =
        new Spacing.Places(placed.starts(), placed.columns(), placed.end() + (last ? tail : 0));
    return draw(PlacedSystem.of(plans, places, next), first, last, scale, holds);
  }

  private Engraving.StaffSystem draw(
      PlacedSystem line, boolean first, boolean last, double scale, int holds) {
    double width = look.width() / scale;
    Canvas canvas = new Canvas(font, Math.max(width, line.right()) + 2);
    Groove groove = score.groove();
    new StaffPainter(canvas, look.ending()).paint(line, first ? head(groove) : List.of(), last);
    new RestPainter(canvas, line).paint();
    for (Voice voice : Voice.values()) {
      new NotePainter(canvas, line, voice, look.annotated()).paint();
    }
    for (Voice voice : Voice.values()) {
      new SignPainter(canvas, line, voice, look.annotated()).paint();
    }
    ChartSignPainter signs = new ChartSignPainter(canvas, line, look.signs());
    signs.hold(holds);
    RowPainter rows = new RowPainter(canvas, line);
    rows.counts();
    rows.stickings();
    new DynamicsPainter(canvas, line).paint(groove);
    signs.cues(groove.firstBar());
    if (first) {
      // A narrow section is given the width that its words need, up to the line's.
      double words = Math.min(width, Math.max(line.places().end(), Rule.WORDS_WIDTH));
      signs.mark();
      if (look.tempo() != Look.Tempo.HIDDEN) {
        TempoPainter.paint(canvas, groove, look.tempo() == Look.Tempo.WITH_FEEL, words);
      }
      if (look.heading()) {
        TempoPainter.heading(canvas, groove.caption(), words);
      }
    } else {
      rows.barNumber(line.bars().get(0).bar().number());
    }
    return finish(canvas, line, scale);
  }

  private Engraving.StaffSystem finish(Canvas canvas, PlacedSystem line, double scale) {
    double top = canvas.above.most() + 0.2;
    double height = (top + canvas.below.most() + 0.2) * scale;
    double right = Mark.box(canvas.marks).map(Box::right).orElse(0.0);
    double width = Math.max(line.right(), right) * scale;
    List<Engraving.Moment> moments = new ArrayList<>();
    for (int bar = 0; bar < line.bars().size(); bar++) {
      BarPlan plan = line.bars().get(bar);
      for (int i = 0; i < plan.slices().size(); i++) {
        double x = (line.places().columns()[bar][i] + Rule.HEAD / 2) * scale;
        moments.add(new Engraving.Moment(plan.bar().number(), plan.slices().get(i).at(), x));
      }
    }
    List<Mark> marks = Mark.moved(canvas.marks, 0, top * scale, scale);
    int first = line.bars().get(0).bar().number();
    int last = line.bars().get(line.bars().size() - 1).bar().number();
    Words words = Words.of(score.groove().setting().wording().language());
    String caption = score.groove().caption();
    Drawing drawing =
        new Drawing(
            width,
            height,
            first == last
                ? words.text("drawing.bar", caption, first)
                : words.text("drawing.bars", caption, first, last),
            spoken.bars(first, last),
            marks);
    return new Engraving.StaffSystem(drawing, moments, top * scale);
  }
}
