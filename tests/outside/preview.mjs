// preview.mjs DEMO: `watch` in a real browser. A copy of the demo studio is edited while Chromium looks at it: pages change
// without being touched and keep their place, a style changes without that, a mistake shows on the strip and goes again,
// what readers cannot see has its ribbon, the desk marks the planted pair of gifts and copies the text for the video, and
// nothing is left behind.
import { spawn, execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { done, launch } from './lib.mjs';

const demo = process.argv[2], ballband = process.env.BALLBAND;
if (!demo || !ballband) { console.error('usage: BALLBAND=path/to/ballband preview.mjs DEMO'); process.exit(2); }
const work = fs.mkdtempSync(path.join(os.tmpdir(), 'preview-')), studio = path.join(work, 'studio');
fs.cpSync(demo, studio, { recursive: true });
const file = name => path.join(studio, name);
const edit = (name, from, to) => {
  const before = fs.readFileSync(file(name), 'utf8'), after = before.replace(from, to);
  if (before === after) throw new Error(`${name} holds no ${from}`);
  fs.writeFileSync(file(name), after);
};
const listing = () => fs.readdirSync(studio, { recursive: true }).map(String).sort().join('\n');
const files = listing();

const watch = spawn(ballband, ['watch', '--studio', studio], { stdio: ['ignore', 'pipe', 'inherit'] });
process.on('exit', () => { watch.kill('SIGKILL'); fs.rmSync(work, { recursive: true, force: true }); });
setTimeout(() => { console.error('BAD nothing more happened within two minutes'); process.exit(1); }, 120000).unref();
let said = '';
const url = await new Promise(ok => watch.stdout.on('data', data => {
  said += data;
  const found = said.match(/the site is at (http:\/\/127\.0\.0\.1:\d+)\//);
  if (found && said.includes('Ctrl-C')) ok(found[1]);
}));

let passed = 0, failed = 0;
const check = async (what, test) => {
  try { await test(); passed++; console.log(`ok ${what}`); } catch (error) { failed++; console.log(`BAD ${what}: ${String(error).slice(0, 400)}`); }
};
const is = (found, wanted) => { if (found !== wanted) throw new Error(`${JSON.stringify(found)} instead of ${JSON.stringify(wanted)}`); };
const browser = await launch(), page = await browser.newPage({ viewport: { width: 1000, height: 700 } });
const errors = [];
page.on('console', message => { if (message.type() === 'error') errors.push(message.text()); });
page.on('response', answer => { if (answer.status() >= 400) errors.push(`${answer.status()} ${answer.url()}`); });
page.on('pageerror', error => errors.push(String(error)));
const listens = () => page.waitForRequest(request => request.url().includes('/desk/events'), { timeout: 5000 }).catch(() => null);
const open = async address => { const heard = listens(); await page.goto(url + address); await heard; await page.waitForTimeout(200); };
const title = () => page.locator('h1').first().innerText();
const strip = page.locator('#ballband-strip p.error');

await open('/patterns/saltmarsh-yoke/');
await check('a saved title is on the page without a touch, at the same place', async () => {
  await page.evaluate(() => scrollTo(0, 900));
  const heard = listens();
  edit('patterns/saltmarsh-yoke.md', /^title: .*$/m, 'title: Saltmarsh by night');
  await page.waitForFunction(() => document.querySelector('h1').innerText.includes('Saltmarsh by night'), null, { timeout: 5000 });
  await heard;
  await page.waitForFunction(() => Math.abs(scrollY - 900) < 3, null, { timeout: 5000 });
});
await check('a page that shows nothing of a save is left alone', async () => {
  await page.evaluate(() => { window.untouched = true; });
  edit('journal/2026-11-20-reeds.md', /$/, '\nOne more sentence.\n');
  await page.waitForTimeout(700);
  is(await page.evaluate(() => window.untouched), true);
});
await check('a style changes without a new page', async () => {
  fs.mkdirSync(file('themes/leaflet/assets'), { recursive: true });
  fs.writeFileSync(file('themes/leaflet/assets/style.css'), 'h1 { letter-spacing: 7px; }\n');
  await page.waitForFunction(() => getComputedStyle(document.querySelector('h1')).letterSpacing === '7px', null, { timeout: 5000 });
  is(await page.evaluate(() => window.untouched), true);
  fs.rmSync(file('themes'), { recursive: true });
  await page.waitForFunction(() => getComputedStyle(document.querySelector('h1')).letterSpacing !== '7px', null, { timeout: 5000 });
});
await check('a mistake is on the strip with its line, and the good page stays', async () => {
  edit('patterns/saltmarsh-yoke.md', /^garment:/m, 'garmet:');
  await strip.filter({ hasText: /patterns\/saltmarsh-yoke\.md, line \d+: `garmet`/ }).waitFor({ timeout: 5000 });
  is(await title(), 'Saltmarsh by night');
});
await check('mended, it goes', async () => {
  edit('patterns/saltmarsh-yoke.md', /^garmet:/m, 'garment:');
  await strip.waitFor({ state: 'detached', timeout: 5000 });
});
await check('what readers cannot see has a ribbon', async () => {
  const heard = listens();
  edit('patterns/saltmarsh-yoke.md', /^title:/m, 'ready: false\ntitle:');
  await page.locator('#ballband-ribbon', { hasText: 'not ready' }).waitFor({ timeout: 5000 });
  await heard;
});
await check('the desk marks the planted pair of gifts, and no other', async () => {
  await open('/desk/');
  edit('projects/second-storm.md', 'brim: rolled', 'brim: folded');
  await page.locator('#gifts tr.marked').first().waitFor({ timeout: 5000 });
  is(await page.locator('#gifts tr.marked').count(), 2);
  const before = await page.locator('#gifts tr.marked').allInnerTexts();
  if (!before.every(row => row.includes('Varcoe'))) throw new Error(before.join(' | '));
});
await check('the desk follows a save', async () => {
  edit('projects/second-storm.md', 'brim: folded', 'brim: rolled');
  await page.waitForFunction(() => !document.querySelector('#gifts tr.marked'), null, { timeout: 5000 });
});
await check('a button of the desk copies the text that `blurb` prints', async () => {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'], { origin: url });
  await page.locator('button[data-copy="text-1"]').click();
  await page.waitForFunction(() => document.querySelector('[data-copied="text-1"]').textContent === 'Copied.', null, { timeout: 5000 });
  const printed = execFileSync(ballband, ['blurb', '--studio', studio, '--outlet', 'video'], { stdio: ['ignore', 'pipe', 'ignore'] }).toString();
  is(await page.evaluate(() => navigator.clipboard.readText()), printed);
});
await check('chapters are served as WebVTT', async () => {
  const answer = await page.request.get(`${url}/journal/2026-11-20-reeds/chapters.vtt`);
  is(`${answer.status()} ${answer.headers()['content-type']}`, '200 text/vtt; charset=utf-8');
});
await check('nothing went wrong in the browser', async () => is(errors.join('\n'), ''));
await check('another host is refused', async () => {
  const code = execFileSync('curl', ['-s', '-o', '/dev/null', '-w', '%{http_code}', '-H', 'Host: studio.example', `${url}/`]).toString();
  is(code, '403');
});
await browser.close();
await check('told to end, it ends and leaves nothing behind', async () => {
  const ended = new Promise(ok => watch.on('exit', ok));
  watch.kill('SIGTERM');
  is(await ended, 0);
  is(listing(), files);
});
done(passed, failed);
