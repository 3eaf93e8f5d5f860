package tabor.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.ShowDocumentParams;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.jspecify.annotations.Nullable;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.compile.Compiled;
import tabor.emit.grid.Grid;
import tabor.emit.midi.MidiLesson;
import tabor.emit.midi.SmfWriter;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.ide.Cursor;

/**
 * Commands that lenses and editors' menus send. The first argument of all but {@code tabor.stop} is
 * the file's URI, the second a section's name, or a position in the section; without it the whole
 * file is meant.
 */
final class Commands {
  private final Session session;
  private final Playing playing = new Playing();
  private @Nullable Path shown;

  Commands(Session session) {
    this.session = session;
  }

  void declare(Routes routes) {
    routes.queued("workspace/executeCommand", ExecuteCommandParams.class, this::execute);
  }

  /** Nothing plays any more. */
  void close() {
    playing.stop();
  }

  private @Nullable Object execute(ExecuteCommandParams params, Worker.Wanted wanted) {
    List<Object> given = params.getArguments() == null ? List.of() : params.getArguments();
    return switch (params.getCommand()) {
      case "tabor.build" -> build(params, given, wanted);
      case "tabor.play" -> play(given);
      case "tabor.stop" -> {
        playing.stop();
        yield null;
      }
      case "tabor.showGrid" -> showGrid(given);
      case "tabor.showSvg" -> showSvg(given);
      case "tabor.changes" -> changes(given);
      default ->
          throw Routes.error(ResponseErrorCode.InvalidParams, "no command " + params.getCommand());
    };
  }

  private static RuntimeException refused(String message) {
    return Routes.error(ResponseErrorCode.RequestFailed, message);
  }

  private Document document(List<Object> given) {
    return text(given, 0)
        .flatMap(session.documents()::find)
        .orElseThrow(() -> refused("The first argument is the URI of an open file"));
  }

  private static Optional<String> text(List<Object> given, int index) {
    Object value = index < given.size() ? given.get(index) : null;
    return value instanceof JsonPrimitive primitive && primitive.isString()
        ? Optional.of(primitive.getAsString())
        : value instanceof String string ? Optional.of(string) : Optional.empty();
  }

  /** The lesson, which must have no errors: what is built must be what is meant. */
  private Lesson lesson(Document document) {
    Compiled compiled = session.analyses().of(document);
    if (compiled.hasErrors()) {
      throw refused("This lesson has errors: mend them first");
    }
    return compiled.lesson();
  }

  /** The section of the second argument; null where none is given. */
  private @Nullable Section section(Document document, Lesson lesson, List<Object> given) {
    Optional<String> named = text(given, 1);
    Object second = given.size() > 1 ? given.get(1) : null;
    if (named.isEmpty() && second instanceof JsonObject json && json.has("line")) {
      JsonElement character = json.get("character");
      Position position =
          new Position(json.get("line").getAsInt(), character == null ? 0 : character.getAsInt());
      Compiled compiled = session.analyses().of(document);
      int offset = session.encoding().offset(document.lines(), position);
      Cursor cursor = Cursor.at(compiled, offset);
      return lesson.sections().stream()
          .filter(one -> one.heading().passage() == cursor.section().passage())
          .findFirst()
          .orElseThrow(() -> refused("The cursor is in no groove, step or chart"));
    }
    return named
        .map(
            name ->
                lesson.sections().stream()
                    .filter(one -> one.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> refused("There is no section " + name)))
        .orElse(null);
  }

  private Object play(List<Object> given) {
    Document document = document(given);
    Lesson lesson = lesson(document);
    Section section = section(document, lesson, given);
    if (section == null) {
      section = lesson.sections().stream().findFirst().orElse(null);
    }
    if (section == null) {
      throw refused("There is nothing to play in this file");
    }
    MidiLesson midi = MidiLesson.of(lesson);
    try {
      playing.start(
          SmfWriter.sequence(
              midi.smf(MidiLesson.performance(section, true), section, sound -> true)));
      return section.name();
    } catch (Playing.NoSound e) {
      session.client().show(MessageType.Warning, e.getMessage());
      throw refused(e.getMessage());
    }
  }

