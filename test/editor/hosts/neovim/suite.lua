-- What a recipe gets in Neovim from its own language client: findings, hover, completion, rename and a code action. It runs inside
-- `nvim --headless` with nothing configured, and leaves its results in the file that neovim.ts names.

local config = {
  name = 'tidemark',
  cmd = { vim.env.TIDEMARK_NODE, vim.env.TIDEMARK_CLI, 'serve', '--stdio' },
  root_dir = vim.fn.getcwd(),
}
local patience = 8000

local buffer = vim.api.nvim_get_current_buf()
-- Newer versions have `start`, which attaches as well.
local client_id = (vim.lsp.start or vim.lsp.start_client)(config)
vim.lsp.buf_attach_client(buffer, client_id)

local function text()
  return table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), '\n')
end

local sound = vim.api.nvim_buf_get_lines(buffer, 0, -1, false)

local function put_back()
  vim.api.nvim_buf_set_lines(buffer, 0, -1, false, sound)
end

--- The line and column, from zero, where `part` begins; it stands in the recipe exactly once.
local function place_of(part)
  local found
  for number, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
    local column = line:find(part, 1, true)
    if column then
      assert(not found, part .. ' stands in the recipe more than once')
      found = { line = number - 1, character = column - 1 }
    end
  end
  return assert(found, part .. ' does not stand in the recipe')
end

local function replace_once(from, to)
  local place = place_of(from)
  local row, column = place.line, place.character
  vim.api.nvim_buf_set_text(buffer, row, column, row, column + #from, { to })
end

local function ask(method, params)
  params.textDocument = vim.lsp.util.make_text_document_params(buffer)
  local answers = assert(vim.lsp.buf_request_sync(buffer, method, params, patience), 'no answer to ' .. method)
  local answer = assert(answers[client_id], 'no answer to ' .. method)
  assert(not answer.error, vim.inspect(answer.error))
  return answer.result
end

local function codes()
  return vim.tbl_map(function(finding) return finding.code end, vim.diagnostic.get(buffer))
end

local function until_found(code)
  local arrived = vim.wait(patience, function() return vim.tbl_contains(codes(), code) end, 20)
  assert(arrived, code .. ' is not among the findings: ' .. vim.inspect(codes()))
end

local function contains(whole, part)
  assert(whole:find(part, 1, true), part .. ' is not in: ' .. whole)
end

local tests = {
  {
    'the server starts and says what it can do',
    function()
      local ready = vim.wait(patience, function()
        local client = vim.lsp.get_client_by_id(client_id)
        return client ~= nil and client.initialized == true
      end, 20)
      assert(ready, 'the server is not ready')
      local can = vim.lsp.get_client_by_id(client_id).server_capabilities
      for _, ability in ipairs({ 'hoverProvider', 'completionProvider', 'renameProvider', 'codeActionProvider' }) do
        assert(can[ability], ability)
      end
    end,
  },
  {
    'a misspelt name is found, and gone when it is put right',
    function()
      replace_once('water: cistern', 'water: cistren')
      until_found('name-unknown')
      put_back()
      local gone = vim.wait(patience, function() return not vim.tbl_contains(codes(), 'name-unknown') end, 20)
      assert(gone, vim.inspect(codes()))
    end,
  },
  {
    'hover on a dose tells its amount for the batch',
    function()
      -- 12 L at the label's 2 mL/L.
      local hover = ask('textDocument/hover', { position = place_of('meadow: label') })
      contains(hover.contents.value, '24 mL')
    end,
  },
  {
    'completion offers the names that may stand there',
    function()
      replace_once('water: cistern', 'water: cis')
      local place = place_of('water: cis')
      place.character = place.character + #'water: cis'
      local offered = ask('textDocument/completion', { position = place })
      local labels = vim.tbl_map(function(item) return item.label end, offered.items or offered)
      assert(vim.tbl_contains(labels, 'cistern'), vim.inspect(labels))
      put_back()
    end,
  },
  {
    'rename changes a name wherever it stands',
    function()
      local place = place_of('water: cistern')
      place.character = place.character + #'water: '
      local edit = ask('textDocument/rename', { position = place, newName = 'roof' })
      vim.lsp.util.apply_workspace_edit(edit, 'utf-16')
      contains(text(), '  roof:\n    pH: 7.4')
      contains(text(), 'water: roof')
      assert(not text():find('cistern', 1, true), text())
      put_back()
    end,
  },
  {
    'a code action puts a misspelt key right',
    function()
      local before = text()
      replace_once('volume: 12 L', 'volme: 12 L')
      until_found('key-unknown')
      local finding = vim.tbl_filter(function(found) return found.code == 'key-unknown' end, vim.diagnostic.get(buffer))[1]
      local range = {
        start = { line = finding.lnum, character = finding.col },
        ['end'] = { line = finding.end_lnum, character = finding.end_col },
      }
      local sent = finding.user_data.lsp
      local diagnostic = {
        range = range,
        message = finding.message,
        source = finding.source,
        severity = finding.severity,
        code = finding.code,
        data = sent and sent.data,
      }
      local actions = ask('textDocument/codeAction', { range = range, context = { diagnostics = { diagnostic } } })
      local fix = vim.tbl_filter(function(action) return action.kind == 'quickfix' and action.edit end, actions)[1]
      assert(fix, vim.inspect(actions))
      vim.lsp.util.apply_workspace_edit(fix.edit, 'utf-16')
      assert(text() == before, text())
    end,
  },
}

local results = {}
for _, test in ipairs(tests) do
  local started = vim.loop.hrtime()
  local passed, failure = pcall(test[2])
  table.insert(results, {
    name = test[1],
    milliseconds = math.floor((vim.loop.hrtime() - started) / 1e6),
    failure = not passed and tostring(failure) or nil,
  })
  if not passed then put_back() end
end
vim.fn.writefile({ vim.fn.json_encode(results) }, vim.env.TIDEMARK_RESULTS)
vim.cmd('qall!')
