package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.font.OpenFont;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.notation.Bar;
import tabor.notation.Score;
import tabor.notation.Speller;
import tabor.resolve.Options;
import tabor.testing.Files;
import tabor.testing.RandomSections;

/** What must hold of every engraved section, whatever it plays. */
class EngravingProperties {
  /** Signs may touch by so much: the width of a stem. */
  private static final double TOUCH = 0.15;

  /** What is measured against what: everything that is read, lines of the staff and stems apart. */
  private static final Set<String> READ =
      Set.of(
          "stroke",
          "held",
          "dots",
          "rest",
          "flag",
          "sign",
          "tuplet",
          "counts",
          "sticking",
          "sticking-feet",
          "dynamic",
          "hairpin",
          "bar-number",
          "tempo",
          "heading",
          "clef",
          "meter",
          "small",
          "repeat-bar");

  /** A section to engrave; says little of itself, so that a failure can be read. */
  record Case(Groove groove, double width) {
    Engraving engraving() {
      return engrave(groove, Look.FULL.withHeading().withWidth(width));
    }

    @Override
    public String toString() {
      return groove.name() + " at " + width + ": " + new Spoken(Speller.spell(groove)).all();
    }
  }

  @Provide
  Arbitrary<Case> senseless() {
    return RandomSections.grooves().map(groove -> new Case(groove, 100));
  }

  @Provide
  Arbitrary<Case> sensible() {
    return Files.valid()
        .map(EngravingProperties::grooves)
        .filter(grooves -> !grooves.isEmpty())
        .flatMap(grooves -> Arbitraries.of(grooves))
        .flatMap(groove -> Arbitraries.of(45.0, 60.0, 100.0).map(width -> new Case(groove, width)));
  }

  private static List<Groove> grooves(String text) {
    return new Compiler(Loader.NONE)
        .compile(java.nio.file.Path.of("random.tabor"), text, Options.NONE)
        .lesson()
        .grooves();
  }

  private static Engraving engrave(Groove groove, Look look) {
    Score score = Speller.spell(groove, Changes.of(groove).strokes());
    return Engraver.engrave(score, look, OpenFont.get());
  }

  @Property(tries = 80)
  void senselessSectionsKeepTheRules(@ForAll("senseless") Case section) {
    check(section.engraving());
  }

  @Property(tries = 80)
  void sensibleSectionsKeepTheRules(@ForAll("sensible") Case section) {
    check(section.engraving());
  }

  private static void check(Engraving engraving) {
    everyStrokeIsDrawnOnce(engraving);
    for (Engraving.StaffSystem system : engraving.systems()) {
      List<Shown.Piece> pieces = Shown.of(system.drawing().marks());
      nothingIsOutside(system.drawing(), pieces);
      orderIsTime(system);
      onsetsShareTheirPlace(system, pieces);
      nothingCollides(pieces);
      beamsAreClear(pieces);
    }
  }

  private static void everyStrokeIsDrawnOnce(Engraving engraving) {
    List<String> drawn = new ArrayList<>();
    for (Map<String, String> data : strokeGroups(engraving.whole().marks())) {
      for (String limb : data.getOrDefault("limbs", "").split(" ", -1)) {
        drawn.add(data.get("bar") + " " + data.get("at") + " " + limb + " " + data.get("surface"));
      }
    }
    Set<Integer> repeats =
        engraving.score().bars().stream()
            .filter(Bar::repeat)
            .map(Bar::number)
            .collect(Collectors.toSet());
    List<String> played = new ArrayList<>();
    for (Stroke stroke : engraving.score().groove().strokes()) {
      if (!repeats.contains(stroke.bar())) {
        played.add(
            stroke.bar()
                + " "
                + stroke.at()
                + " "
                + stroke.limb().id()
                + " "
                + stroke.surface().name());
      }
    }
    // Further strokes of rolls that are written out come on top: see RollProperties. In sections
    // without sense one of them may meet another stroke of its limb.
    assertThat(drawn).containsAll(played);
    List<String> further = new ArrayList<>(drawn);
    played.forEach(further::remove);
    for (String more : further) {
      String surface = more.substring(more.lastIndexOf(' ') + 1);
      assertThat(engraving.score().groove().strokes())
          .as(more)
          .anyMatch(
              roll ->
                  roll.surface().name().equals(surface)
                      && roll.ornaments().list().stream().anyMatch(Ornament::isRoll));
    }
  }

  private static List<Map<String, String>> strokeGroups(List<Mark> marks) {
    Map<Integer, Map<String, String>> groups = new java.util.TreeMap<>();
    for (Shown.Piece piece : Shown.of(marks)) {
      if (piece.kind().equals("stroke")) {
        groups.put(piece.group(), piece.data());
      }
    }
    return List.copyOf(groups.values());
  }

