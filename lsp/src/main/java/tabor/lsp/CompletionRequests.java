package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureHelpParams;
import org.eclipse.lsp4j.SignatureInformation;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Tuple;
import org.jspecify.annotations.Nullable;
import tabor.ide.Completion;
import tabor.ide.Proposal;
import tabor.ide.Signatures;
import tabor.lsp.Scheduler.Lane;
import tabor.source.Span;

/** Requests made at every key: completion and signature help. */
final class CompletionRequests {
  void declare(Requests requests) {
    requests.inFile(
        Lane.TYPING,
        "textDocument/completion",
        CompletionParams.class,
        p -> p.getTextDocument().getUri(),
        CompletionRequests::complete,
        "position");
    requests.inFile(
        Lane.TYPING,
        "textDocument/signatureHelp",
        SignatureHelpParams.class,
        p -> p.getTextDocument().getUri(),
        CompletionRequests::signature,
        "position");
  }

  /** An item takes the place of the whole word that it completes, or there is no such item. */
  private static CompletionList complete(FileContext file, CompletionParams params) {
    int offset = file.offset(params.getPosition());
    String text = file.document().text();
    List<CompletionItem> items = new ArrayList<>();
    for (Proposal proposal : Completion.at(file.compiled(), offset, file.library())) {
      Span word = word(text, proposal.replace(), offset);
      if (word == null) {
        continue; // it would stand behind a word that is finished
      }
      CompletionItem item = new CompletionItem(proposal.label());
      item.setKind(kind(proposal.kind()));
      if (!proposal.detail().isEmpty()) {
        item.setDetail(proposal.detail());
      }
      item.setTextEdit(Either.forLeft(new TextEdit(file.range(word), proposal.label())));
      item.setSortText(String.format("%04d", items.size()));
      items.add(item);
    }
    return new CompletionList(false, items);
  }

  /**
   * What an item replaces: from where its word begins to where that ends, behind the cursor too.
   * Null for an item that would be put behind a word or a text without taking its place.
   */
  private static @Nullable Span word(String text, Span replace, int offset) {
    int start = replace.start();
    if (start > offset || (start > 0 && isWord(text.charAt(start - 1)))) {
      return null;
    }
    if (replace.length() == 0 && start > 0 && text.charAt(start - 1) == '"') {
      return null;
    }
    int end = Math.max(offset, replace.end());
    while (start < offset && end < text.length() && isWord(text.charAt(end))) {
      end++;
    }
    return new Span(start, end);
  }

  private static boolean isWord(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '.' || c == '&';
  }

  private static CompletionItemKind kind(Proposal.Kind kind) {
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
    Signatures.Signature found =
        Signatures.at(file.compiled(), file.offset(params.getPosition())).orElse(null);
    if (found == null) {
      return null;
    }
    SignatureInformation shown = new SignatureInformation(found.form());
    shown.setDocumentation(found.meaning());
    List<ParameterInformation> words = new ArrayList<>();
    for (Span span : found.words()) {
      ParameterInformation word = new ParameterInformation();
      word.setLabel(Tuple.two(span.start(), span.end()));
      words.add(word);
    }
    shown.setParameters(words);
    // A number past the last word marks none.
    int active = found.active() < 0 ? words.size() : found.active();
    return new SignatureHelp(List.of(shown), 0, active);
  }
}
