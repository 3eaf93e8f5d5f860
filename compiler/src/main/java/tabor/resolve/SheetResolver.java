package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Sheet;
import tabor.lists.Lists;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.SheetLine;
import tabor.syntax.Statement;
import tabor.syntax.Text;

/**
 * Works out sheets. A variation is the step that is left when the other lines that vary are taken
 * out of the sheet and its own is reduced to one choice: it is worked out as that step.
 */
public final class SheetResolver {
  private final SectionSyntax syntax;
  private final Line heading;
  private final String name;
  private final Scope scope;
  private final Problems problems;
  private final List<SheetChoice> choices = new ArrayList<>();
  private final List<Resolved> made = new ArrayList<>();

  /** Choices that came to the same as a variation, as counted, by the index of that variation. */
  private final Map<Integer, List<Integer>> coincided = new HashMap<>();

  private SheetResolver(SectionSyntax syntax, String name, Scope scope) {
    this.syntax = syntax;
    this.heading = Objects.requireNonNull(syntax.heading());
    this.name = name;
    this.scope = scope;
    this.problems = new Problems(name);
  }

  /**
   * Works out a sheet.
   *
   * @param syntax its tree; its heading is a sheet's, whole or faulty
   * @param name what it is called
   * @param scope what it may see
   */
  public static Resolved resolve(SectionSyntax syntax, String name, Scope scope) {
    return new SheetResolver(syntax, name, scope).sheet();
  }

  private Resolved sheet() {
    choose();
    if (choices.isEmpty()) {
      if (!problems.isIncomplete() && problems.found().isEmpty() && !syntax.hasBrokenLine()) {
        problems.tell(
            Code.NOTHING_THERE,
            heading,
            heading.statement().span(),
            "nothing varies on this sheet",
            "write a line that starts with each: each add kick at 2& 3");
      }
      return new Resolved(null, Gaps.ALL, problems.found(), 0);
    }
    long effort = 0;
    for (int i = 0; i < choices.size(); i++) {
      Resolved one = SectionResolver.variation(variant(choices.get(i)), numbered(i + 1), scope);
      made.add(one);
      effort += one.effort();
    }
    boolean[] left = new boolean[made.size()];
    List<Resolved> kept = numbers(left);
    tellOnce(left);
    Groove base = kept.get(0).section() instanceof Groove first ? first.base() : null;
    Gaps gaps = syntax.hasBrokenLine() ? Gaps.ALL : problems.gaps();
    for (Resolved one : made) {
      gaps = gaps.and(one.gaps());
    }
    if (base == null || Lists.any(kept, one -> one.section() == null)) {
      return new Resolved(null, Gaps.ALL, problems.found(), effort);
    }
    Sheet sheet = sheet(base, kept);
    return new Resolved(sheet, gaps, problems.found(), effort, asShown(sheet, kept), List.of());
  }

  private String numbered(int number) {
    return name + "-" + number;
  }

  private static Groove groove(Resolved resolved) {
    return (Groove) Objects.requireNonNull(resolved.section());
  }

  // ---- choices

  /** Finds the choices of all lines that vary, in order. */
  private void choose() {
    List<Line> plain = new ArrayList<>();
    Line each = null;
    List<Line> along = new ArrayList<>();
    List<Line> above = List.of();
    for (Line line : syntax.lines()) {
      if (!(line.statement() instanceof SheetLine varied)) {
        plain.add(line);
      } else if (!varied.along()) {
        choose(each, along, above);
        each = line;
        above = List.copyOf(plain);
        along = new ArrayList<>();
      } else if (each == null) {
        problems.lost(
            Code.SYNTAX,
            line,
            line.statement().span(),
            "no line above starts with each, so nothing changes along with it",
            "write `each` in place of `and`");
      } else {
        along.add(line);
      }
    }
    choose(each, along, above);
  }

