package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.CompletionTriggerKind;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SignatureInformation;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Tuple;
import org.jspecify.annotations.Nullable;
import tabor.ide.Completion;
import tabor.ide.UsageHelp;
import tabor.lsp.Scheduler.Lane;
import tabor.source.Span;

/** Requests made at every key: completion and signature help. */
final class CompletionRequests {
  /** What no client takes for a part of a word. */
  private static final String BETWEEN_WORDS = " \t\r\n:|,=\"({";

  void declare(Requests requests) {
    requests.atPlace(
        Lane.TYPING,
        "textDocument/completion",
        CompletionParams.class,
        CompletionRequests::complete);
    requests.atPlace(
        Lane.TYPING,
        "textDocument/signatureHelp",
        SignatureHelpParams.class,
        CompletionRequests::signature);
  }

  /**
   * The list is complete for what is written so far only: with the next character the client is to
   * ask again, so that behind a finished word there is none.
   */
  private static CompletionList complete(FileContext file, CompletionParams params) {
    int offset = file.offset(params.getPosition());
    List<CompletionItem> items = new ArrayList<>();
    for (tabor.ide.CompletionItem found :
        Completion.at(file.compiled(), offset, isAsked(file, params, offset), file.library())) {
      CompletionItem item = new CompletionItem(found.label());
      item.setKind(kind(found.kind()));
      if (!found.detail().isEmpty()) {
        item.setDetail(found.detail());
      }
      if (!found.documentation().isEmpty()) {
        item.setDocumentation(found.documentation());
      }
      item.setFilterText(found.text());
      item.setTextEdit(Either.forLeft(new TextEdit(file.range(found.replaced()), found.text())));
      item.setSortText(String.format("%04d", items.size()));
      items.add(item);
    }
    return new CompletionList(true, items);
  }

  /**
   * True if a person asked. The protocol does not tell that from a word just typed, and what is
   * part of a word differs from client to client: counts have {@code &} in it, surfaces a dot. But
   * no client asks by itself behind a blank, or behind a sign that stands between words.
   */
  private static boolean isAsked(FileContext file, CompletionParams params, int offset) {
    boolean invoked =
        params.getContext() == null
            || params.getContext().getTriggerKind() == CompletionTriggerKind.Invoked;
    String text = file.document().text();
    return invoked && (offset == 0 || BETWEEN_WORDS.indexOf(text.charAt(offset - 1)) >= 0);
  }

  private static CompletionItemKind kind(tabor.ide.CompletionItem.Kind kind) {
    return switch (kind) {
      case KEYWORD -> CompletionItemKind.Keyword;
      case LIMB -> CompletionItemKind.EnumMember;
      case SURFACE -> CompletionItemKind.Variable;
      case LETTER -> CompletionItemKind.Property;
      case SECTION -> CompletionItemKind.Class;
      case PATTERN -> CompletionItemKind.Function;
      case KIT -> CompletionItemKind.Struct;
      case COUNT -> CompletionItemKind.Event;
      case VALUE -> CompletionItemKind.Value;
      case FILE -> CompletionItemKind.File;
    };
  }

  private static @Nullable SignatureHelp signature(FileContext file, SignatureHelpParams params) {
    List<UsageHelp.Usage> usages =
        UsageHelp.at(file.compiled(), file.offset(params.getPosition()), file.library());
    return usages.isEmpty()
        ? null
        : new SignatureHelp(
            usages.stream().map(CompletionRequests::signature).toList(), 0, active(usages.get(0)));
  }

  private static SignatureInformation signature(UsageHelp.Usage usage) {
    SignatureInformation shown = new SignatureInformation(usage.usage());
    shown.setDocumentation(usage.meaning());
    List<ParameterInformation> words = new ArrayList<>();
    for (Span span : usage.words()) {
      ParameterInformation word = new ParameterInformation();
      word.setLabel(Tuple.two(span.start(), span.end()));
      words.add(word);
    }
    shown.setParameters(words);
    shown.setActiveParameter(active(usage));
    return shown;
  }

  /** A number past the last word marks none. */
  private static int active(UsageHelp.Usage usage) {
    return usage.active() < 0 ? usage.words().size() : usage.active();
  }
}
