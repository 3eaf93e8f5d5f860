// Every example typed from its first to its last character in VS Code's editor widget, with the suggestions of the
// real server and Enter at every line end: it must give the example. Run by monaco.sh.
import { spawn } from "node:child_process";
import { createServer } from "node:http";
import { readdirSync, readFileSync, existsSync } from "node:fs";
import { dirname, extname, join, normalize } from "node:path";
import { pathToFileURL } from "node:url";

const [serverCommand, monaco, examples, vscode, work] = process.argv.slice(2);

/** The language server behind a pipe. */
class Server {
  constructor() {
    this.process = spawn(serverCommand, [], { stdio: ["pipe", "pipe", "inherit"] });
    this.process.stdout.on("data", (chunk) => this.read(chunk));
    this.waiting = new Map();
    this.buffer = Buffer.alloc(0);
    this.last = 0;
  }

  read(chunk) {
    this.buffer = Buffer.concat([this.buffer, chunk]);
    for (;;) {
      const head = this.buffer.indexOf("\r\n\r\n");
      const length = head < 0 ? null : /Content-Length: (\d+)/i.exec(this.buffer.toString("latin1", 0, head));
      if (!length || this.buffer.length < head + 4 + Number(length[1])) {
        return;
      }
      const end = head + 4 + Number(length[1]);
      const message = JSON.parse(this.buffer.toString("utf8", head + 4, end));
      this.buffer = this.buffer.subarray(end);
      if (message.method && message.id !== undefined) {
        this.send({ id: message.id, result: null });
      } else if (message.id !== undefined) {
        const { resolve, reject } = this.waiting.get(message.id);
        this.waiting.delete(message.id);
        message.error ? reject(new Error(message.error.message)) : resolve(message.result);
      }
    }
  }

  send(message) {
    const body = Buffer.from(JSON.stringify({ jsonrpc: "2.0", ...message }));
    this.process.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.process.stdin.write(body);
  }

  notify(method, params) {
    this.send({ method, params });
  }

  ask(method, params) {
    const id = ++this.last;
    this.send({ id, method, params });
    return new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
  }
}

const server = new Server();
const root = pathToFileURL(examples).href;
const initialized = await server.ask("initialize", {
  processId: process.pid,
  rootUri: root,
  workspaceFolders: [{ uri: root, name: "examples" }],
  capabilities: { textDocument: { completion: { contextSupport: true } } },
});
server.notify("initialized", {});

const packaged = JSON.parse(readFileSync(join(vscode, "package.json"), "utf8"));
const setup = {
  language: JSON.parse(readFileSync(join(vscode, "language-configuration.json"), "utf8")),
  options: packaged.contributes.configurationDefaults["[tabor]"],
  triggers: initialized.capabilities.completionProvider.triggerCharacters ?? [],
};

let open = null;

/** Brings the server's text up to date, as an editor does before it asks. */
function update(uri, text) {
  if (open?.uri !== uri) {
    if (open) {
      server.notify("textDocument/didClose", { textDocument: { uri: open.uri } });
    }
    open = { uri, version: 1 };
    server.notify("textDocument/didOpen", { textDocument: { uri, languageId: "tabor", version: 1, text } });
  } else {
    open.version++;
    server.notify("textDocument/didChange", { textDocument: { uri, version: open.version }, contentChanges: [{ text }] });
  }
}

const TYPES = { ".js": "text/javascript", ".css": "text/css", ".ttf": "font/ttf", ".html": "text/html" };

function body(request) {
  return new Promise((resolve) => {
    let text = "";
    request.on("data", (chunk) => (text += chunk));
    request.on("end", () => resolve(JSON.parse(text)));
  });
}

