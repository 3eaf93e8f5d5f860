package tabor.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.Position;
import org.jspecify.annotations.Nullable;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.emit.grid.Grid;
import tabor.emit.midi.MidiLesson;
import tabor.emit.midi.SmfWriter;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.ide.Cursor;
import tabor.lsp.Scheduler.Lane;
import tabor.source.Passage;

/**
 * Commands that lenses and editors' menus send. The first argument of all but {@code tabor.stop} is
 * the file's URI, the second a section's name, or a position in the section; without it the whole
 * file is meant.
 */
final class CommandRequests {
  private final Session session;
  private final CodeActionRequests codeActions;
  private final SectionPlayer player = new SectionPlayer();
  private final ShownFiles shown;
  private final FileBuilder builder;

  CommandRequests(Session session, CodeActionRequests codeActions) {
    this.session = session;
    this.codeActions = codeActions;
    this.shown = new ShownFiles(session);
    this.builder = new FileBuilder(session);
  }

  void declare(Requests requests) {
    requests.futures(
        "workspace/executeCommand", ExecuteCommandParams.class, this::execute, "command");
  }

  /** Nothing plays any more, and what was shown is gone. */
  void close() {
    player.stop();
    shown.close();
  }

  private CompletableFuture<?> execute(ExecuteCommandParams params) {
    List<Object> given = params.getArguments() == null ? List.of() : params.getArguments();
    return switch (params.getCommand()) {
      case "tabor.build" -> builder.build(document(given), params, folder(given), forms(given));
      case "tabor.play" -> about(given, this::play);
      case "tabor.showGrid" -> about(given, this::showGrid);
      case "tabor.showPlayer" -> showPlayer(given);
      case "tabor.showSvg" -> about(given, this::showSvg);
      case "tabor.changes" -> about(given, this::changes);
      case "tabor.apply" -> codeActions.apply(given);
      case "tabor.stop" -> {
        player.stop();
        yield CompletableFuture.completedFuture(null);
      }
      default -> throw Requests.invalid("no command " + params.getCommand());
    };
  }

  /** A file, and the section that is meant in it; null for all of it. */
  private record Asked(FileContext file, @Nullable Section section) {
    Lesson lesson() {
      return file.compiled().lesson();
    }
  }

  private CompletableFuture<?> about(
      List<Object> given, Function<Asked, @Nullable Object> command) {
    return session
        .requests()
        .inFile(
            Lane.READING,
            document(given),
            file -> command.apply(new Asked(file, section(file, given))));
  }

  private OpenDocument document(List<Object> given) {
    return session
        .requests()
        .document(
            text(given, 0)
                .orElseThrow(
                    () -> Requests.invalid("the first argument is the URI of an open file")));
  }

  private static Optional<String> text(List<Object> given, int index) {
    Object value = index < given.size() ? given.get(index) : null;
    return value instanceof JsonPrimitive primitive && primitive.isString()
        ? Optional.of(primitive.getAsString())
        : Optional.empty();
  }

  private static @Nullable Section section(FileContext file, List<Object> given) {
    List<Section> sections = file.compiled().lesson().sections();
    Object second = given.size() > 1 ? given.get(1) : null;
    if (second instanceof JsonObject json) {
      Cursor cursor = Cursor.at(file.compiled(), file.offset(position(json)));
      return sections.stream()
          .filter(one -> one.heading().passage() == cursor.section().passage())
          .findFirst()
          .orElseThrow(() -> Requests.refused("The cursor is in no groove, step or chart"));
    }
    return text(given, 1)
        .map(
            name ->
                sections.stream()
                    .filter(one -> one.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> Requests.refused("There is no section " + name)))
        .orElse(null);
  }

  private static Position position(JsonObject json) {
    if (json.get("line") instanceof JsonPrimitive line && line.isNumber()) {
      boolean along = json.get("character") instanceof JsonPrimitive p && p.isNumber();
      return new Position(line.getAsInt(), along ? json.get("character").getAsInt() : 0);
    }
    throw Requests.invalid(
        "the second argument is a section's name or a position: {\"line\": 0, \"character\": 0}");
  }

  /** Errors elsewhere in the file do not matter; what is shown must be what is meant. */
  private static void mustBeWhole(Asked asked) {
    Section section = asked.section();
    if (section != null) {
      Set<Passage> wrong = BrokenSections.passages(asked.file().compiled());
      if (BrokenSections.isBroken(section, wrong)) {
        throw Requests.refused(
            "“"
                + section.name()
                + "” has errors, or rests on a section with errors: fix them first");
      }
    }
  }