  private static void nothingIsOutside(Drawing drawing, List<Shown.Piece> pieces) {
    for (Shown.Piece piece : pieces) {
      Box box = piece.box();
      assertThat(box.left()).as(piece.toString()).isGreaterThan(-0.05);
      assertThat(box.top()).as(piece.toString()).isGreaterThan(-0.05);
      assertThat(box.bottom()).as(piece.toString()).isLessThan(drawing.height() + 0.05);
      assertThat(box.right()).as(piece.toString()).isLessThan(drawing.width() + 0.05);
    }
  }

  private static void orderIsTime(Engraving.StaffSystem system) {
    assertThat(system.moments())
        .isSortedAccordingTo(
            Comparator.comparingInt(Engraving.Moment::bar).thenComparing(Engraving.Moment::at));
    for (int i = 1; i < system.moments().size(); i++) {
      assertThat(system.moments().get(i).x()).isGreaterThan(system.moments().get(i - 1).x());
    }
  }

  /** Each onset has a head on its moment's x, and no head strays further than its neighbours. */
  private static void onsetsShareTheirPlace(
      Engraving.StaffSystem system, List<Shown.Piece> pieces) {
    Map<String, Double> moments =
        system.moments().stream()
            .collect(Collectors.toMap(m -> m.bar() + " " + m.at(), Engraving.Moment::x));
    Map<String, Double> nearest = new java.util.TreeMap<>();
    for (Shown.Piece piece : pieces) {
      if (piece.kind().equals("stroke") || piece.kind().equals("held")) {
        String onset = piece.data().get("bar") + " " + piece.data().get("at");
        assertThat(moments).containsKey(onset);
        double off = Math.abs((piece.box().left() + piece.box().right()) / 2 - moments.get(onset));
        nearest.merge(onset, off, Math::min);
      }
    }
    assertThat(nearest.values()).allMatch(off -> off < 0.3);
  }

  private static void nothingCollides(List<Shown.Piece> all) {
    List<Shown.Piece> pieces =
        all.stream()
            .filter(p -> READ.contains(p.kind()) && p.strength() == 1)
            .sorted(Comparator.comparingDouble(p -> p.box().left()))
            .toList();
    for (int i = 0; i < pieces.size(); i++) {
      Shown.Piece a = pieces.get(i);
      for (int j = i + 1; j < pieces.size(); j++) {
        Shown.Piece b = pieces.get(j);
        if (b.box().left() > a.box().right()) {
          break;
        }
        boolean together = a.group() == b.group() && a.text().isEmpty();
        assertThat(!together && Shown.overlap(a.box(), b.box(), TOUCH))
            .as("%s %s and %s %s", a.kind(), a, b.kind(), b)
            .isFalse();
      }
    }
  }

  /** No head, rest, dot or text lies under a beam. */
  private static void beamsAreClear(List<Shown.Piece> pieces) {
    for (Shown.Piece beam : pieces) {
      if (!beam.kind().equals("beam")) {
        continue;
      }
      Edges edges = Edges.of(beam.outline());
      for (Shown.Piece piece : pieces) {
        if (READ.contains(piece.kind()) && !piece.kind().equals("small") && piece.strength() == 1) {
          assertThat(edges.meets(piece.box())).as("%s under %s", piece, beam).isFalse();
        }
      }
    }
  }

  /** A band between two upright edges. */
  private record Edges(double x1, double top1, double x2, double top2, double thickness) {
    static Edges of(@org.jspecify.annotations.Nullable Contour outline) {
      List<double[]> corners = new ArrayList<>();
      java.util.Objects.requireNonNull(outline)
          .draw(
              new Contour.Pen() {
                @Override
                public void move(double x, double y) {
                  corners.add(new double[] {x, y});
                }

                @Override
                public void line(double x, double y) {
                  corners.add(new double[] {x, y});
                }

                @Override
                public void curve(double a, double b, double c, double d, double x, double y) {}

                @Override
                public void close() {}
              });
      return new Edges(
          corners.get(0)[0],
          corners.get(0)[1],
          corners.get(1)[0],
          corners.get(1)[1],
          corners.get(3)[1] - corners.get(0)[1]);
    }

    boolean meets(Box box) {
      double left = Math.max(x1, box.left() + TOUCH);
      double right = Math.min(x2, box.right() - TOUCH);
      if (left >= right) {
        return false;
      }
      double slope = (top2 - top1) / (x2 - x1);
      double high = Math.min(top1 + slope * (left - x1), top1 + slope * (right - x1));
      double low = Math.max(top1 + slope * (left - x1), top1 + slope * (right - x1)) + thickness;
      return high < box.bottom() - TOUCH && low > box.top() + TOUCH;
    }
  }
}
