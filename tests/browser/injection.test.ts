/**
 * Nothing that an author writes becomes markup, a script, an address or a request: strings that try to stand in every
 * text, name of a file and picture of the language; the site is opened in a real browser, and nothing runs.
 *
 * The strings are of the kinds listed in the OWASP cheat sheet on script injection (from memory), and our own that aim
 * at the ends of style, script, title, comment and attribute.
 */
import { mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { publish } from '../../language-server/cli/publish.ts';
import { openBrowser, openPage } from './browser.ts';
import { invalidIn } from './validity.ts';

const FOLDER = resolve(import.meta.dirname, '../../.build/browser/injection');

const ATTACKS = [
  '<script>window.hit=1</script>',
  '</script><script>window.hit=1</script>',
  '</style><script>window.hit=1</script>',
  '</title><img src=x onerror=window.hit=1>',
  '"><img src=x onerror="window.hit=1">',
  "' onmouseover='window.hit=1' x='",
  '" autofocus onfocus="window.hit=1',
  '<svg onload=window.hit=1><use href="data:image/svg+xml,x"/></svg>',
  '<svg><script>window.hit=1</script></svg>',
  '<iframe srcdoc="<script>parent.hit=1</script>"></iframe>',
  '<a href="javascript:window.hit=1">x</a>',
  'javascript:window.hit=1',
  '<base href="https://example.invalid/"><link rel=stylesheet href=https://example.invalid/x.css>',
  '<meta http-equiv="refresh" content="0;url=https://example.invalid/">',
  '<form action=https://example.invalid/><button autofocus>x</button></form>',
  '--><script>window.hit=1</script><!--',
  ']]><script>window.hit=1</script>',
  '&lt;script&gt;window.hit=1&lt;/script&gt;',
  '&#60;script&#62;window.hit=1&#60;/script&#62;',
  '\u202e<script>window.hit=1</script>\u2028\u0007',
  '\ud800<img src=x onerror=window.hit=1>',
  '@page{}*{background:url(https://example.invalid/x)}',
  '\\"}*{background:url(https://example.invalid/x)}',
  '{{window.hit=1}}',
] as const;

/** Four in one text: fewer pages to open, and each still stands as it is. */
const GROUPS = Array.from({ length: ATTACKS.length / 4 + 1 }, (_, at) => ATTACKS.slice(at * 4, at * 4 + 4))
  .filter((group) => group.length > 0)
  .map((group) => group.join(' '));

/** A text of the language that says exactly this. */
function quoted(text: string): string {
  return `"${text.replace(/[\\"{]/g, '\\$&').replace(/\n/g, ' ')}"`;
}

/** A job with the string in every place that takes a text. */
function job(attack: string, number: number): string {
  const q = quoted(attack);
  return `machine mill-${number} ${q} {
  variant supply: single-phase, three-phase
  value give ${q} = 8 mm
  table shim-table ${q} { up to 0.1 mm: 0.1 mm  over 0.1 mm: 0.2 mm }
  fluid oil ${q}
  consumable grease ${q}
  system gearbox-oil ${q} holds 1 L oil filled at cap
  system spring ${q} stored ${q}
  part frame ${q} fixed
  part cap ${q} on frame
  part guard ${q} on frame held by screws goes ${q} part number ${q} also called ${q}, ${q} mass 4 kg
  part belt ${q} on frame under guard
  part shims ${q} on frame under guard
  seal ring ${q} on frame single-use under guard
  fastener screws ${q} x6 clamps guard to frame thread M8x1.25 class 8.8 layout circle #1 ${q} order across torque 22 N·m
  tool wrench ${q} range 5..60 N·m
  tool gauge ${q}
  kit seals ${q} contains ring
  rule guard-first ${q} { before turn frame require guard fitted }
}
procedure job-${number} ${q}
  for mill-${number}
  document ${q} issue 1 ${q}
  change ${q}
  people 1 skill ${q} time 1 h
  needs ${q}
  wear gloves
  tools wrench, gauge
  supplies seals
{
  task safe ${q} {
    danger live ${q}
    relieve spring ${q}
    note ${q}
    step ${q} {
      unbolt guard ${q} until ${q} expect ${q} picture ${q} ${q}
    }
    caution sharp ${q}
    remove belt with wrench ${q}
    hold ${q} { clean belt }
    if ${q} { clean frame } otherwise { stop ${q} }
    repeat until ${q} at most 2 times { clean belt } otherwise { stop ${q} }
    inspect belt for ${q} { sound { } worn { send belt for ${q} } }
    measure gap between frame and belt with gauge as gap { up to 1 mm { } over 1 mm { stop ${q} } }
    choose shims from shim-table by gap
    top up gearbox-oil to ${q}
    allow still-held because ${q}
    refit belt picture "pixel.png" ${q}
    bolt up guard with wrench
    sign ${q}
  }
}
procedure away-${number} ${q} for mill-${number} elsewhere ${q} { }
`;
}

const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);

