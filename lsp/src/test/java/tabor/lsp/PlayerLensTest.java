package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.Position;
import org.junit.jupiter.api.Test;

/** The lesson as a player gets it. */
class PlayerLensTest extends WithEditor {
  private static final String CLASS =
      """
      player mia "Mia"
        tempo 80%
        text "Lead with the [right] hand."
      player ben
        left-handed
        sections last
      """;

  private static final String LESSON =
      """
      title "Week three"
      tempo 100
      use "class.tabor"
      groove first
        right : s s s s
      groove last
        right : s . s .
      player ben
        text "Slowly."
      """;

  private List<Command> lenses(String file) throws Exception {
    List<Command> found = new ArrayList<>();
    for (CodeLens lens : Editor.get(documents().codeLens(new CodeLensParams(editor.id(file))))) {
      found.add(Editor.get(documents().resolveCodeLens(lens)).getCommand());
    }
    return found;
  }

  private String show(Object... arguments) throws Exception {
    return (String) execute(new Command("", "tabor.showPlayer", Arrays.asList(arguments)));
  }

  private Object execute(Command command) throws Exception {
    return Editor.get(
        editor
            .server
            .getWorkspaceService()
            .executeCommand(
                new ExecuteCommandParams(command.getCommand(), command.getArguments())));
  }

  @Test
  void theLensOfALessonsPlayer() throws Exception {
    editor.openQuietly("class.tabor", CLASS);
    editor.openQuietly("week.tabor", LESSON);
    List<Command> players =
        lenses("week.tabor").stream()
            .filter(command -> command.getCommand().equals("tabor.showPlayer"))
            .toList();
    assertThat(players).hasSize(1);
    assertThat(players.get(0).getTitle()).isEqualTo("as ben gets it");
    String view = (String) execute(players.get(0));
    assertThat(view)
        .startsWith("Week three\nben\nSlowly.\n")
        .contains("last")
        .doesNotContain("first");
    assertThat(view).as("mirrored").contains("L").doesNotContain("R");
  }

  @Test
  void aClassFileShowsTheLessonsThatUseIt() throws Exception {
    editor.openQuietly("class.tabor", CLASS);
    editor.openQuietly("week.tabor", LESSON);
    editor.openQuietly("week-4.tabor", LESSON.replace("Week three", "Week four"));
    editor.openQuietly("alone.tabor", "title \"Alone\"\ngroove a\n  snare : x . x .\n");
    assertThat(lenses("class.tabor").stream().map(Command::getTitle))
        .containsExactly("as Mia gets it", "as ben gets it");
    String mia = (String) execute(lenses("class.tabor").get(0));
    assertThat(mia)
        .contains("# week\n\nWeek three\nMia\nLead with the right hand.\n", "quarter = 80")
        .contains("# week-4\n\nWeek four\nMia\n")
        .doesNotContain("Alone");
    assertThat(show(editor.uri("class.tabor"), new Position(4, 3))).contains("Slowly.");
  }

  @Test
  void theCommandNeedsNoLens() throws Exception {
    editor.openQuietly("class.tabor", CLASS);
    editor.openQuietly("week.tabor", LESSON);
    setting(false);
    assertThat(lenses("class.tabor")).isEmpty();
    assertThat(show(editor.uri("week.tabor"), "mia")).contains("Mia", "first", "last");
    setting(true);
    assertThat(lenses("class.tabor")).hasSize(2);
  }

  private void setting(boolean on) {
    editor
        .server
        .getWorkspaceService()
        .didChangeConfiguration(
            new DidChangeConfigurationParams(Map.of("tabor", Map.of("playerLens", on))));
  }

  @Test
  void unsavedWordsCount() throws Exception {
    editor.openQuietly("class.tabor", CLASS.replace("80%", "50%"));
    editor.openQuietly("week.tabor", LESSON);
    assertThat(show(editor.uri("week.tabor"), "mia")).contains("quarter = 50");
  }

