// `npm run bench`: measures, prints, and writes schema/reference/speed.md. With --quick fewer keystrokes and nothing written; with
// TIDEMARK_PEER=FOLDER yaml-language-server, installed in that folder, is asked the same.

import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseDocument } from 'yaml';
import { buildServer } from '../protocol/built-server.ts';
import { measureCommandLine } from './command-line.ts';
import { measureCore } from './in-process.ts';
import { makeRecipe } from './make-recipe.ts';
import { cpuOf, medianOf } from './measure.ts';
import { measureServer, type Served } from './over-stdio.ts';
import { type Measured, reportOf } from './report.ts';

const root = join(import.meta.dirname, '..', '..');
const quick = process.argv.includes('--quick');
const sizes = [1000, 5000, 20_000];

const file = await buildServer();
const ours: Served = { command: [process.execPath, file, '--stdio'], languageId: 'grow-recipe', settings: {} };
const folder = process.env.TIDEMARK_PEER;
const peer: Served | undefined =
  folder === undefined
    ? undefined
    : {
        command: [process.execPath, join(folder, 'out/server/src/server.js'), '--stdio'],
        languageId: 'yaml',
        settings: peerSettings(),
      };

const measured: Measured[] = [];
for (const lines of sizes) {
  const text = makeRecipe(lines);
  const keystrokes = quick ? 40 : 400;
  const runs = quick ? 3 : 9;
  const parse = medianOf(runs, () => void parseDocument(text));
  const parseCpu = cpuOf(() => {
    for (let run = 0; run < runs; run++) parseDocument(text);
  });
  const core = measureCore(text, keystrokes);
  const server = await measureServer(ours, text, quick ? 20 : 125);
  const beside = peer === undefined ? undefined : await measureServer(peer, text, quick ? 4 : 12);
  measured.push({
    lines,
    parse,
    parseCpu: parseCpu / runs,
    core,
    server,
    ...(beside === undefined ? {} : { peer: beside }),
  });
  process.stderr.write(`${lines} lines measured\n`);
}

const commandLine = await measureCommandLine(quick ? 100 : 1000, quick ? 1 : 5);
process.stderr.write(`the command line measured\n`);

const [processor] = cpus();
const report = reportOf(measured, commandLine, {
  processor: processor?.model.trim() ?? 'unknown processor',
  cores: cpus().length,
  node: process.versions.node,
  date: new Date().toISOString().slice(0, 10),
});
process.stdout.write(report);
if (!quick) writeFileSync(join(root, 'schema', 'reference', 'speed.md'), report);

function peerSettings(): unknown {
  const schema = pathToFileURL(join(root, 'schema', 'grow-recipe.schema.json')).href;
  return {
    validate: true,
    hover: true,
    completion: true,
    schemas: { [schema]: '*.grow.yaml' },
    schemaStore: { enable: false },
    maxItemsComputed: 100_000,
  };
}
