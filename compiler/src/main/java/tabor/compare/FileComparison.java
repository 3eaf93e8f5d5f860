package tabor.compare;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.kit.Kit;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.SheetLine;
import tabor.syntax.Statement;

/**
 * Compares what two texts of a lesson come to. What is heard is compared as strokes and settings,
 * whatever way it is written; what is printed beside it, charts, and sections with errors are
 * compared line by line, each line in its one spelling.
 */
public final class FileComparison {
  private static final Set<Class<? extends Statement>> HEARD =
      Set.of(
          PartStatement.Lane.class,
          PartStatement.Played.class,
          PartStatement.Next.class,
          PartStatement.Pickup.class,
          PartStatement.Bars.class,
          SheetLine.class,
          SettingStatement.Title.class,
          SettingStatement.By.class,
          SettingStatement.Use.class,
          SettingStatement.Time.class,
          SettingStatement.TempoSetting.class,
          SettingStatement.FeelSetting.class,
          SettingStatement.On.class,
          SettingStatement.LevelsSetting.class,
          SettingStatement.Show.class,
          SettingStatement.LimitsSetting.class);

  private final Compiled before;
  private final Compiled after;
  private final List<Entry> left;
  private final List<Entry> right;
  private final int[] match;
  private final Map<String, String> renamed = new HashMap<>();

  private FileComparison(Compiled before, Compiled after) {
    this.before = before;
    this.after = after;
    this.left = Entry.of(before);
    this.right = Entry.of(after);
    this.match = SectionPairs.of(left, right);
    for (int j = 0; j < match.length; j++) {
      if (match[j] >= 0) {
        renamed.put(left.get(match[j]).label(), right.get(j).label());
      }
    }
    renamed.entrySet().removeIf(entry -> entry.getKey().equals(entry.getValue()));
  }

  /** What changed; both may have errors. */
  public static FileChange of(Compiled before, Compiled after) {
    return new FileComparison(before, after).compare();
  }

  private FileChange compare() {
    List<Detail> whole = new ArrayList<>();
    SettingDetails.add(whole, "title", title(before), title(after));
    SettingDetails.add(whole, "by", quoted(before.lesson().by()), quoted(after.lesson().by()));
    Set<Detail> shared = shared();
    whole.addAll(shared);
    whole.addAll(kits());
    whole.addAll(
        Lines.changes(
            Lines.of(before.syntax().get(0), s -> !isHeard(s), renamed),
            Lines.of(after.syntax().get(0), s -> !isHeard(s), Map.of())));
    List<SectionChange> sections = new ArrayList<>();
    Set<Integer> kept = new HashSet<>();
    for (int old : match) {
      kept.add(old);
    }
    int next = 0;
    Set<Integer> moved = moved();
    for (int j = 0; j < right.size(); j++) {
      while (match[j] >= 0 && next <= match[j]) {
        addGone(sections, kept, next++);
      }
      SectionChange change =
          match[j] < 0
              ? alone(SectionChange.State.NEW, right.get(j))
              : changed(match[j], j, shared, moved.contains(j));
      if (!change.isEmpty()) {
        sections.add(change);
      }
    }
    while (next < left.size()) {
      addGone(sections, kept, next++);
    }
    return new FileChange(whole, sections);
  }

  private void addGone(List<SectionChange> sections, Set<Integer> kept, int index) {
    if (!kept.contains(index)) {
      sections.add(alone(SectionChange.State.GONE, left.get(index)));
    }
  }

  /** The title as written: the name of the file is none. */
  private static @Nullable String title(Compiled file) {
    String title = file.lesson().title();
    return title.equals(file.lesson().file()) ? null : quoted(title);
  }

  private static @Nullable String quoted(@Nullable String text) {
    return text == null ? null : '"' + text + '"';
  }

  /** What the header changed for some section at least, or for nobody where there is none. */
  private Set<Detail> shared() {
    Set<Detail> header =
        new LinkedHashSet<>(SettingDetails.of(before.lesson().setting(), after.lesson().setting()));
    Set<Detail> heard = new HashSet<>();
    boolean any = false;
    for (int j = 0; j < match.length; j++) {
      Groove old = match[j] < 0 ? null : left.get(match[j]).groove();
      Groove now = right.get(j).groove();
      if (old != null && now != null) {
        any = true;
        heard.addAll(SettingDetails.of(old.setting(), now.setting()));
      }
    }
    if (any) {
      header.retainAll(heard);
    }
    return header;
  }

  /** What is other about the kits that sections of both are played on. */
  private List<Detail> kits() {
    Map<String, Kit> old = kitsOf(before);
    List<Detail> found = new ArrayList<>();
    kitsOf(after)
        .forEach(
            (name, kit) -> {
              Kit was = old.get(name);
              if (was != null) {
                found.addAll(SettingDetails.ofKits(was, kit));
              }
            });
    return found;
  }

