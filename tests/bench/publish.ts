/**
 * What publishing costs: a job of 200 steps as a page, beside the same sentences rendered by `marked`: weight of the
 * page, time to make it, and how long the browser's main thread is busy until the page is seen. Prints a table.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { marked } from 'marked';
import { memoryHost } from '../../language-server/project/project.ts';
import { documentsOf } from '../../language-server/publish/document/build.ts';
import {
  type FlowItem,
  type ProcedureDocument,
  plainText,
} from '../../language-server/publish/document/types.ts';
import { procedurePage } from '../../language-server/publish/page/page.ts';
import { stepsOf } from '../../language-server/publish/site/job-drawings.ts';
import { openBrowser, openPage } from '../browser/browser.ts';

const ROUNDS = 9;
const COVERS = 25;
const FOLDER = resolve(import.meta.dirname, '../../.build/bench-publish');

/** 25 covers, eight steps each: 200 steps. */
function source(): string {
  const covers = Array.from({ length: COVERS }, (_, at) => at + 1);
  return `machine press "bench press" {
  part bed "bed" fixed
  tool wrench "torque wrench" range 5..60 N·m
${covers
  .map(
    (n) => `  part cover-${n} "cover ${n}" on bed held by screws-${n} sealed by ring-${n}
  seal ring-${n} "ring ${n}" on bed single-use
  face face-${n} "face ${n}" on bed
  fastener screws-${n} "screws ${n}" x6 thread M8x1.25 class 8.8 plan { 8 N·m; 22 N·m }`,
  )
  .join('\n')}
}
procedure all-rings "Renew all rings" for press
  document "PR-1" issue 1 "2026-10-01"  people 1  skill "fitter"  time 8 h  wear gloves  tools wrench
{
${covers
  .map(
    (n) => `  task cover-${n} "Cover ${n}" {
    caution sharp "The edge of the cover cuts. Wear gloves."
    remove screws-${n} "Keep them in order."
    remove cover-${n}
    remove ring-${n} and discard
    clean face-${n}
    fit new ring-${n}
    refit cover-${n}
    fit screws-${n} by hand
    tighten screws-${n} with wrench "In two rounds."
  }`,
  )
  .join('\n')}
}
`;
}

/** The same sentences as plain Markdown, with nothing to tick and nothing that follows. */
function markdownOf(doc: ProcedureDocument): string {
  const told = (items: readonly FlowItem[]): string[] =>
    items.flatMap((item) =>
      item.kind === 'task'
        ? [`## ${item.number} ${item.title}`, ...told(item.items)]
        : stepsOf([item]).flatMap((step) => [
            ...step.notices.map((notice) => `> **${notice.word}** ${plainText(notice.text)}`),
            `**${step.number}** ${plainText(step.heading)}`,
            ...[...step.more, ...step.said].map(plainText),
            ...step.detail.fastening.flatMap(({ stages }) => stages.map((stage) => `- ${stage.sentence}`)),
          ]),
    );
  return [`# ${doc.title}`, ...told(doc.flow)].join('\n\n');
}

function middle(values: number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

function timed<T>(work: () => T): { result: T; ms: number } {
  const times: number[] = [];
  let result = work();
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    result = work();
    times.push(performance.now() - start);
  }
  return { result, ms: middle(times) };
}

const host = memoryHost({ 'press.dowel': source() });
const built = timed(() => documentsOf(host, 'press.dowel'));
const doc = built.result[0]!;
const options = {
  pictures: () => ({ refused: 'is not there' }),
  links: { procedure: () => undefined, machine: () => undefined, check: () => undefined },
};
const ours = timed(() => procedurePage(doc, options).text);
const text = markdownOf(doc);
const theirs = timed(
  () =>
    `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>${doc.title}</title><body>${marked.parse(text, { async: false })}</body></html>`,
);

mkdirSync(FOLDER, { recursive: true });
const pages = { dowel: ours, marked: theirs };
for (const [name, { result }] of Object.entries(pages)) writeFileSync(`${FOLDER}/${name}.html`, result);

const browser = await openBrowser();
const seen: Record<string, { first: number; busy: number }> = {};
for (const name of Object.keys(pages)) {
  const firsts: number[] = [];
  const busies: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const { page, close } = await openPage(browser, 'about:blank', { viewport: { width: 360, height: 740 } });
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable');
    await page.goto(pathToFileURL(`${FOLDER}/${name}.html`).href, { waitUntil: 'load' });
    firsts.push(
      (await page.evaluate(
        `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? performance.now()))))`,
      )) as number,
    );
    const { metrics } = await session.send('Performance.getMetrics');
    busies.push(1000 * (metrics.find((one) => one.name === 'TaskDuration')?.value ?? 0));
    await close();
  }
  seen[name] = { first: middle(firsts), busy: middle(busies) };
}
await browser.close();

const bytes = (name: string) => readFileSync(`${FOLDER}/${name}.html`);
const row = (what: string, of: (name: 'dowel' | 'marked') => number, digits = 0) =>
  `| ${what} | ${of('dowel').toFixed(digits)} | ${of('marked').toFixed(digits)} | ${(of('dowel') / of('marked')).toFixed(2)} |`;
console.log(
  [
    `A job of ${stepsOf(doc.flow).length} steps; medians of ${ROUNDS}, Chromium ${browser.version()} at 360 px. Document made in ${built.ms.toFixed(0)} ms.`,
    '',
    '| | dowel | the sentences alone, by marked | ratio |',
    '|---|---|---|---|',
    row('page, kB', (name) => bytes(name).length / 1000),
    row('page, gzipped, kB', (name) => gzipSync(bytes(name)).length / 1000),
    row('time to make the page, ms', (name) => pages[name].ms, 1),
    row('first view, ms', (name) => seen[name]!.first),
    row('main thread busy until then, ms', (name) => seen[name]!.busy),
  ].join('\n'),
);
