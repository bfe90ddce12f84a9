// editor.mjs: what an editor makes of our schemas. A studio is laid out with $BALLBAND and opened, file by file, in the
// language server that YAML editors use: it must have nothing against it, see planted slips, and offer keys and words.
import { spawn, execFileSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { need } from './lib.mjs';

const ballband = process.env.BALLBAND;
if (!ballband) { console.error('usage: BALLBAND=path/to/ballband editor.mjs'); process.exit(2); }
const work = fs.mkdtempSync(path.join(os.tmpdir(), 'editor-'));
const studio = path.join(work, 'studio');
execFileSync(ballband, ['start', studio], { stdio: 'ignore' });
const server = spawn(process.execPath, [need.resolve('yaml-language-server/bin/yaml-language-server'), '--stdio'],
  { stdio: ['pipe', 'pipe', 'inherit'] });
process.on('exit', () => { server.kill(); fs.rmSync(work, { recursive: true, force: true }); });
setTimeout(() => { console.error('BAD the language server did not answer within two minutes'); process.exit(1); }, 120000).unref();

// The protocol: JSON with its length before it, questions answered by number.
const answers = new Map(), told = new Map();
let rest = Buffer.alloc(0), numbers = 0, version = 0;
const send = message => {
  const text = JSON.stringify({ jsonrpc: '2.0', ...message });
  server.stdin.write(`Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`);
};
const ask = (method, params) => new Promise(done => { answers.set(++numbers, done); send({ id: numbers, method, params }); });
// Nothing is fetched: the only schemas are ours.
const settings = { validate: true, hover: true, completion: true, schemaStore: { enable: false } };
function take(message) {
  if (message.method === 'textDocument/publishDiagnostics') told.set(message.params.uri, message.params.diagnostics);
  else if (message.method === 'workspace/configuration') send({ id: message.id, result: message.params.items.map(item => item.section === 'yaml' ? settings : null) });
  else if (message.method && message.id !== undefined) send({ id: message.id, result: null });
  else if (answers.has(message.id)) { answers.get(message.id)(message.result); answers.delete(message.id); }
}
server.stdout.on('data', chunk => {
  rest = Buffer.concat([rest, chunk]);
  for (let head; (head = rest.indexOf('\r\n\r\n')) >= 0;) {
    const end = head + 4 + Number(/Content-Length: (\d+)/i.exec(rest.subarray(0, head))[1]);
    if (rest.length < end) return;
    const message = JSON.parse(rest.subarray(head + 4, end));
    rest = rest.subarray(end);
    take(message);
  }
});
const wait = ms => new Promise(done => setTimeout(done, ms));
// Opens a file of the studio with a text and returns its address and what is said against it.
async function open(name, text) {
  const uri = pathToFileURL(path.join(studio, name)).href;
  told.delete(uri);
  send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'yaml', version: ++version, text } } });
  while (!told.has(uri)) await wait(20);
  return { uri, said: told.get(uri).map(one => `${one.range.start.line + 1}: ${one.message}`) };
}
const close = uri => send({ method: 'textDocument/didClose', params: { textDocument: { uri } } });
const at = (uri, line, character) => ({ textDocument: { uri }, position: { line: line - 1, character } });

let passed = 0, failed = 0;
const check = (what, good, seen) => { if (good) passed++; else { failed++; console.log('BAD', what, JSON.stringify(seen)); } };

const folders = [{ uri: pathToFileURL(studio).href, name: 'studio' }];
await ask('initialize', { processId: null, rootUri: folders[0].uri, workspaceFolders: folders, capabilities: { workspace: { configuration: true } } });
send({ method: 'initialized', params: {} });

for (const name of fs.readdirSync(studio).filter(name => name.endsWith('.yaml'))) {
  const text = fs.readFileSync(path.join(studio, name), 'utf8');
  const { uri, said } = await open(name, text);
  check(`${name} as it is laid out`, said.length === 0, said);
  const line = text.split('\n').findIndex(line => /^ *title:/.test(line)) + 1;
  const hover = await ask('textDocument/hover', at(uri, line, text.split('\n')[line - 1].indexOf('title') + 1));
  check(`${name}: what a title is`, JSON.stringify(hover ?? '').includes("site's name") || JSON.stringify(hover ?? '').includes('What it is called'), hover);
  close(uri);
}

const slips = `# yaml-language-server: $schema=.schemas/patterns.schema.json
Reed Hat:
  title: Reed Hat
hat:
  title: Hat
  guage: { stitches: 22 }
  gauge: { stiches: 22, over: 10 }
  stage: publishd
  published: soon
  yarn: [ { yarn: Heron DK, needs: 820 } ]
  finished: { chest: 84 (94) }
  margin: 10
`;
const { uri, said } = await open('patterns.yaml', slips);
for (const line of [2, 6, 7, 8, 9, 10, 11, 12]) check(`a slip in line ${line}`, said.some(one => one.startsWith(`${line}:`)), said);
check('no slip in other lines', said.every(one => ![1, 3, 4, 5].includes(parseInt(one, 10))), said);
for (const message of ['9: write a date like `2026-03-14`', '12: write a percentage from `0%` to `100%`'])
  check('a message says what to write', said.includes(message), said);
close(uri);

// An unfinished pattern: keys are offered where one is missing, words where a value is.
const part = `# yaml-language-server: $schema=.schemas/patterns.schema.json
hat:
  title: Hat
  wearer: 
  yarn:
    - yarn: heron-dk
      
`;
const half = await open('patterns.yaml', part);
const offered = async (line, character) => {
  const list = await ask('textDocument/completion', at(half.uri, line, character));
  return (list?.items ?? list ?? []).map(item => item.label);
};
const words = await offered(4, 10), keys = await offered(7, 6);
check('words are offered', ['women', 'men', 'baby'].every(word => words.includes(word)), words);
check('keys are offered', ['colour', 'shade', 'needs', 'strands'].every(key => keys.includes(key)), keys);
close(half.uri);

console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