const http = createServer(async (request, response) => {
  const path = normalize(decodeURIComponent(new URL(request.url, "http://here").pathname));
  if (path === "/complete") {
    const asked = await body(request);
    update(asked.uri, asked.text);
    const result = await server.ask("textDocument/completion", {
      textDocument: { uri: asked.uri },
      position: asked.position,
      context: asked.context,
    });
    response.setHeader("content-type", "application/json").end(JSON.stringify(result));
    return;
  }
  const file =
    path === "/" ? join(dirname(process.argv[1]), "monaco.html") : path.startsWith("/vs/") ? join(monaco, "min", path) : "";
  if (path === "/setup") {
    response.setHeader("content-type", "application/json").end(JSON.stringify(setup));
  } else if (file && existsSync(file)) {
    response.setHeader("content-type", TYPES[extname(file)] ?? "application/octet-stream").end(readFileSync(file));
  } else {
    response.writeHead(404).end();
  }
});
await new Promise((resolve) => http.listen(0, "127.0.0.1", resolve));

/** A browser by the WebDriver protocol. */
const driver = spawn("chromedriver", ["--port=0"], { stdio: ["ignore", "pipe", "ignore"] });
const port = await new Promise((resolve, reject) => {
  let said = "";
  driver.stdout.on("data", (chunk) => {
    said += chunk;
    const found = /started successfully on port (\d+)/.exec(said);
    found && resolve(found[1]);
  });
  driver.on("exit", () => reject(new Error("chromedriver ended: " + said)));
});

async function call(path, payload) {
  const response = await fetch(`http://127.0.0.1:${port}/session${path}`, {
    method: payload === undefined ? "DELETE" : "POST",
    body: payload === undefined ? undefined : JSON.stringify(payload),
  });
  const { value } = await response.json();
  if (value?.error) {
    throw new Error(value.message);
  }
  return value;
}

const chrome = ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--window-size=1000,800"];
const session = await call("", {
  capabilities: {
    alwaysMatch: {
      timeouts: { script: 120000 },
      "goog:chromeOptions": { binary: "/usr/bin/chromium", args: [...chrome, `--user-data-dir=${join(work, "profile")}`] },
    },
  },
});
const page = `/${session.sessionId}`;

async function run(name, ...args) {
  const script = `const done = arguments[arguments.length - 1];
    window.${name}(...Array.from(arguments).slice(0, -1)).then((value) => done({ value }), (e) => done({ problem: String(e) }));`;
  const { value, problem } = await call(`${page}/execute/async`, { script, args });
  if (problem) {
    throw new Error(problem);
  }
  return value;
}

/** A real key, as the keyboard gives it. */
function press(key) {
  return call(`${page}/actions`, {
    actions: [{ type: "key", id: "keyboard", actions: [{ type: "keyDown", value: key }, { type: "keyUp", value: key }] }],
  });
}

function lessons(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? lessons(join(folder, entry.name)) : entry.name.endsWith(".tabor") ? [join(folder, entry.name)] : [],
  );
}

let passed = 0;
let failed = 0;
try {
  await call(`${page}/url`, { url: `http://127.0.0.1:${http.address().port}/` });
  await run("ready");
  // The server offers something, or nothing below would mean anything.
  const offered = await run("offeredAfter", `${root}/none.tabor`, "groove a\n  hi");
  offered.includes("hihat") ? passed++ : (failed++, console.log("FAILED: offered " + offered));
  const files = lessons(examples);
  const slow = files.filter((file) => dirname(file) === examples).slice(0, 3);
  for (const file of files) {
    const text = readFileSync(file, "utf8");
    await run("begin", pathToFileURL(file).href);
    const lines = text.split("\n");
    for (let i = 0; i < lines.length; i++) {
      await run("type", lines[i], i + 1 === lines.length, slow.includes(file));
      if (i + 1 < lines.length) {
        await press("\uE007");
      }
    }
    const typed = await run("text");
    if (typed === text) {
      passed++;
    } else {
      failed++;
      const got = typed.split("\n");
      const at = lines.findIndex((line, i) => line !== got[i]);
      console.log(`FAILED: ${file}:${at + 1}: “${lines[at]}” became “${got[at]}”`);
    }
  }
} catch (problem) {
  failed++;
  console.log("FAILED: " + problem.stack);
} finally {
  await call(page).catch(() => {});
  driver.kill();
  server.process.kill();
  http.close();
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed ? 1 : 0);
