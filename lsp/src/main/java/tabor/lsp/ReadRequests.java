package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.DocumentHighlightParams;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.DocumentLinkParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.MarkupContent;
import org.jspecify.annotations.Nullable;
import tabor.ide.References;
import tabor.ide.Simultaneous;
import tabor.ide.UseLinks;
import tabor.lsp.Scheduler.Lane;
import tabor.source.Span;

/** What stands at a place, and what belongs to it. */
record ReadRequests(Session session) {
  private static final Pattern FENCE = Pattern.compile("(?m)^```[a-z]*\n?");
  private static final Pattern LINK = Pattern.compile("\\[([^]]*)]\\([^)]*\\)");
  private static final Pattern SIGNS = Pattern.compile("\\*\\*|(?<![\\\\`])`");
  private static final Pattern ESCAPED = Pattern.compile("\\\\([\\\\`*_{}\\[\\]()#+.!|<>-])");
  private static final Pattern BREAK = Pattern.compile(" {2}\n");

  void declare(Requests requests) {
    requests.atPlace(Lane.READING, "textDocument/hover", HoverParams.class, this::hover);
    requests.atPlace(
        Lane.READING,
        "textDocument/documentHighlight",
        DocumentHighlightParams.class,
        ReadRequests::highlight);
    requests.inFile(
        Lane.READING,
        "textDocument/documentLink",
        DocumentLinkParams.class,
        p -> p.getTextDocument().getUri(),
        (file, params) -> links(file));
  }

  private @Nullable Hover hover(FileContext file, HoverParams params) {
    boolean markdown =
        session.capabilities().list("textDocument", "hover", "contentFormat").contains("markdown");
    return tabor.ide.Hover.at(file.compiled(), file.offset(params.getPosition()), file.library())
        .map(
            note ->
                new Hover(
                    markdown
                        ? new MarkupContent("markdown", note.markdown())
                        : new MarkupContent("plaintext", plain(note.markdown())),
                    file.range(note.span())))
        .orElse(null);
  }

  private static List<DocumentHighlight> highlight(
      FileContext file, DocumentHighlightParams params) {
    int offset = file.offset(params.getPosition());
    List<DocumentHighlight> found = new ArrayList<>();
    for (Span span : Simultaneous.at(file.compiled(), offset)) {
      found.add(new DocumentHighlight(file.range(span), DocumentHighlightKind.Text));
    }
    if (found.isEmpty()) {
      for (References.Place place :
          References.references(file.compiled(), offset, file.library())) {
        if (place.compiled() == file.compiled()) {
          DocumentHighlightKind kind =
              place.given() ? DocumentHighlightKind.Write : DocumentHighlightKind.Read;
          found.add(new DocumentHighlight(file.range(place.span()), kind));
        }
      }
    }
    return found;
  }

  private static List<DocumentLink> links(FileContext file) {
    LspConverter to = file.converter();
    return UseLinks.of(file.compiled()).stream()
        .map(link -> new DocumentLink(file.range(link.span()), to.uri(link.file())))
        .toList();
  }

  /**
   * Markdown for a client that would show its signs: the words, with the layout of what is fenced.
   */
  private static String plain(String markdown) {
    StringBuilder plain = new StringBuilder();
    boolean fenced = false;
    for (String part : FENCE.split(markdown, -1)) {
      plain.append(fenced ? part : withoutSigns(part));
      fenced = !fenced;
    }
    return BREAK.matcher(plain.toString().strip()).replaceAll("\n");
  }

  private static String withoutSigns(String text) {
    String linked = LINK.matcher(text).replaceAll("$1");
    return ESCAPED.matcher(SIGNS.matcher(linked).replaceAll("")).replaceAll("$1");
  }
}
