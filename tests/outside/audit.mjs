// audit.mjs SITE_DIR PAGE...: Lighthouse, as a phone sees the page; performance, accessibility, best practice and search must
// each score 100, performance only PERFORMANCE_AT_LEAST if that is set: a machine with other things to do gives no fair figure
// for it. Says what was held against a page.
import { pathToFileURL } from 'node:url';
import { siteArg, serve, chromium, need, FLAGS, done } from './lib.mjs';

const dir = siteArg(), list = process.argv.slice(3);
if (!list.length) { console.error('usage: SITE_DIR PAGE...'); process.exit(2); }
const load = async name => import(pathToFileURL(need.resolve(name)));
const { default: lighthouse } = await load('lighthouse'), { launch } = await load('chrome-launcher');
const site = await serve(dir), browser = await launch({ chromePath: chromium(), chromeFlags: FLAGS });
const WANTED = ['performance', 'accessibility', 'best-practices', 'seo'];
const fast = +(process.env.PERFORMANCE_AT_LEAST || 100);
let ok = 0, bad = 0;
for (const page of list) {
  const { lhr } = await lighthouse(site.url + page, { port: browser.port, onlyCategories: WANTED, logLevel: 'error' });
  const scores = WANTED.map(id => Math.round(lhr.categories[id].score * 100));
  console.log(`${page}: ${scores.join(' ')}`);
  if (lhr.runtimeError) console.log(`BAD ${page}: ${lhr.runtimeError.message}`);
  for (const id of WANTED) for (const { id: audit, weight } of lhr.categories[id].auditRefs) {
    const a = lhr.audits[audit];
    if (weight && a.score !== null && a.score < 1) console.log(`  ${id} ${a.id}: ${a.displayValue || a.title}`);
  }
  scores.every((score, i) => score >= (i ? 100 : fast)) && !lhr.runtimeError ? ok++ : bad++;
}
browser.kill(); site.close(); done(ok, bad);
