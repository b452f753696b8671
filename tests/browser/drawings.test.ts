/**
 * Every drawing of every demo in a real browser: no letter is cut off by the edge, no text stands on another, in the
 * width of a telephone and of a page.
 */

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { chartOf } from '../../language-server/publish/drawings/bars.ts';
import { chart } from '../../language-server/publish/drawings/chart.ts';
import { machineMap } from '../../language-server/publish/drawings/map.ts';
import { mapGraph } from '../../language-server/publish/drawings/map-graph.ts';
import { orderDrawing } from '../../language-server/publish/drawings/order.ts';
import { orderPictures } from '../../language-server/publish/drawings/order-pictures.ts';
import { machinesIn, proceduresIn, TEXTS } from '../language-server/publish/drawings/demos.ts';
import { openBrowser } from './browser.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, 120_000);
afterAll(() => browser?.close());

const machines = machinesIn(TEXTS);
const procedures = proceduresIn(TEXTS);

function drawings(): [string, string][] {
  let number = 0;
  const prefix = () => `d${++number}`;
  return [
    ...machines.flatMap(({ model }) => [
      ...orderPictures(model).map((picture): [string, string] => [
        `order of ${picture.thing}`,
        orderDrawing(picture, { prefix: prefix() })!.svg,
      ]),
      [`map of ${model.name}`, machineMap(mapGraph(model), { prefix: prefix(), name: model.title }).svg] as [
        string,
        string,
      ],
    ]),
    ...procedures.flatMap(({ model, execution, name }) =>
      [360, 680].map((width): [string, string] => [
        `chart of ${name}, ${width} px`,
        chart(chartOf(model, execution), { prefix: prefix(), name, width }).svg,
      ]),
    ),
  ];
}

test('nothing is cut off, no text stands on text', async () => {
  const all = drawings();
  expect(all.length).toBeGreaterThan(25);
  const page = await browser.newPage();
  await page.setContent(`<body>${all.map(([, svg]) => svg).join('')}</body>`);
  const found = await page.evaluate(`[...document.querySelectorAll('svg')].map((svg) => {
    const frame = svg.getBoundingClientRect();
    const texts = [...svg.querySelectorAll('text')].map((text) => ({
      words: text.textContent, box: text.getBoundingClientRect(),
    }));
    const faults = [];
    texts.forEach(({ words, box }, index) => {
      if (box.left < frame.left - 0.5 || box.right > frame.right + 0.5 || box.top < frame.top - 0.5 ||
          box.bottom > frame.bottom + 0.5) faults.push('cut off: ' + words);
      for (const other of texts.slice(index + 1)) {
        const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
        // Boxes of lines reach above and below the letters.
        const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
        if (wide > 0.5 && high > 4) faults.push(words + ' / ' + other.words);
      }
    });
    return faults;
  })`);
  const faults = (found as string[][]).flatMap((each, index) =>
    each.map((one) => `${all[index]![0]}: ${one}`),
  );
  expect(faults).toEqual([]);
});

test('each is named for who cannot see it', async () => {
  const page = await browser.newPage();
  await page.setContent(
    `<body>${drawings()
      .map(([, svg]) => svg)
      .join('')}</body>`,
  );
  const names = (await page.evaluate(`[...document.querySelectorAll('svg')].map((svg) =>
    svg.getAttribute('aria-labelledby').split(' ').map((id) => document.getElementById(id).textContent))`)) as string[][];
  for (const [title, description] of names) {
    expect(title!.length).toBeGreaterThan(10);
    expect(description!.length).toBeGreaterThan(10);
  }
});
