package tabor.compile;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Near;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.resolve.KitResolver;
import tabor.resolve.PlayerResolver;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;

/** The kits that a file may name: built-in ones, those of files in use, its own. */
final class FileKits implements PlayerResolver.Shelf {
  private final Map<String, SectionNode> nodes = new LinkedHashMap<>();
  private final Map<String, KitResolver.Built> used = new HashMap<>();
  private final Map<String, KitResolver.Built> own = new LinkedHashMap<>();
  private final Set<SectionNode> circular = new LinkedHashSet<>();

  /** The kits of a file's sections, with those of the files that it uses. */
  FileKits(List<SectionNode> sections, List<FileKits> files) {
    files.forEach(file -> file.own.forEach(used::putIfAbsent));
    for (SectionNode node : sections) {
      Name name = node.ownName;
      if (node.kind == SectionKind.KIT
          && name != null
          && Kits.named(name.text()).isEmpty()
          && !used.containsKey(name.text())) {
        nodes.putIfAbsent(name.text(), node);
      }
    }
    nodes.values().forEach(this::build);
    Map<String, KitResolver.Built> made = new HashMap<>(own);
    own.clear();
    nodes.keySet().forEach(name -> own.put(name, Objects.requireNonNull(made.get(name))));
    // A kit whose name is taken is nobody's kit, and what is wrong with it is told all the same:
    // before its name was taken it may have been told already.
    for (SectionNode node : sections) {
      Name name = node.ownName;
      if (node.kind == SectionKind.KIT && name != null && !isKept(node, name)) {
        built(node);
      }
    }
  }

  private boolean isKept(SectionNode node, Name name) {
    return node.equals(nodes.get(name.text()));
  }

  /** Makes a kit after those that it is like; kits like each other in a circle start afresh. */
  private void build(SectionNode start) {
    Deque<SectionNode> chain = new ArrayDeque<>();
    Set<SectionNode> onTheWay = new HashSet<>();
    SectionNode at = start;
    while (at != null && !own.containsKey(nameOf(at)) && onTheWay.add(at)) {
      chain.push(at);
      Name like = at.like();
      at = like == null ? null : nodes.get(like.text());
    }
    if (at != null && onTheWay.contains(at)) {
      for (SectionNode node : chain) {
        circular.add(node);
        if (node == at) {
          break;
        }
      }
    }
    for (SectionNode node : chain) {
      own.put(nameOf(node), built(node));
    }
  }

  private static String nameOf(SectionNode node) {
    return Objects.requireNonNull(node.ownName).text();
  }

  private KitResolver.Built built(SectionNode node) {
    Name like = node.like();
    Kit from = like == null ? null : likeOf(node, like.text());
    Optional<String> near = like == null || from != null ? Optional.empty() : near(like.text());
    SectionNode.BuiltKit before = node.kit;
    if (before != null && before.like() == from && before.near().equals(near)) {
      return before.built();
    }
    KitResolver.Built built = KitResolver.resolve(node.syntax, nameOf(node), from, near);
    node.kit = new SectionNode.BuiltKit(from, near, built);
    return built;
  }

  private @Nullable Kit likeOf(SectionNode node, String name) {
    return circular.contains(node) ? Kits.FIVE_PIECE : kit(name);
  }

  /** The kit of this name; null if there is none. */
  @Override
  public @Nullable Kit kit(String name) {
    Optional<Kit> builtIn = Kits.named(name);
    if (builtIn.isPresent()) {
      return builtIn.get();
    }
    KitResolver.Built built = used.getOrDefault(name, own.get(name));
    return built == null ? null : built.kit();
  }

  /** True if the name belongs to a kit that is not one of the file's own sections. */
  boolean isTaken(String name) {
    return Kits.named(name).isPresent() || used.containsKey(name);
  }

  /** The section that makes the kit of this name; null if none of the file does. */
  @Nullable SectionNode node(String name) {
    return nodes.get(name);
  }

  /** The kits that are like each other in a circle. */
  Set<SectionNode> circular() {
    return circular;
  }

  /** The file's own kits, in the order of the file. */
  Map<String, KitResolver.Built> own() {
    return Collections.unmodifiableMap(own);
  }

  /** The name of a kit that looks like {@code name}. */
  @Override
  public Optional<String> near(String name) {
    List<String> names = new ArrayList<>(nodes.keySet());
    names.addAll(used.keySet());
    names.addAll(Kits.NAMES);
    return Near.find(name, names);
  }
}