let browser: Browser;
beforeAll(async () => {
  rmSync(FOLDER, { recursive: true, force: true });
  mkdirSync(`${FOLDER}/jobs`, { recursive: true });
  writeFileSync(`${FOLDER}/jobs/pixel.png`, PIXEL);
  GROUPS.forEach((attack, number) => {
    // The string as far as a file's name can hold it.
    const name = attack.replaceAll('/', '-').slice(0, 60);
    writeFileSync(`${FOLDER}/jobs/${name}.dowel`, job(attack, number));
  });
  publish(`${FOLDER}/jobs`, { out: `${FOLDER}/site`, allowFindings: true });
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser?.close());

const pages = () =>
  readdirSync(`${FOLDER}/site`, { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.endsWith('.html') && !name.startsWith('checks'),
  );

test('there is a page for each job and each machine', () => {
  const all = pages();
  expect(all.filter((name) => name.startsWith('procedures')).length).toBe(2 * GROUPS.length);
  expect(all.filter((name) => name.startsWith('machines')).length).toBe(GROUPS.length);
});

test('nothing runs, nothing is asked for, nothing strange is built', async () => {
  const { page, troubles, close } = await openPage(browser, 'about:blank');
  const strange: string[] = [];
  const titles: string[] = [];
  for (const name of pages()) {
    await page.goto(pathToFileURL(`${FOLDER}/site/${name}`).href);
    const found = (await page.evaluate(`(() => {
      const wrong = [];
      if (window.hit) wrong.push('it ran');
      for (const one of document.querySelectorAll('*')) {
        if (['IFRAME', 'OBJECT', 'EMBED', 'BASE', 'LINK', 'FORM', 'FRAME'].includes(one.tagName)) wrong.push(one.tagName);
        for (const { name, value } of one.attributes) {
          if (/^on/i.test(name) || name === 'style' || name === 'srcdoc') wrong.push(one.tagName + ' ' + name);
          if (['href', 'src'].includes(name) && /^\\s*[a-z][a-z0-9+.-]*:/i.test(value) && !value.startsWith('data:image/png;base64,'))
            wrong.push(one.tagName + ' ' + name + '=' + value);
        }
      }
      // Of a procedure: two blocks of data and the page's own script; of the index: its search. Nothing else, in this order.
      const scripts = [...document.scripts].map((one) => one.type || 'script').join();
      if (!['application/json,application/ld+json,script', 'script', ''].includes(scripts)) wrong.push('scripts: ' + scripts);
      if (document.querySelectorAll('style').length > 2) wrong.push('styles');
      return wrong;
    })()`)) as string[];
    titles.push((await page.locator('h1').textContent()) ?? '');
    strange.push(...found.map((one) => `${name}: ${one}`));
  }
  expect(strange).toEqual([]);
  // And each is shown as it was written, but for what steers the direction of writing.
  for (const attack of ATTACKS.slice(0, 19)) expect(titles.join('\n')).toContain(attack);
  expect(troubles).toEqual([]);
  await close();
});

test('the pages are valid HTML', async () => {
  const wrong: string[] = [];
  for (const name of pages().filter((one) => /(job|mill)-/.test(one)))
    wrong.push(
      ...(
        await invalidIn(readFileSync(`${FOLDER}/site/${name}`, 'utf8').replace(/(<style>)[^<]*/g, '$1'))
      ).map((one) => `${name} ${one}`),
    );
  expect(wrong).toEqual([]);
});

describe('pictures that are not taken', () => {
  const jobWith = (picture: string) => `machine m "m" { part a "a" fixed }
procedure p "p" for m {
  clean a picture ${quoted(picture)} "what it shows"
}
`;

  /** The page of a job with such a picture, published in spite of it; and the exit code without that. */
  function published(picture: string, prepare: (folder: string) => void = () => {}) {
    const folder = `${FOLDER}/picture`;
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(`${folder}/jobs/below`, { recursive: true });
    writeFileSync(`${folder}/secret.png`, PIXEL);
    writeFileSync(`${folder}/jobs/right.png`, PIXEL);
    prepare(folder);
    writeFileSync(`${folder}/jobs/p.dowel`, jobWith(picture));
    const code = publish(`${folder}/jobs`, { out: `${folder}/site` });
    publish(`${folder}/jobs`, { out: `${folder}/all`, allowFindings: true });
    return { code, text: readFileSync(`${folder}/all/procedures/p.html`, 'utf8') };
  }

  test.each([
    '../secret.png',
    'below/../../secret.png',
    `${dirname(FOLDER)}/injection/secret.png`,
    'file:///etc/hostname',
    'https://example.invalid/x.png',
    '//example.invalid/x.png',
    'data:image/png;base64,AAAA',
    'gone.png',
    'below',
  ])('%s', (picture) => {
    const { code, text } = published(picture);
    expect(code).toBe(1);
    expect(text).not.toMatch(/<img/);
    expect(text).toMatch(/picture-(outside|missing)/);
    expect(text).toMatch(/Picture not shown: what it shows/);
  });

  test('a link out of the folder, a text with the name of a picture, one that is too large', () => {
    const cases: [string, (folder: string) => void, RegExp][] = [
      [
        'link.png',
        (folder) => symlinkSync(`${folder}/secret.png`, `${folder}/jobs/link.png`),
        /link that leads out/,
      ],
      ['text.png', (folder) => writeFileSync(`${folder}/jobs/text.png`, '<svg onload=alert(1)>'), /no PNG/],
      [
        'big.png',
        (folder) => writeFileSync(`${folder}/jobs/big.png`, Buffer.alloc(5_000_000)),
        /at most 4 MB/,
      ],
    ];
    for (const [picture, prepare, says] of cases) {
      const { code, text } = published(picture, prepare);
      expect(code).toBe(1);
      expect(text).toMatch(says);
      expect(text).not.toMatch(/<img/);
    }
  });

  test('and a right one is', () => {
    const { code, text } = published('./right.png');
    expect(code).toBe(0);
    expect(text).toContain(
      `<img src="data:image/png;base64,${PIXEL.toString('base64')}" alt="what it shows">`,
    );
  });
});
