package tabor.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Node.Dep;
import tabor.compile.Node.Question;
import tabor.diagnostic.Near;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.resolve.Header;
import tabor.resolve.KitBuilder;
import tabor.resolve.Options;
import tabor.resolve.Resolved;
import tabor.resolve.Scope;
import tabor.syntax.Beat;

/**
 * The names of one file while it is compiled. It answers sections' questions, notes each with its
 * answer, and tells later whether all answers of a section are still the same.
 */
final class FileScope implements Scope {
  private final Header header;
  private final Options options;
  private final Map<String, Node> kitNodes = new LinkedHashMap<>();
  private final Map<String, List<Beat.Element>> patterns = new LinkedHashMap<>();
  private final Map<String, KitBuilder.Built> usedKits = new HashMap<>();
  private final Map<String, Resolved> sections;
  private final Set<Node> kitsInWork = new LinkedHashSet<>();
  private final Set<Node> circular = new LinkedHashSet<>();
  private @Nullable Resolved previous;
  private @Nullable Node asking;

  /**
   * Names nothing yet.
   *
   * @param size about how many sections there will be
   */
  FileScope(Header header, Options options, int size) {
    this.header = header;
    this.sections = new LinkedHashMap<>(size * 2);
    this.options = options;
  }

  // ---- declaring

  void use(Result used) {
    used.kits().forEach(usedKits::putIfAbsent);
    used.patterns().forEach(patterns::putIfAbsent);
    used.grooves().forEach(sections::putIfAbsent);
  }

  boolean hasKit(String name) {
    return Kits.named(name).isPresent() || usedKits.containsKey(name) || kitNodes.containsKey(name);
  }

  boolean hasPattern(String name) {
    return name.equals("euclid")
        || Rudiments.named(name).isPresent()
        || Timelines.named(name).isPresent()
        || patterns.containsKey(name);
  }

  boolean hasSection(String name) {
    return sections.containsKey(name);
  }

  void declareKit(String name, Node node) {
    kitNodes.put(name, node);
  }

  /** Finds the kits that are like each other in a circle; they are made like the five-piece. */
  Set<Node> circularKits() {
    for (Node start : kitNodes.values()) {
      Node at = start;
      for (int i = 0; i <= kitNodes.size() && at != null; i++) {
        String like = at.like();
        at = like == null ? null : kitNodes.get(like);
        if (at == start) {
          circular.add(start);
          break;
        }
      }
    }
    return circular;
  }

  void declarePattern(String name, Node node) {
    patterns.put(name, node.places());
  }

  void declareSection(String name, Resolved resolved) {
    sections.put(name, resolved);
  }

  void previous(Resolved resolved) {
    previous = resolved;
  }

  // ---- asking

  /** Whose questions are noted from here on; null for nobody's. */
  void asking(@Nullable Node node) {
    asking = node;
    if (node != null) {
      node.deps = new ArrayList<>(4);
    }
  }

  private <T> T noted(Question question, String name, T answer) {
    Node node = asking;
    if (node != null) {
      for (Dep dep : node.deps) {
        if (dep.question() == question && dep.name().equals(name)) {
          return answer;
        }
      }
      node.deps.add(new Dep(question, name, answer));
    }
    return answer;
  }

  /** True if every answer that a node's result rests on is still the same. */
  boolean stillTrue(Node node) {
    Node before = asking;
    asking = null;
    try {
      for (Dep dep : node.deps) {
        Object now =
            switch (dep.question()) {
              case HEADER -> header;
              case KIT -> kit(dep.name());
              case PATTERN -> pattern(dep.name());
              case SECTION -> section(dep.name());
              case PREVIOUS -> previous;
              case NEAR_PATTERN -> near(Kind.PATTERN, dep.name());
              case NEAR_KIT -> near(Kind.KIT, dep.name());
              case NEAR_SECTION -> near(Kind.SECTION, dep.name());
            };
        if (dep.answer() != now
            && !(now instanceof Optional && Objects.equals(dep.answer(), now))) {
          return false;
        }
      }
      return true;
    } finally {
      asking = before;
    }
  }

  @Override
  public Header header() {
    return noted(Question.HEADER, "", header);
  }

  @Override
  public Options options() {
    return options;
  }

  @Override
  public @Nullable Kit kit(String name) {
    Optional<Kit> builtIn = Kits.named(name);
    if (builtIn.isPresent()) {
      return builtIn.get();
    }
    KitBuilder.Built used = usedKits.get(name);
    if (used != null) {
      return noted(Question.KIT, name, used.kit());
    }
    if (asking != null && circular.contains(asking) && circular.contains(kitNodes.get(name))) {
      return Kits.FIVE_PIECE;
    }
    KitBuilder.Built built = build(name);
    return noted(Question.KIT, name, built == null ? null : built.kit());
  }

  /** The file's own kit of this name; null if there is none, or it is being built right now. */
  KitBuilder.@Nullable Built build(String name) {
    Node node = kitNodes.get(name);
    if (node == null || !kitsInWork.add(node)) {
      return null;
    }
    Node before = asking;
    try {
      if (node.result instanceof KitBuilder.Built built
          && node.name.equals(name)
          && stillTrue(node)) {
        return built;
      }
      asking(node);
      KitBuilder.Built built = KitBuilder.build(node.syntax, name, this);
      node.result = built;
      node.name = name;
      return built;
    } finally {
      asking = before;
      kitsInWork.remove(node);
    }
  }

  @Override
  public @Nullable List<Beat.Element> pattern(String name) {
    return noted(Question.PATTERN, name, patterns.get(name));
  }

  @Override
  public @Nullable Resolved section(String name) {
    return noted(Question.SECTION, name, sections.get(name));
  }

  @Override
  public @Nullable Resolved previous() {
    return noted(Question.PREVIOUS, "", previous);
  }

  @Override
  public Optional<String> near(Kind kind, String name) {
    List<String> names = new ArrayList<>();
    switch (kind) {
      case PATTERN -> {
        names.addAll(patterns.keySet());
        names.add("paradiddle");
        names.add("paradiddle-diddle");
        names.addAll(Rudiments.all().keySet());
        names.addAll(Timelines.all().keySet());
      }
      case KIT -> {
        names.addAll(kitNodes.keySet());
        names.addAll(usedKits.keySet());
        names.addAll(Kits.NAMES);
      }
      case SECTION -> names.addAll(sections.keySet());
    }
    Question question =
        switch (kind) {
          case PATTERN -> Question.NEAR_PATTERN;
          case KIT -> Question.NEAR_KIT;
          case SECTION -> Question.NEAR_SECTION;
        };
    return noted(question, name, Near.find(name, names));
  }

  // ---- afterwards

  Map<String, Resolved> sections() {
    return sections;
  }

  Map<String, Node> kitNodes() {
    return kitNodes;
  }

  Map<String, List<Beat.Element>> patterns() {
    return patterns;
  }
}