  private static Map<String, Kit> kitsOf(Compiled file) {
    Map<String, Kit> kits = new LinkedHashMap<>();
    for (Groove groove : file.lesson().grooves()) {
      kits.putIfAbsent(groove.setting().kit().name(), groove.setting().kit());
    }
    return kits;
  }

  /** The sections of the new file that stand in another order than they did. */
  private Set<Integer> moved() {
    List<Integer> kept = new ArrayList<>();
    for (int j = 0; j < match.length; j++) {
      if (match[j] >= 0) {
        kept.add(j);
      }
    }
    List<Integer> order = kept.stream().map(j -> match[j]).sorted().toList();
    Set<Integer> moved = new HashSet<>();
    for (Alignment.Pair pair :
        Alignment.of(
            order.size(),
            kept.size(),
            new Alignment.Cost() {
              @Override
              public int pair(int a, int b) {
                return order.get(a) == match[kept.get(b)] ? 0 : Alignment.NEVER;
              }

              @Override
              public int left(int index) {
                return 1;
              }

              @Override
              public int right(int index) {
                return 1;
              }
            })) {
      if (pair.left() < 0) {
        moved.add(kept.get(pair.right()));
      }
    }
    return moved;
  }

  private static SectionChange alone(SectionChange.State state, Entry entry) {
    boolean isNew = state == SectionChange.State.NEW;
    Groove groove = entry.groove();
    List<SectionChange.Bars> bars = new ArrayList<>();
    for (int bar = 1; groove != null && bar <= groove.bars(); bar++) {
      bars.add(isNew ? new SectionChange.Bars(0, bar) : new SectionChange.Bars(bar, 0));
    }
    return new SectionChange(
        state,
        entry.kind(),
        entry.label(),
        null,
        isNew ? null : entry.section(),
        isNew ? entry.section() : null,
        List.of(),
        bars,
        StrokePairs.of(isNew ? null : groove, isNew ? groove : null, bars));
  }

  private SectionChange changed(int from, int to, Set<Detail> shared, boolean moved) {
    Entry old = left.get(from);
    Entry now = right.get(to);
    List<Detail> details = new ArrayList<>();
    if (moved) {
      details.add(new Detail("place", place(left, from), place(right, to)));
    }
    String was = null;
    if (!isTitle(old) || !isTitle(now)) {
      was = old.label().equals(now.label()) ? null : old.label();
    }
    SettingDetails.add(details, "title", headingTitle(old), headingTitle(now));
    Groove a = old.groove();
    Groove b = now.groove();
    List<SectionChange.Bars> bars = List.of();
    List<StrokeChange> strokes = List.of();
    if (a != null && b != null) {
      for (Detail detail : SettingDetails.of(a.setting(), b.setting())) {
        if (!shared.contains(detail)) {
          details.add(detail);
        }
      }
      details.addAll(SettingDetails.ofBars(a, b));
      bars = BarPairs.of(a, b);
      strokes = StrokePairs.of(a, b, bars);
      if (bars.stream().allMatch(bar -> bar.before() == bar.after())) {
        bars = List.of();
      }
    }
    boolean sheets = old.section() instanceof Sheet && now.section() instanceof Sheet;
    boolean byLine = !sheets && (a == null || b == null);
    if (byLine && (old.section() == null) != (now.section() == null)) {
      boolean wrong = now.section() == null;
      details.add(new Detail(Detail.ERRORS, wrong ? null : "some", wrong ? "some" : null));
    }
    // What a sheet says beside its variations is told of the sheet.
    if (!now.isVariation()) {
      details.addAll(
          Lines.changes(
              Lines.of(old.syntax(), s -> !isProse(s) && (byLine || !isHeard(s)), renamed),
              Lines.of(now.syntax(), s -> !isProse(s) && (byLine || !isHeard(s)), Map.of())));
      SettingDetails.add(details, Detail.PROSE, prose(old.syntax()), prose(now.syntax()));
    }
    return new SectionChange(
        SectionChange.State.CHANGED,
        now.kind(),
        now.label(),
        was,
        old.section(),
        now.section(),
        details,
        bars,
        strokes);
  }

  private static String place(List<Entry> entries, int index) {
    return index == 0 ? "at the start" : "after " + entries.get(index - 1).label();
  }

  private static boolean isTitle(Entry entry) {
    return entry.label().startsWith("\"");
  }

  private static @Nullable String headingTitle(Entry entry) {
    Section section = entry.section();
    return section == null ? null : quoted(section.title());
  }

  private static @Nullable String prose(SectionSyntax section) {
    List<String> texts = new ArrayList<>();
    for (Line line : section.lines()) {
      if (line.statement() instanceof Statement.Prose prose) {
        texts.add(prose.text().value());
      }
    }
    return texts.isEmpty() ? null : String.join("\n\n", texts);
  }

  private static boolean isProse(Statement statement) {
    return statement instanceof Statement.Prose;
  }

  /** True for what the model of a section or a lesson holds: it is compared there. */
  private static boolean isHeard(Statement statement) {
    return statement instanceof Edit || HEARD.contains(statement.getClass());
  }
}
