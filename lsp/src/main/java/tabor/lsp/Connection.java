package tabor.lsp;

import com.google.gson.JsonParseException;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.eclipse.lsp4j.jsonrpc.RemoteEndpoint;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.jsonrpc.json.StreamMessageConsumer;
import org.eclipse.lsp4j.jsonrpc.json.StreamMessageProducer;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseMessage;

/** Puts a server between two streams. */
final class Connection {
  private Connection() {}

  /**
   * Serves until the client says {@code exit}, closes its end or dies.
   *
   * @return the exit code: 0 after {@code shutdown}, else 1
   */
  static int serve(InputStream in, OutputStream out, Log log, String version) {
    CompletableFuture<Integer> done = new CompletableFuture<>();
    Session session = new Session(log, version, () -> done.complete(1));
    Server server = new Server(session, log, done::complete);
    MessageJsonHandler json = new MessageJsonHandler(session.routes().methods());
    StreamMessageConsumer writer = new StreamMessageConsumer(out, json);
    RemoteEndpoint remote = new RemoteEndpoint(writer, server, server::failure);
    remote.setJsonHandler(json);
    json.setMethodProvider(remote);
    session.connect(new Client(remote));
    InputStream buffered = new BufferedInputStream(in, 1 << 16);
    session.worker().moreToRead(() -> hasMore(buffered));
    StreamMessageProducer reader =
        new StreamMessageProducer(buffered, json, remote) {
          @Override
          protected void fireError(Throwable error) {
            log.say("a message could not be read", error);
            if (error instanceof JsonParseException || error instanceof IllegalStateException) {
              ResponseMessage answer = new ResponseMessage();
              answer.setError(
                  new ResponseError(ResponseErrorCode.ParseError, "not a JSON-RPC message", null));
              writer.consume(answer);
            }
          }
        };
    Thread reading =
        new Thread(
            null,
            () -> {
              try {
                reader.listen(remote);
              } finally {
                done.complete(1); // the client closed its end without saying exit
              }
            },
            "tabor-reader",
            Worker.STACK_BYTES);
    reading.setDaemon(true);
    reading.start();
    try {
      int code = done.get();
      session.close();
      out.flush();
      log.say("exit " + code);
      return code;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return 1;
    } catch (ExecutionException | IOException e) {
      return 1;
    }
  }

  private static boolean hasMore(InputStream in) {
    try {
      return in.available() > 0;
    } catch (IOException e) {
      return false;
    }
  }
}
