package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Explanation;
import tabor.source.Span;

/** What to say about the thing under the cursor. */
public final class Hover {
  private final MusicNotes music;
  private final SignNotes signs;
  private final NameNotes names;

  private Hover(Cursor cursor, Library library) {
    this.music = new MusicNotes(cursor);
    this.signs = new SignNotes(cursor);
    this.names = new NameNotes(cursor, library);
  }

  /**
   * A text beside the cursor.
   *
   * @param markdown what it says
   * @param span what it is about
   */
  public record Note(String markdown, Span span) {}

  /** The note for an offset; empty where there is nothing to say. */
  public static Optional<Note> at(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    List<String> parts = new ArrayList<>();
    SyntaxToken token = cursor.token();
    if (token != null) {
      new Hover(cursor, library).about(token).ifPresent(parts::add);
    }
    Span about = token == null ? new Span(offset, offset) : cursor.inFile(token.span());
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      Span span = compiled.span(diagnostic.spot());
      if (span.touches(offset)) {
        parts.add(
            "**" + diagnostic.code().word() + "**: " + Explanation.of(diagnostic.code()).summary());
        about = token == null ? span : about;
      }
    }
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(new Note(String.join("\n\n---\n\n", parts), about));
  }

  private Optional<String> about(SyntaxToken token) {
    return Optional.ofNullable(
        switch (token.role()) {
          case HIT, SILENCE, HOLD -> NoteText.joined(signs.sign(token), music.strokes(token));
          case LIMB -> NoteText.joined(music.limb(token), partOrStatement());
          case SURFACE, SURFACE_NAME -> NoteText.joined(names.surface(token.text()), music.part());
          case PATTERN, PATTERN_NAME -> names.pattern(token.text());
          case SECTION, SECTION_NAME -> names.section(token.text());
          case KIT, KIT_NAME -> names.kit(token.text());
          case COUNT ->
              token.count() == null
                  ? NoteText.joined(music.every(token.text()), music.statement())
                  : music.count(token.span(), token.count());
          case NUMBER, SIGN -> NoteText.joined(signs.beatSign(), signs.spread(token));
          case KEYWORD, VALUE, LEVEL, PLAYER, PLAYER_NAME -> music.statement();
          case LETTER_NAME, TEXT, FILE -> null;
        });
  }

  private @Nullable String partOrStatement() {
    String part = music.part();
    return part == null ? music.statement() : part;
  }
}