  private void choose(@Nullable Line each, List<Line> along, List<Line> above) {
    if (each == null || choices.size() > Sheet.MOST) {
      return;
    }
    SheetChoices reader =
        new SheetChoices(
            problems, scope, each, along, () -> below(above), Sheet.MOST - choices.size());
    List<SheetChoice> found = reader.find();
    if (reader.isTooMany()) {
      problems.lost(
          Code.TOO_LONG,
          each,
          each.statement().span(),
          "a sheet has at most "
              + Sheet.MOST
              + " variations; here it comes to "
              + (choices.size() + reader.count()),
          "make two sheets of it");
      choices.clear();
      return;
    }
    choices.addAll(found);
  }

  /** The section as it is below some lines. */
  private SectionResolver.@Nullable Draft below(List<Line> lines) {
    return SectionResolver.draft(
        new SectionSyntax(syntax.passage(), step(null), lines, List.of()), name, scope);
  }

  // ---- variations

  /** The heading as that of a step. */
  private Line step(@Nullable String caption) {
    Span span = heading.statement().span();
    Name from = ((Heading) heading.statement()).from();
    Text title = caption == null ? null : new Text(caption, false, span);
    return new Line(heading.passage(), heading.start(), new Heading.Step(null, title, from, span));
  }

  /** The step that one choice leaves of the sheet. */
  private SectionSyntax variant(SheetChoice choice) {
    List<Line> lines = new ArrayList<>();
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof SheetLine) {
        lines.addAll(choice.lines().getOrDefault(line, List.of()));
      } else if (!isOfThePage(statement)) {
        lines.add(line);
      }
    }
    return new SectionSyntax(syntax.passage(), step(choice.caption()), lines, List.of());
  }

  /** True for what the sheet says once, not each of its variations. */
  private static boolean isOfThePage(Statement statement) {
    return statement instanceof Statement.Prose
        || statement instanceof SettingStatement.Goal
        || statement instanceof SettingStatement.Teacher
        || statement instanceof SettingStatement.Page;
  }

  private Sheet sheet(Groove base, List<Resolved> kept) {
    Text written = ((Heading) heading.statement()).title();
    String title = written == null ? null : written.value();
    List<Sheet.Variation> variations = new ArrayList<>(kept.size());
    for (int i = 0; i < kept.size(); i++) {
      Groove groove = groove(kept.get(i));
      String called = (title == null || title.isBlank() ? name : title) + ": " + (i + 1);
      variations.add(
          new Sheet.Variation(
              i + 1,
              groove.title(),
              groove.named(groove.name(), groove.title() == null ? called : groove.title()),
              coincided.getOrDefault(i, List.of())));
    }
    PageWishes wishes = base.page().wishes();
    HandWords hands = HandWords.of(base.setting().kit().leftHanded(), scope);
    PageNotes page =
        PageReader.of(syntax, wishes, base.setting().kit(), hands, List.of(), new Problems(name));
    return new Sheet(name, title, heading.spot(), base, variations, hands.prose(syntax), page);
  }

  /** The variations by the names that the sheet shows them by, for whoever names one of them. */
  private static List<Resolved> asShown(Sheet sheet, List<Resolved> kept) {
    List<Resolved> shown = new ArrayList<>(kept.size());
    for (int i = 0; i < kept.size(); i++) {
      Resolved one = kept.get(i);
      shown.add(
          new Resolved(
              sheet.variations().get(i).groove(), one.gaps(), one.diagnostics(), one.effort()));
    }
    return shown;
  }

  // ---- numbers

  /** The variations that stay, with their final numbers; those that are left out are marked. */
  private List<Resolved> numbers(boolean[] left) {
    List<Resolved> kept = new ArrayList<>();
    Map<SameVariation, Integer> numbers = new HashMap<>();
    for (int i = 0; i < made.size(); i++) {
      Resolved one = made.get(i);
      SameVariation music =
          one.section() instanceof Groove groove && !one.partial() && errors(one).isEmpty()
              ? SameVariation.of(groove)
              : null;
      Integer earlier = music == null ? null : numbers.get(music);
      if (earlier != null) {
        left[i] = true;
        coincided.computeIfAbsent(earlier, n -> new ArrayList<>()).add(i + 1);
        tellCoincided(choices.get(i), earlier + 1);
        continue;
      }
      if (music != null) {
        numbers.put(music, kept.size());
      }
      kept.add(renamed(one, numbered(kept.size() + 1)));
    }
    return kept;
  }

  private static List<Diagnostic> errors(Resolved one) {
    return Lists.filter(one.diagnostics(), d -> d.severity() == Severity.ERROR);
  }

  private void tellCoincided(SheetChoice choice, int number) {
    problems.add(
        problems
            .make(
                Code.ALREADY_THERE,
                choice.spot(),
                null,
                null,
                "this comes to the same as “" + numbered(number) + "” and is left out")
            .at(Severity.WARNING)
            .label(choices.get(first(number)).spot(), "“" + numbered(number) + "”")
            .help("take it out; the numbers of the variations close up"));
  }

  /** The choice that became the variation of a number. */
  private int first(int number) {
    int seen = 0;
    Set<Integer> gone = new HashSet<>();
    coincided.values().forEach(gone::addAll);
    for (int i = 0; i < choices.size(); i++) {
      if (!gone.contains(i + 1) && ++seen == number) {
        return i;
      }
    }
    return 0;
  }

  private static Resolved renamed(Resolved one, String name) {
    if (!(one.section() instanceof Groove groove) || groove.name().equals(name)) {
      return one;
    }
    Groove named = groove.named(name, groove.title());
    return new Resolved(named, one.gaps(), one.diagnostics(), one.effort());
  }

  // ---- problems

  /**
   * What is wrong with the variations, each told once, naming the first that has it. A line that
   * applies to all of them must find something in one of them only.
   */
  private void tellOnce(boolean[] left) {
    Map<Key, Diagnostic> first = new LinkedHashMap<>();
    Map<Key, Integer> times = new HashMap<>();
    int number = 0;
    for (int i = 0; i < made.size(); i++) {
      if (left[i]) {
        continue;
      }
      number++;
      Set<Key> here = new HashSet<>();
      for (Diagnostic one : made.get(i).diagnostics()) {
        Key key = new Key(one.code(), one.spot(), keyed(one));
        if (here.add(key)) {
          times.merge(key, 1, Integer::sum);
        }
        first.putIfAbsent(key, placed(one, numbered(number)));
      }
    }
    for (Map.Entry<Key, Diagnostic> entry : first.entrySet()) {
      Key key = entry.getKey();
      boolean miss = key.code() == Code.NOTHING_THERE || key.code() == Code.COUNT_OUTSIDE_BAR;
      if (!miss || times.getOrDefault(key, 0) == number || !isPlain(key.spot())) {
        problems.add(entry.getValue());
      }
    }
  }

  /** What tells two diagnostics at one spot apart, wherever in the music they are. */
  private static String keyed(Diagnostic one) {
    return one.code() == Code.NOTHING_THERE || one.code() == Code.COUNT_OUTSIDE_BAR
        ? ""
        : one.message();
  }

  private record Key(Code code, Spot spot, String message) {}

  private static Diagnostic placed(Diagnostic one, String variation) {
    Diagnostic.Place place = one.place();
    return place == null
        ? one
        : one.in(new Diagnostic.Place(variation, place.bar(), place.count()));
  }

  /** True if a spot is in a line that applies to all variations. */
  private boolean isPlain(Spot spot) {
    Line at = null;
    for (Line line : syntax.lines()) {
      if (line.start() <= spot.span().start()) {
        at = line;
      }
    }
    return at != null && !(at.statement() instanceof SheetLine);
  }
}
