// commonmark.mjs FILE: writes the examples of the CommonMark specification 0.31.2 to FILE, as a JSON list of
// { number, section, markdown, html }. In the specification an arrow stands for a tab; here it is the tab itself.
import fs from 'node:fs';
import { need, done } from './lib.mjs';

const file = process.argv[2];
if (!file) { console.error('usage: commonmark.mjs FILE'); process.exit(2); }
const tab = text => text.replaceAll('→', '\t');
const examples = need('commonmark-spec').tests.map(({ number, section, markdown, html }) =>
  ({ number, section, markdown: tab(markdown), html: tab(html) }));
const WANTED = 652; // what this version holds; another count means the list was not read whole
if (examples.length !== WANTED) { console.error(`${examples.length} examples instead of ${WANTED}`); process.exit(1); }
fs.writeFileSync(file, JSON.stringify(examples, null, 1) + '\n');
done(examples.length, 0);