  private static List<Section> whole(Asked asked) {
    Set<Passage> wrong = BrokenSections.passages(asked.file().compiled());
    List<Section> sections =
        asked.lesson().sections().stream()
            .filter(one -> !BrokenSections.isBroken(one, wrong))
            .toList();
    if (sections.isEmpty()) {
      throw Requests.refused("There is no section without errors in this file");
    }
    return sections;
  }

  private Object play(Asked asked) {
    mustBeWhole(asked);
    Section section = asked.section() == null ? whole(asked).get(0) : asked.section();
    MidiLesson midi = MidiLesson.of(asked.lesson());
    try {
      player.start(
          SmfWriter.sequence(
              midi.smf(MidiLesson.performance(section, true), section, sound -> true)));
      return section.name();
    } catch (SectionPlayer.NoSound e) {
      session.client().show(MessageType.Warning, String.valueOf(e.getMessage()));
      throw Requests.refused(String.valueOf(e.getMessage()));
    }
  }

  private String showGrid(Asked asked) {
    mustBeWhole(asked);
    Section section = asked.section();
    List<Section> shownSections = section == null ? whole(asked) : List.of(section);
    String grid = Grid.of(asked.lesson(), shownSections::contains);
    String file = asked.lesson().file();
    String name = section == null ? file : file + "." + section.name();
    if (session.settings().showsDocuments()) {
      shown.show(name + ".txt", grid.getBytes(StandardCharsets.UTF_8), false);
    }
    return grid;
  }

  /** The second argument is a player's name, or a position in the player. */
  private CompletableFuture<?> showPlayer(List<Object> given) {
    return session
        .requests()
        .inFile(
            Lane.READING,
            document(given),
            file -> {
              Object second = given.size() > 1 ? given.get(1) : null;
              String player =
                  second instanceof JsonObject json
                      ? PlayerViews.at(file, position(json))
                      : text(given, 1)
                          .orElseThrow(() -> Requests.refused("Name a player of this file"));
              PlayerViews.Shown view = PlayerViews.of(file, player);
              if (session.settings().showsDocuments()) {
                shown.show(
                    view.name() + ".txt", view.text().getBytes(StandardCharsets.UTF_8), false);
              }
              return view.text();
            });
  }

  private String showSvg(Asked asked) {
    mustBeWhole(asked);
    if (!(asked.section() instanceof Groove)) {
      throw Requests.refused("Put the cursor into a groove or a step: these are engraved");
    }
    Output output =
        Form.of("svg")
            .orElseThrow()
            .outputs(asked.lesson(), new BuildOptions(Set.of(asked.section().name()), false))
            .stream()
            .findFirst()
            .orElseThrow(() -> Requests.refused("Nothing to engrave here"));
    return Uris.of(shown.show(output.name(), output.bytes().get(), true));
  }

  private @Nullable Object changes(Asked asked) {
    if (asked.section() instanceof Groove step && step.isStep()) {
      String words = step.caption() + ": " + String.join("; ", Changes.of(step).words());
      session.client().show(MessageType.Info, words);
    }
    return null;
  }

  private static String folder(List<Object> given) {
    if (isGiven(given, 1) && text(given, 1).isEmpty()) {
      throw Requests.invalid("the second argument is a folder");
    }
    return text(given, 1).orElse("out");
  }

  private static boolean isGiven(List<Object> given, int index) {
    return index < given.size()
        && given.get(index) != null
        && !(given.get(index) instanceof JsonNull);
  }

  /** What to build; MIDI, grid, page and pictures if nothing is said. */
  private static List<Form> forms(List<Object> given) {
    List<String> words = new ArrayList<>();
    if (!isGiven(given, 2)) {
      words.addAll(List.of("midi", "grid", "html", "svg"));
    } else if (given.get(2) instanceof JsonArray list) {
      for (JsonElement word : list) {
        words.add(word instanceof JsonPrimitive text ? text.getAsString() : String.valueOf(word));
      }
    } else {
      throw Requests.invalid("the third argument is a list of forms, such as [\"midi\"]");
    }
    return words.stream()
        .map(word -> Form.of(word).orElseThrow(() -> Requests.invalid("There is no form " + word)))
        .toList();
  }
}