  @Test
  void sectionsWithErrorsAreLeftOut() throws Exception {
    editor.openQuietly("class.tabor", CLASS);
    editor.openQuietly("week.tabor", LESSON.replace("s s s s", "s s s"));
    assertThat(show(editor.uri("week.tabor"), "mia"))
        .contains("last", "Sections with errors, and what rests on them, are left out.");
    editor.openQuietly("none.tabor", "groove a\n  snare : x . x .\nplayer zoe\n  sections b\n");
    assertThat(show(editor.uri("none.tabor"), "zoe"))
        .isEqualTo("Nothing of none is left for zoe.\n");
  }

  /** What the student's kit lacks and what is too fast for these hands; not what all are told. */
  @Test
  void whatAStudentCannotPlayIsListed() throws Exception {
    editor.openQuietly(
        "fast.tabor",
        """
        title "Fast"
        tempo 120
        groove beat
          hihat : rrrr rrrr rrrr rrrr
          kick  : x . x .
        groove crash
          crash2 : x . . .
        groove easy
          snare : x . x .
        player mia "Mia"
          limits hands 2 to 3
          sections beat easy
        player ben "Ben"
          on junior
          sections easy
        """);
    String mia = show(editor.uri("fast.tabor"), "mia");
    assertThat(mia).contains("What does not fit Mia:\n  beat, bar 1").contains("right hand");
    assertThat(mia.substring(mia.indexOf("What does not fit"))).doesNotContain("easy", "crash");
    assertThat(show(editor.uri("fast.tabor"), "ben")).doesNotContain("does not fit");
  }

  @Test
  void whatMakesNoSense() {
    editor.openQuietly("class.tabor", CLASS);
    assertThatThrownBy(() -> show(editor.uri("class.tabor"), "zoe"))
        .hasMessageContaining("There is no player zoe");
    assertThatThrownBy(() -> show(editor.uri("class.tabor"), "mia"))
        .hasMessageContaining("No lesson of this workspace uses this file");
    assertThatThrownBy(() -> show(editor.uri("class.tabor"))).hasMessageContaining("Name a player");
    editor.openQuietly("week.tabor", LESSON);
    assertThatThrownBy(() -> show(editor.uri("week.tabor"), new Position(4, 2)))
        .hasMessageContaining("The cursor is in no player");
  }

  @Test
  void whoCanShowDocumentsIsShownItAndAskedToRefresh() throws Exception {
    String can =
        "{\"window\": {\"showDocument\": {\"support\": true}}, \"workspace\":"
            + " {\"codeLens\": {\"refreshSupport\": true}}}";
    Path folder = Files.createTempDirectory("tabor-lsp-test");
    try (Editor other = Editor.in(folder, can, "{\"playerLens\": false}")) {
      other.openQuietly("week.tabor", "groove a\n  snare : x . x .\nplayer mia\n  tempo 50\n");
      Object view =
          Editor.get(
              other
                  .server
                  .getWorkspaceService()
                  .executeCommand(
                      new ExecuteCommandParams(
                          "tabor.showPlayer", List.of(other.uri("week.tabor"), "mia"))));
      assertThat((String) view).contains("quarter = 50");
      assertThat(other.showedDocuments).hasSize(1);
      assertThat(other.showedDocuments.get(0).getUri()).endsWith("week.mia.txt");
      assertThat(
              Editor.get(
                  other
                      .server
                      .getTextDocumentService()
                      .codeLens(new CodeLensParams(other.id("week.tabor")))))
          .as("play, grid, notation, build")
          .hasSize(4);
      assertThat(other.lensRefreshes).as("nothing was shown before").hasValue(0);
      other
          .server
          .getWorkspaceService()
          .didChangeConfiguration(
              new DidChangeConfigurationParams(Map.of("tabor", Map.of("playerLens", true))));
      assertThat(
              Editor.get(
                  other
                      .server
                      .getTextDocumentService()
                      .codeLens(new CodeLensParams(other.id("week.tabor")))))
          .hasSize(5);
      assertThat(other.lensRefreshes).hasValue(1);
    }
  }
}
