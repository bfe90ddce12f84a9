// chapters.mjs SITE_DIR: every chapters file is WebVTT as a parser of it reads it, and holds what its note's page lists: each
// title at its time, each ending where the next begins; and each listed time leads to that second of the video.
import fs from 'node:fs';
import path from 'node:path';
import { siteArg, pages, fileOf, need, done } from './lib.mjs';

const dir = siteArg(), { JSDOM } = need('jsdom'), { WebVTTParser } = need('webvtt-parser');
const seconds = text => text.split(':').reduce((all, part) => all * 60 + Number(part), 0);
const words = text => text.replace(/\s+/g, ' ').trim();
let passed = 0, failed = 0;

for (const page of pages(dir)) {
  const doc = new JSDOM(fs.readFileSync(fileOf(dir, page), 'utf8')).window.document;
  const link = doc.querySelector('a[type="text/vtt"]');
  if (!link) continue;
  const bad = [], file = path.join(dir, new URL(link.getAttribute('href'), 'http://x').pathname);
  const { cues, errors } = new WebVTTParser().parse(fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : '', 'chapters');
  for (const e of errors) bad.push(`line ${e.line}: ${e.message}`);
  const listed = [...doc.querySelectorAll('.chapters li')].map(li => {
    const [time, title] = li.querySelectorAll('a');
    return { time: words(time.textContent), href: time.getAttribute('href'), title: words(title.textContent) };
  });
  if (!listed.length || listed.length !== cues.length) bad.push(`${listed.length} listed, ${cues.length} in the file`);
  const text = cue => words(cue.tree.children.map(node => node.value ?? '').join(''));
  listed.forEach((one, i) => {
    const cue = cues[i], at = seconds(one.time);
    if (cue && (cue.startTime !== at || text(cue) !== one.title)) bad.push(`${one.time} ${one.title}: ${cue.startTime} ${text(cue)}`);
    if (cue && cues[i + 1] && cue.endTime !== cues[i + 1].startTime) bad.push(`${one.title} ends at ${cue.endTime}`);
    if (!new RegExp(`t=${at}$`).test(one.href)) bad.push(`${one.time} leads to ${one.href}`);
  });
  for (const why of bad) console.log(`BAD ${page}: ${why}`);
  if (bad.length) failed++; else passed++;
}
done(passed, failed);
