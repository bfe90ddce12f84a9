// a11y.mjs SITE_DIR [PAGE...]: these pages, or a dozen of all kinds. axe-core (WCAG 2.0-2.2 A and AA) in Chromium, light and
// dark, at 320 px and 1280 px;
// reflow at 320 px and at 200% zoom (also with WCAG 1.4.12 text spacing); Tab order, visible focus, focus not hidden.
import fs from 'node:fs';
import { siteArg, pages, spread, serve, share, need, done } from './lib.mjs';

const dir = siteArg(), named = process.argv.slice(3);
const list = named.length ? named : spread(pages(dir), 12), site = await serve(dir);
const axe = fs.readFileSync(need.resolve('axe-core/axe.min.js'), 'utf8');
const OPTS = { runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'] },
  rules: { 'target-size': { enabled: true } }, resultTypes: ['violations', 'incomplete'] };
const SPACING = '*{line-height:1.5!important;letter-spacing:.12em!important;word-spacing:.16em!important}p{margin-bottom:2em!important}';
const VIEWS = [['320', { width: 320, height: 640 }, 1], ['1280', { width: 1280, height: 800 }, 1], ['200%', { width: 640, height: 400 }, 2]];
const counts = new Map(), unsure = new Map(); let runs = 0, failed = 0;
const bump = (m, k, n = 1) => m.set(k, (m.get(k) || 0) + n);

const wide = page => page.evaluate(() => {
  const w = document.documentElement.clientWidth;
  if (document.scrollingElement.scrollWidth <= w + 1) return '';
  const el = [...document.body.querySelectorAll('*')].find(e => e.getBoundingClientRect().right > w + 1);
  return `page is ${document.scrollingElement.scrollWidth} px wide; first: ${el ? el.outerHTML.slice(0, 90) : '?'}`;
});

async function focusOrder(page) { // real Tab presses from the top of the page
  const want = await page.evaluate(() => {
    const own = e => { const s = getComputedStyle(e); return [s.outlineStyle !== 'none' && s.outlineWidth, s.outlineColor, s.boxShadow, s.borderColor, s.backgroundColor, s.textDecorationLine, s.color].join('|'); };
    // A field may show its focus on the label round it.
    const look = e => own(e) + (e.closest('label') ? own(e.closest('label')) : '');
    window.__look = look; window.__els = [...document.querySelectorAll('a[href],button,input,select,textarea,summary,[tabindex],audio[controls],video[controls],iframe')]
      .filter(e => e.tabIndex >= 0 && !e.disabled && e.checkVisibility({ visibilityProperty: true }) && !(e.type === 'radio' && !e.checked));
    window.__rest = new Map(window.__els.map(e => [e, look(e)]));
    return window.__els.length;
  });
  const bad = [], seen = new Set(); let last = -1;
  for (let i = 0; i < Math.min(want + 30, 200) && seen.size < want; i++) { // 30 spare: scrollers and media controls take extra stops
    await page.keyboard.press('Tab');
    const r = await page.evaluate(() => {
      // A link that runs over a line's end has a box for each line, and the middle of them all may be on neither.
      const e = document.activeElement, i = window.__els.indexOf(e), b = e.getClientRects()[0] || e.getBoundingClientRect();
      const x = Math.min(Math.max(b.x + b.width / 2, 0), innerWidth - 1), y = Math.min(Math.max(b.y + b.height / 2, 0), innerHeight - 1);
      const top = document.elementFromPoint(x, y);
      return { i, html: e.outerHTML.slice(0, 90), ring: window.__look(e) !== window.__rest.get(e), hidden: !(top && (e.contains(top) || top.contains(e))) || !b.width };
    });
    if (r.i < 0) continue;
    if (r.i < last) bad.push(['focus-order', `comes after a later element: ${r.html}`]);
    if (!r.ring) bad.push(['focus-visible', r.html]);
    if (r.hidden) bad.push(['focus-hidden', r.html]);
    seen.add(r.i); last = r.i;
  }
  if (want <= 150 && seen.size < want) bad.push(['focus-reach', `${want - seen.size} of ${want} focusable elements not reached by Tab`]);
  return bad;
}

const jobs = list.flatMap(path => ['light', 'dark'].flatMap(colorScheme => VIEWS.map(view => [path, colorScheme, view])));
await share(jobs, async (browser, [path, colorScheme, [name, viewport, deviceScaleFactor]]) => {
  const page = await browser.newPage({ viewport, deviceScaleFactor, colorScheme, reducedMotion: 'reduce' });
  const found = [];
  const res = await page.goto(site.url + path, { waitUntil: 'load' });
  if (!res.ok()) found.push(['http', String(res.status())]);
  if (name !== '200%') {
    await page.evaluate(axe);
    const r = await page.evaluate(o => axe.run(document, o), OPTS);
    for (const v of r.violations) for (const n of v.nodes) found.push([v.id, n.html.slice(0, 100)]);
    for (const v of r.incomplete) bump(unsure, v.id, v.nodes.length);
  }
  if (name === '1280') found.push(...await focusOrder(page));
  if (name !== '1280') {
    const a = await wide(page); if (a) found.push(['reflow', a]);
    await page.addStyleTag({ content: SPACING }); const b = await wide(page); if (b && !a) found.push(['text-spacing', b]);
  }
  await page.close();
  runs++; if (found.length) failed++;
  for (const [id, what] of found) { bump(counts, id); if (counts.get(id) <= 5) console.log(`${id} ${path} ${colorScheme} ${name}: ${what}`); }
});
site.close();
for (const [id, n] of unsure) console.log(`needs a person: ${id} x${n}`);
for (const [id, n] of counts) console.log(`VIOLATION ${id} x${n}`);
console.log(`${list.length} pages of ${pages(dir).length}, ${runs} views`);
done(runs - failed, failed);