  private String showGrid(List<Object> given) {
    Document document = document(given);
    Lesson lesson = lesson(document);
    Section section = section(document, lesson, given);
    String grid = Grid.of(lesson, one -> section == null || one.name().equals(section.name()));
    String name = section == null ? lesson.file() : lesson.file() + "." + section.name();
    show(name + ".txt", grid.getBytes(java.nio.charset.StandardCharsets.UTF_8), false);
    return grid;
  }

  private String showSvg(List<Object> given) {
    Document document = document(given);
    Lesson lesson = lesson(document);
    Section section = section(document, lesson, given);
    if (!(section instanceof Groove)) {
      throw refused("Put the cursor into a groove or a step: these are engraved");
    }
    List<Output> outputs =
        Form.of("svg")
            .orElseThrow()
            .outputs(lesson, new BuildOptions(Set.of(section.name()), false));
    Output output =
        outputs.stream().findFirst().orElseThrow(() -> refused("Nothing to engrave here"));
    return Uris.of(show(output.name(), output.bytes().get(), true));
  }

  /** Puts a file where the client can open it, and asks it to. */
  private Path show(String name, byte[] bytes, boolean external) {
    try {
      if (shown == null) {
        shown = Files.createTempDirectory("tabor-show");
      }
      Path file = shown.resolve(name);
      Files.write(file, bytes);
      if (session.capabilities().has("window", "showDocument", "support")) {
        ShowDocumentParams params = new ShowDocumentParams(Uris.of(file));
        params.setExternal(external);
        params.setTakeFocus(false);
        session.client().showDocument(params);
      }
      return file;
    } catch (IOException e) {
      throw refused("Cannot write " + name + ": " + e.getMessage());
    }
  }

  private @Nullable Object changes(List<Object> given) {
    Document document = document(given);
    Lesson lesson = session.analyses().of(document).lesson();
    Section section = section(document, lesson, given);
    if (section instanceof Groove step && step.isStep()) {
      session
          .client()
          .show(
              MessageType.Info,
              step.caption() + ": " + String.join("; ", Changes.of(step).words()));
    }
    return null;
  }

  /**
   * Builds into a folder: the second argument, a path beside the file or a URI, else {@code out}
   * there. The third, a list of forms, says what to build; MIDI, grid, page and pictures if nothing
   * is said.
   */
  private List<String> build(
      ExecuteCommandParams params, List<Object> given, Worker.Wanted wanted) {
    Document document = document(given);
    Lesson lesson = lesson(document);
    if (!document.onDisk()) {
      throw refused("Save the file first: what is built is put beside it");
    }
    Path folder = folder(document, text(given, 1).orElse("out"));
    Progress progress =
        Progress.begin(session, params.getWorkDoneToken(), "Building " + lesson.file());
    List<String> written = new ArrayList<>();
    try {
      Files.createDirectories(folder);
      List<Form> forms = forms(given);
      for (int i = 0; i < forms.size(); i++) {
        for (Output output : forms.get(i).outputs(lesson, BuildOptions.ALL)) {
          wanted.check();
          progress.report(output.name(), 100 * i / forms.size());
          Files.write(folder.resolve(output.name()), output.bytes().get());
          written.add(output.name());
        }
      }
      progress.end(written.size() + " files in " + folder);
      return written;
    } catch (IOException e) {
      throw refused("Cannot write into " + folder + ": " + e.getMessage());
    } finally {
      progress.end("stopped");
    }
  }

  private static List<Form> forms(List<Object> given) {
    List<Form> forms = new ArrayList<>();
    if (given.size() > 2 && given.get(2) instanceof com.google.gson.JsonArray words) {
      for (JsonElement word : words) {
        Form.of(word.getAsString())
            .ifPresentOrElse(
                forms::add,
                () -> {
                  throw refused("There is no form " + word.getAsString());
                });
      }
      return forms;
    }
    for (String word : List.of("midi", "grid", "html", "svg")) {
      Form.of(word).ifPresent(forms::add);
    }
    return forms;
  }

  /** A folder inside the workspace: a command from a lens must not write anywhere else. */
  private Path folder(Document document, String word) {
    try {
      Path folder =
          Uris.path(word).orElseGet(() -> document.path().resolveSibling(word).normalize());
      if (!folder.startsWith(session.workspace().rootOf(document.path()))) {
        throw refused("The folder must lie in the workspace: " + folder);
      }
      return folder;
    } catch (InvalidPathException e) {
      throw refused("Not a folder: " + word);
    }
  }
}
