package tabor.compile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Edition.Asked;
import tabor.compile.Edition.Memo;
import tabor.compile.Edition.Question;
import tabor.diagnostic.Near;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.resolve.Options;
import tabor.resolve.Resolved;
import tabor.resolve.Scope;
import tabor.resolve.SectionDefaults;
import tabor.resolve.SheetNames;
import tabor.syntax.Beat;

/**
 * The names of one file while it is compiled. It answers sections' questions, notes each with its
 * answer, and tells later whether all answers of a section are still the same.
 */
final class FileScope implements Scope {
  private final SectionDefaults defaults;
  private final Options options;
  private final FileKits kits;
  private final Map<String, List<Beat.Element>> patterns = new LinkedHashMap<>();
  private final Map<String, Resolved> sections = new LinkedHashMap<>();
  private final Set<String> charts = new HashSet<>();
  private final Map<Asked, Optional<String>> near = new LinkedHashMap<>();
  private @Nullable Resolved previous;
  private @Nullable Memo asking;

  FileScope(SectionDefaults defaults, Options options, FileKits kits) {
    this.defaults = defaults;
    this.options = options;
    this.kits = kits;
  }

  // ---- declaring

  /** The patterns and sections of a file in use; the first holder keeps a name. */
  void use(Result used) {
    used.patterns().forEach(patterns::putIfAbsent);
    used.grooves().forEach(sections::putIfAbsent);
  }

  boolean hasPattern(String name) {
    return Rudiments.named(name).isPresent()
        || Timelines.named(name).isPresent()
        || patterns.containsKey(name);
  }

  boolean hasSection(String name) {
    return sections.containsKey(name);
  }

  void declarePattern(String name, SectionNode node) {
    patterns.put(name, node.places());
  }

  void declareSection(String name, Resolved resolved) {
    sections.put(name, resolved);
  }

  void declareChart(String name) {
    charts.add(name);
  }

  void previous(Resolved resolved) {
    previous = resolved;
  }

  // ---- asking

  /** Whose questions are noted from here on; null for nobody's. */
  void asking(@Nullable Memo memo) {
    asking = memo;
    if (memo != null) {
      memo.answers.clear();
    }
  }

  private static final Object NOTHING = new Object();

  private <T extends @Nullable Object> T noted(Question question, String name, T answer) {
    Memo memo = asking;
    if (memo != null) {
      memo.answers.putIfAbsent(new Asked(question, name), answer == null ? NOTHING : answer);
    }
    return answer;
  }

  /** True if every answer that a section's result rests on is still the same. */
  boolean stillTrue(Memo memo) {
    for (Map.Entry<Asked, Object> entry : memo.answers.entrySet()) {
      Object now = answer(entry.getKey());
      Object before = entry.getValue();
      if (now != before && !(now instanceof Optional && now.equals(before))) {
        return false;
      }
    }
    return true;
  }

  private Object answer(Asked asked) {
    String name = asked.name();
    Object now =
        switch (asked.question()) {
          case DEFAULTS -> defaults;
          case KIT -> kits.kit(name);
          case PATTERN -> patterns.get(name);
          case SECTION -> known(name);
          case PREVIOUS -> previous;
          case CHART -> charts.contains(name);
          case NEAR_PATTERN, NEAR_KIT, NEAR_SECTION -> near(asked);
        };
    return now == null ? NOTHING : now;
  }

  @Override
  public SectionDefaults defaults() {
    return noted(Question.DEFAULTS, "", defaults);
  }

  @Override
  public Options options() {
    return options;
  }

  @Override
  public @Nullable Kit kit(String name) {
    return Kits.named(name).isPresent()
        ? kits.kit(name)
        : noted(Question.KIT, name, kits.kit(name));
  }

  @Override
  public @Nullable List<Beat.Element> pattern(String name) {
    return noted(Question.PATTERN, name, patterns.get(name));
  }

  @Override
  public @Nullable Resolved section(String name) {
    return noted(Question.SECTION, name, known(name));
  }

  /** A section of this name, else the variation of a sheet. */
  private @Nullable Resolved known(String name) {
    Resolved section = sections.get(name);
    SheetNames.Numbered numbered = section == null ? SheetNames.of(name) : null;
    Resolved sheet = numbered == null ? null : sections.get(numbered.sheet());
    return sheet == null || numbered.number() > sheet.variations().size()
        ? section
        : sheet.variations().get(numbered.number() - 1);
  }

  @Override
  public boolean isChart(String name) {
    return noted(Question.CHART, name, charts.contains(name));
  }

  @Override
  public @Nullable Resolved previous() {
    return noted(Question.PREVIOUS, "", previous);
  }

  @Override
  public Optional<String> near(Kind kind, String name) {
    Question question =
        switch (kind) {
          case PATTERN -> Question.NEAR_PATTERN;
          case KIT -> Question.NEAR_KIT;
          case SECTION -> Question.NEAR_SECTION;
        };
    return noted(question, name, near(new Asked(question, name)));
  }

  private Optional<String> near(Asked asked) {
    // Sections are named as they come, so only the other names stay the same.
    if (asked.question() == Question.NEAR_SECTION) {
      return Near.find(asked.name(), sections.keySet());
    }
    Optional<String> known = near.get(asked);
    if (known == null) {
      known = asked.question() == Question.NEAR_KIT ? kits.near(asked.name()) : nearPattern(asked);
      near.put(asked, known);
    }
    return known;
  }

  private Optional<String> nearPattern(Asked asked) {
    List<String> names = new ArrayList<>(patterns.keySet());
    names.add("paradiddle");
    names.add("paradiddle-diddle");
    names.addAll(Rudiments.all().keySet());
    names.addAll(Timelines.all().keySet());
    return Near.find(asked.name(), names);
  }

  // ---- afterwards

  Map<String, Resolved> sections() {
    return sections;
  }

  /** The names of this kind that some of these sections asked for. */
  static Set<String> asked(List<Memo> memos, Question question) {
    Set<String> names = new HashSet<>();
    for (Memo memo : memos) {
      for (Asked asked : memo.answers.keySet()) {
        if (asked.question() == question) {
          names.add(asked.name());
        }
      }
    }
    return names;
  }
}
