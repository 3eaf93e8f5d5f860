-- A lesson written in Neovim from an empty buffer, with the server on: run by neovim.sh.

local passed, failed = 0, 0

local function say(text)
  io.stdout:write(text .. "\n")
end

local function check(what, good, detail)
  if good then
    passed = passed + 1
  else
    failed = failed + 1
    say("FAILED: " .. what .. (detail and ": " .. vim.inspect(detail) or ""))
  end
end

local function wait(what, condition)
  local good = vim.wait(30000, condition, 20)
  if not good then
    say("waited in vain for " .. what)
  end
  return good
end

local function request(method, params)
  local answers = vim.lsp.buf_request_sync(0, method, params, 30000) or {}
  for _, answer in pairs(answers) do
    return answer.result, answer.err
  end
end

local function here(line, character)
  return {
    textDocument = { uri = vim.uri_from_bufnr(0) },
    position = { line = line, character = character },
  }
end

local function lines()
  return vim.api.nvim_buf_get_lines(0, 0, -1, false)
end

local function find(text)
  for number, line in ipairs(lines()) do
    local column = line:find(text, 1, true)
    if column then
      return number - 1, column - 1
    end
  end
  error("not in the text: " .. text)
end

-- Types text at the end of the buffer as a person would, key by key.
local function type_in(text)
  for i = 1, #text do
    local last = vim.api.nvim_buf_line_count(0)
    local key = text:sub(i, i)
    if key == "\n" then
      vim.api.nvim_buf_set_lines(0, last, last, false, { "" })
    else
      local line = vim.api.nvim_buf_get_lines(0, last - 1, last, false)[1]
      vim.api.nvim_buf_set_text(0, last - 1, #line, last - 1, #line, { key })
    end
    vim.wait(1)
  end
end

local function codes()
  local found = {}
  for _, diagnostic in ipairs(vim.diagnostic.get(0)) do
    table.insert(found, tostring(diagnostic.code or (diagnostic.user_data or {}).lsp and diagnostic.user_data.lsp.code))
  end
  return table.concat(found, " ")
end

local function labels(result)
  local found = {}
  for _, item in ipairs(result and (result.items or result) or {}) do
    table.insert(found, item.label)
  end
  return " " .. table.concat(found, " ") .. " "
end

local function apply(edits)
  vim.lsp.util.apply_text_edits(edits, vim.api.nvim_get_current_buf(), "utf-16")
end

local function run()
  vim.g.tabor_lsp = vim.env.TABOR_SERVER
  vim.cmd("luafile " .. vim.env.TABOR_PLUGIN)
  vim.cmd("cd " .. vim.env.TABOR_WORK)
  vim.cmd("edit lesson.tabor")
  check("file type", vim.bo.filetype == "tabor", vim.bo.filetype)
  check("the client starts", wait("the client", function()
    local clients = vim.lsp.buf_get_clients(0)
    for _, client in pairs(clients) do
      return client.initialized ~= nil or client.server_capabilities ~= nil
    end
    return false
  end))

  type_in('title "Six-eight workshop"\ntime 6/8\ntempo 58\n\n')
  type_in('groove pads "On the snare"\n  hands play paradiddle-diddle in sixteenths\n')
  type_in('step kitted "The right hand rides"\n  right plays ri')
  local row = vim.api.nvim_buf_line_count(0) - 1
  local offered = request("textDocument/completion", here(row, #lines()[row + 1]))
  check("completion of a surface", labels(offered):find(" ride ", 1, true), labels(offered))
  type_in('de\nstep feet "Kick on one"\n  add kick at ')
  row = vim.api.nvim_buf_line_count(0) - 1
  offered = labels(request("textDocument/completion", here(row, #lines()[row + 1])))
  check("counts of a six-eight bar", offered:find(" 1 ", 1, true) and offered:find(" 2& ", 1, true), offered)
  check("no count beyond the bar", not offered:find(" 3 ", 1, true), offered)
  type_in("1\n  drop left at 3\n")
  check("a diagnostic while typing", wait("a diagnostic", function()
    return codes():find("count%-outside%-bar") or codes():find("nothing%-there")
  end), codes())

  local line, column = find("at 3")
  local actions = request("textDocument/codeAction", {
    textDocument = { uri = vim.uri_from_bufnr(0) },
    range = { start = { line = line, character = column + 3 }, ["end"] = { line = line, character = column + 3 } },
    context = { diagnostics = {} },
  })
  check("a fix is offered", actions and #actions > 0, actions)
  if actions and #actions > 0 then
    local action = actions[1].edit and actions[1] or request("codeAction/resolve", actions[1])
    vim.lsp.util.apply_workspace_edit(action.edit, "utf-16")
  end
  check("the fix removes it", wait("no diagnostics", function()
    return not codes():find("count%-outside%-bar") and not codes():find("nothing%-there")
  end), codes())

  line, column = find("paradiddle")
  local hover = request("textDocument/hover", here(line, column + 2))
  check("hover on a rudiment", hover and hover.contents.value:find("paradiddle%-diddle"), hover)

  type_in('chart practice "Practice"\n  count-in 1 bar\n  play feet 4 times\n')
  line, column = find("feet 4")
  local edit = request("textDocument/rename",
    vim.tbl_extend("force", here(line, column + 1), { newName = "kick-on-one" }))
  check("rename", edit ~= nil, edit)
  if edit then
    vim.lsp.util.apply_workspace_edit(edit, "utf-16")
  end
  local text = table.concat(lines(), "\n")
  check("both places renamed", text:find("step kick-on-one", 1, true) and text:find("play kick-on-one", 1, true), text)

  line, column = find("kick-on-one 4")
  local definition = request("textDocument/definition", here(line, column + 1))
  local given = find("step kick-on-one")
  check("definition", definition and definition[1] and definition[1].range.start.line == given, definition)

  local formatted = request("textDocument/formatting", {
    textDocument = { uri = vim.uri_from_bufnr(0) },
    options = { tabSize = 2, insertSpaces = true },
  })
  if formatted and #formatted > 0 then
    apply(formatted)
  end
  local again = request("textDocument/formatting", {
    textDocument = { uri = vim.uri_from_bufnr(0) },
    options = { tabSize = 2, insertSpaces = true },
  })
  check("formatting twice changes nothing", again ~= nil and #again == 0, again)

  local symbols = request("textDocument/documentSymbol", { textDocument = { uri = vim.uri_from_bufnr(0) } })
  check("symbols", symbols and #symbols == 4, symbols and #symbols)
  check("the lesson is clean", wait("a clean lesson", function()
    return codes() == ""
  end), codes())
  vim.cmd("silent write")
  say(table.concat(lines(), "\n"))
end

local function text_of(name)
  return table.concat(vim.api.nvim_buf_get_lines(vim.fn.bufnr(name), 0, -1, false), "\n")
end

-- Three files in one folder, one of them never saved: one server, and a rename that reaches all.
local function three_files()
  vim.fn.mkdir(vim.env.TABOR_WORK .. "/sub", "p")
  vim.fn.writefile({ "pattern six : rlrrll", "groove foot", "  hands play six in eighths" }, "lib.tabor")
  vim.fn.writefile({ 'use "lib.tabor"', "groove one", "  hands play six in eighths" }, "one.tabor")
  vim.cmd("edit lib.tabor")
  vim.cmd("edit one.tabor")
  vim.cmd("edit two.tabor")
  vim.api.nvim_buf_set_lines(0, 0, -1, false,
    { 'use "lib.tabor"', 'step two "Two" from foot', "  hands play six in eighths", "  # six feet" })
  check("one server for three files", #vim.lsp.get_active_clients() == 1, #vim.lsp.get_active_clients())
  vim.cmd("buffer lib.tabor")
  vim.api.nvim_buf_set_lines(0, 0, 0, false, { "# not saved either" })
  local line, column = find("six")
  local edit = request("textDocument/rename",
    vim.tbl_extend("force", here(line, column + 1), { newName = "sextet" }))
  check("a rename across files", edit ~= nil, edit)
  vim.lsp.util.apply_workspace_edit(edit, "utf-16")
  check("the pattern's file", text_of("lib.tabor") ==
    "# not saved either\npattern sextet : rlrrll\ngroove foot\n  hands play sextet in eighths", text_of("lib.tabor"))
  check("a saved file", text_of("one.tabor") ==
    'use "lib.tabor"\ngroove one\n  hands play sextet in eighths', text_of("one.tabor"))
  check("an unsaved file", text_of("two.tabor") ==
    'use "lib.tabor"\nstep two "Two" from foot\n  hands play sextet in eighths\n  # six feet', text_of("two.tabor"))
  for _, name in ipairs({ "lib.tabor", "one.tabor", "two.tabor" }) do
    vim.cmd("buffer " .. name)
    check("clean after the rename: " .. name, wait("no errors in " .. name, function()
      return #vim.diagnostic.get(0, { severity = vim.diagnostic.severity.ERROR }) == 0
    end), codes())
  end
  vim.cmd("buffer one.tabor")
  vim.api.nvim_win_set_cursor(0, { 3, 4 })
  vim.cmd("TaborDo showGrid")
  check("the grid opens", wait("a grid", function()
    return vim.bo.buftype == "nofile"
  end))
  local grids = 0
  for _, window in ipairs(vim.api.nvim_list_wins()) do
    if vim.bo[vim.api.nvim_win_get_buf(window)].buftype == "nofile" then
      grids = grids + 1
    end
  end
  check("it opens once", grids == 1, grids)
end

-- Every word that the server gives a meaning has a colour without the server too.
local function colours()
  vim.opt.runtimepath:append(vim.env.TABOR_EDITORS .. "/vim")
  vim.cmd("syntax enable")
  local words, plain = 0, {}
  for _, file in ipairs(vim.fn.glob(vim.env.TABOR_EXAMPLES .. "/*.tabor", false, true)) do
    vim.cmd("edit! " .. file)
    wait("the client", function()
      for _, client in pairs(vim.lsp.buf_get_clients(0)) do
        return client.initialized ~= nil or client.server_capabilities ~= nil
      end
      return false
    end)
    local data = request("textDocument/semanticTokens/full", { textDocument = { uri = vim.uri_from_bufnr(0) } }).data
    local line, column = 0, 0
    for i = 1, #data, 5 do
      line = line + data[i]
      column = data[i] == 0 and column + data[i + 1] or data[i + 1]
      words = words + 1
      local text = lines()[line + 1]
      local at = vim.str_byteindex(text, column, true) + 1
      local name = vim.fn.synIDattr(vim.fn.synID(line + 1, at, 1), "name")
      if name == "" or name == "taborLine" or name == "taborLane" then
        table.insert(plain, vim.fn.fnamemodify(file, ":t") .. ":" .. (line + 1) .. ":" .. at .. " " .. text)
      end
    end
    vim.cmd("bdelete!")
  end
  check("words of the examples", words > 500, words)
  check("no word without a colour", #plain == 0, { count = #plain, unpack(plain, 1, 12) })
end

local good, problem = pcall(function()
  run()
  three_files()
  colours()
end)
if not good then
  failed = failed + 1
  say("FAILED: " .. tostring(problem))
end
say(("%d passed, %d failed"):format(passed, failed))
for _, client in pairs(vim.lsp.get_active_clients()) do
  client.stop()
end
vim.wait(300)
vim.cmd("qall!")
